import type { DealtRun } from '../layout/index.ts';
import type { Size } from '../measure/index.ts';
import type { CostUnit } from '../stash/index.ts';
import type { Effort, Leftover, Step } from '../trimming/index.ts';
import type { Piece } from './piece.ts';

/** How a whole set is cut: replayed and found true before anyone sees it. */
export interface Plan {
  readonly kind: 'plan';
  readonly cards: number;
  readonly pieces: readonly Piece[];
  /** One for each sheet that is used. */
  readonly sheets: readonly PlannedSheet[];
  /** Paper after paper, in the order to cut. */
  readonly steps: readonly Step[];
  /** Id of a piece on the table → id of its `Piece`. */
  readonly finished: ReadonlyMap<string, string>;
  readonly leftovers: readonly Leftover[];
  /** By paper id, in the layout's order; papers that nothing is cut from are absent. */
  readonly papers: ReadonlyMap<string, PaperOutcome>;
  /** By the id of a part that is cut from leftovers, of which papers it came out; absent where there is none. */
  readonly dealt?: Dealing;
}

/** By the id of a part, its papers in the order of the cards. */
export type Dealing = ReadonlyMap<string, readonly DealtRun[]>;

export interface PlannedSheet {
  readonly id: string;
  readonly paper: string;
  /** Index into the paper's `sheets`. */
  readonly stock: number;
  readonly size: Size;
}

export interface PaperOutcome extends Effort {
  readonly sheets: number;
  /** In the unit of `measuredIn`. */
  readonly cost: number;
  readonly bound: number;
  readonly proved: boolean;
  /**
   * No way to cut at this cost that only measures off sides of pieces has fewer settings; nor has one with so few
   * settings fewer passes. 0: nothing is known.
   */
  readonly leastSettings: number;
  readonly leastPasses: number;
  /** What `cost` counts: prices, sheets of one size, or square inches. */
  readonly measuredIn: CostUnit;
}
