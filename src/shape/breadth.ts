import { type Length, lengthOfTicks, minus, times } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { offsetByArithmetic } from './arithmetic.ts';
import { intersection, union } from './combining.ts';
import { greatestRadius, isConvex } from './convex.ts';
import { islandsOf } from './islands.ts';
import { areaOf, boundsOf, boxOf, boxRegion, isEmpty, nothing, type Region } from './region.ts';

/**
 * The region with every edge moved outwards by `by`, its corners mitred, so that a rectangle stays one. A corner
 * sharper than 29° is cut off square, `by` from its tip or further. Holes narrower than twice that are filled.
 */
export function widened(region: Region, by: Length): Region {
  assert(by >= 0, 'A region is widened outwards', { by });
  const wide = moved(region, by);
  // What is only a few ticks broad may be lost on the way; it belongs to the wider region all the same.
  return boxOf(region) === null ? union([region, wide]) : wide;
}

/** The region with every edge moved inwards by `by`, its corners mitred; nothing where it is nowhere broader than twice that. */
export function narrowed(region: Region, by: Length): Region {
  assert(by >= 0, 'A region is narrowed inwards', { by });
  const narrow = inset(region, by);
  return boxOf(region) === null ? intersection(region, narrow) : narrow;
}

/**
 * How broad the region is where it is broadest: twice the most that it can be narrowed by with anything left, to a
 * tick below; zero for nothing. Of a shape without inward corners it is the greatest disc that fits in; of a frame it
 * is the breadth of its broadest side, as mitred corners have it.
 */
export function breadthOf(region: Region): Length {
  const bounds = boundsOf(region);
  if (bounds === null) return lengthOfTicks(0);
  const shorter = Math.min(bounds.width, bounds.height);
  if (boxOf(region) !== null) return lengthOfTicks(shorter);
  const [ring, other] = region.rings;
  // Quick for what is common, and slow below: edges that are moved past one another all cross.
  if (ring !== undefined && other === undefined && isConvex(ring)) {
    return times(lengthOfTicks(Math.floor(greatestRadius(ring))), 2);
  }
  // Halving: something is left at `least`, nothing at `most`; no disc in it has more than its area.
  let least = 0;
  let most = Math.ceil(Math.min(shorter / 2, largestRadius(region))) + 1;
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    if (isEmpty(inset(region, lengthOfTicks(middle)))) most = middle;
    else least = middle;
  }
  return times(lengthOfTicks(least), 2);
}

/** What is left of a region when everything in it that is narrower than `by` is gone: slivers, thin bridges, tips. */
export function clearOf(region: Region, by: Length): Region {
  const half = lengthOfTicks(Math.ceil(by / 2));
  // What is exactly that broad stays, so it is narrowed by less than half.
  const short = lengthOfTicks(Math.max(0, half - 1));
  const kept = narrowed(region, short);
  if (isEmpty(kept)) return nothing;
  // A mitred corner may reach across a gap: what it finds there has nothing of the broad part in it.
  const islands = islandsOf(intersection(region, widened(kept, short)));
  return union(islands.filter((island) => !isEmpty(intersection(island, kept))));
}

function inset(region: Region, by: Length): Region {
  // What is left would hold a disc of that radius. Told here, for edges that are moved past one another cost most.
  if (by > largestRadius(region) + 1) return nothing;
  return moved(region, minus(lengthOfTicks(0), by));
}

/** No disc in a region has more than its area. */
function largestRadius(region: Region): number {
  return Math.sqrt(areaOf(region) / Math.PI);
}

function moved(region: Region, by: Length): Region {
  if (isEmpty(region) || by === 0) return region;
  const box = boxOf(region);
  if (box === null) return offsetByArithmetic(region, by);
  const [width, height] = [box.width + 2 * by, box.height + 2 * by];
  if (width <= 0 || height <= 0) return nothing;
  return boxRegion({
    left: minus(box.left, by),
    top: minus(box.top, by),
    width: lengthOfTicks(width),
    height: lengthOfTicks(height),
  });
}
