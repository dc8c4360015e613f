import type { SearchEffort } from './effort.ts';
import type { PatternSource } from './patternSource.ts';
import type { Choice } from './planSearch.ts';
import { worth } from './productions.ts';
import type { CuttingTask } from './task.ts';

/**
 * The choice with as many sheets, all cut alike for an equal share of all items, where the given one takes several
 * sheets of one kind; none where that is not so or a sheet cannot hold such a share.
 */
export function alikeChoices(
  task: CuttingTask,
  source: PatternSource,
  choice: Choice,
  effort: SearchEffort,
): Choice[] {
  if (new Set(choice.map(({ column }) => column.sheet)).size > 1) return [];
  const { sheet } = choice[0]!.column;
  const times = choice.reduce((sum, use) => sum + use.times, 0);
  if (times === 1) return [];
  const share = task.items.map((item) => Math.ceil(item.need / times));

  // At prices by area a sheet with the share loses no more than the rest of its area is worth.
  const areas = task.items.map((item) => item.width * item.height);
  const largest = Math.max(...areas);
  const prices = areas.map((area) => Math.max(1, Math.round((area / largest) * 1e6)));
  const slack = source.worthOfSheets(prices)[sheet]! - worth(share, prices);
  if (slack < 0) return [];
  const combinations = effort.combinations / 20;
  const { columns } = source.near(sheet, { prices, caps: share, slack, combinations, keep: null });
  const column = columns.find(({ made }) => made.every((count, item) => count >= share[item]!));
  return column === undefined ? [] : [[{ column, times }]];
}
