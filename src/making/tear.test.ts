import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inches, type Length, lengthOfTicks, millimetres } from '../measure/index.ts';
import { type TearDepth, tearDensity, tearOf, tearQuantile, tearWithin } from './index.ts';
import { randomTear } from './testing/randomTear.ts';

const tear = (least: number, usual: number, most: number): TearDepth => ({
  least: millimetres(least),
  usual: millimetres(usual),
  most: millimetres(most),
});

describe('what is taken for a tear of which little is said', () => {
  it('wanders by a quarter of its depth, and by 1 mm at the least', () => {
    expect(tearOf(millimetres(8), null)).toEqual(tear(6, 8, 10));
    expect(tearOf(millimetres(2), null)).toEqual(tear(1, 2, 3));
    expect(tearOf(millimetres(0.5), null)).toEqual(tear(0, 0.5, 1.5));
    expect(tearOf(inches(1, 2), null)).toEqual({
      least: inches(3, 8),
      usual: inches(1, 2),
      most: inches(5, 8),
    });
  });

  it('keeps what was said, and reckons the rest from it', () => {
    const said = (of: Partial<TearDepth>) =>
      tearOf(millimetres(8), { least: null, usual: null, most: null, ...of });
    expect(said({ least: millimetres(5), most: millimetres(11) })).toEqual(tear(5, 8, 11));
    expect(said({ usual: millimetres(12) })).toEqual(tear(9, 12, 15));
    expect(said({ most: millimetres(6) })).toEqual(tear(4.5, 6, 6));
    expect(said({ least: millimetres(10) })).toEqual(tear(10, 10, 12.5));
  });

  it('never comes out in disorder', () => {
    const length = fc.option(fc.nat(40_000).map(lengthOfTicks), { nil: null });
    fc.assert(
      fc.property(fc.nat(40_000).map(lengthOfTicks), length, length, length, (allowance, a, usual, b) => {
        const [least, most] = a !== null && b !== null && a > b ? [b, a] : [a, b];
        const { least: l, usual: u, most: m } = tearOf(allowance, { least, usual, most });
        return 0 <= l && l <= u && u <= m && (least === null || l === least) && (most === null || m === most);
      }),
    );
  });
});

describe('the depth of one tear', () => {
  it('is the density added up in a thousand strips, wherever it is asked', () => {
    fc.assert(
      fc.property(
        randomTear.filter(({ least, most }) => most - least > 10),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (of, part) => {
          const to = of.least + part * (of.most - of.least);
          expect(tearWithin(of, to)).toBeCloseTo(strips(of, to), 3);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('has the mean (a + b + c) / 3 and the variance of the books', () => {
    // Mean and variance of the triangular distribution; closed formulas, derived again by the strips here.
    fc.assert(
      fc.property(
        randomTear.filter(({ least, most }) => most - least > 100),
        (of) => {
          const { least: a, usual: b, most: c } = of;
          const mean = moment(of, (x) => x);
          const spread = moment(of, (x) => (x - mean) ** 2);
          expect(mean / ((a + b + c) / 3)).toBeCloseTo(1, 3);
          expect(spread / ((a * a + b * b + c * c - a * b - a * c - b * c) / 18)).toBeCloseTo(1, 2);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('is given back by its quantile', () => {
    fc.assert(
      fc.property(randomTear, fc.double({ min: 0.001, max: 0.999, noNaN: true }), (of, chance) => {
        const depth = tearQuantile(of, chance);
        expect(depth).toBeGreaterThanOrEqual(of.least);
        expect(depth).toBeLessThanOrEqual(of.most);
        if (of.most > of.least) expect(tearWithin(of, depth)).toBeCloseTo(chance, 8);
      }),
    );
  });

  it('is sure where least and most are one', () => {
    const sure = tear(8, 8, 8);
    expect(tearWithin(sure, millimetres(8))).toBe(1);
    expect(tearWithin(sure, millimetres(8) - 1)).toBe(0);
    expect(tearQuantile(sure, 0.3)).toBe(millimetres(8));
  });

  it('turned about its usual depth has the tails exchanged', () => {
    fc.assert(
      fc.property(randomTear, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (of, chance) => {
        const about = of.least + of.most;
        const turn = (length: Length) => lengthOfTicks(about - length);
        const turned = { least: turn(of.most), usual: turn(of.usual), most: turn(of.least) };
        expect(about - tearQuantile(turned, chance)).toBeCloseTo(tearQuantile(of, 1 - chance), 4);
      }),
    );
  });
});

/** The density from the least depth to `to`, in a thousand strips by their middles. */
function strips(of: TearDepth, to: number): number {
  const step = (to - of.least) / 1000;
  let all = 0;
  for (let strip = 0; strip < 1000; strip++) all += step * tearDensity(of, of.least + (strip + 0.5) * step);
  return all;
}

function moment(of: TearDepth, value: (x: number) => number): number {
  const step = (of.most - of.least) / 4000;
  let all = 0;
  for (let strip = 0; strip < 4000; strip++) {
    const x = of.least + (strip + 0.5) * step;
    all += step * tearDensity(of, x) * value(x);
  }
  return all;
}
