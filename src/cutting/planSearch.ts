import { type Cover, type CoverRequest, coverBySearch, coverBySolver, isCover, type Worth } from './cover.ts';
import type { SearchEffort } from './effort.ts';
import { type Master, solveMaster } from './masterProgramme.ts';
import { type PatternColumn, type PatternSource, patternSource } from './patternSource.ts';
import { worth } from './productions.ts';
import { leastSheetCounts, type SheetCondition, type SheetCounts } from './sheetCounts.ts';
import type { LinearSolver } from './solver.ts';
import type { CuttingTask } from './task.ts';

/** Patterns of single sheets, each with the number of sheets cut so. */
export type Choice = readonly { readonly column: PatternColumn; readonly times: number }[];

/** What the search for a plan came to. */
export interface PlanSearch {
  readonly source: PatternSource;
  /** The best plan found; `null`: none. */
  readonly plan: Choice | null;
  /** By sheet: no plan costs less than such counts do; `null` when it is proved that there is no plan. */
  readonly leastCounts: readonly number[] | null;
  /** Among plans that cost no more than `plan`, none takes fewer sheets. */
  readonly fewestSheets: number;
  /** Patterns that were met on the way. */
  readonly columns: readonly PatternColumn[];
}

/**
 * Finds a plan of least cost, then of fewest sheets, by asking how many sheets of each kind may be used.
 *
 * Prices of the items give conditions on the sheet counts that every plan fulfils: the sheets' greatest worth at
 * these prices must reach the worth of all that is needed. The least costly counts that fulfil all conditions
 * known so far are tried: a linear programme over patterns for just these counts either gives prices that refute
 * them, a new condition, or leaves so little worth to lose that the few patterns which lose no more can be
 * listed, and a choice of them is looked for. When there is none the counts, and all smaller ones, are refuted.
 * The first counts with a plan are proved best. (Bounds: Gilmore & Gomory 1961, 1965, in whole numbers; the
 * alternation of counts and conditions is J. F. Benders' decomposition, 1962.)
 */
