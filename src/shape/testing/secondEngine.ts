import * as polyclip from 'polyclip-ts';
import { islandsOf, type Region } from '../index.ts';
import { trapezoidArea } from './ringArea.ts';

type Ring = [number, number][];

/** Areas of combined regions by an engine that shares no code with ours: floating sweep instead of whole ticks. */
export const secondEngine = {
  union: (regions: readonly Region[]): number => {
    const [first, ...others] = regions.map(polygons);
    return first === undefined ? 0 : area(polyclip.union(first, ...others));
  },
  intersection: (one: Region, other: Region): number =>
    area(polyclip.intersection(polygons(one), polygons(other))),
  difference: (from: Region, taken: Region): number =>
    area(polyclip.difference(polygons(from), polygons(taken))),
};

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
