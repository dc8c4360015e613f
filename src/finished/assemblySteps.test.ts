import { expect, test } from 'vitest';
import { arrange } from '../layout/index.ts';
import { awayFrom, layoutOf, mm, part } from '../layout/testing/build.ts';
import { assemblyOf } from './assemblySteps.ts';

/** Ten square cards with a ribbon round the mat and a bow on it, all of it worked by hand. */
const tulips = (order?: readonly string[]) =>
  layoutOf({
    units: 'mm',
    cards: 10,
    base: [mm(135), mm(135)],
    ...(order === undefined ? {} : { order }),
    parts: [
      part('mat', { inset: mm(3) }),
      part('upper', { on: 'mat', size: [mm(123), mm(88)], place: { top: mm(3) } }),
      part('lower', {
        on: 'mat',
        size: [mm(123), mm(32)],
        place: { top: awayFrom('upper', mm(3)) },
      }),
      part('ribbon', {
        on: 'mat',
        size: [mm(159), mm(20)],
        tuck: { left: mm(15), right: mm(15) },
        place: { top: mm(82.5) },
      }),
      part('bow', { on: 'ribbon', size: [mm(60), mm(20)], adhere: 'raised', foam: mm(2) }),
    ],
  });

test('a ribbon goes round its mat, and the bow on it, before the mat goes down', () => {
  const layout = tulips();
  const { steps, refused, dry } = assemblyOf(layout, arrange(layout));
  expect(refused).toEqual([]);
  expect(steps.map(({ part: id }) => id)).toEqual(['upper', 'lower', 'ribbon', 'bow', 'mat']);
  const [upper, , ribbon, bow, mat] = steps;
  expect(upper).toMatchObject({ does: 'lay', onto: 'mat', offCard: 'mat', holds: ['flat'], turned: null });
  // The panels' glue has to set before the mat is turned over for the ends.
  expect(ribbon).toMatchObject({ does: 'wrap', turned: 'mat', waitsFor: [1, 2], holds: ['holding'] });
  expect(bow).toMatchObject({ onto: 'ribbon', offCard: 'mat', holds: ['raised'], handle: 0 });
  expect(mat).toMatchObject({
    onto: 'base',
    offCard: null,
    turned: 'mat',
    waitsFor: [],
    releases: ['ribbon'],
    carries: ['upper', 'lower', 'ribbon', 'bow'],
  });
  expect(mat!.reasons.map(({ why, first }) => [why, first])).toEqual([['wraps', 'ribbon']]);
  expect(dry).toBe(24 * 60);
});

test('gluing the mat down first is refused, with the ribbon as the reason', () => {
  const layout = tulips(['mat', 'upper', 'lower', 'ribbon', 'bow']);
  const { steps, refused } = assemblyOf(layout, arrange(layout));
  expect(refused).toMatchObject([{ of: 'order', rule: { why: 'wraps', first: 'ribbon', before: ['mat'] } }]);
  expect(steps.map(({ part: id }) => id)).toEqual(['upper', 'lower', 'ribbon', 'bow', 'mat']);
});

test('the bow may wait until the mat is down, where the designer says so', () => {
  const layout = tulips(['mat', 'bow']);
  const { steps, refused } = assemblyOf(layout, arrange(layout));
  expect(refused).toEqual([]);
  expect(steps.map(({ part: id }) => id)).toEqual(['upper', 'lower', 'ribbon', 'mat', 'bow']);
});

test('what lies between a band and its mat on the card itself leaves no order at all', () => {
  const layout = layoutOf({
    units: 'mm',
    base: [mm(100), mm(100)],
    parts: [
      part('mat', { size: [mm(80), mm(80)] }),
      part('strip', { size: [mm(90), mm(10)] }),
      part('ribbon', { on: 'mat', size: [mm(100), mm(20)], tuck: { left: mm(10), right: mm(10) } }),
    ],
  });
  const { steps, refused } = assemblyOf(layout, arrange(layout));
  expect(steps).toHaveLength(3);
  const [round] = refused;
  expect(round).toMatchObject({ of: 'pile' });
  expect(round !== undefined && 'round' in round && round.round.map(({ why }) => why).toSorted()).toEqual([
    'over',
    'over',
    'wraps',
  ]);
});

test('a pile without bands goes on from the bottom up, its faces one after another, and is turned over once', () => {
  const layout = layoutOf({
    units: 'mm',
    base: [mm(100), mm(100)],
    parts: [
      part('note', { on: 'back', size: [mm(20), mm(20)] }),
      part('mat', { inset: mm(5) }),
      part('panel', { on: 'mat', inset: mm(5), stamped: true }),
      part('verse', { on: 'inside', inset: mm(5) }),
      part('label', { on: 'back', size: [mm(20), mm(20)], place: { left: mm(5) } }),
    ],
  });
  const { steps } = assemblyOf(layout, arrange(layout));
  expect(steps.map(({ part: id, turned, waitsFor, readies }) => ({ id, turned, waitsFor, readies }))).toEqual(
    [
      { id: 'mat', turned: null, waitsFor: [], readies: [] },
      { id: 'panel', turned: null, waitsFor: [], readies: ['panel'] },
      { id: 'verse', turned: null, waitsFor: [], readies: [] },
      { id: 'note', turned: 'base', waitsFor: [1, 2, 3], readies: [] },
      { id: 'label', turned: null, waitsFor: [], readies: [] },
    ],
  );
});
