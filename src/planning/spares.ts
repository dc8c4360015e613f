import { type CuttingAnswer, type CuttingPlan, planCuts } from '../cutting/index.ts';
import type { Layout } from '../layout/index.ts';
import type { Size } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { costUnitOf, exactCostOf, type Paper, shownCost } from '../stash/index.ts';
import { assembledPlan } from './assembledPlan.ts';
import { paperTask } from './cuttingTask.ts';
import { whetherOnly } from './givesAll.ts';
import { kindlyCut } from './kindness.ts';
import { largestKept } from './largestKept.ts';
import type { Piece } from './piece.ts';
import type { Plan } from './plan.ts';
import type { SetToPlan } from './planSet.ts';

/** Spares of one kind of piece: how many come for nothing, and what one more than that costs. */
export interface PieceSpares {
  /** Id of the piece. */
  readonly piece: string;
  readonly paper: string;
  readonly risk: Risk;
  /** How many more than needed the plan makes as it is. */
  readonly made: number;
  /**
   * How many more than needed come for nothing, those of the pieces named before it among them: the paper then costs
   * no more and takes no more sheets. At most as many as the set needs of the piece.
   */
  readonly offered: number;
  /** Whether it is proved that no more come for nothing; not asked where `offered` is as many as the set needs. */
  readonly proved: boolean;
  /** Passes that the paper takes more than in the plan, once these spares and those named before are made. */
  readonly passes: number;
  /** The largest leftover of the paper that is kept then; `null`: none. Spares are cut from what else would be kept. */
  readonly leftover: Size | null;
  /** One spare more than those offered; `null` where that was not asked. */
  readonly next: NextSpare | null;
}

/** What is likely to be spoiled at the table, the riskiest first. */
export const risks = ['torn', 'die-cut', 'stamped', 'plain'] as const;

export type Risk = (typeof risks)[number];

/** What one more spare takes over the plan. */
export type NextSpare =
  | {
      readonly kind: 'costs';
      /** In the unit that the paper's cost is measured in. */
      readonly cost: number;
      /** Whole sheets more; may be negative where other sheets are taken. */
      readonly sheets: number;
      readonly scraps: number;
      /** Whether no plan with that spare costs less or, at that cost, takes fewer sheets. */
      readonly proved: boolean;
    }
  /** The papers on hand do not give it, or no way was found. */
  | { readonly kind: 'none'; readonly proved: boolean };

/**
 * The spares that a plan could make for nothing, and the price of one more: for each paper in the layout's order, its
 * torn pieces first, then what is die-cut, then what is stamped, then the rest; within these the piece with the
 * fewest spares for its number, then by the layout's order. What is offered of one piece is made before the next is
 * looked at, so all that is offered can be had at once; every offer has been planned and replayed.
 *
 * `plan` is what `planSet` made of the same set. No paper is planned more than `mostPlans` times: what is not known
 * by then is left out.
 */
export function sparesOf(set: SetToPlan, plan: Plan): readonly PieceSpares[] {
  return [...plan.papers.keys()].flatMap((id) => paperSpares(set, plan, set.layout.papers.get(id)!));
}

/** How many of each piece are offered, by its id: what `planSet` may be asked to make. */
export function offeredOf(spares: readonly PieceSpares[]): ReadonlyMap<string, number> {
  return new Map(spares.flatMap(({ piece, offered }) => (offered > 0 ? [[piece, offered]] : [])));
}

/** How often one paper is planned again to find its spares. */
const mostPlans = 24;

/** A paper that so many pieces are cut from takes long to plan again and again. */
const mostPieces = 2_000;

