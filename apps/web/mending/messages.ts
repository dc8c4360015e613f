import type { Edit } from '../../../src/editing/index.ts';
import type { SavedLayout } from '../../../src/files/index.ts';
import type { DocketAsks, FinishedProblem } from '../../../src/finished/index.ts';
import type { LayoutProblem } from '../../../src/layout/index.ts';
import type { PlanningProblem, Shortage } from '../../../src/planning/index.ts';

/** What stands against the card: of its geometry, of its papers, or once it is made. */
export type Against =
  | { readonly of: 'layout'; readonly problem: LayoutProblem }
  | { readonly of: 'planning'; readonly problem: PlanningProblem }
  | { readonly of: 'finished'; readonly problem: FinishedProblem };

/** Mends are asked for everything that stands against a layout at once. */
export interface MendsAsked {
  readonly id: number;
  readonly file: SavedLayout;
  readonly against: readonly Against[];
  /** What the finished cards are held to; mended lengths are set at its marks. */
  readonly held: DocketAsks;
  /** What planning found, if it came to a shortage. */
  readonly shortage: Shortage | null;
}

/** An edit that mends a problem. */
export interface Mend {
  readonly edit: Edit;
  /** Whether it is known to mend it; else the plan will show. */
  readonly sure: boolean;
}

export interface MendsAnswer {
  readonly id: number;
  /** For each that was asked, in that order, best first. */
  readonly mends: readonly (readonly Mend[])[];
}
