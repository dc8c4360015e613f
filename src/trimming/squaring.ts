import { type Axis, type Edge, type Length, minus, type Size } from '../measure/index.ts';
import { settable, type Trimmer } from './trimmer.ts';

/** What is to be cut off each edge of a sheet before anything else; zero where nothing is. */
export type Squaring = Readonly<Record<Edge, Length>>;

/** One margin coming off: either what stays of the sheet is measured, or the margin. */
export interface SquaringCut {
  readonly edge: Edge;
  readonly axis: Axis;
  readonly margin: Length;
  /** `set` is the length of what stays, or of the margin. */
  readonly measured: 'what stays' | 'margin';
  readonly set: Length;
  /** The sheet before this cut. */
  readonly before: Size;
}

/** The sheet without its margins; a side is not positive when the margins are as wide as the sheet. */
export function squaredSize(size: Size, squaring: Squaring): Size {
  return {
    width: minus(minus(size.width, squaring.left), squaring.right),
    height: minus(minus(size.height, squaring.top), squaring.bottom),
  };
}

/** Whether the trimmer can cut these margins off, whatever is cut afterwards. */
export function canSquare(size: Size, squaring: Squaring, trimmer: Trimmer | null): boolean {
  const squared = squaredSize(size, squaring);
  return squared.width > 0 && squared.height > 0 && squaringCuts(size, squaring, trimmer, null) !== null;
}

/**
 * The cuts that square a sheet, one for each margin, in an order with the fewest quarter turns before a first
 * cut along `next` (`null`: nothing is cut afterwards); `null` when the trimmer has no way.
 *
 * What stays is measured where the trimmer can be set to it, else the margin; a margin beyond the reach is none that
 * it can cut off at one pass.
 */
export function squaringCuts(
  size: Size,
  squaring: Squaring,
  trimmer: Trimmer | null,
  next: Axis | null,
): readonly SquaringCut[] | null {
  const margins = edges.filter((edge) => squaring[edge] > 0);
  let best: { cuts: readonly SquaringCut[]; turns: number } | null = null;
  for (const order of ordersOf(margins)) {
    const cuts = cutsInOrder(order, size, squaring, trimmer);
    if (cuts === null) continue;
    const turns = turnsBefore(cuts, next);
    if (best === null || turns < best.turns) best = { cuts, turns };
  }
  return best?.cuts ?? null;
}

const edges: readonly Edge[] = ['left', 'right', 'top', 'bottom'];

function axisOf(edge: Edge): Axis {
  return edge === 'left' || edge === 'right' ? 'width' : 'height';
}

function ordersOf(margins: readonly Edge[]): readonly (readonly Edge[])[] {
  if (margins.length === 0) return [[]];
  return margins.flatMap((first) =>
    ordersOf(margins.filter((edge) => edge !== first)).map((others) => [first, ...others]),
  );
}

function cutsInOrder(
  order: readonly Edge[],
  size: Size,
  squaring: Squaring,
  trimmer: Trimmer | null,
): readonly SquaringCut[] | null {
  const cuts: SquaringCut[] = [];
  let before = size;
  for (const edge of order) {
    const axis = axisOf(edge);
    const margin = squaring[edge];
    const stays = minus(before[axis], margin);
    const lengthOfCut = axis === 'width' ? before.height : before.width;
    const measured = settable(stays, trimmer) ? 'what stays' : 'margin';
    const set = measured === 'margin' ? margin : stays;
    if (!settable(set, trimmer) || lengthOfCut > (trimmer?.longest ?? Infinity)) return null;
    cuts.push({ edge, axis, margin, measured, set, before });
    before = { ...before, [axis]: stays };
  }
  return cuts;
}

function turnsBefore(cuts: readonly SquaringCut[], next: Axis | null): number {
  const axes = cuts.map(({ axis }) => axis);
  if (next !== null) axes.push(next);
  return axes.filter((axis, index) => index > 0 && axis !== axes[index - 1]).length;
}
