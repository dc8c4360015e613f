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
  const tear = (edge: Edge): number => tornPt[edge] ?? 0;
  // How far inside each edge, in clockwise order, the corner at its start lies, and that at its end.
  const ends = clockwise.map((edge) => ({ start: tear(edge) * chance(), end: tear(edge) * chance() }));
  const points = clockwise.flatMap((edge, index) => {
    const [before, after] = [clockwise[(index + 3) % 4]!, clockwise[(index + 1) % 4]!];
    const corner = pointAt(frame, edge, { along: ends[(index + 3) % 4]!.end, inwards: ends[index]!.start });
    if (tornPt[edge] === undefined) return [corner];
    // Clear of what the neighbours may tear away, so that the line never crosses itself.
    const length = edge === 'top' || edge === 'bottom' ? frame.widthPt : frame.heightPt;
    return [
      corner,
      ...stopsBetween(tear(before), length - tear(after), chance).map((along) =>
        pointAt(frame, edge, { along, inwards: tear(edge) * chance() }),
      ),
    ];
  });
  return polygon(points);
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
function pointAt(
  frame: Frame,
  edge: Edge,
  { along, inwards }: { readonly along: number; readonly inwards: number },
): Point {
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
