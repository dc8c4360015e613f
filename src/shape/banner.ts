import { type Box, type Edge, halves, type Length, lengthOfTicks } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { difference, union } from './combining.ts';
import { cornersOf, type Outline, straightOutline } from './outline.ts';
import type { Point } from './point.ts';
import { boxRegion, type Region } from './region.ts';
import { evenOddRegion } from './ringsRegion.ts';

/**
 * How the end of a banner is cut: `notched` in to a point in its middle, `pointed` to a tip there, or `slanted` from
 * one corner, which stands out, to the other. The corner that stands out is the upper one of a left or right end, the
 * left one of a top or bottom end.
 */
export type BannerEnd = 'notched' | 'pointed' | 'slanted';

/**
 * A box less what its ends take away, each as deep as `depth` (at right angles to its edge); null: half of its edge,
 * so that notches and points are right angles.
 *
 * Ends that are deeper than the box is long take away all that they meet: two notches may leave two pieces.
 * Of a side that is odd, the middle is half a tick to the left or top.
 */
export function bannerOutline(
  box: Box,
  ends: Partial<Readonly<Record<Edge, BannerEnd>>>,
  depth: Length | null,
): Outline {
  assert(depth === null || depth >= 0, 'An end is cut inwards', { depth });
  const taken = edges.flatMap((edge) => {
    const end = ends[edge];
    return end === undefined ? [] : [takenAway(edgeOf(box, edge), end, depth)];
  });
  return straightOutline(difference(boxRegion(box), union(taken)).rings);
}

const edges = ['left', 'right', 'top', 'bottom'] as const satisfies readonly Edge[];

/** An edge from its upper or left corner to the other, and the step of one tick from it into the box. */
interface EdgeLine {
  readonly from: Point;
  readonly to: Point;
  readonly inwards: { readonly x: number; readonly y: number };
}

function edgeOf(box: Box, edge: Edge): EdgeLine {
  const [topLeft, topRight, bottomRight, bottomLeft] = cornersOf(box);
  switch (edge) {
    case 'left':
      return { from: topLeft, to: bottomLeft, inwards: { x: 1, y: 0 } };
    case 'right':
      return { from: topRight, to: bottomRight, inwards: { x: -1, y: 0 } };
    case 'top':
      return { from: topLeft, to: topRight, inwards: { x: 0, y: 1 } };
    case 'bottom':
      return { from: bottomLeft, to: bottomRight, inwards: { x: 0, y: -1 } };
  }
}

function takenAway({ from, to, inwards }: EdgeLine, end: BannerEnd, wanted: Length | null): Region {
  const long = lengthOfTicks(to.x - from.x + to.y - from.y);
  const depth = wanted ?? halves(long).smaller;
  const middle = {
    x: lengthOfTicks(Math.floor((from.x + to.x) / 2)),
    y: lengthOfTicks(Math.floor((from.y + to.y) / 2)),
  };
  const within = (point: Point): Point => ({
    x: lengthOfTicks(point.x + inwards.x * depth),
    y: lengthOfTicks(point.y + inwards.y * depth),
  });
  switch (end) {
    case 'notched':
      return evenOddRegion([[from, to, within(middle)]]);
    case 'pointed':
      return union([
        evenOddRegion([[from, middle, within(from)]]),
        evenOddRegion([[to, middle, within(to)]]),
      ]);
    case 'slanted':
      return evenOddRegion([[from, to, within(to)]]);
  }
}
