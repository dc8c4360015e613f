import { checkFinished, type FinishedProblem } from '../finished/index.ts';
import { arrange, bagsOf, checkLayout, type Kit, type LayoutProblem } from '../layout/index.ts';
import {
  checkSet,
  type Enough,
  enoughFor,
  type Piece,
  type Plan,
  type PlanningProblem,
  planSet,
  type SetToPlan,
  type Shortage,
  usualMarks,
  wantedOf,
} from '../planning/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { type Bag, bagsList } from './bags.ts';
import { type CutList, cutListOf } from './cutList.ts';
import { type KitSet, kitSet } from './kitSet.ts';
import { type KitOffer, offersFor } from './offers.ts';

/** Something that would spoil a kit, and of which of its layouts; `null`: of the shared sheets. */
export type KitProblem =
  | { readonly of: 'layout'; readonly layout: string; readonly problem: LayoutProblem }
  | { readonly of: 'finished'; readonly layout: string; readonly problem: FinishedProblem }
  | { readonly of: 'planning'; readonly layout: string | null; readonly problem: PlanningProblem };

/** All that is known of a kit before anything is cut. */
export interface KitReport {
  readonly kit: Kit;
  /** How many bags in all. */
  readonly bags: number;
  /** Cards that all the bags together make. */
  readonly cards: number;
  readonly contents: readonly Bag[];
  /** Pieces that go into all the bags, and those that are cut to spare beside them. */
  readonly pieces: { readonly inBags: number; readonly spare: number };
  /** 0 where the kit counts none. */
  readonly envelopes: number;
  readonly problems: readonly KitProblem[];
  /** `null` where the size of some part is unknown, so that nothing can be planned. */
  readonly planned: PlannedKit | null;
}

export interface PlannedKit {
  readonly set: KitSet;
  /** Every kind of piece of all the layouts. */
  readonly wanted: readonly Piece[];
  /**
   * How everything is cut. Where papers are short, as if there were as many sheets of them as it takes; `null` where no
   * number of sheets would do.
   */
  readonly plan: Plan | null;
  /** What is short; `null` where nothing is. */
  readonly shortage: Shortage | null;
  /** What is cut from which paper. */
  readonly cuts: readonly CutList[];
  /** How many bags each paper is enough for. */
  readonly enough: Enough;
  /** What would give what is wanting; empty where nothing is. */
  readonly offers: readonly KitOffer[];
}

/** What is known of a kit before anything is planned: its bags, and what is wrong with its layouts. */
export function kitAtOnce(kit: Kit, trimmer: Trimmer | null): KitReport {
  const bags = bagsOf(kit);
  const contents = bagsList(kit);
  const set = kitSet(kit, trimmer);
  const inBags = contents.reduce((sum, one) => sum + one.bags.length * one.pieces, 0);
  const spare = set === null ? 0 : wantedOf(set).reduce((sum, piece) => sum + piece.spare, 0);
  const cards = kit.layouts.reduce((sum, { each }) => sum + bags * each, 0);
  return {
    kit,
    bags,
    cards,
    contents,
    pieces: { inBags, spare },
    envelopes: kit.envelopes ? cards : 0,
    problems: layoutProblems(kit),
    planned: null,
  };
}

/** The kit worked out: what goes into the bags, how everything is cut from the shared sheets, or what is short. */
export function kitReport(
  kit: Kit,
  {
    trimmer,
    solver,
    ...options
  }: Pick<SetToPlan, 'solver' | 'onProgress' | 'prefer'> & { readonly trimmer: Trimmer | null },
): KitReport {
  const atOnce = kitAtOnce(kit, trimmer);
  const set = kitSet(kit, trimmer);
  if (set === null) return atOnce;
  const toPlan = { ...set, solver, ...options };
  const answer = planSet(toPlan);
  const wanted = wantedOf(set);
  const plan = answer.kind === 'plan' ? answer : planWithSheets(toPlan, answer);
  const planning = checkSet(toPlan, answer)
    // What is short is told at length, with what would help.
    .filter(({ code }) => code !== 'short')
    .map((problem): KitProblem => {
      const source = problem.part === undefined ? undefined : set.sources.get(problem.part);
      return { of: 'planning', layout: source?.layout.id ?? null, problem };
    });
  return {
    ...atOnce,
    problems: [...atOnce.problems, ...finishedProblems(kit, trimmer), ...planning],
    planned: {
      set,
      wanted,
      plan,
      cuts: cutListOf({ set, wanted, plan }),
      shortage: answer.kind === 'short' ? answer : null,
      enough: enoughFor(toPlan),
      offers: answer.kind === 'short' ? offersFor(kit, toPlan, answer) : [],
    },
  };
}

/** The plan with as many sheets as it takes of what is short. */
function planWithSheets(set: SetToPlan, { papers }: Shortage): Plan | null {
  if (papers.some(({ moreSheets }) => moreSheets.length === 0)) return null;
  const more = new Map(set.layout.papers);
  for (const { paper: id, moreSheets } of papers) {
    const paper = more.get(id)!;
    const enough = new Set(moreSheets.map(({ stock }) => stock));
    const sheets = paper.sheets.map((stock, index) =>
      enough.has(index) ? { ...stock, count: null } : stock,
    );
    more.set(id, { ...paper, sheets });
  }
  const answer = planSet({ ...set, layout: { ...set.layout, papers: more } });
  return answer.kind === 'plan' ? answer : null;
}

/** What is wrong with the layouts as they are drawn, one after another. */
export function layoutProblems(kit: Kit): readonly KitProblem[] {
  return kit.layouts.flatMap(({ id, layout }) =>
    checkLayout(layout, arrange(layout)).map(
      (problem): KitProblem => ({ of: 'layout', layout: id, problem }),
    ),
  );
}

/** What is wrong with their cards when they are done; the size of every part is known. */
function finishedProblems(kit: Kit, trimmer: Trimmer | null): readonly KitProblem[] {
  return kit.layouts.flatMap(({ id, layout }) =>
    checkFinished(layout, arrange(layout), { marks: trimmer?.marks ?? usualMarks(layout) }).map(
      (problem): KitProblem => ({ of: 'finished', layout: id, problem }),
    ),
  );
}
