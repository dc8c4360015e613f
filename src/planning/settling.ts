import { type CuttingAnswer, type CuttingPlan, firstPlan, planCuts } from '../cutting/index.ts';
import type { Arrangement, DealtRun, Layout, Part } from '../layout/index.ts';
import type { Paper } from '../stash/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import type { CardSet } from './cardSet.ts';
import { paperTask } from './cuttingTask.ts';
import { givesAll, whetherOnly } from './givesAll.ts';
import { neverReasons } from './never.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';
import type { Dealing, Plan } from './plan.ts';
import type { SetToPlan } from './planSet.ts';

/**
 * The set with every part that is cut from leftovers given its papers: of each paper in the order of its list as many
 * cards as come for nothing beside all that is cut from it anyway, for the paper then costs no more and takes no more
 * sheets. What no leftover gives is cut from the first paper of the list that has sheets for it. Parts are settled from
 * the bottom of the pile, each beside those before it.
 *
 * All pieces of a part on one card are of one paper. The set itself where nothing is to be settled.
 */
export function settledSet<Set extends SetToPlan>(set: Set): Set {
  return settledWith(set, {
    cut: (paper, pieces) => cutBest(paper, pieces, set),
    gives: (paper, pieces) => givesAll(paper, pieces, set) === 'yes',
  });
}

/** As `settledSet`, but by what is found at once: what comes for nothing may be more. */
export function quicklySettledSet<Set extends CardSet>(set: Set): Set {
  const cut = (paper: Paper, pieces: readonly Piece[]) => cutAtOnce(paper, pieces, set.trimmer);
  return settledWith(set, { cut, gives: (paper, pieces) => cut(paper, pieces) !== null });
}

/** A set as a plan has settled it; parts that the plan knows nothing of stay as they are. */
export function settledBy<Made extends { readonly layout: Layout; readonly arrangement: Arrangement }>(
  made: Made,
  dealt: Dealing | undefined,
): Made {
  if (dealt === undefined || dealt.size === 0) return made;
  const { layout, arrangement } = made;
  const parts = layout.parts.map((part): Part => {
    const runs = dealt.get(part.id);
    return runs === undefined || part.from === undefined || part.settled !== undefined
      ? part
      : settledPart(part, runs);
  });
  return {
    ...made,
    layout: { ...layout, parts },
    arrangement: {
      ...arrangement,
      parts: arrangement.parts.map((arranged, index) => ({ ...arranged, part: parts[index]! })),
    },
  };
}

/** How the parts from leftovers are dealt in a layout that is settled, to go into its plan. */
export function dealingOf({ parts, cards }: Layout): Pick<Plan, 'dealt'> {
  const settled = parts.filter((part) => part.settled !== undefined);
  return settled.length === 0
    ? {}
    : { dealt: new Map(settled.map((part) => [part.id, firstRuns(part.settled ?? [], cards)])) };
}

function settledPart(part: Part, runs: readonly DealtRun[]): Part {
  return {
    ...part,
    papers: runs.flatMap(({ paper, cards }) => Array.from({ length: cards }, () => paper)),
    settled: runs,
  };
}

/** The runs of the first cards: a plan of fewer deals the papers of these. */
function firstRuns(runs: readonly DealtRun[], cards: number): readonly DealtRun[] {
  let left = cards;
  return runs.flatMap((run) => {
    const taken = Math.min(left, run.cards);
    left -= taken;
    return taken === 0
      ? []
      : [{ ...run, cards: taken, beyond: Math.max(0, run.beyond - (run.cards - taken)) }];
  });
}

/** How it is found out what the sheets of a paper give. */
interface Judge {
  /** The cheapest way that is found; `null`: none. */
  readonly cut: (paper: Paper, pieces: readonly Piece[]) => Cut | null;
  readonly gives: (paper: Paper, pieces: readonly Piece[]) => boolean;
}

interface Cut {
  readonly cost: number;
  readonly sheets: number;
}

function settledWith<Set extends CardSet>(set: Set, judge: Judge): Set {
  const open = set.layout.parts.filter((part) => part.from !== undefined && part.settled === undefined);
  if (open.length === 0) return set;
  let settled: Set = set;
  for (const part of open) {
    // What is not settled yet is not cut beside it.
    const others = settled.layout.parts.filter(
      ({ from, settled: is }) => from === undefined || is !== undefined,
    );
    const beside = piecesOf(
      { ...settled.layout, parts: others },
      {
        ...settled.arrangement,
        parts: settled.arrangement.parts.filter(({ part: { id } }) =>
          others.some((other) => other.id === id),
        ),
      },
    );
    const runs = dealtOut(settled, part, beside, judge);
    settled = settledBy(settled, new Map([[part.id, runs]]));
  }
  return settled;
}

