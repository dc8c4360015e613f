import type { Plan } from './plan.ts';

/** Why the papers on hand cannot give the set, and the nearest they can. */
export interface Shortage {
  readonly papers: readonly PaperShortage[];
  /** The largest smaller set that these papers do give, with its plan; `null` when not even one card. */
  readonly nearest: { readonly cards: number; readonly proved: boolean; readonly plan: Plan } | null;
}

/** One paper that is short. */
export interface PaperShortage {
  readonly paper: string;
  /** Pieces that are wanting, by piece id, each at least 1. */
  readonly missing: ReadonlyMap<string, number>;
  /** Whether no edge-to-edge plan does better; else only none was found. */
  readonly proved: boolean;
}
