import type { MasterColumn } from './masterProgramme.ts';
import { worth } from './productions.ts';
import type { LinearSolver } from './solver.ts';

/** Sheets to be cut by some of these patterns so that every item is made as often as needed. */
export interface CoverRequest {
  readonly patterns: readonly MasterColumn[];
  readonly needs: readonly number[];
  /** By sheet, how many may be used. */
  readonly counts: readonly number[];
}

/** How often each pattern is cut; `none`: there is no way with these patterns; `unknown`: a limit was met. */
export type Cover = readonly number[] | 'none' | 'unknown';

/** Whole prices by item, and what a sheet of each kind is worth at most. */
export interface Worth {
  readonly prices: readonly number[];
  readonly sheets: readonly number[];
}

/**
 * Looks for a cover one sheet at a time, in whole numbers only: its `none` is a proof.
 *
 * Branches on which pattern makes the wanted item that fewest patterns make. What the sheets left are worth must
 * reach what is left to make; what failed once is remembered by what was left.
 */
export function coverBySearch(request: CoverRequest, { prices, sheets }: Worth, nodes: number): Cover {
  const { patterns, needs, counts } = request;
  const makers = needs.map((_, item) =>
    patterns.flatMap(({ made }, index) => (made[item]! > 0 ? [index] : [])),
  );
  const rarest = needs.map((_, item) => item).sort((a, b) => makers[a]!.length - makers[b]!.length || a - b);
  const failed = new Set<string>();
  const used = new Array<number>(patterns.length).fill(0);
  const rest = [...needs];
  const free = [...counts];
  let left = nodes;

  const search = (): boolean => {
    const item = rarest.find((wanted) => rest[wanted]! > 0);
    if (item === undefined) return true;
    if (left-- <= 0) return false;
    const key = `${rest.join()};${free.join()}`;
    if (failed.has(key)) return false;
    const slack = worth(free, sheets) - worth(rest, prices);
    if (slack >= 0) {
      const tried = makers[item]!.filter((index) => free[patterns[index]!.sheet]! > 0)
        .map((index) => {
          const { made, sheet } = patterns[index]!;
          const useful = made.reduce((sum, count, i) => sum + Math.min(count, rest[i]!) * prices[i]!, 0);
          return { index, sheet, loss: sheets[sheet]! - useful };
        })
        .filter(({ loss }) => loss <= slack)
        .sort((a, b) => a.loss - b.loss || a.index - b.index);
      for (const { index, sheet } of tried) {
        const { made } = patterns[index]!;
        const taken = made.map((count, i) => Math.min(count, rest[i]!));
        taken.forEach((count, i) => {
          rest[i]! -= count;
        });
        free[sheet]!--;
        used[index]!++;
        if (search()) return true;
        used[index]!--;
        free[sheet]!++;
        taken.forEach((count, i) => {
          rest[i]! += count;
        });
        if (left <= 0) return false;
      }
    }
    failed.add(key);
    return false;
  };
  if (search()) return used;
  return left <= 0 ? 'unknown' : 'none';
}

/** The same by the integer programme solver; what it gives is counted over again here. */
export function coverBySolver(
  request: CoverRequest & {
    /** Cost of each sheet, to be least; `null`: any cover will do. */
    readonly costs: readonly number[] | null;
  },
  solver: LinearSolver,
  nodeLimit: number,
): Cover {
  const { patterns, needs, counts, costs } = request;
  const dearest = Math.max(1, ...(costs ?? []));
  const answer = solver.solve({
    rows: [
      ...needs.map((need) => ({ lower: need, upper: Number.POSITIVE_INFINITY })),
      ...counts.map((count) => ({ lower: Number.NEGATIVE_INFINITY, upper: count })),
    ],
    columns: patterns.map(({ sheet, made }) => ({
      cost: costs === null ? 0 : costs[sheet]! / dearest,
      upper: Math.min(
        counts[sheet]!,
        made.reduce((most, count, i) => (count > 0 ? Math.max(most, Math.ceil(needs[i]! / count)) : most), 0),
      ),
      entries: [
        ...made.flatMap((count, item) =>
          count > 0 ? [{ row: item, value: Math.min(count, needs[item]!) }] : [],
        ),
        { row: needs.length + sheet, value: 1 },
      ],
    })),
    whole: true,
    nodeLimit,
  });
  if (!('x' in answer)) return answer.status === 'infeasible' ? 'none' : 'unknown';
  const times = answer.x.map(Math.round);
  return isCover(request, times) ? times : 'unknown';
}

/** Whether so many of each pattern give all that is needed within the counts. */
export function isCover({ patterns, needs, counts }: CoverRequest, times: readonly number[]): boolean {
  const rest = [...needs];
  const free = [...counts];
  patterns.forEach(({ sheet, made }, index) => {
    free[sheet]! -= times[index]!;
    made.forEach((count, item) => {
      rest[item]! -= count * times[index]!;
    });
  });
  return rest.every((count) => count <= 0) && free.every((count) => count >= 0);
}
