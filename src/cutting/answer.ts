import type { CutTree } from './cutTree.ts';

/** What the planner found for a `CuttingTask`. */
export type CuttingAnswer =
  | CuttingPlan
  /** The sheets cannot give all the items, or no way was found. */
  | {
      readonly kind: 'short';
      /** The most that was found, as patterns that use the sheets on hand. */
      readonly best: readonly Pattern[];
      /** How many of each item are wanting in `best`. */
      readonly missing: readonly number[];
      /** Whether no edge-to-edge plan gives all the items; else only none was found. */
      readonly proved: boolean;
    };

/** Patterns that give at least what is needed. */
export interface CuttingPlan {
  readonly kind: 'plan';
  readonly patterns: readonly Pattern[];
  /** The sum of the sheets' costs. */
  readonly cost: number;
  /** No edge-to-edge plan within the limits costs less; at most `cost`, and the plan is proved best where equal. */
  readonly bound: number;
  /** Among plans of this cost none takes fewer sheets than this (scraps counted). */
  readonly sheetsBound: number;
}

/** One way of cutting a kind of sheet, and how many sheets are cut so. */
export interface Pattern {
  /** Index into the task's sheets. */
  readonly sheet: number;
  readonly times: number;
  readonly tree: CutTree;
}
