import { type Length, lengthOfTicks } from '../measure/index.ts';
import { widened } from './breadth.ts';
import { areApart, difference, holds, intersection } from './combining.ts';
import { islandsOf } from './islands.ts';
import { areaOf, boundsOf, boxOf, isEmpty, type Region } from './region.ts';

/**
 * Whether `inner` lies within `outer`, reaching out nowhere by more than `tolerance`. Where the two share curved or
 * slanting edges that were worked out in different ways, a tolerance of a few ticks passes over what rounding did.
 */
export function covers(outer: Region, inner: Region, tolerance: Length = lengthOfTicks(0)): boolean {
  const bounds = boundsOf(inner);
  if (bounds === null) return true;
  const box = boxOf(outer);
  if (box !== null && holds(box, bounds)) return true;
  return islandsOf(difference(inner, widened(outer, tolerance))).every(isRounding);
}

/** Whether the two overlap or meet, if only in a point, to within a tick. */
export function touches(one: Region, other: Region): boolean {
  const [oneBounds, otherBounds] = [boundsOf(one), boundsOf(other)];
  if (oneBounds === null || otherBounds === null || areApart(oneBounds, otherBounds)) return false;
  if (boxOf(one) !== null && boxOf(other) !== null) return true;
  return !isEmpty(intersection(widened(one, lengthOfTicks(1)), other));
}

/** Whether a piece is what rounding leaves along edges that are the same: on average thinner than half a tick. */
function isRounding(island: Region): boolean {
  return areaOf(island) <= edgeLength(island) / 4;
}

function edgeLength({ rings }: Region): number {
  return rings.reduce(
    (total, ring) =>
      ring.reduce((length, { x, y }, index) => {
        const before = ring.at(index - 1)!;
        return length + Math.hypot(x - before.x, y - before.y);
      }, total),
    0,
  );
}
