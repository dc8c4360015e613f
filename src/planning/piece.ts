import type { Turn } from '../layout/index.ts';
import type { Size } from '../measure/index.ts';

/** A kind of piece to cut: one part from one paper. */
export interface Piece {
  /** `part/paper`. */
  readonly id: string;
  /** Id of the part; `base` for the bases. */
  readonly part: string;
  readonly paper: string;
  /** Cut size, width then height with the pattern upright (exchanged where the print lies sideways on the card). */
  readonly size: Size;
  /** With the spares. */
  readonly need: number;
  readonly spare: number;
  readonly turn: Turn;
}
