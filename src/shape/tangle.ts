import type { PathPoint, PathShape } from './path.ts';

/**
 * Whether the lines of a path cross one another more than `often` times, each curve taken as four chords.
 *
 * Counts crossings from left to right and stops when there are too many, so that a tangle is told in no time.
 */
export function crossesOften(contours: PathShape['contours'], often: number): boolean {
  const chords = contours.flatMap(chordsOf).sort((one, other) => one.left - other.left);
  let crossings = 0;
  for (const [index, chord] of chords.entries()) {
    for (let next = index + 1; next < chords.length; next += 1) {
      const other = chords[next]!;
      if (other.left > chord.right) break;
      if (other.top > chord.bottom || chord.top > other.bottom || !cross(chord, other)) continue;
      crossings += 1;
      if (crossings > often) return true;
    }
  }
  return false;
}

interface Chord {
  readonly from: PathPoint;
  readonly to: PathPoint;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function chordsOf({ from, segments }: PathShape['contours'][number]): Chord[] {
  const points = [from];
  let at = from;
  for (const segment of segments) {
    if (segment.kind === 'curve') {
      for (const t of [0.25, 0.5, 0.75]) points.push(onCurve(at, segment, t));
    }
    points.push(segment.to);
    at = segment.to;
  }
  return points.map((point, index) => chordBetween(point, points[(index + 1) % points.length]!));
}

function onCurve(
  from: PathPoint,
  curve: { first: PathPoint; second: PathPoint; to: PathPoint },
  t: number,
): PathPoint {
  const s = 1 - t;
  const along = (a: number, b: number, c: number, d: number) =>
    s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
  return {
    x: along(from.x, curve.first.x, curve.second.x, curve.to.x),
    y: along(from.y, curve.first.y, curve.second.y, curve.to.y),
  };
}

function chordBetween(from: PathPoint, to: PathPoint): Chord {
  return {
    from,
    to,
    left: Math.min(from.x, to.x),
    right: Math.max(from.x, to.x),
    top: Math.min(from.y, to.y),
    bottom: Math.max(from.y, to.y),
  };
}

/** Whether each has its ends on both sides of the other; lines that only meet do not count. */
function cross(one: Chord, other: Chord): boolean {
  return side(one, other.from) * side(one, other.to) < 0 && side(other, one.from) * side(other, one.to) < 0;
}

function side({ from, to }: Chord, point: PathPoint): number {
  return Math.sign((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x));
}
