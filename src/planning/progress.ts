import type { CostUnit } from '../stash/index.ts';

/** How far the planning of a set has come: where the search stands with one of its papers. */
export interface PlanningProgress {
  readonly paper: string;
  /**
   * How many cards the set being tried has: fewer than were asked for where the papers are short and the largest
   * smaller set is looked for.
   */
  readonly cards: number;
  /** The cost of the best plan found so far, in the unit of `measuredIn`; `null`: none yet. */
  readonly cost: number | null;
  /** No plan costs less than this, as far as is known by now; 0 to begin with. */
  readonly bound: number;
  readonly measuredIn: CostUnit;
}
