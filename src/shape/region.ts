import { type Box, type Length, lengthOfTicks } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { cornersOf } from './outline.ts';
import type { Point } from './point.ts';

declare const regionBrand: unique symbol;

/**
 * A part of the plane with straight edges, its corners on whole ticks; what a shape covers, flattened.
 *
 * Rings do not cross, but for the tick by which rounding may move a corner. Outer ones go clockwise as seen on the card (their `ringArea` is positive), holes the other way,
 * and none has a corner on a straight line. Only this part of the library makes regions, so that this always holds.
 */
export interface Region {
  readonly rings: readonly (readonly Point[])[];
  readonly [regionBrand]: 'clockwise outside';
}

/** The region of nothing. */
export const nothing: Region = regionOfRings([]);

/** What the box covers; nothing where it has no extent. */
export function boxRegion(box: Box): Region {
  assert(box.width >= 0 && box.height >= 0, 'A box has no negative extent', { box });
  return box.width === 0 || box.height === 0 ? nothing : regionOfRings([cornersOf(box)]);
}

/** Takes rings that are already as a region's have to be. */
export function regionOfRings(rings: readonly (readonly Point[])[]): Region {
  return { rings } as Region;
}

/** Whether the region is the region of nothing. */
export function isEmpty(region: Region): boolean {
  return region.rings.length === 0;
}

/**
 * The area in square ticks, holes taken off; a whole or half number.
 *
 * Exact for the region as it stands, for anything that fits in a metre by a metre. A region with curved edges is what
 * `regionOf` made of them: smaller than the true shape by less than 4 ticks times the length of its outward curves.
 */
export function areaOf(region: Region): number {
  return region.rings.reduce((total, ring) => total + ringArea(ring), 0);
}

/** The area inside one ring in square ticks, by the shoelace formula; negative where it goes anticlockwise. */
export function ringArea(ring: readonly Point[]): number {
  const origin = ring[0]!;
  let doubled = 0;
  // Measured from a corner, products stay small enough to be whole numbers.
  for (let index = 2; index < ring.length; index += 1) {
    const one = ring[index - 1]!;
    const other = ring[index]!;
    doubled += (one.x - origin.x) * (other.y - origin.y) - (other.x - origin.x) * (one.y - origin.y);
  }
  return doubled / 2;
}

/** The smallest upright box that holds the region; null for nothing. */
export function boundsOf(region: Region): Box | null {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of region.rings) {
    for (const { x, y } of ring) {
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  }
  return left > right
    ? null
    : {
        left: left as Length,
        top: top as Length,
        width: lengthOfTicks(right - left),
        height: lengthOfTicks(bottom - top),
      };
}

/** The box that the region is, or null where it is no upright rectangle. */
export function boxOf(region: Region): Box | null {
  const [ring, other] = region.rings;
  if (ring === undefined || other !== undefined || ring.length !== 4) return null;
  const upright = ring.every((point, index) => {
    const next = ring[(index + 1) % 4]!;
    return point.x === next.x || point.y === next.y;
  });
  return upright ? boundsOf(region) : null;
}
