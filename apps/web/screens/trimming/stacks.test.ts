import fc from 'fast-check';
import { expect, it } from 'vitest';
import { stacksOf } from './stacks.ts';

it.each([
  [0, [], 10],
  [1, [1], 10],
  [10, [10], 10],
  [34, [10, 10, 10, 4], 10],
  [120, Array.from({ length: 12 }, () => 10), 10],
  [121, [50, 50, 21], 50],
  [1000, Array.from({ length: 10 }, () => 100), 100],
])('%i cards', (cards, stacks, full) => {
  expect(stacksOf(cards)).toEqual({ stacks, full });
});

it('leaves no card out, and is no long row', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 100_000 }), (cards) => {
      const { stacks, full } = stacksOf(cards);
      expect(stacks.reduce((sum, stack) => sum + stack, 0)).toBe(cards);
      expect(stacks.length).toBeLessThanOrEqual(12);
      expect(stacks.slice(0, -1).every((stack) => stack === full)).toBe(true);
    }),
  );
});
