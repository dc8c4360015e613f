import { type ArrangedPart, type Arrangement, unseen } from '../layout/index.ts';
import type { Axis } from '../measure/index.ts';

const axes = ['width', 'height'] as const;

/** How far what is torn lies over or under a neighbour on the same thing, and along which axis. */
export interface TornOverlap {
  readonly parts: readonly [ArrangedPart, ArrangedPart];
  readonly axis: Axis;
  readonly depth: number;
}

/** By the pieces that lie partly on one another, one of them torn; what is raised covers no tear. */
export function tornOverlaps({ parts }: Arrangement): ReadonlyMap<string, TornOverlap> {
  const pieces = parts.flatMap((arranged) =>
    arranged.pieces.flatMap(({ box, onPiece }, piece) =>
      box === null || arranged.part.adhere !== 'flat' ? [] : [{ arranged, piece, onPiece, box }],
    ),
  );
  const isTorn = ({ part }: ArrangedPart) => Object.values(part.torn).some((depth) => depth > 0);
  const found = new Map<string, TornOverlap>();
  for (const [index, one] of pieces.entries()) {
    for (const other of pieces.slice(index + 1)) {
      if (one.arranged.part.on !== other.arranged.part.on || one.onPiece !== other.onPiece) continue;
      if (!isTorn(one.arranged) && !isTorn(other.arranged)) continue;
      const depths = axes.map((axis) => {
        const start = axis === 'width' ? 'left' : 'top';
        const end = Math.min(one.box[start] + one.box[axis], other.box[start] + other.box[axis]);
        return end - Math.max(one.box[start], other.box[start]);
      });
      const depth = Math.min(...depths);
      const axis = axes[depths.indexOf(depth)]!;
      if (depth <= unseen || depth >= Math.min(one.box[axis], other.box[axis]) - unseen) continue;
      const key = `${one.arranged.part.id} ${one.piece} ${other.arranged.part.id} ${other.piece}`;
      found.set(key, { parts: [one.arranged, other.arranged], axis, depth });
    }
  }
  return found;
}
