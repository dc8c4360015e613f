import type { LinearSolver } from './solver.ts';
import type { StagedPattern } from './stagedPatterns.ts';
import type { WorkWeights } from './stagedPlan.ts';

/** A staged pattern of one kind of sheet. */
export interface SheetPattern extends StagedPattern {
  readonly sheet: number;
}

export interface LightestRequest {
  readonly patterns: readonly SheetPattern[];
  readonly needs: readonly number[];
  readonly sheets: readonly {
    readonly count: number;
    readonly cost: number;
    readonly area: number;
  }[];
  readonly weights: WorkWeights;
  /** What a piece of each item, and a sheet of each kind, is worth in work where parts of sheets may be taken. */
  readonly worth: { readonly items: readonly number[]; readonly sheets: readonly number[] };
  /** What the sheets may cost together, and how many there may be. */
  readonly mostCost: number;
  readonly mostSheets: number;
  readonly solver: LinearSolver;
  readonly nodeLimit: number;
}

/**
 * How often to cut each pattern, so that all items come out with the lightest work; among such choices with small
 * sheets. `null`: none was found.
 */
export function lightestChoice(request: LightestRequest): readonly number[] | null {
  const { patterns, needs, sheets, weights, mostCost, mostSheets, solver, nodeLimit } = request;
  const workOf = ({ sheet, passes, turns, rest }: SheetPattern) => {
    const { area } = sheets[sheet]!;
    return (
      passes * weights.pass +
      turns * weights.turn -
      (rest / area) * weights.rest +
      (area / largest) * sizeWork
    );
  };
  const largest = Math.max(...sheets.map(({ area }) => area));
  if (mostSheets === 1) return lightestSheet(request, workOf);
  const searched = lightestBySearch(request);
  if (searched !== null) return searched;

  const items = needs.length;
  const kinds = sheets.length;
  const dearest = Math.max(1, ...sheets.map(({ cost }) => cost));
  const atMost = (upper: number) => ({ lower: Number.NEGATIVE_INFINITY, upper });
  const answer = solver.solve({
    rows: [
      ...needs.map((need) => ({ lower: need, upper: Number.POSITIVE_INFINITY })),
      ...sheets.map(({ count }) => atMost(Math.min(count, mostSheets))),
      atMost(mostSheets),
      atMost(mostCost / dearest + 1e-7),
    ],
    columns: patterns.map((pattern) => ({
      cost: workOf(pattern),
      upper: Math.min(sheets[pattern.sheet]!.count, mostSheets),
      entries: [
        ...pattern.made.flatMap((count, item) => (count > 0 ? [{ row: item, value: count }] : [])),
        { row: items + pattern.sheet, value: 1 },
        { row: items + kinds, value: 1 },
        { row: items + kinds + 1, value: sheets[pattern.sheet]!.cost / dearest },
      ],
    })),
    whole: true,
    nodeLimit,
  });
  if (!('x' in answer)) return null;
  const times = answer.x.map(Math.round);
  return isChoice(request, times) ? times : null;
}

/** What the largest sheet weighs more than a scrap, which settles only what nothing else does. */
const sizeWork = 1 / 2 ** 18;

function lightestSheet(
  { patterns, needs, sheets, mostCost }: LightestRequest,
  workOf: (pattern: SheetPattern) => number,
): readonly number[] | null {
  let best = -1;
  for (const [index, { sheet, made }] of patterns.entries()) {
    const { count, cost } = sheets[sheet]!;
    if (count === 0 || cost > mostCost || made.some((pieces, item) => pieces < needs[item]!)) continue;
    if (best < 0 || workOf(patterns[index]!) < workOf(patterns[best]!)) best = index;
  }
  return best < 0 ? null : patterns.map((_, index) => (index === best ? 1 : 0));
}

/**
 * Takes one sheet after another, as long as what is lost on them against the worth of their pieces stays little: first
 * nearly nothing, then more. What failed once is remembered by what was left.
 */
