import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthOfTicks } from '../measure/index.ts';
import { knotFacets, knotMeasures, sizeOfKnot } from './pentagonKnot.ts';
import { simulatedFolds } from './testing/foldSimulator.ts';

const randomStrip = fc
  .record({ width: fc.integer({ min: 1_000, max: 80_000 }), tails: fc.integer({ min: 2, max: 400_000 }) })
  .map(({ width, tails }) => {
    const { least } = knotMeasures({ width, length: 0 });
    return { width, length: least + tails };
  });

describe('a flat overhand knot', () => {
  it('takes 5.505528 widths and has sides of 1.051462 widths, as is published', () => {
    const width = 1_000_000;
    const { least, side } = knotMeasures({ width, length: 6 * width });
    expect(least / width).toBeCloseTo(5.505528, 5);
    expect(side / width).toBeCloseTo(1.051462, 5);
    // 4 (phi + 1) / sqrt(2 + phi), arXiv:math/0403028.
    const phi = (1 + Math.sqrt(5)) / 2;
    expect(least).toBe(Math.ceil(((4 * (phi + 1)) / Math.sqrt(2 + phi)) * width));
  });

  it('is a regular pentagon when a strip is folded at its creases, and two tails', () => {
    fc.assert(
      fc.property(randomStrip, ({ width, length }) => {
        const { creases, side } = knotMeasures({ width, length });
        const facets = simulatedFolds(
          { width, length },
          creases.map((at, index) => ({ at, degrees: index === 1 ? 108 : 72, goes: 'over' })),
        );
        // The second and third stretch are whole trapezoids: their corners are all those of the pentagon.
        const corners: (readonly [number, number])[] = [];
        for (const { polygon } of facets.slice(1, 3)) {
          for (const point of polygon)
            if (corners.every((other) => Math.hypot(other[0] - point[0], other[1] - point[1]) > side / 4))
              corners.push(point);
        }
        expect(corners.length).toBe(5);
        const centre = [0, 1].map((axis) => corners.reduce((sum, point) => sum + point[axis]! / 5, 0));
        const around = corners.toSorted(
          (one, other) =>
            Math.atan2(one[1] - centre[1]!, one[0] - centre[0]!) -
            Math.atan2(other[1] - centre[1]!, other[0] - centre[0]!),
        );
        for (const [index, [x, y]] of around.entries()) {
          const next = around[(index + 1) % 5]!;
          expect(Math.abs(Math.hypot(next[0] - x, next[1] - y) - side)).toBeLessThan(4);
          expect(Math.abs(Math.hypot(x - centre[0]!, y - centre[1]!) - side * 0.850651)).toBeLessThan(4);
        }
      }),
    );
  });

  it('lies straight: a corner of the pentagon up, its tails alike to either side', () => {
    fc.assert(
      fc.property(randomStrip, (strip) => {
        const facets = knotFacets(strip)!;
        const { width, height } = sizeOfKnot(strip)!;
        const corners = facets.flatMap((facet) => facet.corners);
        // Mirrored from left to right, the whole is the same.
        for (const { x, y } of corners) {
          const nearest = Math.min(...corners.map((other) => Math.hypot(width - x - other.x, y - other.y)));
          expect(nearest).toBeLessThan(3);
        }
        const top = corners.toSorted((one, other) => one.y - other.y)[0]!;
        expect(Math.abs(top.x - width / 2)).toBeLessThan(2);
        expect(Math.max(...corners.map(({ y }) => y))).toBeGreaterThan(height - 2);
      }),
    );
  });

  it('has four stretches, each over the next but the last, and shows each side twice', () => {
    const facets = knotFacets({ width: 1_000, length: 9_000 })!;
    expect(facets.map(({ turned }) => turned)).toEqual([true, true, false, false]);
  });

  it('cannot be tied in less', () => {
    const width = 20_000;
    const { least } = knotMeasures({ width, length: 0 });
    expect(knotFacets({ width, length: lengthOfTicks(least - 2) })).toBeNull();
  });
});
