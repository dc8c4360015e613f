import * as polyclip from 'polyclip-ts';
import { islandsOf, type Region } from '../index.ts';
import { trapezoidArea } from './ringArea.ts';

type Ring = [number, number][];

/**
 * Areas of combined regions by an engine that shares no code with ours: a floating sweep instead of whole ticks.
 *
 * Null where it gives up, which happens in some of ten thousand piles; it says then that it cannot complete a ring.
 */
export const secondEngine = {
  union: (regions: readonly Region[]): number | null => {
    const [first, ...others] = regions.map(polygons);
    return first === undefined ? 0 : areaOf(() => polyclip.union(first, ...others));
  },
  intersection: (one: Region, other: Region): number | null =>
    areaOf(() => polyclip.intersection(polygons(one), polygons(other))),
  difference: (from: Region, taken: Region): number | null =>
    areaOf(() => polyclip.difference(polygons(from), polygons(taken))),
};

function areaOf(combine: () => Parameters<typeof area>[0]): number | null {
  try {
    return area(combine());
  } catch (error) {
    if (error instanceof Error && error.message.startsWith('Unable to complete output ring')) return null;
    throw error;
  }
}

function polygons(region: Region): Ring[][] {
  return islandsOf(region).map(({ rings }) =>
    rings.map((ring) => ring.map(({ x, y }): [number, number] => [x, y])),
  );
}

function area(found: readonly (readonly (readonly [number, number][])[])[]): number {
  const inside = (ring: readonly (readonly [number, number])[]) =>
    trapezoidArea(ring.map(([x, y]) => ({ x, y })));
  return found.reduce(
    (total, [outer, ...holes]) =>
      total + inside(outer!) - holes.reduce((gone, hole) => gone + inside(hole), 0),
    0,
  );
}
