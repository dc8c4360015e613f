import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inches, inchesOf, type Length, lengthOfTicks, millimetres } from '../measure/index.ts';
import {
  type Ribbon,
  ribbonFacets,
  ribbonMeasures,
  ribbonOfSize,
  slantForGap,
  templateForGap,
} from './foldedRibbon.ts';
import { simulatedFolds } from './testing/foldSimulator.ts';

/** A strip of half an inch on a template of 3 in, aslant by 20 degrees. */
const worked: Ribbon = { width: inches(1, 2), length: inches(7), template: inches(3), slant: 20 };

const randomRibbon = fc
  .record({
    width: fc.integer({ min: 1_600, max: 60_000 }),
    template: fc.integer({ min: 8_000, max: 300_000 }),
    slant: fc.double({ min: -75, max: 75, noNaN: true }),
    spare: fc.integer({ min: 2, max: 600_000 }),
  })
  .map(({ width, template, slant, spare }): Ribbon => {
    const sized = { width: lengthOfTicks(width), template: lengthOfTicks(template), slant };
    const { least } = ribbonMeasures({ ...sized, length: lengthOfTicks(1) });
    return { ...sized, length: lengthOfTicks(least + spare) };
  });

const spread = (numbers: readonly number[]) => Math.max(...numbers) - Math.min(...numbers);

