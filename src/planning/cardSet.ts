import type { Arrangement, Layout } from '../layout/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import type { KindnessGoal } from './kindness.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';

/** A set of cards to be cut: its layout worked out, and the trimmer it is cut with. */
export interface CardSet {
  readonly layout: Layout;
  /** Every part's size in it is known. */
  readonly arrangement: Arrangement;
  /** What it can do is a condition on the plan; `null`: no limits. */
  readonly trimmer: Trimmer | null;
  /** Spares to be made beside those that the layout asks for, by piece id; those of `offeredOf`, for one. */
  readonly moreSpares?: ReadonlyMap<string, number>;
  /** What makes a plan kind to cut, what counts most first; what is not named follows in `kindnessOrder`. */
  readonly prefer?: readonly KindnessGoal[];
}

/** The pieces of the set with all the spares that are asked for. */
export function wantedOf({ layout, arrangement, moreSpares }: CardSet): readonly Piece[] {
  return piecesOf(layout, arrangement).map((piece) => {
    const more = moreSpares?.get(piece.id) ?? 0;
    return { ...piece, need: piece.need + more, spare: piece.spare + more };
  });
}
