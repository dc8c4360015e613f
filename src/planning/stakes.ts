import { firstPlan, planCuts } from '../cutting/index.ts';
import type { Paper, SheetStock } from '../stash/index.ts';
import { wantedOf } from './cardSet.ts';
import { paperTask } from './cuttingTask.ts';
import { type Verdict, whetherOnly } from './givesAll.ts';
import { layoutOnTable, type PlanInHand } from './onTable.ts';
import { goingOn, madeBy, onTableOf, type PaperOnTable, restOf, toCutFrom } from './paperOnTable.ts';
import type { Piece } from './piece.ts';
import type { Plan } from './plan.ts';
import type { PlannedPaper } from './plannedPaper.ts';
import type { SetToPlan } from './planSet.ts';
import { settledBy } from './settling.ts';
import { noMargin, nothingCut, tableNow } from './tableNow.ts';

/** What is at stake at one step of a plan. */
export interface StepStakes {
  readonly step: number;
  /** What is lost when one workpiece of it is spoiled, by piece id: of the workpiece that is hardest to make good. */
  readonly loses: ReadonlyMap<string, number>;
  readonly rescue: StakesRescue;
}

/**
 * How that can be made good, so that no card is wanting; the spares that the layout asks for are there for just that.
 * `spare`: the plan makes enough without it. `leftover`: from what else lies there then, and the sheets that the plan
 * begins anyway. `new sheet`: with a sheet on hand that the plan does not touch, where what lies there does not give it
 * at once. `none`: it cannot, a point of no return, which is proved. `unknown`: not found within the limit of work.
 */
export type StakesRescue =
  | { readonly kind: 'spare' | 'leftover' | 'new sheet' | 'unknown' }
  | {
      readonly kind: 'none';
      /** So many cards fewer can be made, at the fewest that was found. */
      readonly cardsFewer: number;
      /** Whether it is proved that no fewer are lost. */
      readonly proved: boolean;
    };

/**
 * For each step of a plan what is lost if it slips there, and whether that can be made good, from the table as it then
 * is: the steps of the paper before it done, one of its workpieces lost. What does no harm, or is cut anew at once from
 * a leftover or another sheet, is found without a search; else the paper is planned again, no more than
 * `mostPlans` times for each paper.
 *
 * `set` is the set as its layout says it.
 */
export function stakesOf(planned: SetToPlan, inHand: PlanInHand): readonly StepStakes[] {
  const set = settledBy(planned, inHand.plan.dealt);
  const papers = new Map<string, PaperStakes>();
  const { plan } = inHand;
  const destinies = destiniesOf(plan);
  const paperOf = new Map(plan.sheets.map(({ id, paper }) => [id, paper]));
  return plan.steps.map((step) => {
    const id = paperOf.get(step.take[0]!)!;
    for (const made of [...step.gives.flat(), ...step.rest]) if (made !== null) paperOf.set(made, id);
    const paper = papers.get(id) ?? new PaperStakes(set, inHand, { paper: id, destinies });
    papers.set(id, paper);
    return paper.at(step.step, step.take);
  });
}

/** How often one paper is planned again to find what is at stake. */
const mostPlans = 16;

/** A paper that so many pieces are cut from takes long to plan again and again. */
const mostPieces = 600;

/** From what can be made good most easily on. */
const ranks = ['spare', 'leftover', 'new sheet', 'unknown', 'none'] as const;

/** The steps of one paper, asked one after another. */
class PaperStakes {
  private readonly before = new Map<number, 'all'>();
  private readonly verdicts = new Map<string, Verdict>();
  private readonly pieces: readonly Piece[];
  private readonly paper: string;
  private readonly destinies: ReadonlyMap<string, number>;
  private plans: number;

  constructor(
    private readonly set: SetToPlan,
    private readonly inHand: PlanInHand,
    { paper, destinies }: { readonly paper: string; readonly destinies: ReadonlyMap<string, number> },
  ) {
    this.paper = paper;
    this.destinies = destinies;
    // Spares are there to be spoiled.
    this.pieces = inHand.plan.pieces
      .filter((piece) => piece.paper === paper)
      .map((piece) => ({ ...piece, need: piece.need - piece.spare }));
    const all = this.pieces.reduce((sum, { need }) => sum + need, 0);
    this.plans = all > mostPieces ? 0 : mostPlans;
  }