describe('a folded ribbon', () => {
  it('has the measures that the mirror law gives it, worked by hand', () => {
    // 3 / cos 20° = 3.192533, 3 tan 20° = 1.091911, (1/2) / cos 10° = 0.507713, (1/4) tan 10° = 0.044082.
    const measures = ribbonMeasures(worked);
    expect(inchesOf(measures.between)).toBeCloseTo(3.192533, 4);
    expect(inchesOf(measures.rise)).toBeCloseTo(1.091911, 4);
    expect(inchesOf(measures.gap)).toBeCloseTo(0.591911, 4);
    expect(measures.creaseDegrees).toBe(80);
    expect(inchesOf(measures.creaseLength)).toBeCloseTo(0.507713, 4);
    expect(measures.creases.map(inchesOf)).toEqual([
      expect.closeTo(1.903733, 4),
      expect.closeTo(5.096267, 4),
    ]);
    expect(inchesOf(measures.tail)).toBeCloseTo(1.903733, 4);
    expect(inchesOf(measures.reach)).toBeCloseTo(-1.096267, 4);
    expect(inchesOf(measures.overall.width)).toBeCloseTo(3.088163, 4);
    expect(inchesOf(measures.overall.height)).toBeCloseTo(1.591911, 4);
    expect(inchesOf(measures.least)).toBeCloseTo(3.280697, 4);
  });

  it('is what a strip is that is folded at the creases it tells, its tails level and behind', () => {
    fc.assert(
      fc.property(randomRibbon, (ribbon) => {
        const { creases, creaseDegrees, rise, overall } = ribbonMeasures(ribbon);
        const degrees = ribbon.slant >= 0 ? creaseDegrees : 180 - creaseDegrees;
        const folded = simulatedFolds(ribbon, [
          { at: creases[0], degrees, goes: 'over' },
          { at: creases[1], degrees, goes: 'under' },
        ]);
        // The tails run the way the strip began, whatever rounding to a tick did.
        const [over, first, middle] = folded;
        const heightsOf = (polygon: readonly (readonly [number, number])[]) => polygon.map(([, y]) => y);
        for (const tail of [over!, first!]) {
          expect(spread(heightsOf(tail.polygon))).toBeCloseTo(ribbon.width, 3);
          expect(tail.turned).toBe(!middle!.turned);
        }
        const apart = Math.abs(
          Math.min(...heightsOf(over!.polygon)) - Math.min(...heightsOf(first!.polygon)),
        );
        expect(Math.abs(apart - rise)).toBeLessThanOrEqual(2);
        const all = folded.flatMap(({ polygon }) => polygon);
        expect(Math.abs(spread(all.map(([x]) => x)) - overall.width)).toBeLessThanOrEqual(3);
        expect(Math.abs(spread(all.map(([, y]) => y)) - overall.height)).toBeLessThanOrEqual(3);
      }),
    );
  });

  it('fills the box it says, and a falling one is the rising one mirrored', () => {
    fc.assert(
      fc.property(randomRibbon, (ribbon) => {
        const corners = ribbonFacets(ribbon)!.flatMap((facet) => facet.corners);
        const { overall } = ribbonMeasures(ribbon);
        for (const [along, size] of [
          ['x', overall.width],
          ['y', overall.height],
        ] as const) {
          const places = corners.map((corner) => corner[along]);
          expect(Math.min(...places)).toBeGreaterThan(-1e-3);
          expect(Math.max(...places)).toBeLessThan(size + 1e-3);
          expect(spread(places)).toBeGreaterThan(size - 2);
        }
        const mirrored = ribbonFacets({ ...ribbon, slant: -ribbon.slant })!
          .flatMap((facet) => facet.corners)
          .map(({ x, y }) => `${Math.round(x)} ${Math.round(overall.height - y)}`);
        const near = (corner: { x: number; y: number }) =>
          [-1, 0, 1].some((dx) =>
            [-1, 0, 1].some((dy) =>
              mirrored.includes(`${Math.round(corner.x) + dx} ${Math.round(corner.y) + dy}`),
            ),
          );
        expect(corners.every(near)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('rises to the right: its middle begins low at the left', () => {
    const middle = ribbonFacets(worked)!.at(-1)!;
    const leftmost = middle.corners.toSorted((one, other) => one.x - other.x);
    expect(leftmost[0]!.y).toBeGreaterThan(leftmost.at(-1)!.y);
    expect(middle.turned).toBe(false);
  });

  it('needs both creases whole on its strip, and not a tick less', () => {
    fc.assert(
      fc.property(randomRibbon, (ribbon) => {
        const { least } = ribbonMeasures(ribbon);
        expect(ribbonFacets({ ...ribbon, length: least })).not.toBeNull();
        expect(ribbonFacets({ ...ribbon, length: lengthOfTicks(least - 2) })).toBeNull();
      }),
    );
  });
});

describe('backwards', () => {
  it('finds the slant and the template again from the gap', () => {
    const { gap } = ribbonMeasures(worked);
    const slant = slantForGap(worked, gap);
    expect('slant' in slant && slant.slant).toBeCloseTo(20, 2);
    const template = templateForGap(worked, gap);
    expect('template' in template && inchesOf(template.template)).toBeCloseTo(3, 3);
  });

  it('gives the gap that was asked for, or says how long the strip would have to be and what it gives as it is', () => {
    fc.assert(
      fc.property(randomRibbon, fc.integer({ min: 0, max: 200_000 }), (ribbon, ticks) => {
        const wanted = ticks as Length;
        const found = slantForGap(ribbon, wanted);
        if ('slant' in found) {
          const measures = ribbonMeasures({ ...ribbon, slant: found.slant });
          expect(Math.abs(measures.gap - wanted)).toBeLessThanOrEqual(1);
          expect(measures.least).toBeLessThanOrEqual(ribbon.length);
        } else {
          if (found.cannot !== 'tooShort') throw new Error(found.cannot);
          expect(found.least).toBeGreaterThan(ribbon.length);
          expect('slant' in slantForGap({ ...ribbon, length: found.least }, wanted)).toBe(true);
          expect(found.largest).toBeLessThan(wanted);
          if (found.largest >= 1)
            expect('slant' in slantForGap(ribbon, lengthOfTicks(found.largest - 1))).toBe(true);
        }
        const other = templateForGap(ribbon, wanted);
        if ('template' in other) {
          const { gap } = ribbonMeasures({ ...ribbon, template: other.template });
          expect(gap).toBeGreaterThanOrEqual(wanted);
          expect(
            ribbonMeasures({ ...ribbon, template: lengthOfTicks(other.template - 1) }).gap,
          ).toBeLessThanOrEqual(wanted);
        } else if (other.cannot === 'tooShort') {
          expect(other.least).toBeGreaterThan(ribbon.length);
          expect(other.largest).toBeLessThan(wanted);
        }
      }),
    );
  });

  it('finds the ribbon of an overall size, whose tails do not stand out', () => {
    fc.assert(
      fc.property(randomRibbon, (ribbon) => {
        const { overall } = ribbonMeasures(ribbon);
        const found = ribbonOfSize(ribbon.width, overall);
        if ('cannot' in found) {
          expect(found.cannot).toBe(overall.height < 2 * ribbon.width ? 'tooLow' : 'tooNarrow');
          return;
        }
        const measures = ribbonMeasures({ width: ribbon.width, ...found });
        expect(Math.abs(measures.overall.height - overall.height)).toBeLessThanOrEqual(
          2 + 2 * Math.tan((found.slant / 180) * Math.PI),
        );
        expect(measures.overall.width).toBeLessThanOrEqual(overall.width);
        expect(measures.overall.width).toBeGreaterThan(overall.width - 3);
      }),
    );
  });

  it('cannot leave less than no gap, nor any with a middle that is level', () => {
    expect(slantForGap(worked, millimetres(-1))).toEqual({ cannot: 'noGap' });
    expect(templateForGap({ ...worked, slant: 0 }, millimetres(5))).toEqual({ cannot: 'level' });
    expect(ribbonOfSize(inches(1), { width: inches(4), height: inches(15, 8) })).toEqual({
      cannot: 'tooLow',
      least: inches(2),
    });
    expect(ribbonOfSize(inches(1), { width: inches(1), height: inches(4) })).toMatchObject({
      cannot: 'tooNarrow',
    });
  });
});
