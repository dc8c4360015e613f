import type { Pattern } from './answer.ts';
import { bestStaged, stagedValues, type WorkPrices } from './bestStaged.ts';
import { type ProgrammeColumn, type ProgrammeRow, solveColumns } from './columnProgramme.ts';
import { lightestChoice, type SheetPattern } from './lightestChoice.ts';
import type { LinearSolver } from './solver.ts';
import { type How, stagedPatterns, treeOfStaged } from './stagedPatterns.ts';
import { type StagedSheet, stagedSheet } from './stagedSheet.ts';
import type { CuttingTask } from './task.ts';
import { piecesOf } from './treeBuilding.ts';

/** What a plan in stages must come to. */
export interface StagedRequest {
  readonly task: CuttingTask;
  /** What the sheets may cost together, and how many there may be. */
  readonly cost: number;
  readonly sheets: number;
  /** Shortest side of a rest that is useful. */
  readonly useful: number;
  /** What a pass, a quarter turn, and a useful rest as large as its sheet weigh against each other. */
  readonly weights: WorkWeights;
  readonly solver: LinearSolver;
  /** Nodes that the solver may open, each time. */
  readonly solverNodes: number;
  /** What may still be done, in looks at a cut; is counted down. */
  readonly work: { left: number };
}

/** How heavy a pass and a quarter turn are, and how much lighter a rest as large as its sheet makes a plan. */
export interface WorkWeights {
  readonly pass: number;
  readonly turn: number;
  readonly rest: number;
}

/** The lengths that may be set, stage after stage; those of one stage in any order. */
export type Stages = readonly (readonly number[])[];

/** The linear programme over all patterns in stages, parts of a sheet allowed. */
export interface RelaxedPlan {
  readonly stages: Stages;
  /** No plan in these stages takes fewer passes. */
  readonly passesBound: number;
  /** What all passes and quarter turns weigh. */
  readonly work: number;
  readonly patterns: readonly SheetPattern[];
  readonly times: readonly number[];
  readonly staged: readonly StagedSheet[];
  /** What an item more would take, in passes. */
  readonly prices: WorkPrices;
  /** What a sheet of each kind more would spare, in work. */
  readonly sheetWorth: readonly number[];
}

/**
 * The lightest plan in stages as far as a linear programme tells; `none`: there is no plan in these stages;
 * `unknown`: a limit of work was met.
 */
export function relaxedPlan(request: StagedRequest, stages: Stages): RelaxedPlan | 'none' | 'unknown' {
  const { task, cost, sheets, work, weights } = request;
  const needs = task.items.map((item) => item.need);
  const counts = sheetCounts(request);
  const staged: StagedSheet[] = [];
  let looks = 0;
  for (const sheet of task.sheets) {
    const one = stagedSheet({ sheet, items: task.items, limits: task.limits, stages, mostNodes });
    if (one === null) {
      work.left -= 100 * mostNodes;
      return 'unknown';
    }
    staged.push(one);
    looks += one.nodes.reduce((sum, { cuts }) => sum + 4 + cuts.length, 0);
  }
  // Making the nodes is worth some looks at each.
  work.left -= 20 * looks;
  const dearest = Math.max(1, ...task.sheets.map((sheet) => sheet.cost));
  const rows: ProgrammeRow[] = [
    ...needs.map((limit): ProgrammeRow => ({ kind: 'least', limit })),
    ...counts.map((limit): ProgrammeRow => ({ kind: 'most', limit })),
    { kind: 'most', limit: sheets },
    { kind: 'most', limit: cost / dearest },
  ];
  const pool: (ProgrammeColumn & SheetPattern)[] = [];
  const pricesOf = (duals: readonly number[]): WorkPrices => {
    return {
      items: duals.slice(0, needs.length).map((dual) => Math.max(0, dual)),
      pass: weights.pass,
      turn: weights.turn,
    };
  };
  const priced = (duals: readonly number[]) => {
    work.left -= looks;
    const prices = pricesOf(duals);
    return staged.flatMap((one, sheet) => {
      const found = counts[sheet] === 0 ? null : bestStaged(one, prices);
      if (found === null) return [];
      const own = counts.map((_, other) => (other === sheet ? 1 : 0));
      const entries = [...found.made, ...own, 1, task.sheets[sheet]!.cost / dearest];
      return [{ ...found, sheet, entries, cost: workOf(found, weights) }];
    });
  };
  const answer = solveColumns(rows, pool, priced, { wantingCost: 10_000, pivots: 500 });
  if (!answer.finished) return 'unknown';
  if (answer.wanting > 1e-6) return 'none';
  // There are fewer quarter turns than passes.
  const passesBound = Math.ceil(answer.cost / (weights.pass + weights.turn) - 1e-6);
  const prices = pricesOf(answer.duals);
  const [ofAll, ofCost] = answer.duals.slice(-2);
  const sheetWorth = task.sheets.map((sheet, index) =>
    Math.max(0, -(answer.duals[needs.length + index]! + ofAll! + (sheet.cost / dearest) * ofCost!)),
  );
  return {
    stages,
    passesBound,
    work: answer.cost,
    patterns: pool,
    times: answer.times,
    staged,
    prices,
    sheetWorth,
  };
}

