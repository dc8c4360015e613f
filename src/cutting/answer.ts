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
      /** What the proof rests on; `null` where an item fits no sheet, which needs none. */
      readonly certificate: BoundCertificate | null;
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
  /** What both bounds rest on, for whoever wants to check them without the planner. */
  readonly certificate: BoundCertificate;
}

/**
 * Why no plan costs less: numbers of sheets that every plan must have.
 *
 * Sheets of one size and cost count together, as a group. Every plan, given as how many sheets of each group it
 * takes, fulfils every condition: `sum(counts[g] * sheets[g]) >= sum(need[i] * prices[i])`; and none is, in every
 * group, at most as many as `counts` of anything refuted. The bound is the least cost of all such counts (no more
 * than there are; a sheet more than there are pieces is never needed); `sheetsBound` is the least number of sheets
 * of such counts that cost no more than the plan. Where no counts are left there is no plan.
 */
export interface BoundCertificate {
  /** By group, the indices of its sheets in the task. */
  readonly groups: readonly (readonly number[])[];
  readonly conditions: readonly WorthCondition[];
  readonly refuted: readonly RefutedCounts[];
}

/** What the sheets of every plan must be worth, at whole prices. */
export interface WorthCondition {
  /** By item of the task, not negative. */
  readonly prices: readonly number[];
  /** By group: at these prices no edge-to-edge pattern of such a sheet is worth more. */
  readonly sheets: readonly number[];
}

/** Counts of sheets that fulfil the conditions, and yet no choice of patterns makes do with them. */
export interface RefutedCounts {
  /** By group. */
  readonly counts: readonly number[];
  /**
   * The condition at whose prices this was found: every pattern was listed that is worth at least the group's
   * `sheets` less what `counts` have over the condition's need, pieces beyond the need not counted. In a plan
   * with these counts no sheet can lose more.
   */
  readonly condition: number;
  /** What found no choice among the listed patterns: a search in whole numbers, or the integer programme solver. */
  readonly by: 'search' | 'solver';
}

/** One way of cutting a kind of sheet, and how many sheets are cut so. */
export interface Pattern {
  /** Index into the task's sheets. */
  readonly sheet: number;
  readonly times: number;
  readonly tree: CutTree;
}

/** The plan for nothing at all. */
export const emptyPlan: CuttingPlan = {
  kind: 'plan',
  patterns: [],
  cost: 0,
  bound: 0,
  sheetsBound: 0,
  certificate: { groups: [], conditions: [], refuted: [] },
};
