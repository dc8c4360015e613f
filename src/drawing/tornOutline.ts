import type { Edge } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Frame, PathStep, Point } from './mark.ts';
import { polygon } from './outline.ts';

/**
 * The outline of a rectangle of which some edges are torn: there an irregular line that stays between the edge of
 * `frame` and `tornPt` inside it, the same for the same seed.
 */
export function tornOutline(
  frame: Frame,
  tornPt: Readonly<Partial<Record<Edge, number>>>,
  seed: number,
): readonly PathStep[] {
  for (const depth of Object.values(tornPt)) {
    assert(depth >= 0 && depth < Math.min(frame.widthPt, frame.heightPt) / 2, 'A tear leaves a part', {
      frame,
      tornPt,
    });
  }
  const chance = chanceFrom(seed);
  const deep = (edge: Edge): number => (tornPt[edge] ?? 0) * chance();
  // How far each end of each edge lies inside the frame; neighbours share a corner.
  const ends = clockwise.map((edge) => ({ edge, start: deep(edge), end: deep(edge) }));
  const points = ends.flatMap(({ edge, start, end }, index) => {
    const before = ends[(index + 3) % 4]!.end;
    const after = ends[(index + 1) % 4]!.start;
    const length = edge === 'top' || edge === 'bottom' ? frame.widthPt : frame.heightPt;
    const stops = tornPt[edge] === undefined ? [] : stopsBetween(before, length - after, chance);
    return [
      pointAt(frame, edge, before, start),
      ...stops.map((along) => pointAt(frame, edge, along, deep(edge))),
      // The last point of this edge is not the first of the next: both depths shift the corner.
      pointAt(frame, edge, length - after, end),
    ];
  });
  return polygon(withoutRepeats(points));
}

const clockwise = ['top', 'right', 'bottom', 'left'] as const satisfies readonly Edge[];
/** Fibres tear in steps of about a millimetre and a half. */
const stepPt = 4;

/** Places along a torn edge, a step apart more or less, none at the ends. */
function stopsBetween(from: number, to: number, chance: () => number): readonly number[] {
  const count = Math.max(0, Math.floor((to - from) / stepPt) - 1);
  const step = (to - from) / (count + 1);
  return Array.from({ length: count }, (_, index) => from + step * (index + 0.7 + 0.6 * chance()));
}

/** The point `along` an edge, going clockwise, and `inwards` of it. */
function pointAt(frame: Frame, edge: Edge, along: number, inwards: number): Point {
  const { xPt, yPt, widthPt, heightPt } = frame;
  switch (edge) {
    case 'top':
      return { xPt: xPt + along, yPt: yPt + inwards };
    case 'right':
      return { xPt: xPt + widthPt - inwards, yPt: yPt + along };
    case 'bottom':
      return { xPt: xPt + widthPt - along, yPt: yPt + heightPt - inwards };
    case 'left':
      return { xPt: xPt + inwards, yPt: yPt + heightPt - along };
  }
}

function withoutRepeats(points: readonly Point[]): readonly Point[] {
  return points.filter((point, index) => {
    const before = points.at(index - 1)!;
    return point.xPt !== before.xPt || point.yPt !== before.yPt;
  });
}

/** Numbers from 0 up to but not 1, always the same for a seed (the mulberry32 generator, public domain). */
function chanceFrom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
