import type { RefutedCounts } from './answer.ts';
import { areaBound } from './areaBound.ts';
import { type Cover, type CoverRequest, coverBySearch, coverBySolver, isCover, type Worth } from './cover.ts';
import type { SearchEffort } from './effort.ts';
import { filledSheets } from './firstPlan.ts';
import { type Master, solveMaster } from './masterProgramme.ts';
import { type PatternColumn, type PatternSource, patternSource } from './patternSource.ts';
import { worth } from './productions.ts';
import { recipeOfTree } from './recipeOfTree.ts';
import { ruinAndRecreate } from './ruinAndRecreate.ts';
import { leastSheetCounts, type SheetCondition, type SheetCounts } from './sheetCounts.ts';
import type { LinearSolver } from './solver.ts';
import type { CuttingTask } from './task.ts';
import { piecesOf } from './treeBuilding.ts';

/** Patterns of single sheets, each with the number of sheets cut so. */
export type Choice = readonly { readonly column: PatternColumn; readonly times: number }[];

/** How far a search has come: each time one of the two has moved. */
export interface SearchProgress {
  /** No edge-to-edge plan costs less. Only ever rises. */
  readonly bound: number;
  /** What the best plan so far costs; `null`: there is none yet. Only ever falls. */
  readonly cost: number | null;
}

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
  /** What the bounds rest on. */
  readonly conditions: readonly (SheetCondition & { readonly worth: Worth })[];
  readonly refuted: readonly RefutedCounts[];
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
export function searchPlan(
  task: CuttingTask,
  solver: LinearSolver,
  effort: SearchEffort,
  onProgress: (progress: SearchProgress) => void,
): PlanSearch {
  const source = patternSource(task, effort);
  const needs = task.items.map((item) => item.need);
  const costs = task.sheets.map((sheet) => sheet.cost);
  const ones = costs.map(() => 1);
  const manyKinds = task.items.length > 12;
  const areas = task.items.map(({ width, height }) => width * height);
  const pieces = needs.reduce((sum, need) => sum + need, 0);
  // A sheet more than there are pieces is never needed.
  const most = task.sheets.map((sheet) => Math.min(sheet.count ?? pieces, pieces));
  const pool: PatternColumn[] = [];
  const conditions: (SheetCondition & { readonly worth: Worth })[] = [];
  const refutations: RefutedCounts[] = [];
  const refuted: number[][] = [];
  const undecided: number[][] = [];
  let solverSizes = 0;
  /** Whether the last cover was asked of the solver. */
  let solverAsked = false;

  let plan: Choice | null = null;
  let bound = 0;
  let told: SearchProgress | null = null;
  /** Whether the first plan costs least, and only one of patterns that repeat is still looked for. */
  let settled = false;
  /** What share of the effort an attempt is worth: less when the cost is settled, and fewer sheets would be nice. */
  let zeal = 1;
  const report = () => {
    const progress = { bound, cost: plan === null ? null : costOfChoice(plan, costs) };
    if (told?.bound === progress.bound && told.cost === progress.cost) return;
    told = progress;
    onProgress(progress);
  };
  const offer = (other: Choice | null) => {
    plan = cheapest([plan, other], costs);
    report();
  };

  const condition = (wanted: readonly number[], prices: readonly number[]) => {
    const whole = wholePrices(prices);
    const sheets = source.worthOfSheets(whole);
    return { weights: sheets, need: worth(wanted, whole), worth: { prices: whole, sheets } };
  };
  const master = (wanted: readonly number[], more: Pick<Master, 'costs' | 'most' | 'sharing'>) =>
    solveMaster({ needs: wanted, ...more }, pool, (prices) => source.best(prices));

  /** Looks for a plan with at most these sheets. */
  const attempt = (wanted: readonly number[], counts: readonly number[]): Choice | 'refuted' | 'unknown' => {
    if (manyKinds) {
      const first = byRuin(wanted, counts, effort.ruinWork / 20);
      if (first !== null) return first;
    }
    const { prices, times } = master(wanted, { costs, most: counts, sharing: true });
    const known = condition(wanted, prices);
    if (wanted === needs) conditions.push(known);
    const slack = worth(counts, known.weights) - known.need;
    if (slack < 0) return 'refuted';
    const quick = chosen(pool, coverOf(pool, wanted, counts, known.worth, 'quick'));
    if (quick !== null) return quick;
    // What settled the matter by itself need not be settled again.
    if (settled) return 'unknown';
    const listed = byListing(wanted, counts, known.worth, slack);
    if (listed !== 'unknown') {
      if (listed === 'refuted' && wanted === needs)
        refutations.push({ counts, condition: conditions.length - 1, by: solverAsked ? 'solver' : 'search' });
      return listed;
    }
    return (
      byRounding(wanted, counts, times) ??
      byRuin(wanted, counts, effort.ruinWork * zeal, effort.ruinRounds) ??
      bySheets(wanted, counts, known.worth) ??
      'unknown'
    );
  };

  /** Fills just these sheets by ruin and recreate, where neither they nor the pieces are many. */
  const byRuin = (
    wanted: readonly number[],
    counts: readonly number[],
    work: number,
    rounds = 1,
  ): Choice | null => {
    if (
      worth(
        wanted,
        wanted.map(() => 1),
      ) > effort.ruinPieces ||
      worth(counts, ones) > effort.ruinPieces
    )
      return null;
    if (wanted.every((count) => count === 0)) return [];
    if (counts.every((count) => count === 0)) return null;
    const kinds = counts.flatMap((count, sheet) => new Array<number>(count).fill(sheet));
    const weights = areas;
    let { open } = ruinAndRecreate({ task, wanted, kinds, weights, work, seed: 1 });
    // Another run of chance finds what a longer one would not.
    for (let seed = 2; open.weightOut > 0 && seed <= rounds; seed++) {
      open = ruinAndRecreate({ task, wanted, kinds, weights, work, seed }).open;
    }
    if (open.weightOut > 0) return null;
    return kinds.flatMap((sheet, index) => {
      const made = open.made(index);
      if (made.every((count) => count === 0)) return [];
      return [
        { column: { sheet, made, recipe: recipeOfTree(open.tree(index), source.grids[sheet]!) }, times: 1 },
      ];
    });
  };

  /** Patterns that lose little are few, and mostly they do; only all that lose no more than the slack are a proof. */
  const byListing = (
    wanted: readonly number[],
    counts: readonly number[],
    at: Worth,
    slack: number,
  ): Choice | 'refuted' | 'unknown' => {
    for (const share of [1 / 50, 1 / 12, 1 / 3, Number.POSITIVE_INFINITY]) {
      const listed: PatternColumn[] = [];
      let complete = true;
      let whole = true;
      counts.forEach((count, sheet) => {
        if (count === 0) return;
        const allowed = Math.min(slack, Math.ceil(at.sheets[sheet]! * share));
        if (allowed < slack) whole = false;
        const request = {
          prices: at.prices,
          caps: wanted,
          slack: allowed,
          combinations: effort.combinations * zeal,
        };
        let near = source.near(sheet, { ...request, keep: null });
        if (!near.complete) {
          complete = false;
          near = source.near(sheet, { ...request, keep: 8 });
        }
        listed.push(...(allowed < slack || !complete ? near.columns.slice(0, 120) : near.columns));
      });
      const decisive = whole && complete;
      const patterns = decisive ? listed : [...pool, ...listed];
      const cover = coverOf(patterns, wanted, counts, at, decisive ? 'thorough' : 'usual');
      if (cover === 'none' && decisive) return 'refuted';
      const found = chosen(patterns, cover);
      if (found !== null) return found;
      if (whole || !complete) break;
    }
    return 'unknown';
  };

  /** Takes the whole part of the linear programme's answer, and looks for the few sheets that are left. */
  const byRounding = (
    wanted: readonly number[],
    counts: readonly number[],
    times: readonly number[],
  ): Choice | null => {
    const taken = pool.flatMap((column, index) => {
      const whole = Math.floor((times[index] ?? 0) + 1e-6);
      return whole > 0 ? [{ column, times: whole }] : [];
    });
    // What is left is not rounded again.
    if (wanted !== needs) return null;
    for (const less of [0, 1]) {
      const some = taken.flatMap((use) => (use.times > less ? [{ ...use, times: use.times - less }] : []));
      if (some.length === 0) break;
      const rest = wanted.map((count, item) =>
        Math.max(
          0,
          some.reduce((left, { column, times: t }) => left - column.made[item]! * t, count),
        ),
      );
      const free = counts.map((count, sheet) =>
        some.reduce((left, { column, times: t }) => (column.sheet === sheet ? left - t : left), count),
      );
      // The linear programme's answer is a rounded one and may take a sheet more than there are.
      if (free.some((count) => count < 0)) continue;
      const found = attempt(rest, free);
      if (typeof found !== 'string') return [...some, ...found];
    }
    return null;
  };

  /** Fills one sheet after another, going on with the few most promising rests. */
  const bySheets = (wanted: readonly number[], counts: readonly number[], at: Worth): Choice | null => {
    if (counts.reduce((sum, count) => sum + count, 0) > 8) return null;
    type State = { rest: readonly number[]; free: readonly number[]; choice: Choice };
    let states: State[] = [{ rest: wanted, free: counts, choice: [] }];
    while (states.length > 0) {
      const next = new Map<string, State & { spare: number }>();
      for (const { rest, free, choice } of states) {
        free.forEach((count, sheet) => {
          if (count === 0) return;
          const prices = at.prices.map((price, item) => (rest[item]! > 0 ? Math.max(1, price) : 0));
          const slack = Math.ceil(at.sheets[sheet]! / 4);
          const request = { prices, caps: rest, slack, combinations: effort.combinations, keep: 6 };
          for (const column of source.near(sheet, request).columns.slice(0, 6)) {
            const left = rest.map((n, item) => Math.max(0, n - column.made[item]!));
            const still = free.map((n, kind) => (kind === sheet ? n - 1 : n));
            const state = { rest: left, free: still, choice: [...choice, { column, times: 1 }] };
            const spare = worth(still, at.sheets) - worth(left, at.prices);
            if (spare >= 0) next.set(`${left.join()};${still.join()}`, { ...state, spare });
          }
        });
      }
      const ranked = [...next.values()].sort((a, b) => b.spare - a.spare);
      const done = ranked.find(({ rest }) => rest.every((count) => count === 0));
      if (done !== undefined) return done.choice;
      states = ranked.slice(0, 6);
    }
    return null;
  };
  const coverOf = (
    patterns: readonly PatternColumn[],
    wanted: readonly number[],
    counts: readonly number[],
    at: Worth,
    care: 'quick' | 'usual' | 'thorough',
  ) => {
    const request: CoverRequest = { patterns, needs: wanted, counts };
    const few = counts.reduce((sum, count) => sum + count, 0) <= 25 || pieces <= 60;
    const nodes = { quick: 300, usual: 2000, thorough: effort.coverNodes }[care];
    solverAsked = false;
    const cover: Cover = few ? coverBySearch(request, at, nodes) : 'unknown';
    if (cover !== 'unknown' || (few && care === 'quick')) return cover;
    if (patterns.length > effort.solverColumns) return 'unknown';
    if (care === 'usual' && (wanted !== needs || zeal < 1)) return 'unknown';
    solverSizes += patterns.length * (needs.length + counts.length) ** 2;
    if (solverSizes > effort.solverSizes) return 'unknown';
    solverAsked = true;
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

  // A plan and a bound before anything is weighed.
  const byArea = areaBound(task);
  conditions.push(...byArea.conditions);
  bound = byArea.cost;
  const filled = filledSheets(task);
  offer(
    filled?.map(({ sheet, times, tree }) => ({
      column: {
        sheet,
        made: piecesOf(tree, task.items.length),
        recipe: recipeOfTree(tree, source.grids[sheet]!),
      },
      times,
    })) ?? null,
  );
  const first: Choice | null = plan;

  // Least cost: free sheets are all taken, the others as few as the conditions allow.
  const free = costs.map((cost) => cost === 0);
  for (let tries = 0; tries < effort.sheetChoices; tries++) {
    const least = next([...refuted, ...undecided], costs, null);
    if (least.kind !== 'counts') break;
    const leastCost = worth(least.counts, costs);
    if (undecided.length === 0) {
      bound = Math.max(bound, leastCost);
      report();
    }
    settled = plan !== null && leastCost >= costOfChoice(plan, costs);
    if (settled && (manyKinds || plan !== first)) break;
    const counts = least.counts.map((count, sheet) => (free[sheet] ? most[sheet]! : count));
    if (conditions.length === byArea.conditions.length) {
      // Areas tell little: the linear programme over all sheets together first, where it is no long work itself.
      const easy = manyKinds ? byRuin(needs, counts, effort.ruinWork / 50) : null;
      if (easy !== null) {
        offer(easy);
        break;
      }
      conditions.push(condition(needs, master(needs, { costs, most, sharing: false }).prices));
      continue;
    }
    const found = attempt(needs, counts);
    if (settled && typeof found === 'string') break;
    if (found === 'refuted') refuted.push(counts);
    else if (found === 'unknown') {
      if (undecided.length === 0) {
        offer(fillingPlan());
        offer(solverPlan());
      }
      undecided.push(counts);
      if (undecided.length >= 4) break;
    } else {
      // Of equal cost, this one comes of patterns that repeat.
      if (plan === first) plan = null;
      offer(cheapest([found, first], costs));
      break;
    }
  }
  const proof = next(refuted, costs, null);
  if (plan === null && proof.kind !== 'none') {
    offer(fillingPlan());
    offer(solverPlan());
  }
  const leastCounts =
    proof.kind === 'none' ? null : proof.kind === 'counts' ? proof.counts : most.map(() => 0);
  if (leastCounts !== null) bound = Math.max(bound, worth(leastCounts, costs));
  report();

  // Fewest sheets at that cost.
  settled = false;
  zeal = 1 / 8;
  let fewestSheets = 0;
  if (plan !== null) {
    const cost = costOfChoice(plan, costs);
    for (let tries = 0; tries < effort.sheetChoices; tries++) {
      const fewest = next([...refuted, ...undecided], ones, cost);
      if (fewest.kind !== 'counts') break;
      if (worth(fewest.counts, ones) >= sheetsOf(plan)) break;
      const found = attempt(needs, fewest.counts);
      if (found === 'refuted') refuted.push([...fewest.counts]);
      else if (found === 'unknown') break;
      else plan = found;
    }
    const fewest = next(refuted, ones, cost);
    fewestSheets = fewest.kind === 'counts' ? worth(fewest.counts, ones) : 0;
  }
  const proofs = { conditions, refuted: refutations };
  return { source, plan, leastCounts, fewestSheets, columns: pool, ...proofs };

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
    const base = conditions.at(-1)!.worth.prices;
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

/** What so many sheets of each kind cost together. */
export function costOf(
  uses: readonly { readonly sheet: number; readonly times: number }[],
  costs: readonly number[],
): number {
  return Number(uses.reduce((sum, { sheet, times }) => sum + BigInt(costs[sheet]!) * BigInt(times), 0n));
}

/** How many sheets a choice takes. */
export function sheetsOf(choice: Choice): number {
  return choice.reduce((sum, { times }) => sum + times, 0);
}

function costOfChoice(choice: Choice, costs: readonly number[]): number {
  return costOf(
    choice.map(({ column, times }) => ({ sheet: column.sheet, times })),
    costs,
  );
}

function cheapest(plans: readonly (Choice | null)[], costs: readonly number[]): Choice | null {
  const found = plans.filter((plan) => plan !== null);
  found.sort((a, b) => costOfChoice(a, costs) - costOfChoice(b, costs) || sheetsOf(a) - sheetsOf(b));
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
