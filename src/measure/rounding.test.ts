import fc from 'fast-check';
import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import { lengthOfTicks, millimetres, minus, roundTo, zero } from './index.ts';

const lengths = fc.integer({ min: -1_000_000, max: 1_000_000 }).map((ticks) => lengthOfTicks(ticks));
const steps = fc.integer({ min: 1, max: 5_000 }).map((ticks) => lengthOfTicks(ticks));

test('rounds down and up to the multiples that fraction.js finds', () => {
  fc.assert(
    fc.property(lengths, steps, (length, step) => {
      const count = new Fraction(length, step);
      expect(roundTo(length, step, 'down')).toBe(Number(count.floor()) * step + 0);
      expect(roundTo(length, step, 'up')).toBe(Number(count.ceil()) * step + 0);
    }),
  );
});

test('rounds to the nearest multiple, halfway to the even one', () => {
  const cases = fc.oneof(
    fc.tuple(lengths, steps),
    // Halfway cases, which chance would hardly find.
    fc
      .tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: 1, max: 2_500 }))
      .map(([count, half]) => [lengthOfTicks((2 * count + 1) * half), lengthOfTicks(2 * half)] as const),
  );
  fc.assert(
    fc.property(cases, ([length, step]) => {
      const count = new Fraction(length, step);
      const below = count.floor();
      const part = count.sub(below).compare(new Fraction(1, 2));
      const nearest = part < 0 || (part === 0 && below.mod(2).equals(0)) ? below : below.add(1);
      expect(roundTo(length, step, 'nearest')).toBe(Number(nearest) * step + 0);
    }),
  );
});

test('seen from the other side of zero, down is up and the nearest is the nearest', () => {
  fc.assert(
    fc.property(lengths, steps, (length, step) => {
      const opposite = minus(zero, length);
      expect(roundTo(opposite, step, 'down')).toBe(minus(zero, roundTo(length, step, 'up')));
      expect(roundTo(opposite, step, 'nearest')).toBe(minus(zero, roundTo(length, step, 'nearest')));
    }),
  );
});

test('a step of nothing is a slip of ours', () => {
  expect(() => roundTo(millimetres(5), zero, 'down')).toThrow('step above 0');
});
