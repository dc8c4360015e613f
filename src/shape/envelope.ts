import type { Point } from './point.ts';
import type { Region } from './region.ts';

/**
 * What a region takes up as it is seen from above and from below: between two neighbouring corners, by x, its highest
 * and its lowest line are straight. Whatever lies between the two is reckoned as covered.
 */
export type Envelope = readonly Slab[];

/** From `from` to `to` along x; `high` and `low` are the least and the greatest y at these two ends. */
interface Slab {
  readonly from: number;
  readonly to: number;
  readonly high: readonly [number, number];
  readonly low: readonly [number, number];
}

/** The envelope along x; none where the region covers nothing. */
export function envelopeOf(region: Region): Envelope {
  const corners = [...new Set(region.rings.flatMap((ring) => ring.map(({ x }) => x)))].sort((a, b) => a - b);
  const indexOf = new Map(corners.map((x, index) => [x, index]));
  const slabs = corners.slice(1).map((to, index) => ({
    from: corners[index]!,
    to,
    high: [Infinity, Infinity] as [number, number],
    low: [-Infinity, -Infinity] as [number, number],
  }));
  for (const [one, other] of edgesOf(region)) {
    if (one.x === other.x) continue;
    const [left, right] = one.x < other.x ? [one, other] : [other, one];
    const steepness = (right.y - left.y) / (right.x - left.x);
    for (let index = indexOf.get(left.x)!; index < indexOf.get(right.x)!; index += 1) {
      const { from, to, high, low } = slabs[index]!;
      [from, to].forEach((x, end) => {
        const y = x === right.x ? right.y : left.y + (x - left.x) * steepness;
        high[end] = Math.min(high[end]!, y);
        low[end] = Math.max(low[end]!, y);
      });
    }
  }
  return slabs.filter(({ low }) => low[0] > -Infinity);
}

/**
 * How far down the lower one has to be moved, when it is moved so far to the right, to lie below all of the upper one;
 * edges may meet. `-Infinity` where no part of it lies below any of the other.
 *
 * Exact: both lines are straight between the places that are looked at.
 */
export function separation(upper: Envelope, lower: Envelope, right: number): number {
  let most = -Infinity;
  let [above, below] = [0, 0];
  while (above < upper.length && below < lower.length) {
    const one = upper[above]!;
    const other = lower[below]!;
    const from = Math.max(one.from, other.from + right);
    const to = Math.min(one.to, other.to + right);
    if (from < to) {
      most = Math.max(most, lowAt(one, from) - highAt(other, from - right));
      most = Math.max(most, lowAt(one, to) - highAt(other, to - right));
    }
    if (one.to < other.to + right) above += 1;
    else below += 1;
  }
  return most;
}

function lowAt({ from, to, low }: Slab, x: number): number {
  return low[0] + ((low[1] - low[0]) * (x - from)) / (to - from);
}

function highAt({ from, to, high }: Slab, x: number): number {
  return high[0] + ((high[1] - high[0]) * (x - from)) / (to - from);
}

function edgesOf({ rings }: Region): readonly (readonly [Point, Point])[] {
  return rings.flatMap((ring) =>
    ring.map((point, index): [Point, Point] => [point, ring[(index + 1) % ring.length]!]),
  );
}
