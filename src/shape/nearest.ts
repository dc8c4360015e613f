import { type Length, lengthOfTicks } from '../measure/index.ts';
import type { Point } from './point.ts';
import type { Region } from './region.ts';

/**
 * How far it is from the edge of one region to the edge of the other at the nearest, rounded down to a tick; zero where
 * they meet or cross, `null` where one is nothing. Lines that are further off along x than the nearest found so far are
 * not looked at.
 */
export function nearestBetween(one: Region, other: Region): Length | null {
  const [lines, others] = [linesOf(one), linesOf(other)];
  if (lines.length === 0 || others.length === 0) return null;
  const longest = Math.max(...others.map(({ left, right }) => right - left));
  let nearest = Number.POSITIVE_INFINITY;
  for (const line of lines) {
    for (let index = firstFrom(others, line.left - nearest - longest); index < others.length; index += 1) {
      const candidate = others[index]!;
      if (candidate.left > line.right + nearest) break;
      nearest = Math.min(nearest, betweenLines(line, candidate));
      if (nearest === 0) return lengthOfTicks(0);
    }
  }
  return lengthOfTicks(Math.floor(nearest));
}

interface Line {
  readonly from: Point;
  readonly to: Point;
  readonly left: number;
  readonly right: number;
}

/** By where they begin on the left. */
function linesOf({ rings }: Region): readonly Line[] {
  return rings
    .flatMap((ring) =>
      ring.map((from, index): Line => {
        const to = ring[(index + 1) % ring.length]!;
        return { from, to, left: Math.min(from.x, to.x), right: Math.max(from.x, to.x) };
      }),
    )
    .sort((a, b) => a.left - b.left);
}

/** The first line that begins no further left than `left`. */
function firstFrom(lines: readonly Line[], left: number): number {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (lines[middle]!.left < left) low = middle + 1;
    else high = middle;
  }
  return low;
}

function betweenLines(one: Line, other: Line): number {
  if (cross(one, other)) return 0;
  return Math.min(
    toLine(one.from, other),
    toLine(one.to, other),
    toLine(other.from, one),
    toLine(other.to, one),
  );
}

function cross(one: Line, other: Line): boolean {
  const apart = (line: Line, a: Point, b: Point) => sideOf(line, a) * sideOf(line, b) <= 0;
  const areParallel = sideOf(one, other.from) === 0 && sideOf(one, other.to) === 0;
  return !areParallel && apart(one, other.from, other.to) && apart(other, one.from, one.to);
}

function sideOf({ from, to }: Line, { x, y }: Point): number {
  return Math.sign((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x));
}

function toLine({ x, y }: Point, { from, to }: Line): number {
  const [along, up] = [to.x - from.x, to.y - from.y];
  const square = along * along + up * up;
  const share = square === 0 ? 0 : ((x - from.x) * along + (y - from.y) * up) / square;
  const held = Math.min(1, Math.max(0, share));
  return Math.hypot(x - from.x - held * along, y - from.y - held * up);
}
