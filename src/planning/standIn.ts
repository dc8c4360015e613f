import { turnOf } from '../layout/index.ts';
import { givesAll } from './givesAll.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';
import type { SetToPlan } from './planSet.ts';
import type { Shortage } from './shortage.ts';

/** Another paper of the layout that could give the pieces which one paper is short of. */
export interface StandIn {
  /** The paper that is short. */
  readonly paper: string;
  /** The one that could stand in for it, beside all that is cut from it anyway. */
  readonly by: string;
  /** By the id of the piece that is short, how many. */
  readonly pieces: ReadonlyMap<string, number>;
}

/**
 * For each paper that is short the papers of its kind that could give what is wanting, as their own prints have to lie,
 * beside whatever is cut from them, in the layout's order. Whether it looks well is for the eye.
 */
export function standInsFor(set: SetToPlan, { papers }: Shortage): readonly StandIn[] {
  const { layout, arrangement } = set;
  const wanted = piecesOf(layout, arrangement);
  return papers.flatMap(({ paper: id, missing, missingProved }) => {
    // Where more may be to be had of the paper itself, it is not known what is wanting.
    if (!missingProved) return [];
    return [...layout.papers.values()].flatMap((other): StandIn[] => {
      if (other.kind !== layout.papers.get(id)!.kind || papers.some(({ paper }) => paper === other.id))
        return [];
      const own = wanted.filter(({ paper }) => paper === other.id);
      const moved = wanted.flatMap((piece): Piece[] => {
        const need = piece.paper === id ? (missing.get(piece.id) ?? 0) : 0;
        if (need === 0) return [];
        const part = layout.parts.find((candidate) => candidate.id === piece.part) ?? layout.base;
        return [
          { ...piece, id: `${piece.id} by ${other.id}`, paper: other.id, need, turn: turnOf(part, other) },
        ];
      });
      return givesAll(other, [...own, ...moved], set) === 'yes'
        ? [{ paper: id, by: other.id, pieces: missing }]
        : [];
    });
  });
}
