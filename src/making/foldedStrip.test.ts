import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Crease, type Facet, foldedStrip } from './foldedStrip.ts';
import { simulatedFolds } from './testing/foldSimulator.ts';

const crease = (at: number, degrees: number, goes: Crease['goes'] = 'over'): Crease => ({
  at,
  degrees,
  goes,
});

/** Strips with up to six creases that keep clear of one another. */
const randomFolds = fc
  .record({
    width: fc.integer({ min: 100, max: 2_000 }),
    folds: fc.array(
      fc.record({
        beyond: fc.integer({ min: 1, max: 5_000 }),
        degrees: fc.double({ min: 15, max: 165, noNaN: true }),
        goes: fc.constantFrom('over' as const, 'under' as const),
      }),
      { maxLength: 6 },
    ),
    rest: fc.integer({ min: 1, max: 5_000 }),
  })
  .map(({ width, folds, rest }) => {
    const lean = (degrees: number) => Math.abs(width / 2 / Math.tan((degrees / 180) * Math.PI));
    let reached = 0;
    const creases = folds.map(({ beyond, degrees, goes }): Crease => {
      const at = reached + beyond + lean(degrees);
      reached = at + lean(degrees);
      return { at, degrees, goes };
    });
    return { strip: { width, length: reached + rest }, creases };
  });

/** The corners in one order, whichever they were found in. */
function sorted(points: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  return points.toSorted((one, other) =>
    Math.abs(one[0] - other[0]) > 1e-3 ? one[0] - other[0] : one[1] - other[1],
  );
}

const cornersOf = ({ corners }: Facet) => corners.map(({ x, y }) => [x, y] as const);

describe('a folded strip', () => {
  it('is what a strip is that is folded step by step, facet for facet, on random strips', () => {
    fc.assert(
      fc.property(randomFolds, ({ strip, creases }) => {
        const facets = foldedStrip(strip, creases)!;
        const simulated = simulatedFolds(strip, creases);
        expect(facets.map(({ turned }) => turned)).toEqual(simulated.map(({ turned }) => turned));
        for (const [index, facet] of facets.entries()) {
          const [own, other] = [sorted(cornersOf(facet)), sorted(simulated[index]!.polygon)];
          expect(own.length).toBe(other.length);
          for (const [place, point] of own.entries())
            expect(Math.hypot(point[0] - other[place]![0], point[1] - other[place]![1])).toBeLessThan(1e-5);
        }
      }),
    );
  });

  it('keeps its area, and its facets are no larger and no smaller than they were on the flat strip', () => {
    fc.assert(
      fc.property(randomFolds, ({ strip, creases }) => {
        const area = foldedStrip(strip, creases)!.reduce((total, facet) => total + areaOf(facet), 0);
        expect(area / (strip.width * strip.length)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('turns by twice what the crease leans: a right angle at 45 degrees, its overlap half a square', () => {
    const [, turned] = foldedStrip({ width: 100, length: 1_000 }, [crease(400, 45)])!;
    // It ran to the right and now runs down: its end lies straight below the crease.
    const end = turned!.corners.filter(({ y }) => Math.abs(y - 600) < 1e-9);
    expect(end.map(({ x }) => x).toSorted((a, b) => a - b)).toEqual([
      expect.closeTo(350, 9),
      expect.closeTo(450, 9),
    ]);
    // From edge to edge along the crease, width times the root of two.
    const [first] = foldedStrip({ width: 100, length: 1_000 }, [crease(400, 45)])!;
    const [, upper, lower] = first!.corners;
    expect(Math.hypot(upper!.x - lower!.x, upper!.y - lower!.y)).toBeCloseTo(100 * Math.SQRT2, 9);
    expect(turned!.turned).toBe(true);
  });

  it('runs straight back over itself at 90 degrees', () => {
    const [, back] = foldedStrip({ width: 10, length: 100 }, [crease(60, 90)])!;
    expect(Math.min(...back!.corners.map(({ x }) => x))).toBeCloseTo(20, 9);
  });

  it('lies as it is told: over or under all that has been folded', () => {
    const strip = { width: 10, length: 100 };
    const longest = (facets: readonly Facet[] | null) =>
      facets!.map(
        ({ corners }) => Math.max(...corners.map(({ x }) => x)) - Math.min(...corners.map(({ x }) => x)),
      );
    expect(longest(foldedStrip(strip, [crease(20, 90, 'over'), crease(50, 90, 'under')]))).toEqual([
      expect.closeTo(50, 9),
      expect.closeTo(20, 9),
      expect.closeTo(30, 9),
    ]);
  });

  it('cannot be folded where a crease runs off its end or meets the one before', () => {
    const strip = { width: 100, length: 1_000 };
    expect(foldedStrip(strip, [crease(49, 45)])).toBeNull();
    expect(foldedStrip(strip, [crease(51, 45)])).not.toBeNull();
    expect(foldedStrip(strip, [crease(960, 45)])).toBeNull();
    expect(foldedStrip(strip, [crease(400, 45), crease(480, 135)])).toBeNull();
    expect(foldedStrip(strip, [crease(400, 45), crease(480, 45)])).not.toBeNull();
  });
});

function areaOf({ corners }: Facet): number {
  return Math.abs(
    corners.reduce((total, { x, y }, index) => {
      const next = corners[(index + 1) % corners.length]!;
      return total + (x * next.y - next.x * y) / 2;
    }, 0),
  );
}
