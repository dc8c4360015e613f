import type { CardSet } from './cardSet.ts';
import type { PlanInHand } from './onTable.ts';
import { readSavedPlan, type SavedPlan } from './savedPlan.ts';
import type { TableProblem } from './tableCodes.ts';
import { type CutSoFar, type Found, nothingCut, type Spoiled, type TableNow, tableNow } from './tableNow.ts';

/** What is noted while a set is cut, in the order in which it happened. Plain data, to be kept. */
export type TallyMark =
  /** Of a step's workpieces so many are cut by now, from the first on; less than before where it was noted too soon. */
  | { readonly kind: 'cut'; readonly step: number; readonly workpieces: number }
  /** Something was spoiled or lost. */
  | { readonly kind: 'spoiled'; readonly spoiled: Spoiled }
  /** A scrap lies there that is not in the plan. */
  | { readonly kind: 'found'; readonly found: Found }
  /** The rest was planned again from the table as it was, and is cut by that plan from here on. */
  | { readonly kind: 'planned again'; readonly plan: SavedPlan };

/** How far a set has been cut: the plan that it was begun with, and what was noted since. */
export interface Tally {
  readonly plan: SavedPlan;
  readonly marks: readonly TallyMark[];
}

/** What a tally comes to. */
export interface Tallied {
  /** The plan that is cut by now, and the table that it begins with. */
  readonly inHand: PlanInHand;
  /** Spares that are made beside those that the layout asks for. */
  readonly moreSpares: ReadonlyMap<string, number>;
  /** How far that plan has been cut. */
  readonly soFar: CutSoFar;
  readonly table: TableNow;
}

/**
 * The table as a tally leaves it. `set` is the set as its layout said when the cutting began; or everything that keeps
 * the tally from being of that set, or from having happened.
 */
export function tallied(
  set: Pick<CardSet, 'layout' | 'arrangement' | 'trimmer'>,
  tally: Tally,
): Tallied | { readonly problems: readonly TableProblem[] } {
  const plans = tally.marks.flatMap((mark) => (mark.kind === 'planned again' ? [mark.plan] : []));
  const read = readSavedPlan(set, plans.at(-1) ?? tally.plan);
  if ('problems' in read) return read;
  const { inHand, moreSpares } = read;
  const soFar = tally.marks.reduce(noted, nothingCut);
  const table = tableNow(set.layout, inHand, soFar);
  return 'problems' in table ? table : { inHand, moreSpares, soFar, table };
}

/** How far the plan in hand is cut after one more mark; a new plan has not been cut at all. */
function noted(soFar: CutSoFar, mark: TallyMark): CutSoFar {
  switch (mark.kind) {
    case 'cut':
      return { ...soFar, done: new Map(soFar.done).set(mark.step, mark.workpieces) };
    case 'spoiled':
      return { ...soFar, spoiled: [...soFar.spoiled, mark.spoiled] };
    case 'found':
      return { ...soFar, found: [...soFar.found, mark.found] };
    case 'planned again':
      return nothingCut;
  }
}
