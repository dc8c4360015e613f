import { planCuts } from '../cutting/index.ts';
import type { Layout } from '../layout/index.ts';
import { joinedPlan } from './assembledPlan.ts';
import { wantedOf } from './cardSet.ts';
import { whetherOnly } from './givesAll.ts';
import { kindlyCut } from './kindness.ts';
import { type Lying, layoutOnTable, type OnTable } from './onTable.ts';
import type { PaperOnTable } from './paperOnTable.ts';
import { goingOn, madeBy, onTableOf, restOf } from './paperOnTable.ts';
import type { Piece } from './piece.ts';
import type { Plan, PlannedSheet } from './plan.ts';
import { type CutPaper, type PlannedPaper, plannedPaper } from './plannedPaper.ts';
import type { SetToPlan } from './planSet.ts';
import type { TableNow } from './tableNow.ts';

/** A set planned again from the table as it is. */
export interface Recut {
  readonly kind: 'recut';
  /** What is still to be cut; its sheets are whole ones and what lies on the table, finished pieces too. */
  readonly plan: Plan;
  /** The table that the plan begins with. */
  readonly onTable: OnTable;
  /** The layout with its papers as they lie there, in which the plan counts its stocks. */
  readonly layout: Layout;
  /** By paper, what has become of the plan that was cut by. */
  readonly papers: ReadonlyMap<string, PaperRecut>;
}

/** What has become of the plan for one paper. */
export interface PaperRecut {
  /** `goes on`: its steps are done as they were planned, those aside that nothing is left for. */
  readonly way: 'goes on' | 'again';
  /** Leftovers and found scraps that are cut into after all. */
  readonly reused: readonly Lying[];
  /** How many sheets, scraps aside, are begun beyond those that were still to be begun; negative where fewer are. */
  readonly moreSheets: number;
}

/** Papers that cannot give what is still needed, as they lie there. */
export interface ShortOnTable {
  readonly kind: 'short';
  readonly papers: readonly ShortPaperOnTable[];
}

export interface ShortPaperOnTable {
  readonly on: PaperOnTable;
  /** What is still to be cut of it. */
  readonly pieces: readonly Piece[];
  readonly proved: boolean;
}

/**
 * The set planned again from the table: papers whose plan still gives all that the cards need go on with it, since
 * spares are there to take the place of what is spoiled; the others are planned anew for the least cost, so that what
 * lies there is used first and a whole sheet is begun only where it must be, and then in the kindest way. What is
 * planned anew has the spares that the layout asks for, and of others what comes out. The plan in hand itself where
 * nothing was done and nothing is needed beyond it.
 *
 * `set` is the set as its layout says it, also where the plan in hand was such a plan itself. Every plan has been
 * replayed before it is returned.
 */
export function recutOnce(
  set: SetToPlan,
  table: TableNow,
  wanted: readonly Piece[] = wantedOf(set),
): Recut | ShortOnTable {
  const { plan, onTable: before } = table.inHand;
  const pieces = alsoPlanned(wanted, plan);
  const untouched = table.toDo === plan.steps && table.spoiled.size === 0 && table.found.size === 0;
  if (untouched && plan.cards === set.layout.cards && givesNeeds(plan, pieces)) {
    const papers = new Map([...plan.papers.keys()].map((id) => [id, asPlanned]));
    return { kind: 'recut', plan, onTable: before, layout: layoutOnTable(set.layout, before), papers };
  }

  const onTableSet = { ...set, layout: layoutOnTable(set.layout, table.onTable) };
  const answers = [...onTableSet.layout.papers.keys()].flatMap((id) => {
    const own = pieces.filter((piece) => piece.paper === id);
    if (own.length === 0 && !plan.papers.has(id)) return [];
    return [recutPaper(onTableSet, onTableOf(onTableSet.layout, table, id), own)];
  });
  const short = answers.filter((answer) => answer.kind === 'short');
  if (short.length > 0) return { kind: 'short', papers: short };

  // What is planned anew is numbered on, so that a number means one step for good.
  let firstStep = table.onTable.steps + 1;
  const planned = answers.flatMap((answer): { share: PlannedPaper; recut: PaperRecut }[] => {
    if (answer.kind === 'short') return [];
    if (answer.kind === 'goes on') return [{ share: answer.share, recut: asPlanned }];
    const { on, cut } = answer;
    const share = withFinished(
      plannedPaper(onTableSet, cut.plan.patterns.length === 0 ? cut : kindlyCut(onTableSet, cut), {
        firstStep,
        names: sheetNames(on),
      }),
      on,
    );
    firstStep += share.steps.length;
    return [{ share, recut: { way: 'again', ...comparedWith(on, share) } }];
  });
  const given = new Map(
    planned.flatMap(({ share }) => givenOf(pieces, share)).map((piece) => [piece.id, piece]),
  );
  return {
    kind: 'recut',
    plan: joinedPlan(
      onTableSet,
      pieces.map((piece) => given.get(piece.id) ?? piece),
      planned.map(({ share }) => share),
      { numberedOn: true },
    ),
    onTable: table.onTable,
    layout: onTableSet.layout,
    papers: new Map(planned.map(({ share, recut }) => [share.paper, recut])),
  };
}

