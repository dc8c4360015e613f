import type { CardSet, Plan, PlanningProgress, Shortage } from '../../src/planning/index.ts';

/**
 * What is said between the planner and its workers: plain data, which a structured clone carries whole. The version
 * goes up when the shape of any message changes; a page may hold one half of the planner in an older edition.
 */
export const messagesVersion = 1;

/** What a worker is asked for. */
export interface Request {
  /** `first`: the plan that is made at once; `plan`: the plan of least cost, with its proof. */
  readonly kind: 'first' | 'plan';
  /** Comes back with every answer. */
  readonly id: number;
  readonly set: CardSet;
}

/** What a worker says: `ready` once, then for each request what it finds, and `first`, `planned` or `failed` last. */
export type Answer =
  | { readonly kind: 'ready'; readonly version: number }
  | { readonly kind: 'progress'; readonly id: number; readonly progress: PlanningProgress }
  /** `null`: none was found at once. */
  | { readonly kind: 'first'; readonly id: number; readonly plan: Plan | null }
  | { readonly kind: 'planned'; readonly id: number; readonly answer: Plan | Shortage }
  /** Our own code is wrong, or the solver could not be loaded. */
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };
