import { firstPlan, planCuts } from '../cutting/index.ts';
import type { Layout } from '../layout/index.ts';
import type { Paper } from '../stash/index.ts';
import { assembledPlan } from './assembledPlan.ts';
import { paperTask } from './cuttingTask.ts';
import { whetherOnly } from './givesAll.ts';
import { neverReasons } from './never.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';
import type { Plan } from './plan.ts';
import type { CutPaper } from './plannedPaper.ts';
import type { SetToPlan } from './planSet.ts';

/** The largest set that the papers of a layout allow, however many cards it asks for. */
export interface Enough {
  /** With all the spares that the layout asks for; `null`: nothing limits it. */
  readonly cards: number | null;
  /** Whether it is proved that a card more cannot be had; else no way was found. */
  readonly proved: boolean;
  /** Papers that are not enough for a card more, in the layout's order. */
  readonly limit: readonly string[];
  /** What each paper that something is cut from is enough for by itself, in the layout's order. */
  readonly papers: ReadonlyMap<string, EnoughOf>;
  /** A plan of the set, replayed but not made kind to cut; `null` for no card and where nothing limits. */
  readonly plan: Plan | null;
}

export interface EnoughOf {
  /** `null`: as many as anyone wants. */
  readonly cards: number | null;
  /** Whether it is proved that a card more cannot be had; not asked of a paper that is enough for many times the set. */
  readonly proved: boolean;
}

/** The most cards that a set may have. */
export const mostCards = 100_000;

/**
 * The largest set that these papers allow, with proof: fewer cards never need more of any piece, so each paper is
 * enough for all numbers of cards up to one, and the paper that is enough for the fewest limits the set.
 */
export function enoughFor(set: SetToPlan): Enough {
  const larger = (cards: number) => piecesOf({ ...set.layout, cards }, set.arrangement);
  // Every paper of a list has come to a card by then.
  const used = new Set(larger(mostCards).map(({ paper }) => paper));
  const looks = [...set.layout.papers.values()]
    .filter(({ id }) => used.has(id))
    .map((paper) => firstLook(paper, set));
  const found = new Map<string, EnoughOf>();
  // What gives least is looked at first: of a paper that is enough for many times as many cards no more is asked.
  let least = mostCards;
  for (const look of looks.toSorted((a, b) => a.most - b.most)) {
    const isAmple = look.most > ample * least && look.most !== Number.POSITIVE_INFINITY;
    const enough = isAmple ? { cards: look.most, proved: false } : enoughOf(look, set);
    found.set(look.paper.id, enough);
    least = Math.min(least, enough.cards ?? mostCards);
  }
  const papers = new Map(looks.map(({ paper: { id } }) => [id, found.get(id)!]));
  const counts = [...papers.values()].flatMap(({ cards }) => (cards === null ? [] : [cards]));
  if (counts.length === 0) return { cards: null, proved: true, limit: [], papers, plan: null };
  const cards = Math.min(...counts);
  const limiting = [...papers].filter(([, enough]) => enough.cards === cards);
  return {
    cards,
    proved: limiting.some(([, { proved }]) => proved),
    limit: cards === mostCards ? [] : limiting.map(([id]) => id),
    papers,
    plan: cards === 0 ? null : planFor(set, cards),
  };
}

/** A paper that is enough for so many times the set is ample. */
const ample = 4;

/** What can be told at once of how many cards a paper is enough for: `most` at least, and for fewer than `tooMany`. */
interface FirstLook {
  readonly paper: Paper;
  /** Infinite where nothing limits. */
  readonly most: number;
  readonly tooMany: number;
}

