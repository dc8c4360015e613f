import type { CuttingPlan, Pattern } from './answer.ts';
import { canonicalTask, patternsForTask } from './canonicalTask.ts';
import type { CutTree } from './cutTree.ts';
import { fewestSettings, lightestWork } from './fewestSettings.ts';
import { together } from './patterns.ts';
import type { LinearSolver } from './solver.ts';
import { type StagedPlan, thriftier, type WorkWeights } from './stagedPlan.ts';
import type { CuttingTask, Item } from './task.ts';
import { signature } from './treeBuilding.ts';

/** What can be wanted most of a plan beside its cost. */
export type Kindness = 'settings' | 'passes' | 'turns' | 'leftover';

/** Ways to cut that cost no more than a plan and take no more sheets. */
export interface KinderWays {
  /** Each as a plan's patterns; the given plan's own way is among them, last. */
  readonly ways: readonly (readonly Pattern[])[];
  /**
   * No way within cost and sheets has fewer settings, as long as only sides of items are measured off; 0: nothing is
   * known.
   */
  readonly settingsBound: number;
  /** Nor has one of `settingsBound` settings fewer passes. */
  readonly passesBound: number;
}

export interface KinderOptions {
  readonly solver: LinearSolver;
  /** What is wanted most; the rest in the order of `Kindness`. */
  readonly most: Kindness;
  /** Shortest side of a rest that is useful. */
  readonly useful: number;
  /** Looks at a cut, in all. */
  readonly work?: number;
}

/**
 * Looks for ways to cut the items of a task with less work than a plan that is known, at its cost and with its number
 * of sheets: fewest settings, then fewest passes, then fewest quarter turns, then a large useful rest; or what is
 * wanted most first.
 *
 * Whoever counts the work may find another order of the ways than is given here, since squaring and the order of the
 * steps add to it.
 */
export function kinderWays(task: CuttingTask, plan: CuttingPlan, options: KinderOptions): KinderWays {
  const { solver, most, useful, work = usualWork } = options;
  if (plan.patterns.length === 0) return { ways: [plan.patterns], settingsBound: 0, passesBound: 0 };
  const canonical = canonicalTask(task);
  const sheets = plan.patterns.reduce((sum, { times }) => sum + times, 0);
  const request = {
    task: canonical,
    cost: plan.cost,
    sheets,
    useful,
    solver,
    solverNodes: 100,
    weights: weights[most],
    work: { left: work },
  };
  const { plans, settingsBound, passesBound } = fewestSettings({ ...request, weights: weights.settings });
  const light =
    most === 'settings' || most === 'leftover' ? [] : lightestWork({ ...request, work: { left: work } });
  const best = plans[0];
  const thrifty =
    best === undefined ? null : thriftier({ ...request, weights: weights.thrifty }, best.relaxed, best);
  const patternsOf = ({ patterns }: StagedPlan): readonly Pattern[] =>
    together(
      patternsForTask(
        task,
        canonical,
        alikeSideBySide(
          patterns.map((pattern) => ({ ...pattern, tree: withSpares(pattern.tree, canonical.items) })),
        ),
      ),
    );
  return {
    ways: [
      ...[...light, ...plans.slice(0, mostWays), ...(thrifty === null ? [] : [thrifty])].map(patternsOf),
      plan.patterns,
    ],
    settingsBound,
    passesBound,
  };
}

/** About half a second's work. */
const usualWork = 10_000_000;

/** Ways that are given, beside the plan's own. */
const mostWays = 4;

const weights = {
  settings: { pass: 1, turn: 1 / 2 ** 11, rest: 1 / 2 ** 15 },
  passes: { pass: 1, turn: 1 / 2 ** 11, rest: 1 / 2 ** 15 },
  turns: { pass: 1 / 2 ** 11, turn: 1, rest: 1 / 2 ** 15 },
  leftover: { pass: 1, turn: 1 / 2 ** 11, rest: 10_000 },
  /** Keeping a fiftieth of a sheet more in one piece is worth a pass. */
  thrifty: { pass: 1, turn: 1 / 2 ** 11, rest: 50 },
} as const satisfies Record<Kindness | 'thrifty', WorkWeights>;

/** Equal patterns as one, and those next to each other that begin alike, so that sheets cut at once are numbered so. */
function alikeSideBySide(patterns: readonly Pattern[]): readonly Pattern[] {
  const keyed = together(patterns).map((pattern) => ({ pattern, key: signature(pattern.tree) }));
  keyed.sort((a, b) => a.pattern.sheet - b.pattern.sheet || (a.key < b.key ? -1 : 1));
  return keyed.map(({ pattern }) => pattern);
}

/** The tree with every rest that is just an item made one: it costs no pass. */
function withSpares(tree: CutTree, items: readonly Item[]): CutTree {
  if (tree.kind === 'cut') return { ...tree, parts: tree.parts.map((part) => withSpares(part, items)) };
  if (tree.kind === 'piece') return tree;
  const { width, height } = tree;
  const straight = items.findIndex((item) => item.width === width && item.height === height);
  if (straight >= 0) return { kind: 'piece', width, height, item: straight, turned: false };
  const turned = items.findIndex((item) => item.turns && item.width === height && item.height === width);
  return turned >= 0 ? { kind: 'piece', width, height, item: turned, turned: true } : tree;
}