/** Workpieces that a sheet may become at most. */
const mostNodes = 8_000;

/** A plan in stages. */
export interface StagedPlan {
  readonly patterns: readonly Pattern[];
  readonly passes: number;
  readonly turns: number;
}

/**
 * A plan of whole sheets near a relaxed one; `null` when none was found.
 *
 * All patterns are listed that a plan only little heavier than the relaxed one can use (a plan is heavier by at least
 * what its patterns bring less than the best), and the lightest choice of them is taken. Where they are too many the
 * relaxed plan is rounded down, and only what can come out of the few sheets that are left is listed.
 */
export function wholePlan(request: StagedRequest, relaxed: RelaxedPlan): StagedPlan | null {
  const { task, sheets, useful, work, weights } = request;
  const { staged, times, prices } = relaxed;
  const needs = task.items.map((item) => item.need);
  const counts = sheetCounts(request);
  const values = staged.map((one) => stagedValues(one, prices));
  const patterns = new Map<string, SheetPattern>();
  const add = (pattern: SheetPattern) => {
    const made = pattern.made.map((count, item) => Math.min(count, needs[item]!));
    const key = `${pattern.sheet} ${made.join()}`;
    const before = patterns.get(key);
    if (before === undefined || workOf(pattern, weights) < workOf(before, weights))
      patterns.set(key, { ...pattern, made });
  };
  /** Whether everything was listed. */
  const list = (caps: readonly number[], slack: number): boolean =>
    staged
      .map((one, sheet) => {
        if (counts[sheet] === 0 || one.whole < 0) return true;
        const combinations = Math.min(mostCombinations, work.left / 10);
        const { width, height } = task.sheets[sheet]!;
        const found = stagedPatterns({
          restPrice: weights.rest / (width * height),
          staged: one,
          values: values[sheet]!,
          caps,
          useful,
          prices,
          slack,
          combinations,
        });
        work.left -= 10 * (found?.combinations ?? combinations);
        for (const pattern of found?.patterns ?? []) add({ ...pattern, sheet });
        return found !== null;
      })
      .every(Boolean);

  for (const pattern of relaxed.patterns) {
    const { width, height } = task.sheets[pattern.sheet]!;
    add({ ...pattern, rest: largestRest(pattern.how, width, height, useful) });
  }
  if (times.every((count) => Math.abs(count - Math.round(count)) < 1e-6)) {
    return planOf(
      request,
      relaxed.patterns.map((pattern, index) => ({ pattern, count: Math.round(times[index]!) })),
    );
  }
  for (const slack of slacks) {
    if (!list(needs, slack)) break;
    const plan = lightestPlan(request, relaxed, [...patterns.values()]);
    if (plan !== null && workOf(plan, weights) <= relaxed.work + slack) return plan;
  }
  for (const less of [0, 1, 2]) {
    const rest = [...needs];
    let left = sheets;
    relaxed.patterns.forEach(({ made }, index) => {
      const count = Math.max(0, Math.floor(times[index]! + 1e-6) - less);
      left -= count;
      made.forEach((pieces, item) => {
        rest[item] = Math.max(0, rest[item]! - pieces * count);
      });
    });
    if (left > 0) for (const slack of [...slacks, 20]) if (!list(rest, slack)) break;
  }
  return lightestPlan(request, relaxed, [...patterns.values()]);
}

/** By how many passes a plan may be heavier than the relaxed one, to begin with. */
const slacks = [1, 4];

/**
 * The plan with its emptiest sheet cut another way in the same stages, that leaves a larger useful rest by the weights
 * of the request; `null` where there is none.
 */
