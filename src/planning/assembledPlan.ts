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

/** How one paper's sheets are cut, as a tree for each. */
export interface CutPaper {
  readonly kind: 'plan';
  readonly paper: string;
  readonly paperTask: PaperTask;
  readonly plan: CuttingPlan;
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
  for (const { paper: id, paperTask: cut, plan } of papers) {
    const paper = layout.papers.get(id)!;
    const toCut = plan.patterns.flatMap(({ sheet, times, tree }) => {
      const stock = cut.stocks[sheet]!;
      const { size, margin } = paper.sheets[stock]!;
      return Array.from({ length: times }, () => ({ stock, size, squaring: margin, tree }));
    });
    const named = toCut.map((sheet, index) => ({ ...sheet, id: `${id}-${index + 1}` }));
    const trimmed = stepsFor(named, trimmer, { firstStep: steps.length + 1, quick });
    sheets.push(...named.map((sheet) => ({ id: sheet.id, paper: id, stock: sheet.stock, size: sheet.size })));
    steps.push(...trimmed.steps);
    for (const [workpiece, item] of trimmed.finished) finished.set(workpiece, cut.pieces[item]!.id);
    leftovers.push(...trimmed.leftovers);
    const unit = costUnitOf(paper);
    outcomes.set(id, {
      ...trimmed.effort,
      sheets: named.length,
      cost: shownCost(plan.cost, unit),
      bound: shownCost(plan.bound, unit),
      proved: plan.cost === plan.bound,
      measuredIn: unit,
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
