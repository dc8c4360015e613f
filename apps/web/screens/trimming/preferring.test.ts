import fc from 'fast-check';
import { expect, test } from 'vitest';
import { kindnessOrder } from '../../../../src/planning/index.ts';
import { preferring } from './preferring.ts';

test('goals are said one after another, exchanged, and left off again', () => {
  expect(preferring(['settings'], 0, 'passes')).toEqual(['passes']);
  expect(preferring(['passes'], 1, 'leftover')).toEqual(['passes', 'leftover']);
  expect(preferring(['passes', 'leftover', 'turns'], 0, 'turns')).toEqual(['turns', 'leftover', 'passes']);
  expect(preferring(['passes', 'leftover', 'turns'], 1, 'usual')).toEqual(['passes']);
  expect(preferring(['passes'], 0, 'settings')).toEqual([]);
  expect(preferring(['settings'], 1, 'leftover')).toEqual(['settings', 'leftover']);
  expect(preferring(['settings', 'leftover'], 1, 'usual')).toEqual([]);
});

test('whatever is chosen stands where it was put, and every goal at most once', () => {
  const seed = 20261126;
  fc.assert(
    fc.property(
      fc.shuffledSubarray([...kindnessOrder], { minLength: 1 }),
      fc.nat({ max: kindnessOrder.length - 2 }),
      fc.constantFrom(...kindnessOrder),
      (said, at, goal) => {
        const place = Math.min(at, said.length);
        // What stands before is not offered again.
        fc.pre(!said.slice(0, place).includes(goal));
        const now = preferring(said, place, goal);
        expect(now[place] ?? kindnessOrder[place]).toBe(goal);
        expect(new Set(now).size).toBe(now.length);
        expect(now.slice(0, place)).toEqual(said.slice(0, now.length === 0 ? 0 : place));
        const lost = said.filter((each) => !now.includes(each));
        expect(lost.length).toBeLessThanOrEqual(1);
      },
    ),
    { seed },
  );
});
