import { expect, test } from 'vitest';
import { arrange } from '../../../../src/layout/index.ts';
import { doneAt, reckonedOf, tookOf } from './pace.ts';
import { bandedPanel, lineOf, steps } from './testing/bandedPanel.ts';

const set = { layout: bandedPanel, arrangement: arrange(bandedPanel), trimmer: null };
const minute = 60_000;
const morning = new Date(2026, 4, 4, 9, 0).getTime();

test('what is left is done when its work is, and what has to set has set', () => {
  const lines = steps.map((step) => lineOf(step, null));
  expect(lines.map(({ key }) => key)).toEqual(['part panel', 'part band', 'part mat']);
  const reckoned = reckonedOf(lines, { set });
  // Usual minutes: 7.5 for ten panels, 12.5 for ten bands, 7.5 for ten mats.
  expect([...reckoned.values()]).toEqual([450, 750, 450]);
  // The first panel is on after 0.75 minutes and has set 30 later; the bands are slower than the panels, so that the
  // first decides; then 12.5 and 7.5 minutes.
  const at = doneAt(lines, reckoned, { now: morning, cards: 10 });
  expect((at! - morning) / minute).toBeCloseTo(30.75 + 12.5 + 7.5, 6);
  // With panels told to be done at nine, all of them count from then.
  const later = [lineOf(steps[0]!, morning), ...lines.slice(1)];
  expect((doneAt(later, reckoned, { now: morning, cards: 10 })! - morning) / minute).toBeCloseTo(50, 6);
  expect(
    doneAt(
      steps.map((step) => lineOf(step, morning)),
      reckoned,
      { now: morning, cards: 10 },
    ),
  ).toBeNull();
});

test('how long a line took counts from what was told before, or from when its glue had set', () => {
  const times = [morning + 8 * minute, morning + 60 * minute, morning + 70 * minute];
  const lines = steps.map((step, at) => lineOf(step, times[at]!));
  const moments = [{ line: '', at: morning }, ...lines.map(({ key }, at) => ({ line: key, at: times[at]! }))];
  expect(tookOf(lines, moments).map(({ seconds }) => seconds / 60)).toEqual([8, 22, 10]);
  // Where nobody noted when, nothing is known of the line after it either.
  const unknown = moments.map((moment, at) => (at === 1 ? { ...moment, at: null } : moment));
  expect(tookOf(lines, unknown).map(({ seconds }) => seconds / 60)).toEqual([10]);
});
