import type { Piece } from './piece.ts';
import type { Plan } from './plan.ts';

/** Why the papers on hand cannot give the set, and the nearest they can. */
export interface Shortage {
  readonly kind: 'short';
  /** All the pieces of the set that was asked for. */
  readonly pieces: readonly Piece[];
  /** Papers that are short, in the layout's order. */
  readonly papers: readonly PaperShortage[];
  readonly nearest: Nearest;
}

/** The largest smaller set that was found. */
export interface Nearest {
  /** 0: not even one card. */
  readonly cards: number;
  /** Whether it is proved that the papers give no more cards; else no way was found. */
  readonly proved: boolean;
  /** Its plan; `null` for no cards. */
  readonly plan: Plan | null;
}

/** One paper that is short. */
export interface PaperShortage {
  readonly paper: string;
  /** Pieces that are wanting, by piece id, each at least 1; the sheets on hand give all the others at once. */
  readonly missing: ReadonlyMap<string, number>;
  /** Whether it is proved that no plan leaves fewer pieces wanting in all; else none was found. */
  readonly missingProved: boolean;
  /** Whether it is proved that the sheets on hand do not give all the pieces; else no way was found. */
  readonly proved: boolean;
  /** Pieces that no sheet of this paper gives even one of, and why, by piece id. */
  readonly never: ReadonlyMap<string, NeverReason>;
  /** What by itself, were it not so, would let the very sheets on hand give all the pieces. */
  readonly limits: readonly ShortageLimit[];
  /** For each stock of whole sheets that more of would do, the fewest more; empty where no number would. */
  readonly moreSheets: readonly MoreSheets[];
}

/** More sheets of one stock, with which all the pieces come out. */
export interface MoreSheets {
  /** Index into the paper's `sheets`. */
  readonly stock: number;
  readonly count: number;
  /** Whether it is proved that fewer more of that stock are not enough. */
  readonly proved: boolean;
}

/**
 * Why no sheet gives even one of a piece: it is larger than any sheet (as it may lie), or narrower than the trimmer
 * can hold; or it would come out but for one of the limits.
 */
export type NeverReason = 'too-large' | 'too-narrow' | ShortageLimit;

/**
 * `trimmer`: what the trimmer can do (its marks, its longest cut, the narrowest strip it holds); `direction`: that a
 * print may not be given a quarter turn; `margins`: what cannot be used along the edges of the sheets.
 */
export type ShortageLimit = 'trimmer' | 'direction' | 'margins';
