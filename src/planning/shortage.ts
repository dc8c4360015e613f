import type { Piece } from './piece.ts';
import type { Plan } from './plan.ts';

/** Why the papers on hand cannot give the set, and the nearest they can. */
export interface Shortage {
  readonly kind: 'short';
  /** All the pieces of the set that was asked for. */
  readonly pieces: readonly Piece[];
  /** Papers that are short, in the layout's order. */
  readonly papers: readonly PaperShortage[];
  /** The largest smaller set that was found, with its plan; `null` when not even one card can be made. */
  readonly nearest: Nearest | null;
}

/** A smaller set that the papers do give. */
export interface Nearest {
  readonly cards: number;
  /** Whether it is proved that they give no more cards; else none was found. */
  readonly proved: boolean;
  readonly plan: Plan;
}

/** One paper that is short. */
export interface PaperShortage {
  readonly paper: string;
  /** Pieces that are wanting, by piece id, each at least 1. */
  readonly missing: ReadonlyMap<string, number>;
  /** Whether it is proved that the sheets on hand do not give all the pieces; else no way was found. */
  readonly proved: boolean;
  /** Whether the same sheets give all the pieces to a trimmer without limits. */
  readonly trimmerLimits: boolean;
  /** The fewest more sheets of one size that would give all the pieces; `null` where a few do not. */
  readonly moreSheets: { readonly stock: number; readonly count: number } | null;
  /** Pieces that no sheet of this paper gives even one of, and why, by piece id. */
  readonly never: ReadonlyMap<string, NeverReason>;
}

/**
 * Why no sheet gives even one of a piece: it is larger than any sheet (as it may lie), or narrower than the
 * trimmer can hold.
 */
export type NeverReason = 'too-large' | 'too-narrow';
