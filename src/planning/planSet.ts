import { type LinearSolver, planCuts } from '../cutting/index.ts';
import { costUnitOf, type SheetStock, shownCost } from '../stash/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { assembledPlan, type CutPaper } from './assembledPlan.ts';
import { type CardSet, wantedOf } from './cardSet.ts';
import { paperTask } from './cuttingTask.ts';
import { neverReasons } from './never.ts';
import type { Piece } from './piece.ts';
import type { Plan } from './plan.ts';
import type { PlanningProgress } from './progress.ts';
import type { PaperShortage, Shortage } from './shortage.ts';

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
 * The cutting plan of a whole set: for each paper the least cost, among those the fewest sheets, then kind to
 * cut; or what is short and the nearest that can be done.
 *
 * Every plan has been replayed by `replay`, which shares no code with the planner, before it is returned.
 */
export function planSet(set: SetToPlan): Plan | Shortage {
  const pieces = wantedOf(set);
  const answers = cutEachPaper(set, pieces, [...set.layout.papers.keys()]);
  const planned = answers.filter((answer) => answer.kind === 'plan');
  if (planned.length === answers.length) return assembledPlan(set, pieces, planned);
  const short = answers.filter((answer) => answer.kind === 'short');
  const papers = short.map(({ shortage }) => withWaysOut(set, pieces, shortage));
  return { kind: 'short', pieces, papers, nearest: nearestSet(set, papers) };
}

interface ShortPaper {
  readonly kind: 'short';
  readonly paper: string;
  readonly shortage: PaperShortage;
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
    const never = neverReasons(paper, own, trimmer);
    // What no sheet gives is short in full; the rest of the paper is still planned, to say what else is.
    const possible = own.filter((piece) => !never.has(piece.id));
    const missing = new Map(
      own.filter((piece) => never.has(piece.id)).map((piece) => [piece.id, piece.need]),
    );
    const cut = paperTask(paper, possible, trimmer);
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
    const answer = possible.length === 0 ? null : planCuts(cut.task, solver);
    if (answer?.kind === 'plan') report(answer);
    if (answer?.kind === 'plan' && missing.size === 0) {
      return [{ kind: 'plan', paper: id, paperTask: cut, plan: answer }];
    }
    if (answer?.kind === 'short') {
      answer.missing.forEach((count, item) => {
        if (count > 0) missing.set(possible[item]!.id, count);
      });
    }
    const proved = never.size > 0 || (answer?.kind === 'short' && answer.proved);
    const shortage = { paper: id, missing, proved, never, trimmerLimits: false, moreSheets: null };
    return [{ kind: 'short', paper: id, shortage }];
  });
}

/** What would help: a trimmer without these limits, or a few more sheets. */
function withWaysOut(
  { layout, trimmer, solver }: SetToPlan,
  pieces: readonly Piece[],
  shortage: PaperShortage,
): PaperShortage {
  const paper = layout.papers.get(shortage.paper)!;
  const own = pieces.filter((piece) => piece.paper === paper.id);
  const enough = (sheets: readonly SheetStock[], by: Trimmer | null): boolean =>
    neverReasons({ ...paper, sheets }, own, by).size === 0 &&
    planCuts(paperTask({ ...paper, sheets }, own, by).task, solver).kind === 'plan';

  const trimmerLimits = trimmer !== null && enough(paper.sheets, null);
  for (let count = 1; !trimmerLimits && count <= mostSheetsOffered; count += 1) {
    for (const [stock, sheet] of paper.sheets.entries()) {
      if (sheet.scrap || sheet.count === null) continue;
      const more = paper.sheets.with(stock, { ...sheet, count: sheet.count + count });
      if (enough(more, trimmer)) return { ...shortage, trimmerLimits, moreSheets: { stock, count } };
    }
  }
  return { ...shortage, trimmerLimits };
}

/** Who is further short than this wants another paper or a smaller set. */
const mostSheetsOffered = 5;

/**
 * The largest smaller set, found by halving: fewer cards never need more of any piece, so what can be cut for n
 * cards can be cut for fewer.
 */
function nearestSet(set: SetToPlan, short: readonly PaperShortage[]): Shortage['nearest'] {
  const papersShort = short.map(({ paper }) => paper);
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
      proved = failed.some((answer) => answer.shortage.proved);
    }
  }
  // The other papers gave more cards than these; should one not be planned again, a card fewer will do.
  for (let cards = most; cards > 0; cards -= 1) {
    const { smaller, pieces, answers } = cut(cards, [...set.layout.papers.keys()]);
    const planned = answers.filter((answer) => answer.kind === 'plan');
    if (planned.length < answers.length) continue;
    return { cards, proved: proved && cards === most, plan: assembledPlan(smaller, pieces, planned) };
  }
  return null;
}