  /** What is at stake at the next step, which takes these workpieces. */
  at(step: number, take: readonly string[]): StepStakes {
    const seen = new Set<number>();
    let worst: StepStakes | null = null;
    for (const id of take) {
      // Workpieces that become the same leave the same table.
      const destiny = this.destinies.get(id)!;
      if (seen.has(destiny)) continue;
      seen.add(destiny);
      const table = tableNow(this.set.layout, this.inHand, {
        ...nothingCut,
        done: this.before,
        spoiled: [{ kind: 'workpiece', id }],
      });
      if ('problems' in table) continue;
      const on = onTableOf(layoutOnTable(this.set.layout, table.onTable), table, this.paper);
      const stakes = { step, loses: table.lost, rescue: this.rescue(on) };
      if (worst === null || compare(stakes, worst) > 0) worst = stakes;
    }
    this.before.set(step, 'all');
    return worst ?? { step, loses: new Map(), rescue: { kind: 'unknown' } };
  }

  private rescue(on: PaperOnTable): StakesRescue {
    const { share } = goingOn(on);
    const made = madeBy(share);
    const wanting = stillWanting(this.pieces, made);
    if (wanting.length === 0) return { kind: 'spare' };

    // At once: what the plan goes on with is left as it is, and only what is wanting is cut from what it leaves over.
    const left = leftOver(on, share);
    const more = untouched(on);
    if (this.atOnce({ ...on.paper, sheets: left }, wanting)) return { kind: 'leftover' };
    if (more.length > 0 && this.atOnce({ ...on.paper, sheets: [...left, ...more] }, wanting))
      return { kind: 'new sheet' };

    // Else all that is left to do is planned again.
    const { pieces: rest } = restOf(on, this.pieces, this.set.trimmer);
    const fromTable = this.gives(begunAnyway(on), rest);
    if (fromTable === 'yes') return { kind: 'leftover' };
    const withMore = more.length === 0 ? fromTable : this.gives(toCutFrom(on), rest);
    if (withMore === 'yes') return { kind: 'new sheet' };
    return withMore === 'no' ? this.fewerCards(on, made) : { kind: 'unknown' };
  }

  /** The most cards that come out after all, between what the plan still gives and one card fewer than were wanted. */
  private fewerCards(on: PaperOnTable, made: ReadonlyMap<string, number>): StakesRescue {
    const { layout, trimmer } = this.set;
    const piecesFor = (cards: number) =>
      wantedOf({ ...this.set, layout: { ...layout, cards } })
        .filter(({ paper }) => paper === this.paper)
        .map((piece) => ({ ...piece, need: piece.need - piece.spare }));
    const { cards: all } = this.inHand.plan;
    let most = 0;
    let tooMany = all;
    while (tooMany - most > 1) {
      const cards = Math.floor((most + tooMany) / 2);
      if (stillWanting(piecesFor(cards), made).length === 0) most = cards;
      else tooMany = cards;
    }
    tooMany = all;
    let proved = true;
    while (tooMany - most > 1) {
      const cards = Math.floor((most + tooMany) / 2);
      const verdict = this.gives(toCutFrom(on), restOf(on, piecesFor(cards), trimmer).pieces);
      if (verdict === 'yes') most = cards;
      else {
        tooMany = cards;
        proved = verdict === 'no';
      }
    }
    return { kind: 'none', cardsFewer: all - most, proved };
  }

  private atOnce(paper: Paper, wanting: readonly Piece[]): boolean {
    return firstPlan(paperTask(paper, wanting, this.set.trimmer).task) !== null;
  }

  /** Whether these sheets give these pieces; what was asked before is known, and nothing is asked beyond the limit. */
  private gives(paper: Paper, pieces: readonly Piece[]): Verdict {
    const { task } = paperTask(paper, pieces, this.set.trimmer);
    if (
      isLarger(
        task.items.map((item) => ({ ...item, count: item.need })),
        task.sheets,
      )
    )
      return 'no';
    const key = JSON.stringify([task.items, task.sheets.map((sheet) => JSON.stringify(sheet)).sort()]);
    const known = this.verdicts.get(key);
    if (known !== undefined) return known;
    if (this.plans === 0) return 'unknown';
    this.plans -= 1;
    const answer = planCuts(task, this.set.solver, whetherOnly);
    const verdict = answer.kind === 'plan' ? 'yes' : answer.proved ? 'no' : 'unknown';
    this.verdicts.set(key, verdict);
    return verdict;
  }
}

