import type { CuttingPlan } from '../cutting/index.ts';
import { assert } from '../problem/index.ts';
import { replay } from '../replay/index.ts';
import { costUnitOf, shownCost } from '../stash/index.ts';
import { type Leftover, type Step, stepsFor } from '../trimming/index.ts';
import type { CardSet } from './cardSet.ts';
import type { PaperTask } from './cuttingTask.ts';
import type { Piece } from './piece.ts';
import type { PaperOutcome, Plan, PlannedSheet } from './plan.ts';
import { planRecord, replayConditions } from './planRecord.ts';
import { sheetsToCut, trimmingOf } from './sheetsToCut.ts';

/** How one paper's sheets are cut, as a tree for each. */
export interface CutPaper {
  readonly kind: 'plan';
  readonly paper: string;
  readonly paperTask: PaperTask;
  readonly plan: CuttingPlan;
  /** Settings, and with so many of them passes, that no way at this cost has fewer of; 0: nothing is known. */
  readonly leastWork?: { readonly settings: number; readonly passes: number };
}

/**
 * The plan of a set whose papers have all been cut, paper after paper, with steps for the hand; replayed before it
 * is returned, and an assertion fails when it does not come out. With `quick` the steps are in the first good order
 * that is found.
 */
export function assembledPlan(
  { layout, trimmer }: Pick<CardSet, 'layout' | 'trimmer'>,
  pieces: readonly Piece[],
  papers: readonly CutPaper[],
  { quick = false } = {},
): Plan {
  const sheets: PlannedSheet[] = [];
  const steps: Step[] = [];
  const finished = new Map<string, string>();
  const leftovers: Leftover[] = [];
  const outcomes = new Map<string, PaperOutcome>();
  for (const { paper: id, paperTask: cut, plan, leastWork } of papers) {
    const paper = layout.papers.get(id)!;
    const toCut = sheetsToCut({ paper: id, paperTask: cut }, plan.patterns, paper);
    const trimmed = stepsFor(toCut, trimmer, { ...trimmingOf(layout), firstStep: steps.length + 1, quick });
    sheets.push(...toCut.map((sheet) => ({ id: sheet.id, paper: id, stock: sheet.stock, size: sheet.size })));
    steps.push(...trimmed.steps);
    for (const [workpiece, item] of trimmed.finished) finished.set(workpiece, cut.pieces[item]!.id);
    leftovers.push(...trimmed.leftovers);
    const unit = costUnitOf(paper);
    outcomes.set(id, {
      ...trimmed.effort,
      sheets: toCut.length,
      cost: shownCost(plan.cost, unit),
      bound: shownCost(plan.bound, unit),
      proved: plan.cost === plan.bound,
      measuredIn: unit,
      leastSettings: leastWork?.settings ?? 0,
      leastPasses: leastWork?.passes ?? 0,
    });
  }
  const plan: Plan = {
    kind: 'plan',
    cards: layout.cards,
    pieces,
    sheets,
    steps,
    finished,
    leftovers,
    papers: outcomes,
  };
  const faults = replay(planRecord(plan), replayConditions(layout, trimmer));
  assert(faults.length === 0, 'A plan comes out when it is followed', { faults: faults.slice(0, 5) });
  return plan;
}
