import type { CuttingAnswer } from './answer.ts';
import { type CanonicalTask, certificateForTask } from './canonicalTask.ts';
import type { SearchEffort } from './effort.ts';
import { kindestPatterns } from './patterns.ts';
import type { Choice, PlanSearch } from './planSearch.ts';
import type { LinearColumn, LinearSolver } from './solver.ts';
import type { CuttingTask } from './task.ts';
import { piecesOf } from './treeBuilding.ts';

export interface ShortageRequest {
  readonly task: CuttingTask;
  readonly canonical: CanonicalTask;
  readonly search: PlanSearch;
  readonly solver: LinearSolver;
  readonly effort: SearchEffort;
}

/**
 * The answer when the sheets do not give all: the most that was found of it.
 *
 * "Most" is first the greatest share of the worst served item (in thousandths), then the most pieces in all. The
 * patterns are chosen among those met in the search, so it is a good partial plan and not proved the best one.
 */
export function shortOf(shortage: ShortageRequest): CuttingAnswer {
  const { task, canonical, search } = shortage;
  const patterns = kindestPatterns(task, canonical, search.source.grids, [partialChoice(shortage)]);
  const missing = task.items.map((item) => item.need);
  for (const { tree, times } of patterns) {
    piecesOf(tree, task.items.length).forEach((count, item) => {
      missing[item]! -= count * times;
    });
  }
  return {
    kind: 'short',
    best: patterns,
    missing: missing.map((count) => Math.max(0, count)),
    proved: search.leastCounts === null,
    certificate: certificateForTask(task, canonical, search),
  };
}

function partialChoice({ canonical, search, solver, effort }: ShortageRequest): Choice {
  const needs = canonical.items.map((item) => item.need);
  const pieces = needs.reduce((sum, need) => sum + need, 0);
  const areas = canonical.items.map((item) => item.width * item.height);
  const largest = Math.max(...areas);
  const prices = areas.map((area) => Math.ceil((area / largest) * 1e6));
  const columns = [...search.columns];
  canonical.sheets.forEach((_, sheet) => {
    const slack = search.source.worthOfSheets(prices)[sheet]!;
    const some = { prices, caps: needs, slack, combinations: effort.combinations / 10, keep: 40 };
    columns.push(...search.source.near(sheet, some).columns);
  });

  // Rows: items, sheets, then for each item: its share of what is missing is at most that of the worst.
  const { length: items } = needs;
  const { length: sheets } = canonical.sheets;
  const counts = canonical.sheets.map((sheet) => Math.min(sheet.count ?? pieces, pieces));
  const cut: LinearColumn[] = columns.map(({ sheet, made }) => ({
    cost: 0,
    upper: counts[sheet]!,
    entries: [
      ...made.flatMap((count, item) => (count > 0 ? [{ row: item, value: count }] : [])),
      { row: items + sheet, value: 1 },
    ],
  }));
  const wanting: LinearColumn[] = needs.map((need, item) => ({
    cost: 1,
    upper: need,
    entries: [
      { row: item, value: 1 },
      { row: items + sheets + item, value: 1000 },
    ],
  }));
  const worst: LinearColumn = {
    cost: pieces + 1,
    upper: 1000,
    entries: needs.map((need, item) => ({ row: items + sheets + item, value: -need })),
  };
  const answer = solver.solve({
    rows: [
      ...needs.map((need) => ({ lower: need, upper: Number.POSITIVE_INFINITY })),
      ...counts.map((count) => ({ lower: Number.NEGATIVE_INFINITY, upper: count })),
      ...needs.map(() => ({ lower: Number.NEGATIVE_INFINITY, upper: 0 })),
    ],
    columns: [...cut, ...wanting, worst],
    whole: true,
    nodeLimit: effort.solverNodes,
  });
  if (!('x' in answer)) return [];
  const times = columns.map((_, index) => Math.round(answer.x[index]!));
  const used = counts.map((count, sheet) =>
    columns.reduce((left, column, index) => (column.sheet === sheet ? left - times[index]! : left), count),
  );
  if (used.some((left) => left < 0)) return [];
  return columns.flatMap((column, index) => (times[index]! > 0 ? [{ column, times: times[index]! }] : []));
}