/** Of which papers one part is cut, card after card. */
function dealtOut(set: CardSet, part: Part, beside: readonly Piece[], judge: Judge): readonly DealtRun[] {
  const { layout } = set;
  const papers = [...new Set(part.papers)].map((id) => layout.papers.get(id)!);
  let left = layout.cards;
  const free = new Map<string, number>();
  const ownOf = (paper: Paper) => beside.filter(({ paper: id }) => id === paper.id);
  const first = () => free.size === 0;
  for (const paper of papers) {
    const own = ownOf(paper);
    // A paper that nothing else is cut from has no leftovers, nor has one that is short of that.
    const cut = left === 0 || own.length === 0 ? null : judge.cut(paper, own);
    if (cut === null) continue;
    const comes = (cards: number) => {
      const more = judge.cut(paper, [...own, ...piecesFor(set, part, paper, { cards, first: first() })]);
      return more !== null && more.cost <= cut.cost && more.sheets <= cut.sheets;
    };
    const cards = mostThat(comes, left);
    if (cards > 0) free.set(paper.id, cards);
    left -= cards;
  }
  const runs = [...free].map(([paper, cards]) => ({ paper, cards, beyond: 0 }));
  if (left === 0) return runs;
  const giving = papers.find((paper) => {
    const cards = left + (free.get(paper.id) ?? 0);
    const isFirst = first() || runs[0]!.paper === paper.id;
    return judge.gives(paper, [...ownOf(paper), ...piecesFor(set, part, paper, { cards, first: isFirst })]);
  });
  const { id } = giving ?? papers[0]!;
  const known = runs.some(({ paper }) => paper === id);
  return known
    ? runs.map((run) => (run.paper === id ? { ...run, cards: run.cards + left, beyond: left } : run))
    : [...runs, { paper: id, cards: left, beyond: left }];
}

/** The pieces of a part for so many cards from one paper; the spares are of the first paper that is dealt. */
function piecesFor(
  { layout, arrangement }: Pick<CardSet, 'layout' | 'arrangement'>,
  part: Part,
  paper: Paper,
  { cards, first }: { readonly cards: number; readonly first: boolean },
): readonly Piece[] {
  const one: Part = { ...part, papers: [paper.id], spare: first ? part.spare : 0 };
  const arranged = arrangement.parts.filter(({ part: { id } }) => id === part.id);
  const bought = { ...layout.base, papers: [] };
  return piecesOf(
    { ...layout, cards, base: bought, parts: [one] },
    { ...arrangement, parts: arranged.map((each) => ({ ...each, part: one })) },
  );
}

/** The most, up to `enough`, of what comes with all that is less, by doubling and halving. */
function mostThat(comes: (amount: number) => boolean, enough: number): number {
  let most = 0;
  let refused = enough + 1;
  for (let step = 1; refused - most > 1; ) {
    const amount = step > 0 ? Math.min(most + step, refused - 1) : Math.floor((most + refused) / 2);
    if (comes(amount)) {
      most = amount;
      step *= 2;
    } else {
      refused = amount;
      step = 0;
    }
  }
  return most;
}

function cutBest(paper: Paper, pieces: readonly Piece[], { trimmer, solver }: SetToPlan): Cut | null {
  if (neverReasons(paper, pieces, trimmer).size > 0) return null;
  return cutOf(planCuts(paperTask(paper, pieces, trimmer).task, solver, whetherOnly));
}

function cutAtOnce(paper: Paper, pieces: readonly Piece[], trimmer: Trimmer | null): Cut | null {
  if (neverReasons(paper, pieces, trimmer).size > 0) return null;
  return cutOf(firstPlan(paperTask(paper, pieces, trimmer).task));
}

function cutOf(answer: CuttingAnswer | CuttingPlan | null): Cut | null {
  if (answer === null || answer.kind === 'short') return null;
  return { cost: answer.cost, sheets: answer.patterns.reduce((sum, { times }) => sum + times, 0) };
}
