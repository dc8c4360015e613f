import type { Layout } from '../layout/index.ts';
import {
  type CostUnit,
  costUnitOf,
  exactCostOf,
  exactOfShown,
  type Paper,
  shownCost,
} from '../stash/index.ts';
import { effortOf, type Trimmer } from '../trimming/index.ts';
import { type PaperTask, paperTask } from './cuttingTask.ts';
import { type Lying, lyingOf } from './onTable.ts';
import type { Piece } from './piece.ts';
import type { PaperOutcome, PlannedSheet } from './plan.ts';
import type { PlannedPaper } from './plannedPaper.ts';
import type { TableNow } from './tableNow.ts';

/** One paper as it lies on the table while a plan is cut. */
export interface PaperOnTable {
  /** With its stocks as they are now, those on the table last. */
  readonly paper: Paper;
  /** How many of its stocks are the layout's own. */
  readonly own: number;
  /** In the order of its other stocks. */
  readonly lying: readonly Lying[];
  /** What of it is finished, with its stock. */
  readonly finished: readonly { readonly lying: Lying; readonly piece: string; readonly stock: number }[];
  /** Sheets of the plan in hand that are whole. */
  readonly whole: readonly PlannedSheet[];
  /** Workpieces that the plan in hand was to cut further, or that are finished. */
  readonly toCut: ReadonlySet<string>;
  readonly highestSheet: number;
  /** Whether something was found of it. */
  readonly hasFound: boolean;
  /** What the plan in hand has left to do. */
  readonly left: Pick<PlannedPaper, 'steps' | 'finished' | 'leftovers'>;
  /** What it came to when it began; `null`: nothing was cut of this paper. */
  readonly planned: PaperOutcome | null;
  /** Unit of `planned`, and what has been spent since in the paper's present unit, as a whole number. */
  readonly spent: number;
}

/** One paper of the table; `layout` is the layout on the table (`layoutOnTable`). */
export function onTableOf(layout: Layout, table: TableNow, id: string): PaperOnTable {
  const { plan } = table.inHand;
  const paper = layout.papers.get(id)!;
  const lying = lyingOf(table.onTable, id);
  const own = paper.sheets.length - lying.length;
  const unit = costUnitOf(paper);
  const whole = table.whole.filter((sheet) => sheet.paper === id);
  const stays = new Set([
    ...whole.map((sheet) => sheet.id),
    ...(table.spoiled.get(id) ?? []).map((thing) => thing.id),
  ]);
  const begun = plan.sheets.filter(
    (sheet) => sheet.paper === id && sheet.stock < own && !stays.has(sheet.id),
  );

  const steps = table.toDo.filter(({ step }) => table.paperOfStep.get(step) === id);
  const ids = new Set([...lying.map((thing) => thing.id), ...whole.map((sheet) => sheet.id)]);
  for (const { gives, rest } of steps)
    for (const made of [...gives.flat(), ...rest]) if (made !== null) ids.add(made);
  const made = new Set(steps.flatMap(({ gives, rest }) => [...gives.flat(), ...rest]));
  return {
    paper,
    own,
    lying,
    finished: lying.flatMap((thing, index) => {
      const piece = table.finished.get(thing.id);
      return piece === undefined ? [] : [{ lying: thing, piece, stock: own + index }];
    }),
    whole,
    toCut: new Set([...plan.steps.flatMap(({ take }) => take), ...plan.finished.keys()]),
    highestSheet: table.onTable.sheets.get(id) ?? 0,
    hasFound: table.found.has(id),
    left: {
      steps,
      finished: new Map([...plan.finished].filter(([workpiece]) => ids.has(workpiece))),
      leftovers: plan.leftovers.filter((leftover) => made.has(leftover.id)),
    },
    planned: plan.papers.get(id) ?? null,
    spent: begun.reduce((sum, { stock }) => sum + exactCostOf(paper.sheets[stock]!, unit), 0),
  };
}

/**
 * The rest of the plan in hand for one paper, whether or not it gives all that is needed. What is proved of the plan
 * stays proved: whoever could go on for less from this table could have planned the whole for less. `bound`, a whole
 * number in the paper's unit, is taken instead where that does not hold.
 */
export function goingOn(
  on: PaperOnTable,
  bound?: number,
): { readonly share: PlannedPaper; readonly exactCost: number } {
  const { paper, own, lying, left, planned } = on;
  const unit = costUnitOf(paper);
  const used = new Set([...left.steps.flatMap(({ take }) => take), ...left.finished.keys()]);
  const sheets = [
    ...on.whole.filter(({ id }) => used.has(id)),
    ...lying.flatMap(({ id, size }, index) =>
      used.has(id) ? [{ id, paper: paper.id, stock: own + index, size }] : [],
    ),
  ];
  const exactCost = sheets.reduce((sum, { stock }) => sum + exactCostOf(paper.sheets[stock]!, unit), 0);
  const least = bound ?? (planned === null ? 0 : exactBound(planned, paper, own) - on.spent);
  const exact = Math.min(exactCost, Math.max(0, least));
  const begun = lying.length > 0 || on.spent > 0 || planned === null;
  const share: PlannedPaper = {
    paper: paper.id,
    sheets,
    ...left,
    outcome: {
      ...effortOf(left.steps),
      sheets: sheets.length,
      cost: shownCost(exactCost, unit),
      bound: shownCost(exact, unit),
      proved: exact === exactCost,
      measuredIn: unit,
      // The bounds on the work are of the paper as a whole.
      leastSettings: begun ? 0 : planned.leastSettings,
      leastPasses: begun ? 0 : planned.leastPasses,
    },
  };
  return { share, exactCost };
}

/** A bound as a whole number of the unit that the paper's cost is measured in now, workpieces among its sheets. */
function exactBound({ bound, measuredIn }: PaperOutcome, paper: Paper, own: number): number {
  const exact = exactOfShown(bound, measuredIn);
  const unit: CostUnit = costUnitOf(paper);
  if (unit === measuredIn || own === 0) return exact;
  // Sheets of one size counted until there were workpieces beside them.
  return exact * exactCostOf({ ...paper.sheets[0]!, scrap: false }, unit);
}

/** The task of cutting what is still needed from what lies there and what is whole; finished pieces stay as they are. */
export function restOf(on: PaperOnTable, needed: readonly Piece[], trimmer: Trimmer | null): PaperTask {
  const made = new Map<string, number>();
  for (const { piece } of on.finished) made.set(piece, (made.get(piece) ?? 0) + 1);
  const rest = needed
    .map((piece) => ({ ...piece, need: piece.need - (made.get(piece.id) ?? 0) }))
    .filter(({ need }) => need > 0);
  return paperTask(toCutFrom(on), rest, trimmer);
}

/** The paper with only what may be cut from: finished pieces are none of it. */
export function toCutFrom({ paper, finished }: PaperOnTable): Paper {
  const taken = new Set(finished.map(({ stock }) => stock));
  return {
    ...paper,
    sheets: paper.sheets.map((sheet, index) => (taken.has(index) ? { ...sheet, count: 0 } : sheet)),
  };
}

/** How many of each piece a paper's share of a plan makes, those that are finished already among them. */
export function madeBy({ finished }: Pick<PlannedPaper, 'finished'>): ReadonlyMap<string, number> {
  const made = new Map<string, number>();
  for (const piece of finished.values()) made.set(piece, (made.get(piece) ?? 0) + 1);
  return made;
}
