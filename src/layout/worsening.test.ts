import { expect, it } from 'vitest';
import type { Length } from '../measure/index.ts';
import { arrange } from './arrange.ts';
import { withLengths } from './dimension.ts';
import type { Layout } from './layout.ts';
import { sumChanges } from './sumChange.ts';
import { awayFrom, inch, layoutOf, part } from './testing/build.ts';
import { worseningFrom } from './worsening.ts';

const layout = layoutOf({
  base: [inch('4 1/4'), inch('5 1/2')],
  parts: [
    part('mat', { inset: inch('1/8') }),
    part('upper', { on: 'mat', size: [inch('3 3/4'), inch('3')], place: { top: inch('1/8') } }),
    part('lower', {
      on: 'mat',
      size: [inch('3 3/4'), inch('1 3/4')],
      place: { top: awayFrom('upper', inch('1/4')) },
    }),
  ],
});
const drawn = (changed: Layout) => ({ layout: changed, arrangement: arrange(changed) });
const worse = worseningFrom(drawn(layout));
const after = (lengths: Readonly<Record<string, Length>>) =>
  worse(drawn(withLengths(layout, new Map(Object.entries(lengths)))));

it('finds nothing worse in the layout itself', () => {
  expect(after({})).toEqual({ uneven: new Set(), along: new Set(), unlike: new Set(), wrong: new Set() });
});

it('names what a row is about whose borders were even', () => {
  expect(after({ 'parts[1].size[1]': inch('2 15/16') })).toEqual({
    uneven: new Set(['mat', 'upper', 'lower']),
    along: new Set(['height']),
    unlike: new Set(['upper', 'lower']),
    wrong: new Set(),
  });
});

it('finds nothing worse where the gap takes what the panel gives', () => {
  const { uneven, unlike, wrong } = after({
    'parts[1].size[1]': inch('2 15/16'),
    'parts[2].place.gap': inch('5/16'),
  });
  expect([...uneven, ...unlike, ...wrong]).toEqual([]);
});

it('names parts whose borders across are no longer those down', () => {
  const { uneven, unlike, wrong } = after({
    'parts[1].size[0]': inch('3 1/2'),
    'parts[2].size[0]': inch('3 1/2'),
  });
  expect([...uneven, ...wrong]).toEqual([]);
  expect(unlike).toContain('upper');
});

it('names a torn part that no longer lies as far on its neighbour, and a border that is gone', () => {
  const torn = layoutOf({
    base: [inch('4 1/4'), inch('5 1/2')],
    parts: [
      part('band', { size: [inch('2'), inch('5')], place: { right: inch('1/8') } }),
      part('panel', {
        size: [inch('3'), inch('5')],
        place: { left: inch('1/8') },
        torn: { right: inch('1/2') },
      }),
    ],
  });
  const worseThan = worseningFrom(drawn(torn));
  const changed = (path: string, length: Length) =>
    worseThan(drawn(withLengths(torn, new Map([[path, length]]))));
  expect(changed('parts[1].size[0]', inch('3 1/8')).uneven).toEqual(new Set());
  expect(changed('parts[0].size[0]', inch('1 7/8')).uneven).toEqual(new Set(['band', 'panel']));
  expect(changed('parts[0].place.right', inch('0')).uneven).toContain('band');
});

it('tells what became of every border, gap and size', () => {
  const changed = withLengths(
    layout,
    new Map([
      ['parts[1].size[1]', inch('2 15/16')],
      ['parts[2].place.gap', inch('5/16')],
    ]),
  );
  const on = { on: 'mat', axis: 'height' };
  expect(sumChanges(arrange(layout), arrange(changed))).toEqual([
    { kind: 'size', ...on, between: ['upper', 'upper'], from: inch('3'), to: inch('2 15/16') },
    { kind: 'gap', ...on, between: ['upper', 'lower'], from: inch('1/4'), to: inch('5/16') },
  ]);
});
