import fc from 'fast-check';
import { expect, test } from 'vitest';
import { svgNumber } from './pathData.ts';

test('a number for SVG has the digits that 15 significant ones leave, thousandths or not', () => {
  const drawn = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.double({ min: -2_000, max: 2_000, noNaN: true }),
    fc.integer().map((thousandths) => thousandths / 1000),
    // Near the greatest that are written without a second look, and with the noise of sums.
    fc
      .integer({ min: 99_999_999_999_000, max: 100_000_000_001_000 })
      .map((thousandths) => thousandths / 1000),
    fc.tuple(fc.integer(), fc.integer()).map(([one, other]) => one / 1000 + other / 1000),
  );
  fc.assert(
    fc.property(drawn, (value) => {
      expect(svgNumber(value)).toBe(String(Number(value.toPrecision(15)) + 0));
    }),
    { numRuns: 2_000 },
  );
  expect(svgNumber(-0)).toBe('0');
});