function lightestBySearch(request: LightestRequest): readonly number[] | null {
  const { patterns, needs, sheets, weights, mostCost, mostSheets, worth } = request;
  // A search for large rests weighs what has no worth here.
  if (weights.rest >= 1) return null;
  const makers = needs.map((_, item) =>
    patterns.flatMap(({ made }, index) => (made[item]! > 0 ? [index] : [])),
  );
  const rarest = needs.map((_, item) => item).sort((a, b) => makers[a]!.length - makers[b]!.length);
  /** The times of a choice that loses no more than the budget, and what it loses. */
  const within = (budget: number): { times: readonly number[]; loss: number } | 'none' | 'unknown' => {
    const used = new Array<number>(patterns.length).fill(0);
    const rest = [...needs];
    const free = sheets.map(({ count }) => count);
    const failed = new Map<string, number>();
    let nodes = searchNodes;
    let lost = 0;
    const search = (sheetsLeft: number, costLeft: number): boolean => {
      const item = rarest.find((wanted) => rest[wanted]! > 0);
      if (item === undefined) return true;
      if (sheetsLeft === 0 || nodes-- <= 0) return false;
      const key = `${rest.join()};${free.join()}`;
      const left = budget - lost;
      if ((failed.get(key) ?? -1) >= left) return false;
      const able = (sheet: number) => free[sheet]! > 0 && sheets[sheet]!.cost <= costLeft;
      const tried = makers[item]!.filter((index) => able(patterns[index]!.sheet))
        .map((index) => {
          const { made, sheet, passes, turns } = patterns[index]!;
          const brought = made.reduce((sum, n, i) => sum + Math.min(n, rest[i]!) * worth.items[i]!, 0);
          const loss = passes * weights.pass + turns * weights.turn + worth.sheets[sheet]! - brought;
          return { index, loss: Math.max(0, loss) };
        })
        .filter(({ loss }) => loss <= left + 1e-7)
        .sort((a, b) => a.loss - b.loss || a.index - b.index);
      for (const { index, loss } of tried) {
        const { made, sheet } = patterns[index]!;
        const taken = made.map((count, i) => Math.min(count, rest[i]!));
        taken.forEach((count, i) => {
          rest[i]! -= count;
        });
        free[sheet]!--;
        used[index]!++;
        lost += loss;
        if (search(sheetsLeft - 1, costLeft - sheets[sheet]!.cost)) return true;
        lost -= loss;
        used[index]!--;
        free[sheet]!++;
        taken.forEach((count, i) => {
          rest[i]! += count;
        });
        if (nodes <= 0) return false;
      }
      failed.set(key, Math.max(left, failed.get(key) ?? -1));
      return false;
    };
    if (search(mostSheets, mostCost)) return { times: used, loss: lost };
    return nodes <= 0 ? 'unknown' : 'none';
  };

  const least = Math.min(weights.pass, weights.turn);
  for (const budget of [0.001, 0.3, 1, 2, 4]) {
    let found = within(budget);
    if (found === 'unknown') return null;
    if (found === 'none') continue;
    // What is found first within the budget may not be the lightest.
    for (let tries = 0; tries < 20 && found.loss > least; tries++) {
      const lighter = within(found.loss - least * 0.9);
      if (typeof lighter === 'string') break;
      found = lighter;
    }
    return found.times;
  }
  return null;
}

/** Sheets taken in one search, at most. */
const searchNodes = 1500;

function isChoice(
  { patterns, needs, sheets, mostCost, mostSheets }: LightestRequest,
  times: readonly number[],
): boolean {
  const rest = [...needs];
  const free = sheets.map(({ count }) => count);
  let used = 0;
  let spent = 0;
  patterns.forEach(({ sheet, made }, index) => {
    const count = times[index]!;
    used += count;
    spent += count * sheets[sheet]!.cost;
    free[sheet]! -= count;
    made.forEach((pieces, item) => {
      rest[item]! -= pieces * count;
    });
  });
  const enough = rest.every((count) => count <= 0) && free.every((count) => count >= 0);
  return enough && used <= mostSheets && spent <= mostCost;
}