function paperSpares(set: SetToPlan, plan: Plan, paper: Paper): readonly PieceSpares[] {
  const pieces = plan.pieces.filter((piece) => piece.paper === paper.id);
  if (pieces.reduce((sum, { need }) => sum + need, 0) > mostPieces) return [];
  const made = surplusOf(plan, pieces);
  const paperAgain = new PaperAgain(set, plan, { paper, pieces });
  const taken = pieces.map(() => 0);
  const spares: PieceSpares[] = [];
  for (const index of offeringOrder(set.layout, pieces, made)) {
    const { id, need } = pieces[index]!;
    const withMore = (amount: number) => taken.with(index, amount);
    // The plan itself shows that what it makes can be had, as long as nothing else was offered.
    const given = taken.every((count, other) => count <= made[other]!) ? made[index]! : 0;
    const found = mostFor({ given, enough: need, guess: paperAgain.room(taken, index) }, (amount) =>
      paperAgain.comesForNothing(withMore(amount)),
    );
    if (found === null) break;
    taken[index] = found.most;
    const refused = found.refused === null ? null : paperAgain.answerFor(withMore(found.refused));
    spares.push({
      piece: id,
      paper: paper.id,
      risk: riskOf(set.layout, pieces[index]!),
      made: made[index]!,
      offered: found.most,
      proved: refused !== null && paperAgain.refutes(refused),
      ...paperAgain.outcomeOf(taken, made),
      next: refused === null ? null : paperAgain.priceOf(refused),
    });
  }
  return spares;
}

/** How many more of each piece the plan makes than are needed. */
function surplusOf(plan: Plan, pieces: readonly Piece[]): readonly number[] {
  const counts = new Map<string, number>();
  for (const piece of plan.finished.values()) counts.set(piece, (counts.get(piece) ?? 0) + 1);
  return pieces.map(({ id, need }) => (counts.get(id) ?? 0) - need);
}

/** Indexes of the pieces in the order in which spares are offered. */
function offeringOrder(layout: Layout, pieces: readonly Piece[], made: readonly number[]): readonly number[] {
  const ranks = pieces.map((piece) => risks.indexOf(riskOf(layout, piece)));
  const shares = pieces.map(({ need, spare }, index) => (spare + made[index]!) / Math.max(1, need - spare));
  return pieces
    .map((_, index) => index)
    .sort((a, b) => ranks[a]! - ranks[b]! || shares[a]! - shares[b]! || a - b);
}

function riskOf(layout: Layout, { part: id }: Piece): Risk {
  const part = layout.parts.find((candidate) => candidate.id === id);
  if (part === undefined) return 'plain';
  if (Object.values(part.torn).some((depth) => depth > 0)) return 'torn';
  if (part.dieCut) return 'die-cut';
  return part.stamped ? 'stamped' : 'plain';
}

/**
 * The most of a piece that `comes` says yes to, by halving, with the least that it was seen to refuse (`null` when
 * that is not the next one: the most is `enough`, or no more may be asked). `null` when nothing could be asked.
 *
 * One more than `given` is asked first, since mostly there is no room; then up to `guess`, beyond which a yes is
 * unlikely.
 */
function mostFor(
  { given, enough, guess }: { readonly given: number; readonly enough: number; readonly guess: number },
  comes: (amount: number) => boolean | null,
): { readonly most: number; readonly refused: number | null } | null {
  let most = given;
  let refused: number | null = null;
  while (most < enough && refused !== most + 1) {
    const end = refused ?? Math.max(most, Math.min(enough, guess)) + 1;
    const amount: number =
      most === given ? most + 1 : Math.max(most + 1, end > enough ? enough : Math.floor((most + end) / 2));
    const answer = comes(amount);
    if (answer === null) return most === 0 && refused === null ? null : { most, refused: null };
    if (answer) most = amount;
    else refused = amount;
  }
  return { most, refused: refused === most + 1 ? refused : null };
}

/** One paper planned again with more pieces than the set needs, each request once. */
class PaperAgain {
  private readonly answers = new Map<string, CuttingAnswer>();
  private readonly unit;
  private readonly cost: number;
  private readonly sheets: number;
  private readonly scraps: number;
  private readonly area: number;

  constructor(
    private readonly set: SetToPlan,
    private readonly plan: Plan,
    private readonly of: { readonly paper: Paper; readonly pieces: readonly Piece[] },
  ) {
    const { paper } = of;
    this.unit = costUnitOf(paper);
    const used = plan.sheets
      .filter((sheet) => sheet.paper === paper.id)
      .map(({ stock }) => paper.sheets[stock]!);
    this.cost = used.reduce((sum, sheet) => sum + exactCostOf(sheet, this.unit), 0);
    this.sheets = used.length;
    this.scraps = used.filter(({ scrap }) => scrap).length;
    this.area = used.reduce((sum, { size }) => sum + size.width * size.height, 0);
  }

