import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readLayoutFile } from '../files/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, mm, part } from '../layout/testing/build.ts';
import { minutesLearnt, workOfLine } from './minutesLearnt.ts';

/** Ten cards with a mat and a stamped tag. */
const plain = layoutOf({
  units: 'mm',
  base: [mm(100), mm(100)],
  parts: [part('mat', { inset: mm(5) }), part('tag', { on: 'mat', inset: mm(20) })],
});
const layout: Layout = {
  ...plain,
  cards: 10,
  parts: plain.parts.map((each) => ({ ...each, stamped: each.id === 'tag' })),
};
const arrangement = arrange(layout);

test('a part that took half as long again is counted so, making ready and putting on alike', () => {
  // Ten tags stamped at 0.5 and put on at 0.75 minutes: twelve and a half minutes.
  expect(workOfLine(layout, arrangement, { part: 'tag' })).toBe(750);
  expect(minutesLearnt(layout, arrangement, [{ of: { part: 'tag' }, seconds: 1125 }])).toEqual([
    { field: 'ready', part: 'tag', was: 0.5, now: 0.75 },
    { field: 'lay', part: 'tag', was: 0.75, now: 1.13 },
  ]);
});

test('steps of cutting are taken together, one with a pause left out', () => {
  const read = readLayoutFile(readFileSync('examples/garden-gate.card.json', 'utf8'));
  if ('problems' in read) throw new Error('The example is sound');
  const gate = read.layout;
  const work = workOfLine(gate, arrange(gate), { cut: 1 });
  const half = { of: { cut: 0.5 }, seconds: work };
  expect(minutesLearnt(gate, arrange(gate), [half, { of: { cut: 0.5 }, seconds: 2 * work + 3_000 }])).toEqual(
    [{ field: 'cut', part: null, was: 0.25, now: 0.5 }],
  );
});

test('what took as long as was counted teaches nothing', () => {
  const work = workOfLine(layout, arrangement, { part: 'mat' });
  expect(minutesLearnt(layout, arrangement, [{ of: { part: 'mat' }, seconds: work * 1.04 }])).toEqual([]);
  expect(minutesLearnt(layout, arrangement, [])).toEqual([]);
});

test('several helpers are reckoned to work on a line together', () => {
  const nobody = { helpers: null, stations: null, dryAtOnce: null, cut: null, score: null, close: null };
  const shared = { ...layout, making: { ...nobody, helpers: 3 } };
  const [learnt] = minutesLearnt(shared, arrangement, [{ of: { part: 'mat' }, seconds: 300 }]);
  expect(learnt).toEqual({ field: 'lay', part: 'mat', was: 0.75, now: 1.5 });
});