/** A number for each workpiece of a plan; equal ones for those of one step that become the same in the same way. */
function destiniesOf({ sheets, steps, finished }: Plan): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  const destinies = new Map<string, number>();
  const number = (key: string) => {
    const known = numbers.get(key) ?? numbers.size;
    numbers.set(key, known);
    return known;
  };
  const become = (id: string) => destinies.get(id) ?? number(`${finished.get(id) ?? ''}`);
  for (const { step, take, gives, rest } of steps.toReversed()) {
    for (const [index, id] of take.entries()) {
      const left = rest[index] ?? null;
      const made = gives[index]!.map(become).sort((a, b) => a - b);
      destinies.set(id, number(`${step}: ${made.join()} ${left === null ? '' : become(left)}`));
    }
  }
  for (const { id, stock } of sheets) {
    const destiny = destinies.get(id);
    if (destiny !== undefined) destinies.set(id, number(`sheet ${stock}: ${destiny}`));
  }
  return destinies;
}

/** Positive where the first is harder to make good, or equally hard and more is lost. */
function compare(a: StepStakes, b: StepStakes): number {
  const fewer = ({ rescue }: StepStakes) => (rescue.kind === 'none' ? rescue.cardsFewer : 0);
  const lost = ({ loses }: StepStakes) => [...loses.values()].reduce((sum, count) => sum + count, 0);
  return (
    ranks.indexOf(a.rescue.kind) - ranks.indexOf(b.rescue.kind) || fewer(a) - fewer(b) || lost(a) - lost(b)
  );
}

function stillWanting(pieces: readonly Piece[], made: ReadonlyMap<string, number>): readonly Piece[] {
  return pieces
    .map((piece) => ({ ...piece, need: piece.need - (made.get(piece.id) ?? 0) }))
    .filter(({ need }) => need > 0);
}

/** What the plan leaves over and what lies there already and is not to be cut, but for margins that were cut off. */
function leftOver(on: PaperOnTable, { steps, leftovers }: PlannedPaper): readonly SheetStock[] {
  const used = new Set([...steps.flatMap(({ take }) => take), ...on.left.finished.keys()]);
  const squared = new Set(
    steps.flatMap(({ squares, gives, rest }) => (squares === undefined ? [] : [...gives.flat(), ...rest])),
  );
  return [
    ...on.lying.filter(({ id }) => !used.has(id)),
    ...leftovers.filter(({ id }) => !squared.has(id)).map(({ size }) => ({ size, margin: noMargin })),
  ].map(({ size, margin }) => ({ size, margin, count: 1, price: null, grain: null, scrap: true }));
}

/** Whole sheets on hand that the plan does not begin. */
function untouched({ paper, own, whole }: PaperOnTable): readonly SheetStock[] {
  return paper.sheets.slice(0, own).flatMap((sheet, stock) => {
    const begun = whole.filter((one) => one.stock === stock).length;
    const count = sheet.count === null ? null : sheet.count - begun;
    return count === 0 ? [] : [{ ...sheet, count }];
  });
}

/** What may be cut from of the table and the whole sheets that the plan begins anyway. */
function begunAnyway(on: PaperOnTable): Paper {
  const paper = toCutFrom(on);
  const sheets = paper.sheets.map((sheet, stock) =>
    stock < on.own ? { ...sheet, count: on.whole.filter((one) => one.stock === stock).length } : sheet,
  );
  return { ...paper, sheets };
}

interface Many {
  readonly width: number;
  readonly height: number;
  readonly count: number | null;
}

/** Whether some rectangles are larger together than others; never where there are as many of these as needed. */
function isLarger(rectangles: readonly Many[], others: readonly Many[]): boolean {
  if (others.some(({ count }) => count === null)) return false;
  const area = (all: readonly Many[]) =>
    all.reduce((sum, { width, height, count }) => sum + BigInt(width * height) * BigInt(count ?? 0), 0n);
  return area(rectangles) > area(others);
}
