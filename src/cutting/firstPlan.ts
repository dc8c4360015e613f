import { type CuttingPlan, emptyPlan, type Pattern } from './answer.ts';
import { areaBound } from './areaBound.ts';
import { canonicalTask, certificateForTask, patternsForTask } from './canonicalTask.ts';
import { Chance } from './chance.ts';
import { insertionOrders } from './insertionOrders.ts';
import { OpenSheets, type Place } from './openSheets.ts';
import type { CuttingTask } from './task.ts';
import { tidied } from './treeBuilding.ts';
import { liesTurned, turnedAnswer, turnedTask } from './turnedTask.ts';

/**
 * A plan at once, for the time until `planCuts` has a better one; `null`: none was found so quickly.
 *
 * Sheet after sheet is filled with the largest pieces that still fit, in a few orders, and the fullest way is
 * repeated as often as it can be. Its bound goes by areas only. The time grows with the different sheets of the
 * plan and the pieces on each, not with how many cards there are.
 */
export function firstPlan(task: CuttingTask): CuttingPlan | null {
  if (task.items.length === 0) return emptyPlan;
  if (liesTurned(task)) {
    const turned = firstPlan(turnedTask(task));
    return turned === null ? null : turnedAnswer(turned);
  }
  const canonical = canonicalTask(task);
  if (canonical.sheets.length === 0) return null;
  const filled = filledSheets(canonical);
  if (filled === null) return null;
  const patterns = patternsForTask(task, canonical, filled);
  const cost = patterns.reduce((sum, { sheet, times }) => sum + task.sheets[sheet]!.cost * times, 0);
  if (!Number.isSafeInteger(cost)) return null;
  const bound = areaBound(canonical);
  const sheets = patterns.reduce((sum, { times }) => sum + times, 0);
  return {
    kind: 'plan',
    patterns,
    cost,
    bound: Math.min(bound.cost, cost),
    sheetsBound: Math.min(bound.sheets, sheets),
    certificate: certificateForTask(task, canonical, { conditions: bound.conditions, refuted: [] }),
  };
}

/** Patterns that give all, none of them twice; `null`: the sheets or the patience came to an end. */
export function filledSheets(task: CuttingTask): Pattern[] | null {
  const areas = task.items.map(({ width, height }) => width * height);
  const rest = task.items.map(({ need }) => need);
  const left = task.sheets.map(({ count }) => count ?? Number.POSITIVE_INFINITY);
  const orders = insertionOrders(task);
  const patterns: Pattern[] = [];
  let patience = mostInsertions;
  while (rest.some((count) => count > 0)) {
    let best: { sheet: number; made: number[]; open: OpenSheets; rate: number } | null = null;
    for (const [sheet, { cost }] of task.sheets.entries()) {
      if (left[sheet] === 0) continue;
      // Where sheets are many and full of pieces, in one order only.
      for (const order of patience > inAllOrders ? orders : orders.slice(0, 1)) {
        const open = new OpenSheets(task, [sheet], areas, rest);
        const before = open.weightOut;
        fill(open, order);
        patience -= open.pieces;
        if (patience < 0) return null;
        const rate = (before - open.weightOut) / (cost + 1e-9);
        if (rate > (best?.rate ?? 0)) best = { sheet, made: open.made(0), open, rate };
      }
    }
    if (best === null) return null;
    const { sheet, made, open } = best;
    const times = made.reduce(
      (least, count, item) => (count > 0 ? Math.min(least, Math.floor(rest[item]! / count)) : least),
      left[sheet]!,
    );
    patterns.push({ sheet, times, tree: tidied(open.tree(0), task.limits) });
    left[sheet]! -= times;
    made.forEach((count, item) => {
      rest[item]! -= count * times;
    });
  }
  return patterns;
}

/** Pieces placed in all, those of ways that were not taken too. */
const mostInsertions = 20_000;
const inAllOrders = 18_500;

/** Puts in what fits, in this order. */
function fill(open: OpenSheets, order: readonly number[]): void {
  const place: Place = { room: 0, turned: false, first: 0 };
  for (const item of order) {
    for (let count = open.out(item); count > 0 && open.findPlace(item, place, 0, noChance); count--)
      open.insert(item, place);
  }
}

/** Nothing is left to chance here. */
const noChance = new Chance(0);
