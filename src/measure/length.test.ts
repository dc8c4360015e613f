import fc from 'fast-check';
import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import {
  goesInto,
  halves,
  inches,
  inchesOf,
  lengthOfTicks,
  millimetres,
  millimetresOf,
  minus,
  pointsOf,
  sum,
  times,
} from './index.ts';
import { ticksOf } from './testing/exactValue.ts';

const lengths = fc.integer({ min: -10_000_000, max: 10_000_000 }).map((ticks) => lengthOfTicks(ticks));
const extents = fc.nat(10_000_000).map((ticks) => lengthOfTicks(ticks));

test('every 1/64 in and every 0.01 mm is a whole number of ticks, as fraction.js counts them', () => {
  fc.assert(
    fc.property(fc.integer({ min: -100_000, max: 100_000 }), (count) => {
      expect(inches(count, 64)).toBe(Number(ticksOf(new Fraction(count, 64), 'in')) + 0);
      expect(millimetres(count / 100)).toBe(Number(ticksOf(new Fraction(count, 100), 'mm')) + 0);
    }),
  );
});

test('numbers that are reckoned in binary are taken for the whole ticks they mean', () => {
  expect(millimetres(25.4 * 3)).toBe(inches(3));
  expect(millimetres(0.1 + 0.2)).toBe(480);
  expect(millimetres(0.000625)).toBe(1);
  expect(inches(1.1)).toBe(44_704);
});

test('numbers that are no whole ticks are a slip of ours', () => {
  expect(() => inches(22, 7)).toThrow('whole number of ticks');
  expect(() => millimetres(1 / 3)).toThrow('whole number of ticks');
  expect(() => millimetres(0.0001)).toThrow('whole number of ticks');
  expect(() => millimetres(Number.NaN)).toThrow('whole number of ticks');
  expect(() => lengthOfTicks(0.5)).toThrow('whole number of ticks');
  expect(() => lengthOfTicks(Number.POSITIVE_INFINITY)).toThrow('whole number of ticks');
});

test('sums, differences and multiples undo each other', () => {
  fc.assert(
    fc.property(lengths, lengths, fc.nat(50), (one, other, count) => {
      expect(minus(sum(one, other), other)).toBe(one);
      expect(sum(...Array.from({ length: count }, () => one))).toBe(times(one, count));
      expect(Object.is(times(one, 0), 0)).toBe(true);
    }),
  );
});

test('a part goes into a whole as often as taking it away again and again', () => {
  fc.assert(
    fc.property(extents, fc.integer({ min: 5_000, max: 1_000_000 }), (whole, ticks) => {
      const part = lengthOfTicks(ticks);
      let count = 0;
      let rest = whole;
      while (rest >= part) {
        rest = minus(rest, part);
        count += 1;
      }
      expect(goesInto(part, whole)).toEqual({ count, rest });
    }),
  );
});

test('halves make the whole and differ by a tick at most', () => {
  fc.assert(
    fc.property(lengths, (length) => {
      const { smaller, larger } = halves(length);
      expect(sum(smaller, larger)).toBe(length);
      expect([0, 1]).toContain(minus(larger, smaller));
    }),
  );
});

test('plain numbers for the pen and the screen', () => {
  // 72 points an inch: ISO 32000, the default user space of PDF.
  expect(pointsOf(inches(17, 2))).toBe(612);
  expect(millimetresOf(inches(1))).toBe(25.4);
  expect(inchesOf(millimetres(12.7))).toBe(0.5);
});
