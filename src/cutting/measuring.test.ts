import { expect, test } from 'vitest';
import { unlimited } from './index.ts';
import { cuttableFrom, measurable, stripsOf } from './measuring.ts';

test('a length is measured on the marks and within the reach', () => {
  const limits = { ...unlimited, step: 2, reach: 7 };
  expect([0, 1, 2, 6, 7, 8].filter((length) => measurable(length, limits))).toEqual([2, 6]);
  expect([1, 1000].every((length) => measurable(length, unlimited))).toBe(true);
});

test('strips add up to a length, few of them and alike where one more makes them so', () => {
  const by = (step: number | null, reach: number | null) => (length: number) =>
    stripsOf(length, { ...unlimited, step, reach });
  expect(by(null, null)(30)).toEqual([30]);
  expect(by(null, 10)(10)).toEqual([10]);
  expect(by(null, 10)(12)).toEqual([6, 6]);
  // Two strips of 6 1/2 are no whole number; three of 13 are none either.
  expect(by(null, 10)(13)).toEqual([10, 3]);
  expect(by(null, 10)(15)).toEqual([5, 5, 5]);
  // The marks reach to 9 of the 10.
  expect(by(3, 10)(12)).toEqual([6, 6]);
  expect(by(3, 10)(15)).toEqual([9, 6]);
  expect(by(3, 10)(16)).toBeNull();
  expect(by(3, 2)(15)).toBeNull();
  expect(by(null, 0)(15)).toBeNull();
  expect(by(null, 10)(0)).toBeNull();
});

test('a length is cut from another where either can be measured', () => {
  const limits = { ...unlimited, step: 2, reach: 4 };
  const from = (whole: number) =>
    Array.from({ length: whole + 1 }, (_, length) => length).filter((length) =>
      cuttableFrom(length, whole, limits),
    );
  expect(from(10)).toEqual([0, 2, 4, 6, 8, 10]);
  // Off the marks itself: what is measured off is 2 or 4, what remains 9 less some twos.
  expect(from(9)).toEqual([1, 2, 3, 4, 5, 7, 9]);
  expect(cuttableFrom(11, 9, limits)).toBe(false);
});

test('every strip can be measured and they add up, or none can', () => {
  for (let step = 1; step <= 4; step += 1) {
    for (let reach = 0; reach <= 12; reach += 1) {
      const limits = { ...unlimited, step, reach };
      // What sums of measurable lengths can be, one after another.
      const sums = new Set([0]);
      for (let sum = 0; sum <= 60; sum += 1) {
        if (!sums.has(sum)) continue;
        for (let one = step; one <= reach; one += step) sums.add(sum + one);
      }
      for (let length = 1; length <= 60; length += 1) {
        const strips = stripsOf(length, limits);
        expect(strips !== null, `${length} by ${step} within ${reach}`).toBe(sums.has(length));
        expect(strips?.reduce((sum, one) => sum + one, 0) ?? length).toBe(length);
        expect(strips?.every((one) => measurable(one, limits)) ?? true).toBe(true);
      }
    }
  }
});