/** What the sheets cannot hold by their area, and what is found at once, leave little to ask the planner. */
function firstLook(paper: Paper, set: SetToPlan): FirstLook {
  const { trimmer } = set;
  const piecesFor = (cards: number) => piecesOfPaper({ ...set.layout, cards }, set, paper.id);
  if (isEndless(paper, piecesFor(mostCards), set)) {
    return { paper, most: Number.POSITIVE_INFINITY, tooMany: Number.POSITIVE_INFINITY };
  }
  const impossible = (cards: number) => {
    const pieces = piecesFor(cards);
    return areaWanting(paper, pieces) || neverReasons(paper, pieces, trimmer).size > 0;
  };
  const notAtOnce = (cards: number) => firstPlan(paperTask(paper, piecesFor(cards), trimmer).task) === null;
  const tooMany = leastThat(impossible, 0, mostCards + 1);
  return { paper, most: Math.max(0, leastThat(notAtOnce, 0, tooMany) - 1), tooMany };
}

/** How many cards one paper is enough for. */
function enoughOf({ paper, most: found, tooMany: refuted }: FirstLook, set: SetToPlan): EnoughOf {
  if (found === Number.POSITIVE_INFINITY) return { cards: null, proved: true };
  let most = found;
  let tooMany = refuted;
  let proved = tooMany <= mostCards;
  for (let step = 1; tooMany - most > 1; ) {
    const cards = step > 0 ? Math.min(most + step, tooMany - 1) : Math.floor((most + tooMany) / 2);
    const pieces = piecesOfPaper({ ...set.layout, cards }, set, paper.id);
    const answer = planCuts(paperTask(paper, pieces, set.trimmer).task, set.solver, whetherOnly);
    if (answer.kind === 'plan') {
      most = cards;
      step *= 2;
    } else {
      tooMany = cards;
      proved = answer.proved;
      step = 0;
    }
  }
  return { cards: most, proved: proved || most === mostCards };
}

/** The pieces of a set that one paper gives. */
export function piecesOfPaper(
  layout: Layout,
  { arrangement }: Pick<SetToPlan, 'arrangement'>,
  paper: string,
): readonly Piece[] {
  return piecesOf(layout, arrangement).filter((piece) => piece.paper === paper);
}

/** Whether the sheets of which there are as many as needed give every piece. */
function isEndless(paper: Paper, pieces: readonly Piece[], { trimmer, solver }: SetToPlan): boolean {
  const sheets = paper.sheets.filter(({ count }) => count === null);
  if (sheets.length === 0) return false;
  return pieces.every((piece) => {
    const { task } = paperTask({ ...paper, sheets }, [{ ...piece, need: 1 }], trimmer);
    return (
      neverReasons({ ...paper, sheets }, [piece], trimmer).size === 0 &&
      planCuts(task, solver, whetherOnly).kind === 'plan'
    );
  });
}

/** Whether the pieces are larger together than all the sheets on hand. */
function areaWanting(paper: Paper, pieces: readonly Piece[]): boolean {
  if (paper.sheets.some(({ count }) => count === null)) return false;
  const area = ({ width, height }: { readonly width: number; readonly height: number }, times: number) =>
    BigInt(width * height) * BigInt(times);
  const sheets = paper.sheets.reduce((sum, { size, count }) => sum + area(size, count ?? 0), 0n);
  return pieces.reduce((sum, { size, need }) => sum + area(size, need), 0n) > sheets;
}

/** The least number from `from` up that something holds for, where it holds for all larger ones; `to` where for none less. */
function leastThat(holds: (number: number) => boolean, from: number, to: number): number {
  let [low, high] = [from, to];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The plan of a set that the papers are known to be enough for; `null` should one not be found again. */
function planFor(set: SetToPlan, cards: number): Plan | null {
  const layout = { ...set.layout, cards };
  const pieces = piecesOf(layout, set.arrangement);
  const papers: CutPaper[] = [];
  for (const paper of layout.papers.values()) {
    const own = pieces.filter((piece) => piece.paper === paper.id);
    if (own.length === 0) continue;
    const cut = paperTask(paper, own, set.trimmer);
    const answer = firstPlan(cut.task) ?? planCuts(cut.task, set.solver, whetherOnly);
    if (answer.kind === 'short') return null;
    papers.push({ kind: 'plan', paper: paper.id, paperTask: cut, plan: answer });
  }
  return assembledPlan({ ...set, layout }, pieces, papers, { quick: true });
}
