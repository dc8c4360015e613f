import type { CuttingPlan } from '../cutting/index.ts';
import { costUnitOf, shownCost } from '../stash/index.ts';
import { type Leftover, type Step, stepsFor } from '../trimming/index.ts';
import type { CardSet } from './cardSet.ts';
import type { PaperTask } from './cuttingTask.ts';
import type { PaperOutcome, PlannedSheet } from './plan.ts';
import { type SheetNames, sheetsToCut, trimmingOf } from './sheetsToCut.ts';

/** How one paper's sheets are cut, as a tree for each. */
export interface CutPaper {
  readonly kind: 'plan';
  readonly paper: string;
  readonly paperTask: PaperTask;
  readonly plan: CuttingPlan;
  /** Settings, and with so many of them passes, that no way at this cost has fewer of; 0: nothing is known. */
  readonly leastWork?: { readonly settings: number; readonly passes: number };
}

/** One paper's share of a plan. */
export interface PlannedPaper {
  readonly paper: string;
  readonly sheets: readonly PlannedSheet[];
  readonly steps: readonly Step[];
  /** Id of a piece on the table → id of its `Piece`. */
  readonly finished: ReadonlyMap<string, string>;
  readonly leftovers: readonly Leftover[];
  readonly outcome: PaperOutcome;
}

/**
 * The steps that cut a paper so, numbered from `firstStep`. With `quick` they are in the first good order that is
 * found; `names` are the ids of the sheets, else they are numbered from 1.
 */
export function plannedPaper(
  { layout, trimmer }: Pick<CardSet, 'layout' | 'trimmer'>,
  { paper: id, paperTask, plan, leastWork }: CutPaper,
  {
    firstStep,
    quick = false,
    names,
  }: { readonly firstStep: number; readonly quick?: boolean; readonly names?: SheetNames },
): PlannedPaper {
  const paper = layout.papers.get(id)!;
  const toCut = sheetsToCut({ paper: id, paperTask }, plan.patterns, paper, names);
  const trimmed = stepsFor(toCut, trimmer, { ...trimmingOf(layout), firstStep, quick });
  const unit = costUnitOf(paper);
  return {
    paper: id,
    sheets: toCut.map((sheet) => ({ id: sheet.id, paper: id, stock: sheet.stock, size: sheet.size })),
    steps: trimmed.steps,
    finished: new Map(
      [...trimmed.finished].map(([workpiece, item]) => [workpiece, paperTask.pieces[item]!.id]),
    ),
    leftovers: trimmed.leftovers,
    outcome: {
      ...trimmed.effort,
      sheets: toCut.length,
      cost: shownCost(plan.cost, unit),
      bound: shownCost(plan.bound, unit),
      proved: plan.cost === plan.bound,
      measuredIn: unit,
      leastSettings: leastWork?.settings ?? 0,
      leastPasses: leastWork?.passes ?? 0,
    },
  };
}
