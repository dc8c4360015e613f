import { type Box, bottomOf, lengthOfTicks, rightOf } from '../measure/index.ts';
import { differenceByArithmetic, intersectionByArithmetic, unionByArithmetic } from './arithmetic.ts';
import { boundsOf, boxOf, boxRegion, isEmpty, nothing, type Region, regionOfRings } from './region.ts';

/** What any of the regions covers; nothing for none. */
export function union(regions: readonly Region[]): Region {
  const some = regions.filter((region) => !isEmpty(region));
  const [first, second] = some;
  if (first === undefined) return nothing;
  if (second === undefined) return first;
  const bounds = some.map((region) => boundsOf(region)!);
  // One box that covers all the others.
  const whole = some.find((region, index) => {
    const box = bounds[index]!;
    return boxOf(region) !== null && bounds.every((inner) => holds(box, inner));
  });
  if (whole !== undefined) return whole;
  const apart = bounds.every((box, index) => bounds.slice(index + 1).every((other) => areApart(box, other)));
  return apart ? regionOfRings(some.flatMap(({ rings }) => rings)) : unionByArithmetic(some);
}

/** What both cover; nothing where they only touch. */
export function intersection(one: Region, other: Region): Region {
  const [oneBounds, otherBounds] = [boundsOf(one), boundsOf(other)];
  if (oneBounds === null || otherBounds === null) return nothing;
  const common = commonBox(oneBounds, otherBounds);
  if (common === null) return nothing;
  const [oneBox, otherBox] = [boxOf(one), boxOf(other)];
  if (oneBox !== null && otherBox !== null) return boxRegion(common);
  if (oneBox !== null && holds(oneBox, otherBounds)) return other;
  if (otherBox !== null && holds(otherBox, oneBounds)) return one;
  return intersectionByArithmetic(one, other);
}

/** What `from` covers and `taken` does not. */
export function difference(from: Region, taken: Region): Region {
  const [fromBounds, takenBounds] = [boundsOf(from), boundsOf(taken)];
  if (fromBounds === null) return nothing;
  if (takenBounds === null || commonBox(fromBounds, takenBounds) === null) return from;
  const takenBox = boxOf(taken);
  if (takenBox !== null && holds(takenBox, fromBounds)) return nothing;
  if (takenBox !== null && boxOf(from) !== null && isWithin(fromBounds, takenBox)) {
    return regionOfRings([from.rings[0]!, boxRegion(takenBox).rings[0]!.toReversed()]);
  }
  return differenceByArithmetic(from, taken);
}

/** Whether no point is in both, not even on their edges. */
export function areApart(one: Box, other: Box): boolean {
  return (
    rightOf(one) < other.left ||
    rightOf(other) < one.left ||
    bottomOf(one) < other.top ||
    bottomOf(other) < one.top
  );
}

/** Whether the outer box holds the inner one; edges may meet. */
export function holds(outer: Box, inner: Box): boolean {
  return (
    outer.left <= inner.left &&
    outer.top <= inner.top &&
    rightOf(outer) >= rightOf(inner) &&
    bottomOf(outer) >= bottomOf(inner)
  );
}

/** Whether the outer box holds the inner one with something of it left on all sides. */
function isWithin(outer: Box, inner: Box): boolean {
  return (
    outer.left < inner.left &&
    outer.top < inner.top &&
    rightOf(outer) > rightOf(inner) &&
    bottomOf(outer) > bottomOf(inner)
  );
}

function commonBox(one: Box, other: Box): Box | null {
  const left = Math.max(one.left, other.left);
  const top = Math.max(one.top, other.top);
  const width = Math.min(rightOf(one), rightOf(other)) - left;
  const height = Math.min(bottomOf(one), bottomOf(other)) - top;
  return width <= 0 || height <= 0
    ? null
    : {
        left: lengthOfTicks(left),
        top: lengthOfTicks(top),
        width: lengthOfTicks(width),
        height: lengthOfTicks(height),
      };
}
