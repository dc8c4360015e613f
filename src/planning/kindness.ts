import { type Kindness, kinderWays, type Pattern } from '../cutting/index.ts';
import { smallestUseful, stepsFor, type Trimming } from '../trimming/index.ts';
import type { CutPaper } from './plannedPaper.ts';
import type { SetToPlan } from './planSet.ts';
import { sheetsToCut, trimmingOf } from './sheetsToCut.ts';

/**
 * What makes a plan kind to cut, of plans that cost the same: fewest settings, passes, quarter turns, ways of cutting
 * (so that equal sheets are cut alike), the largest leftover worth keeping, the least paper begun.
 */
export const kindnessOrder = ['settings', 'passes', 'turns', 'alike', 'leftover', 'paper'] as const;

/** One thing that makes a plan kind. */
export type KindnessGoal = (typeof kindnessOrder)[number];

/** The order in which they count: what the person wants first, then the others as in `kindnessOrder`. */
export function kindnessGoals(first: readonly KindnessGoal[]): readonly KindnessGoal[] {
  return [...new Set([...first, ...kindnessOrder])];
}

/**
 * The paper cut in the kindest way that was found at its cost, compared by the very steps that are to be done, and how
 * much kinder it could be. `work` limits the search, see `KinderOptions`.
 */
export function kindlyCut(
  { layout, trimmer, solver, prefer }: Pick<SetToPlan, 'layout' | 'trimmer' | 'solver' | 'prefer'>,
  cut: CutPaper,
  work?: number,
): CutPaper {
  const goals = kindnessGoals(prefer ?? []);
  const { task } = cut.paperTask;
  const most = goals.map((goal) => searched[goal]).find((kindness) => kindness !== null)!;
  const { ways, settingsBound, passesBound } = kinderWays(task, cut.plan, {
    solver,
    most,
    useful: layout.smallestScrap ?? smallestUseful,
    ...(work === undefined ? {} : { work }),
  });
  // Where a single sheet is begun, and unless fewest passes were asked for, it is kept whole as far as can be.
  const single = cut.plan.patterns.reduce((sum, { times }) => sum + times, 0) === 1;
  const exchange = single && !prefer?.includes('passes') ? passesForSheet : 0;
  const measured = ways.map((patterns) => {
    const measures = measuresOf(patterns, cut, { layout, trimmer });
    return { patterns, by: { ...measures, passes: measures.passes + exchange * measures.leftover } };
  });
  const [best] = measured.toSorted((a, b) =>
    goals.reduce((order, goal) => order || a.by[goal] - b.by[goal], 0),
  );
  const { patterns } = best!;
  const cost = patterns.reduce((sum, { sheet, times }) => sum + times * task.sheets[sheet]!.cost, 0);
  return {
    ...cut,
    plan: { ...cut.plan, patterns, cost },
    leastWork: { settings: settingsBound, passes: passesBound },
  };
}

/** What the planner of cuts can look for; the other goals are only compared. */
const searched = {
  settings: 'settings',
  passes: 'passes',
  turns: 'turns',
  alike: null,
  leftover: 'leftover',
  paper: null,
} as const satisfies Record<KindnessGoal, Kindness | null>;

/** Passes that it is worth to keep a whole sheet more in one piece: one for a fiftieth of it. */
const passesForSheet = 50;

/** How much more a leftover is worth that still has a whole side of its sheet (common practice, no source). */
const wholeSideWorth = 1.25;

/** Less is better in all of them. */
function measuresOf(
  patterns: readonly Pattern[],
  cut: CutPaper,
  { layout, trimmer }: Pick<SetToPlan, 'layout' | 'trimmer'>,
): Record<KindnessGoal, number> {
  const { task } = cut.paperTask;
  const sheets = sheetsToCut(cut, patterns, layout.papers.get(cut.paper)!);
  const { effort, leftovers }: Trimming = stepsFor(sheets, trimmer, trimmingOf(layout));
  const largestSheet = Math.max(...task.sheets.map(({ width, height }) => width * height));
  const worths = leftovers
    .filter(({ keep }) => keep)
    .map(({ id, size: { width, height } }) => {
      const { tree } = sheets.find(
        (sheet) => id.startsWith(sheet.id) && !/\d/.test(id[sheet.id.length] ?? ''),
      )!;
      const wholeSide = width === tree.width || height === tree.height;
      return ((width * height) / largestSheet) * (wholeSide ? wholeSideWorth : 1);
    });
  return {
    ...effort,
    alike: patterns.length,
    leftover: -Math.max(0, ...worths),
    paper: patterns.reduce((sum, { sheet, times }) => {
      const { width, height } = task.sheets[sheet]!;
      return sum + times * width * height;
    }, 0),
  };
}
