import { assert } from '../problem/index.ts';
import { alikeChoices } from './alikeSheets.ts';
import { type CuttingAnswer, emptyPlan, type Pattern } from './answer.ts';
import { canonicalTask, certificateForTask } from './canonicalTask.ts';
import type { CutTree } from './cutTree.ts';
import { type SearchEffort, usualEffort } from './effort.ts';
import { kindestPatterns } from './patterns.ts';
import { costOf, type SearchProgress, searchPlan } from './planSearch.ts';
import { fitsSheet } from './sheetGrid.ts';
import { shortOf } from './shortage.ts';
import type { LinearSolver } from './solver.ts';
import type { CuttingTask } from './task.ts';
import { liesTurned, turnedAnswer, turnedTask } from './turnedTask.ts';

/**
 * The least costly way to cut all items from the sheets by edge-to-edge cuts, then the one with fewest sheets, with
 * a proved bound for both; or what is short.
 *
 * The answer depends on the task and the effort alone. Cost and bound do not change when items or sheets are
 * listed in another order, nor, when proved, when all lengths are multiplied; with width and height exchanged the
 * plan is the same, turned.
 *
 * `onProgress` is told, in the task's costs, each time the bound or the cost of the best plan so far moves; not at
 * all where an item fits no sheet.
 */
export function planCuts(
  task: CuttingTask,
  solver: LinearSolver,
  effort: SearchEffort = usualEffort,
  onProgress: (progress: SearchProgress) => void = () => {},
): CuttingAnswer {
  for (const { width, height, need } of task.items) {
    assert(isCount(width) && isCount(height) && isCount(need), 'an item is no rectangle', {
      width,
      height,
      need,
    });
  }
  for (const { width, height, cost } of task.sheets) {
    assert(isCount(width) && isCount(height) && Number.isInteger(cost) && cost >= 0, 'a sheet is none', {
      width,
      height,
      cost,
    });
  }
  if (task.items.length === 0) return emptyPlan;
  if (liesTurned(task)) return turnedAnswer(planCuts(turnedTask(task), solver, effort, onProgress));

  // An item that no sheet can give settles the matter; the others are planned as if it were not wanted.
  const onHand = task.sheets.filter((sheet) => sheet.count !== 0);
  const fits = task.items.map((item) => onHand.some((sheet) => fitsSheet(item, sheet, task.limits)));
  if (fits.includes(false)) {
    const kept = task.items.flatMap((_, item) => (fits[item] ? [item] : []));
    const others = planCuts({ ...task, items: kept.map((item) => task.items[item]!) }, solver, effort);
    const missing = task.items.map((item) => item.need);
    kept.forEach((item, index) => {
      missing[item] = others.kind === 'short' ? others.missing[index]! : 0;
    });
    const best = renamedItems(others.kind === 'short' ? others.best : others.patterns, kept);
    return { kind: 'short', best, missing, proved: true, certificate: null };
  }

  const canonical = canonicalTask(task);
  const unit = canonical.sheets.reduce((divisor, { cost }) => greatestDivisor(divisor, cost), 0) || 1;
  const reduced = { ...canonical, sheets: canonical.sheets.map((s) => ({ ...s, cost: s.cost / unit })) };
  const search = searchPlan(reduced, solver, effort, ({ bound, cost }) => {
    onProgress({ bound: bound * unit, cost: cost === null ? null : cost * unit });
  });
  if (search.plan === null) {
    if (effort.partial) return shortOf({ task, canonical, search, solver, effort });
    const missing = task.items.map((item) => item.need);
    const certificate = certificateForTask(task, canonical, search);
    return { kind: 'short', best: [], missing, proved: search.leastCounts === null, certificate };
  }
  const { leastCounts } = search;
  assert(leastCounts !== null, 'a plan was found where it was proved that there is none', { task });
  const costs = canonical.sheets.map((sheet) => sheet.cost);
  const least = costOf(
    leastCounts.map((times, sheet) => ({ sheet, times })),
    costs,
  );
  const choices = [search.plan, ...alikeChoices(canonical, search.source, search.plan, effort)];
  const patterns = kindestPatterns(task, canonical, search.source.grids, choices);
  const cost = costOf(
    patterns,
    task.sheets.map((sheet) => sheet.cost),
  );
  return {
    kind: 'plan',
    patterns,
    cost,
    bound: Math.min(least, cost),
    sheetsBound: search.fewestSheets,
    certificate: certificateForTask(task, canonical, search),
  };
}

/** The patterns with the items named by their places in the whole task. */
function renamedItems(patterns: readonly Pattern[], names: readonly number[]): Pattern[] {
  const renamed = (tree: CutTree): CutTree => {
    if (tree.kind === 'rest') return tree;
    if (tree.kind === 'piece') return { ...tree, item: names[tree.item]! };
    return { ...tree, parts: tree.parts.map(renamed) };
  };
  return patterns.map((pattern) => ({ ...pattern, tree: renamed(pattern.tree) }));
}

function isCount(value: number): boolean {
  return Number.isSafeInteger(value) && value > 0;
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}