const asPlanned: PaperRecut = { way: 'goes on', reused: [], moreSheets: 0 };

type PaperAnswer =
  | { readonly kind: 'goes on'; readonly share: PlannedPaper }
  | { readonly kind: 'again'; readonly on: PaperOnTable; readonly cut: CutPaper }
  | (ShortPaperOnTable & { readonly kind: 'short' });

function recutPaper(set: SetToPlan, on: PaperOnTable, own: readonly Piece[]): PaperAnswer {
  const { solver, trimmer, moreSpares } = set;
  const going = goingOn(on);
  const made = madeBy(going.share);
  const enough = own.every(({ id, need, spare }) => need - spare <= (made.get(id) ?? 0));
  if (enough) {
    const given = givenOf(own, going.share);
    const asPlannedFor = given.every(({ need }, index) => need === own[index]!.need);
    if (asPlannedFor && !on.hasFound) return { kind: 'goes on', share: going.share };
    // With fewer pieces or more to cut from, the plan's bound holds no more, but that of the answer does.
    const rest = restOf(on, given, trimmer);
    const answer = planCuts(rest.task, solver, whetherOnly);
    if (on.hasFound && answer.kind === 'plan' && answer.cost < going.exactCost)
      return { kind: 'again', on, cut: { kind: 'plan', paper: on.paper.id, paperTask: rest, plan: answer } };
    return { kind: 'goes on', share: goingOn(on, answer.kind === 'short' ? 0 : answer.bound).share };
  }

  const asked = own.map((piece) => {
    const more = Math.min(piece.spare, moreSpares?.get(piece.id) ?? 0);
    return { ...piece, need: piece.need - more, spare: piece.spare - more };
  });
  const rest = restOf(on, asked, trimmer);
  const answer = planCuts(rest.task, solver, whetherOnly);
  if (answer.kind === 'short') return { kind: 'short', on, pieces: rest.pieces, proved: answer.proved };
  return { kind: 'again', on, cut: { kind: 'plan', paper: on.paper.id, paperTask: rest, plan: answer } };
}

/** The pieces of a paper with as many needed as are given: what spares took the place of is needed no more. */
function givenOf(pieces: readonly Piece[], share: PlannedPaper): readonly Piece[] {
  const made = madeBy(share);
  return pieces
    .filter(({ paper }) => paper === share.paper)
    .map((piece) => {
      const need = Math.min(piece.need, made.get(piece.id) ?? 0);
      return { ...piece, need, spare: Math.max(0, piece.spare - (piece.need - need)) };
    });
}

/** Finished pieces lie there as they are: they are on the table when the plan begins and when it ends. */
function withFinished(share: PlannedPaper, on: PaperOnTable): PlannedPaper {
  const sheets = on.finished.map(({ lying, stock }) => ({
    id: lying.id,
    paper: lying.paper,
    stock,
    size: lying.size,
  }));
  return {
    ...share,
    sheets: [...sheets, ...share.sheets],
    finished: new Map([
      ...on.finished.map(({ lying, piece }) => [lying.id, piece] as const),
      ...share.finished,
    ]),
    outcome: { ...share.outcome, sheets: sheets.length + share.outcome.sheets },
  };
}

/** What lies there keeps its id, and so does a whole sheet of the plan in hand; others are numbered on. */
function sheetNames({ paper, own, lying, whole, highestSheet }: PaperOnTable): (stock: number) => string {
  const waiting = [...whole];
  let highest = highestSheet;
  return (stock) => {
    if (stock >= own) return lying[stock - own]!.id;
    const known = waiting.findIndex((sheet) => sheet.stock === stock);
    if (known >= 0) return waiting.splice(known, 1)[0]!.id;
    highest += 1;
    return `${paper.id}-${highest}`;
  };
}

function comparedWith(
  { paper, own, lying, whole, toCut }: PaperOnTable,
  share: PlannedPaper,
): Pick<PaperRecut, 'reused' | 'moreSheets'> {
  const cut = new Set(share.steps.flatMap(({ take }) => take));
  const wholeSheets = (sheets: readonly PlannedSheet[]) =>
    sheets.filter(({ stock }) => !paper.sheets[stock]!.scrap).length;
  return {
    reused: lying.filter(({ id }) => (cut.has(id) || share.finished.has(id)) && !toCut.has(id)),
    moreSheets: wholeSheets(share.sheets.filter(({ stock }) => stock < own)) - wholeSheets(whole),
  };
}

/** The pieces wanted, and those of the plan in hand that are wanted no more: what is made of them is there. */
function alsoPlanned(wanted: readonly Piece[], plan: Plan): readonly Piece[] {
  const more = plan.pieces.filter(({ id }) => !wanted.some((piece) => piece.id === id));
  return [...wanted, ...more.map((piece) => ({ ...piece, need: 0, spare: 0 }))];
}

/** Whether a plan is for all that the cards need of these pieces. */
function givesNeeds({ pieces }: Plan, needed: readonly Piece[]): boolean {
  const needs = new Map(pieces.map(({ id, need }) => [id, need]));
  return needed.every(({ id, need, spare }) => need - spare <= (needs.get(id) ?? 0));
}
