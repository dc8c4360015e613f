import { type LinearSolver, planCuts } from '../cutting/index.ts';
import { costUnitOf, shownCost } from '../stash/index.ts';
import { assembledPlan } from './assembledPlan.ts';
import { type CardSet, wantedOf } from './cardSet.ts';
import { paperTask } from './cuttingTask.ts';
import { whetherOnly } from './givesAll.ts';
import { kindlyCut } from './kindness.ts';
import { neverReasons } from './never.ts';
import { paperShortage, type ShortOf } from './paperShortage.ts';
import type { Piece } from './piece.ts';
import type { Plan } from './plan.ts';
import type { CutPaper } from './plannedPaper.ts';
import type { PlanningProgress } from './progress.ts';
import { settledSet } from './settling.ts';
import type { Nearest, Shortage } from './shortage.ts';

/** What a set is planned from. */
export interface SetToPlan extends CardSet {
  readonly solver: LinearSolver;
  /**
   * Called when a paper is begun and whenever more is known about it, within `planSet`; what it is told is never
   * part of the answer.
   */
  readonly onProgress?: (progress: PlanningProgress) => void;
}

/**
 * The cutting plan of a whole set: for each paper the least cost, among those the fewest sheets, then the kindest to
 * cut; or what is short and the nearest that can be done. Parts that are cut from leftovers are settled first
 * (`settledSet`); the plan says how (`dealt`).
 *
 * Every plan has been replayed by `replay`, which shares no code with the planner, before it is returned.
 */
export function planSet(asked: SetToPlan): Plan | Shortage {
  const set = settledSet(asked);
  const pieces = wantedOf(set);
  const answers = cutEachPaper(set, pieces, [...set.layout.papers.keys()]);
  const planned = answers.filter((answer) => answer.kind === 'plan');
  if (planned.length === answers.length) {
    return assembledPlan(
      set,
      pieces,
      planned.map((cut) => kindlyCut(set, cut)),
    );
  }
  const short = answers.filter((answer) => answer.kind === 'short');
  const nearest = nearestSet(set, short);
  const papers = short.map((paper) => paperShortage({ ...paper, given: nearest.plan }, set));
  return { kind: 'short', pieces, papers, nearest };
}

interface ShortPaper extends Omit<ShortOf, 'given'> {
  readonly kind: 'short';
}

function cutEachPaper(
  { layout, trimmer, solver, onProgress }: SetToPlan,
  pieces: readonly Piece[],
  papers: readonly string[],
): readonly (CutPaper | ShortPaper)[] {
  return papers.flatMap((id): (CutPaper | ShortPaper)[] => {
    const paper = layout.papers.get(id);
    const own = pieces.filter((piece) => piece.paper === id);
    if (paper === undefined || own.length === 0) return [];
    const cut = paperTask(paper, own, trimmer);
    const measuredIn = costUnitOf(paper);
    const report = ({ cost, bound }: { readonly cost: number | null; readonly bound: number }) =>
      onProgress?.({
        paper: id,
        cards: layout.cards,
        cost: cost === null ? null : shownCost(cost, measuredIn),
        bound: shownCost(bound, measuredIn),
        measuredIn,
      });
    report({ cost: null, bound: 0 });
    // What no sheet gives is short, be the rest of the paper as it may.
    if (neverReasons(paper, own, trimmer).size > 0)
      return [{ kind: 'short', paper, pieces: own, proved: true }];
    const answer = planCuts(cut.task, solver, whetherOnly, report);
    if (answer.kind === 'short') return [{ kind: 'short', paper, pieces: own, proved: answer.proved }];
    report(answer);
    return [{ kind: 'plan', paper: id, paperTask: cut, plan: answer }];
  });
}

/**
 * The largest smaller set, found by halving: fewer cards never need more of any piece, so what can be cut for n
 * cards can be cut for fewer.
 */
function nearestSet(set: SetToPlan, short: readonly ShortPaper[]): Nearest {
  const papersShort = short.map(({ paper }) => paper.id);
  const cut = (cards: number, papers: readonly string[]) => {
    const smaller = { ...set, layout: { ...set.layout, cards } };
    const pieces = wantedOf(smaller);
    return { smaller, pieces, answers: cutEachPaper(smaller, pieces, papers) };
  };

  let most = 0;
  let tooMany = set.layout.cards;
  let proved = short.some((paper) => paper.proved);
  while (tooMany - most > 1) {
    const cards = Math.floor((most + tooMany) / 2);
    const failed = cut(cards, papersShort).answers.filter((answer) => answer.kind === 'short');
    if (failed.length === 0) {
      most = cards;
    } else {
      tooMany = cards;
      proved = failed.some((answer) => answer.proved);
    }
  }
  // The other papers gave more cards than these; should one not be planned again, a card fewer will do.
  for (let cards = most; cards > 0; cards -= 1) {
    const { smaller, pieces, answers } = cut(cards, [...set.layout.papers.keys()]);
    const planned = answers.filter((answer) => answer.kind === 'plan');
    if (planned.length < answers.length) continue;
    const kind = planned.map((cut) => kindlyCut(smaller, cut));
    return { cards, proved: proved && cards === most, plan: assembledPlan(smaller, pieces, kind) };
  }
  return { cards: 0, proved: proved && most === 0, plan: null };
}