export function thriftier(
  { task, useful, weights, work }: StagedRequest,
  { staged, prices }: RelaxedPlan,
  plan: StagedPlan,
): StagedPlan | null {
  const emptiest = plan.patterns
    .map((pattern) => {
      const made = piecesOf(pattern.tree, task.items.length);
      const { width, height } = task.sheets[pattern.sheet]!;
      const area = made.reduce(
        (sum, n, item) => sum + n * task.items[item]!.width * task.items[item]!.height,
        0,
      );
      return { pattern, made, area: width * height, filled: area / (width * height) };
    })
    .toSorted((a, b) => a.filled - b.filled)[0]!;
  const { pattern, made, area } = emptiest;
  const { sheet } = pattern;
  const found = stagedPatterns({
    staged: staged[sheet]!,
    values: stagedValues(staged[sheet]!, prices),
    caps: made,
    useful,
    prices,
    restPrice: weights.rest / area,
    slack: wideSlack,
    combinations: Math.min(mostCombinations, work.left / 10),
  });
  const full =
    found?.patterns.filter((other) => other.made.every((count, item) => count >= made[item]!)) ?? [];
  const heavy = (way: { passes: number; turns: number; rest: number }) =>
    workOf(way, weights) - (way.rest / area) * weights.rest;
  const best = full.toSorted((a, b) => heavy(a) - heavy(b))[0];
  if (best === undefined) return null;
  const { width, height } = task.sheets[sheet]!;
  const others = plan.patterns.map((other) =>
    other === pattern ? { ...other, times: other.times - 1 } : other,
  );
  return {
    patterns: [
      ...others.filter(({ times }) => times > 0),
      { sheet, times: 1, tree: treeOfStaged(best.how, width, height) },
    ],
    passes: plan.passes,
    turns: plan.turns,
  };
}

/** By how many passes a single sheet may be heavier than the best. */
const wideSlack = 20;

function lightestPlan(
  request: StagedRequest,
  { prices, sheetWorth }: RelaxedPlan,
  patterns: readonly SheetPattern[],
): StagedPlan | null {
  const { task, cost, sheets, solver, solverNodes, weights } = request;
  const counts = sheetCounts(request);
  const choice = lightestChoice({
    patterns,
    needs: task.items.map((item) => item.need),
    sheets: task.sheets.map((sheet, index) => ({
      count: counts[index]!,
      cost: sheet.cost,
      area: sheet.width * sheet.height,
    })),
    weights,
    worth: { items: prices.items, sheets: sheetWorth },
    mostCost: cost,
    mostSheets: sheets,
    solver,
    nodeLimit: solverNodes,
  });
  if (choice === null) return null;
  return planOf(
    request,
    patterns.map((pattern, index) => ({ pattern, count: choice[index]! })),
  );
}

function planOf(
  { task }: StagedRequest,
  choice: readonly { readonly pattern: SheetPattern; readonly count: number }[],
): StagedPlan {
  const used = choice.filter(({ count }) => count > 0);
  return {
    patterns: used.map(({ pattern: { sheet, how }, count }) => {
      const { width, height } = task.sheets[sheet]!;
      return { sheet, times: count, tree: treeOfStaged(how, width, height) };
    }),
    passes: used.reduce((sum, { pattern, count }) => sum + count * pattern.passes, 0),
    turns: used.reduce((sum, { pattern, count }) => sum + count * pattern.turns, 0),
  };
}

/** Pairs of ways that are combined in one listing at most. */
const mostCombinations = 25_000;

function sheetCounts({ task, sheets }: StagedRequest): number[] {
  return task.sheets.map((sheet) => Math.min(sheet.count ?? sheets, sheets));
}

function workOf(
  { passes, turns }: { readonly passes: number; readonly turns: number },
  { pass, turn }: WorkWeights,
): number {
  return passes * pass + turns * turn;
}

function largestRest(how: How, width: number, height: number, useful: number): number {
  if (how.kind === 'piece') return 0;
  if (how.kind === 'rest') return Math.min(width, height) >= useful ? width * height : 0;
  const { axis, set, first, second } = how;
  return axis === 'width'
    ? Math.max(largestRest(first, set, height, useful), largestRest(second, width - set, height, useful))
    : Math.max(largestRest(first, width, set, useful), largestRest(second, width, height - set, useful));
}
