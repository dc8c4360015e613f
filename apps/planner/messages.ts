import type { Assembly, Docket, DocketAsks, FinishedProblem, Holding } from '../../src/finished/index.ts';
import type { KitReport } from '../../src/kits/index.ts';
import type { Kit } from '../../src/layout/index.ts';
import type {
  CardSet,
  Cliff,
  Enough,
  LeftoverUses,
  PieceSpares,
  Plan,
  PlanInHand,
  PlanningProblem,
  PlanningProgress,
  Recast,
  RecastRefused,
  RecastWishes,
  Recut,
  RecutShort,
  Shortage,
  StepStakes,
  Suited,
  TableNow,
} from '../../src/planning/index.ts';

/**
 * What is said between the planner and its workers: plain data, which a structured clone carries whole. The version
 * goes up when the shape of any message changes; a page may hold one half of the planner in an older edition.
 */
export const messagesVersion = 11;

/** What a worker is asked for; `id` comes back with every answer. */
export type Request =
  /** The plan that is made at once. */
  | { readonly kind: 'first'; readonly id: number; readonly set: CardSet }
  /** The plan of least cost, with its proof. */
  | { readonly kind: 'plan'; readonly id: number; readonly set: CardSet }
  | { readonly kind: 'question'; readonly id: number; readonly question: Question };

/** What may be asked of a set beside its plan, and what is answered: the functions of the same names in the library. */
export interface Questions {
  /** What would spoil the set; `answer` is its plan, or what is short. */
  readonly check: {
    readonly asks: { readonly answer: Plan | Shortage };
    readonly tells: readonly PlanningProblem[];
  };
  /** How the cards are put together, and what holds their parts. */
  readonly assembly: {
    readonly asks: object;
    readonly tells: { readonly assembly: Assembly; readonly holding: Holding };
  };
  /** What the finished cards will be like, and what is wrong with them; `asks` but for the marks, which are the trimmer's. */
  readonly docket: {
    readonly asks: { readonly by: Omit<DocketAsks, 'marks'> };
    readonly tells: { readonly docket: Docket; readonly problems: readonly FinishedProblem[] };
  };
  /** The largest set, and the small changes that gain something. */
  readonly enough: {
    readonly asks: object;
    readonly tells: { readonly enough: Enough; readonly cliffs: readonly Cliff[] };
  };
  /** What the leftovers of the plan can still give. */
  readonly leftovers: { readonly asks: { readonly plan: Plan }; readonly tells: LeftoverUses };
  /** A kit worked out, of which the set is all its layouts as one (`kitSet`). */
  readonly kit: { readonly asks: { readonly kit: Kit }; readonly tells: KitReport };
  /** The layout planned again for another base, other units, marks or sheets. */
  readonly recast: {
    readonly asks: { readonly wishes: RecastWishes };
    readonly tells: Recast | RecastRefused;
  };
  /** The table planned again. */
  readonly recut: { readonly asks: { readonly table: TableNow }; readonly tells: Recut | RecutShort };
  /** What is at stake at each step of a plan in hand; one that begins with nothing cut has the `untouchedTable`. */
  readonly stakes: { readonly asks: PlanInHand; readonly tells: readonly StepStakes[] };
  /** The spares that the plan could make for nothing. */
  readonly spares: { readonly asks: { readonly plan: Plan }; readonly tells: readonly PieceSpares[] };
  /** Sizes that make so many cards. */
  readonly suit: { readonly asks: { readonly cards: number }; readonly tells: Suited };
}

export type QuestionName = keyof Questions;

/** A question with what it needs. */
export type Question<Name extends QuestionName = QuestionName> = {
  [Each in Name]: { readonly name: Each; readonly set: CardSet } & Questions[Each]['asks'];
}[Name];

/** What a worker says: `ready` once, then for each request what it finds; all but `progress` are the last for it. */
export type Answer =
  | { readonly kind: 'ready'; readonly version: number }
  | { readonly kind: 'progress'; readonly id: number; readonly progress: PlanningProgress }
  /** `null`: none was found at once. */
  | { readonly kind: 'first'; readonly id: number; readonly plan: Plan | null }
  | { readonly kind: 'planned'; readonly id: number; readonly answer: Plan | Shortage }
  | { readonly kind: 'told'; readonly id: number; readonly told: Questions[QuestionName]['tells'] }
  /** Our own code is wrong, or the solver could not be loaded. */
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };
