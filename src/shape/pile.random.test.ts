import fc from 'fast-check';
import { expect, it } from 'vitest';
import { lengthOfTicks } from '../measure/index.ts';
import {
  areaOf,
  difference,
  intersection,
  isEmpty,
  islandsOf,
  type Outline,
  type Point,
  type Region,
  regionOf,
  type Segment,
  union,
} from './index.ts';
import { anyOutline } from './testing/randomShape.ts';
import { edgeLength } from './testing/ringArea.ts';
import { secondEngine } from './testing/secondEngine.ts';

/** Piles looked at; `CARDWRIGHT_PILES=10000` for the full number, which takes minutes. */
const piles = Number(process.env.CARDWRIGHT_PILES ?? 100);
const span = 60_000;
const anyPile = fc.array(anyOutline(span), { minLength: 2, maxLength: 6 });

/**
 * Crossings are rounded to whole ticks, by at most half a tick along x and y: an edge between two of them moves by at
 * most √½ ticks, so no area changes by more than the edges are long.
 */
const roundingOf = (regions: readonly Region[]) =>
  regions.reduce((total, region) => total + edgeLength(region), 1);

/** What of each outline is seen from above, the last one on top. */
function seenOf(regions: readonly Region[]): Region[] {
  return regions.map((region, index) => difference(region, union(regions.slice(index + 1))));
}

const near = (one: number, other: number, within: number) =>
  expect(Math.abs(one - other)).toBeLessThanOrEqual(within);

/** How often the second engine gave up, and was asked. */
const asked = { answered: 0, gaveUp: 0 };

function nearSecond(area: number, second: number | null, within: number) {
  if (second === null) asked.gaveUp += 1;
  else {
    asked.answered += 1;
    near(area, second, within);
  }
}

it('what is seen of a pile is in all what its shapes cover, and each two overlap as inclusion and exclusion say', {
  timeout: 3_600_000,
}, () => {
  fc.assert(
    fc.property(anyPile, (outlines) => {
      const regions = outlines.map(regionOf);
      const within = roundingOf(regions);
      const whole = areaOf(union(regions));
      nearSecond(whole, secondEngine.union(regions), within);

      const seen = seenOf(regions);
      near(
        seen.reduce((total, region) => total + areaOf(region), 0),
        whole,
        within,
      );
      const [one, other] = [regions[0]!, regions[1]!];
      const common = intersection(one, other);
      nearSecond(areaOf(common), secondEngine.intersection(one, other), within);
      nearSecond(areaOf(difference(one, other)), secondEngine.difference(one, other), within);
      near(areaOf(union([one, other])), areaOf(one) + areaOf(other) - areaOf(common), within);

      for (const region of [...seen, common]) {
        const islands = islandsOf(region);
        near(
          islands.reduce((total, island) => total + areaOf(island), 0),
          areaOf(region),
          edgeLength(region),
        );
        expect(islands.every((island) => areaOf(island) > 0 && !isEmpty(island))).toBe(true);
      }
    }),
    { numRuns: piles },
  );
  // Some few in ten thousand; an engine that hardly answers would be no second opinion.
  expect(asked.gaveUp).toBeLessThanOrEqual(asked.answered / 500);
});

/** Each turns the plane over itself; whole ticks stay whole. */
const motions: readonly (readonly [name: string, move: (point: Point) => Point])[] = [
  ['turned a quarter', ({ x, y }) => ({ x: lengthOfTicks(span - y), y: x })],
  ['mirrored', ({ x, y }) => ({ x: lengthOfTicks(span - x), y })],
  ['moved', ({ x, y }) => ({ x: lengthOfTicks(x + 12_345), y: lengthOfTicks(y - 777) })],
];

it.each(motions)('a pile that is %s shows as much of each shape', (_, move) => {
  fc.assert(
    fc.property(anyPile, (outlines) => {
      const regions = outlines.map(regionOf);
      const moved = outlines.map((outline) => regionOf(movedOutline(outline, move)));
      // Both are rounded.
      const within = 2 * outlineLength(outlines);
      const areas = seenOf(moved).map(areaOf);
      for (const [index, region] of seenOf(regions).entries()) near(areas[index]!, areaOf(region), within);
    }),
    { numRuns: Math.ceil(piles / 6) },
  );
});

it('a union does not ask in which order', () => {
  fc.assert(
    fc.property(anyPile, (outlines) => {
      const regions = outlines.map(regionOf);
      near(areaOf(union(regions)), areaOf(union(regions.toReversed())), roundingOf(regions));
    }),
    { numRuns: Math.ceil(piles / 6) },
  );
});

/**
 * At least as long as all the lines of the outlines: curves are shorter than the way over their handles. Corners are
 * rounded the other way in a mirror, and lines that lay on one another then have slivers between them.
 */
function outlineLength(outlines: readonly Outline[]): number {
  const lengths = outlines.flatMap(({ contours }) =>
    contours.flatMap(({ from, segments }) => {
      const points = [from, ...segments.flatMap(pointsOf), from];
      return points.slice(1).map((point, index) => {
        const before = points[index]!;
        return Math.hypot(point.x - before.x, point.y - before.y);
      });
    }),
  );
  return lengths.reduce((total, length) => total + length, 1);
}

function pointsOf(segment: Segment): Point[] {
  if (segment.kind === 'line') return [segment.to];
  return segment.kind === 'curve'
    ? [segment.first, segment.second, segment.to]
    : [segment.corner, segment.to];
}

function movedOutline({ contours }: Outline, move: (point: Point) => Point): Outline {
  return {
    contours: contours.map(({ from, segments }) => ({
      from: move(from),
      segments: segments.map((segment) => movedSegment(segment, move)),
    })),
  };
}

function movedSegment(segment: Segment, move: (point: Point) => Point): Segment {
  const to = move(segment.to);
  switch (segment.kind) {
    case 'line':
      return { ...segment, to };
    case 'curve':
      return { ...segment, first: move(segment.first), second: move(segment.second), to };
    case 'quarter':
      return { ...segment, corner: move(segment.corner), to };
  }
}