  /** How many more of a piece there is room for by area alone, in sheets such as the plan takes. */
  room(taken: readonly number[], index: number): number {
    const { pieces } = this.of;
    const used = pieces.reduce(
      (sum, { size, need }, other) =>
        sum + size.width * size.height * (need + (other === index ? 0 : taken[other]!)),
      0,
    );
    const { width, height } = pieces[index]!.size;
    return Math.max(0, Math.floor((this.area - used) / (width * height)));
  }

  /** Whether so many more of each piece cost no more and take no more sheets; `null`: no more may be asked. */
  comesForNothing(more: readonly number[]): boolean | null {
    const answer = this.answerFor(more);
    return answer === null ? null : this.isFree(answer);
  }

  answerFor(more: readonly number[]): CuttingAnswer | null {
    const known = this.answers.get(more.join());
    if (known !== undefined) return known;
    if (this.answers.size >= mostPlans) return null;
    const { paper } = this.of;
    const { trimmer, solver } = this.set;
    const answer = planCuts(paperTask(paper, this.raised(more), trimmer).task, solver, whetherOnly);
    this.answers.set(more.join(), answer);
    return answer;
  }

  /** Whether the answer proves that its pieces do not come for nothing. */
  refutes(answer: CuttingAnswer): boolean {
    if (answer.kind === 'short') return answer.proved;
    if (answer.bound > this.cost) return true;
    return answer.bound === this.cost && answer.cost === this.cost && answer.sheetsBound > this.sheets;
  }

  priceOf(answer: CuttingAnswer): NextSpare {
    if (answer.kind === 'short') return { kind: 'none', proved: answer.proved };
    const { paper } = this.of;
    const { stocks } = paperTask(paper, this.of.pieces, this.set.trimmer);
    const scraps = answer.patterns.reduce(
      (sum, { sheet, times }) => sum + (paper.sheets[stocks[sheet]!]!.scrap ? times : 0),
      0,
    );
    const sheets = sheetsOf(answer);
    return {
      kind: 'costs',
      cost: shownCost(answer.cost - this.cost, this.unit),
      sheets: sheets - scraps - (this.sheets - this.scraps),
      scraps: scraps - this.scraps,
      proved: answer.cost === answer.bound && answer.sheetsBound === sheets,
    };
  }

  /** What it takes to make so many more: the plan itself where it does already, else a new cutting, replayed. */
  outcomeOf(more: readonly number[], made: readonly number[]): Pick<PieceSpares, 'passes' | 'leftover'> {
    const { paper } = this.of;
    if (more.every((count, index) => count <= made[index]!))
      return { passes: 0, leftover: largestKept(this.plan, paper.id) };
    const answer = this.answerFor(more);
    assert(answer?.kind === 'plan' && this.isFree(answer), 'Spares that are offered were planned', { more });
    const raised = this.raised(more);
    const paperCut = paperTask(paper, raised, this.set.trimmer);
    const cut = { kind: 'plan' as const, paper: paper.id, paperTask: paperCut, plan: answer };
    const again = assembledPlan(this.set, raised, [kindlyCut(this.set, cut, spareWork)]);
    return {
      passes: again.papers.get(paper.id)!.passes - this.plan.papers.get(paper.id)!.passes,
      leftover: largestKept(again, paper.id),
    };
  }

  private isFree(answer: CuttingAnswer): boolean {
    return answer.kind === 'plan' && answer.cost <= this.cost && sheetsOf(answer) <= this.sheets;
  }

  private raised(more: readonly number[]): readonly Piece[] {
    return this.of.pieces.map((piece, index) => ({ ...piece, need: piece.need + more[index]! }));
  }
}

/** Looks at a cut for one count of passes; less than a plan has, since several are counted. */
const spareWork = 1_500_000;

function sheetsOf(plan: CuttingPlan): number {
  return plan.patterns.reduce((sum, { times }) => sum + times, 0);
}