export function searchPlan(task: CuttingTask, solver: LinearSolver, effort: SearchEffort): PlanSearch {
  const source = patternSource(task, effort);
  const needs = task.items.map((item) => item.need);
  const costs = task.sheets.map((sheet) => sheet.cost);
  const ones = costs.map(() => 1);
  const pieces = needs.reduce((sum, need) => sum + need, 0);
  // A sheet more than there are pieces is never needed.
  const most = task.sheets.map((sheet) => Math.min(sheet.count ?? pieces, pieces));
  const pool: PatternColumn[] = [];
  const conditions: (SheetCondition & { readonly worth: Worth })[] = [];
  const refuted: number[][] = [];
  const undecided: number[][] = [];

  const condition = (prices: readonly number[]) => {
    const whole = wholePrices(prices);
    const sheets = source.worthOfSheets(whole);
    const made = { weights: sheets, need: worth(needs, whole), worth: { prices: whole, sheets } };
    conditions.push(made);
    return made;
  };
  const master = (more: Pick<Master, 'costs' | 'most' | 'sharing'>) =>
    solveMaster({ needs, ...more }, pool, (prices) => source.best(prices));

  /** Looks for a plan with at most these sheets. */
  const attempt = (counts: readonly number[]): Choice | 'refuted' | 'unknown' => {
    const { prices } = master({ costs, most: counts, sharing: true });
    const { weights, need, worth: at } = condition(prices);
    const slack = worth(counts, weights) - need;
    if (slack < 0) return 'refuted';
    const known = chosen(pool, coverOf(pool, counts, at, true));
    if (known !== null) return known;
    const listed: PatternColumn[] = [];
    let complete = true;
    counts.forEach((count, sheet) => {
      if (count === 0) return;
      const { combinations } = effort;
      const near = source.near(sheet, { prices: at.prices, caps: needs, slack, combinations, keep: null });
      listed.push(...near.columns);
      if (!near.complete) complete = false;
    });
    const all = complete ? listed : [...pool, ...listed.slice(0, 2000)];
    const cover = coverOf(all, counts, at, false);
    if (cover === 'none') return complete ? 'refuted' : 'unknown';
    return chosen(all, cover) ?? 'unknown';
  };
  const coverOf = (
    patterns: readonly PatternColumn[],
    counts: readonly number[],
    at: Worth,
    brief: boolean,
  ) => {
    const request: CoverRequest = { patterns, needs, counts };
    const few = counts.reduce((sum, count) => sum + count, 0) <= 25 || pieces <= 60;
    const cover: Cover = few ? coverBySearch(request, at, brief ? 1000 : effort.coverNodes) : 'unknown';
    if (cover !== 'unknown' || (few && brief)) return cover;
    return coverBySolver({ ...request, costs: null }, solver, effort.solverNodes);
  };

  const next = (
    passed: readonly (readonly number[])[],
    objective: readonly number[],
    limit: number | null,
  ): SheetCounts =>
    leastSheetCounts({
      objective,
      most,
      conditions,
      refuted: passed,
      budget: limit === null ? null : { costs, limit },
      nodes: 200_000,
    });

  // Least cost: free sheets are all taken, the others as few as the conditions allow.
  condition(master({ costs, most, sharing: false }).prices);
  let plan: Choice | null = null;
  const free = costs.map((cost) => cost === 0);
  for (let tries = 0; tries < effort.sheetChoices; tries++) {
    const least = next([...refuted, ...undecided], costs, null);
    if (least.kind !== 'counts') break;
    if (plan !== null && worth(least.counts, costs) >= costOf(plan, costs)) break;
    const counts = least.counts.map((count, sheet) => (free[sheet] ? most[sheet]! : count));
    const found = attempt(counts);
    if (found === 'refuted') refuted.push(counts);
    else if (found === 'unknown') {
      if (undecided.length === 0) plan = cheapest([fillingPlan(), solverPlan()], costs);
      undecided.push(counts);
      if (undecided.length >= 4) break;
    } else {
      plan = found;
      break;
    }
  }
  const proof = next(refuted, costs, null);
  if (proof.kind !== 'none') plan ??= cheapest([fillingPlan(), solverPlan()], costs);
  const leastCounts =
    proof.kind === 'none' ? null : proof.kind === 'counts' ? proof.counts : most.map(() => 0);

  // Fewest sheets at that cost.
  let fewestSheets = 0;
  if (plan !== null) {
    const cost = costOf(plan, costs);
    for (let tries = 0; tries < effort.sheetChoices; tries++) {
      const fewest = next([...refuted, ...undecided], ones, cost);
      if (fewest.kind !== 'counts') break;
      if (worth(fewest.counts, ones) >= sheetsOf(plan)) break;
      const found = attempt(fewest.counts);
      if (found === 'refuted') refuted.push([...fewest.counts]);
      else if (found === 'unknown') undecided.push([...fewest.counts]);
      else plan = found;
    }
    const fewest = next(refuted, ones, cost);
    fewestSheets = fewest.kind === 'counts' ? worth(fewest.counts, ones) : 0;
  }
  return { source, plan, leastCounts, fewestSheets, columns: pool };

  /** A plan from the known columns by the integer programme solver. */
  function solverPlan(): Choice | null {
    const request = { patterns: pool, needs, counts: most };
    const priced = costs.some((cost) => cost > 0) ? costs : ones;
    return chosen(pool, coverBySolver({ ...request, costs: priced }, solver, effort.solverNodes));
  }

  /** Sheet after sheet, always the pattern that gives most worth for its cost of what is still wanted. */
  function fillingPlan(): Choice | null {
    const rest = [...needs];
    const left = [...most];
    const choice: { column: PatternColumn; times: number }[] = [];
    const base = conditions[0]!.worth.prices;
    while (rest.some((count) => count > 0)) {
      const prices = base.map((price, item) => (rest[item]! > 0 ? price + 1 : 0));
      const candidates = [...pool, ...(source.best(prices) ?? [])].filter(({ sheet }) => left[sheet]! > 0);
      let best: PatternColumn | null = null;
      let bestRate = 0;
      for (const column of candidates) {
        const useful = column.made.reduce((sum, count, i) => sum + Math.min(count, rest[i]!) * prices[i]!, 0);
        const rate = useful / (costs[column.sheet]! + 1e-9);
        if (rate > bestRate) {
          best = column;
          bestRate = rate;
        }
      }
      if (best === null) return null;
      const { made, sheet } = best;
      const full = made.reduce(
        (least, count, i) => (count > 0 ? Math.min(least, rest[i]! / count) : least),
        Infinity,
      );
      const times = Math.min(left[sheet]!, Math.max(1, Math.floor(full)));
      choice.push({ column: best, times });
      left[sheet]! -= times;
      made.forEach((count, i) => {
        rest[i]! -= count * times;
      });
    }
    const columns = choice.map(({ column }) => column);
    const cover = choice.map(({ times }) => times);
    return isCover({ patterns: columns, needs, counts: most }, cover) ? choice : null;
  }
}

/** What the sheets of a choice cost together. */
export function costOf(choice: Choice, costs: readonly number[]): number {
  return Number(
    choice.reduce((sum, { column, times }) => sum + BigInt(costs[column.sheet]!) * BigInt(times), 0n),
  );
}

/** How many sheets a choice takes. */
export function sheetsOf(choice: Choice): number {
  return choice.reduce((sum, { times }) => sum + times, 0);
}

function cheapest(plans: readonly (Choice | null)[], costs: readonly number[]): Choice | null {
  const found = plans.filter((plan) => plan !== null);
  found.sort((a, b) => costOf(a, costs) - costOf(b, costs) || sheetsOf(a) - sheetsOf(b));
  return found[0] ?? null;
}

function chosen(columns: readonly PatternColumn[], cover: Cover): Choice | null {
  if (cover === 'none' || cover === 'unknown') return null;
  return columns.flatMap((column, index) => (cover[index]! > 0 ? [{ column, times: cover[index]! }] : []));
}

/** Prices in whole numbers, the dearest a milliard: fine enough, and sums stay far below 2^53. */
function wholePrices(prices: readonly number[]): number[] {
  const dearest = Math.max(...prices);
  if (dearest <= 0) return prices.map(() => 1);
  return prices.map((price) => Math.round((price / dearest) * 1e9));
}
