import { bestValues } from './knapsack.ts';
import { type SheetGrid, sheetGrid } from './sheetGrid.ts';
import { type CuttingTask, type SheetType, unlimited } from './task.ts';

/** What a sheet can be worth at most, at whole prices of the items: the true greatest worth or something above. */
export interface SheetWorth {
  /** For whole prices. Never below what any edge-to-edge pattern within the limits is worth. */
  atMost(prices: readonly number[]): number;
}

/**
 * The greatest worth of a sheet by its grid; of a grid that is thinned, by two bounds that hold for all patterns.
 *
 * One is a coarser sheet: sizes counted in 1/`fineness` of the sheet's, those of items rounded down. What fits the
 * true sheet fits the coarse one, since the parts of a workpiece, rounded down, add up to no more than it. The
 * other is the area: no square unit is worth more than in the item that is dearest for its area.
 */
export function sheetWorth(grid: SheetGrid, task: CuttingTask, sheet: SheetType): SheetWorth {
  if (!grid.thinned) return { atMost: (prices) => bestValues(grid, prices)[grid.whole]! };
  const coarse = coarseGrid(grid, task, sheet);
  return {
    atMost: (prices) => {
      let byArea = 0;
      for (const { item, width, height } of grid.placements) {
        const pieces = (sheet.width / width) * (sheet.height / height);
        byArea = Math.max(byArea, Math.ceil(prices[item]! * pieces * (1 + 1e-12)));
      }
      if (coarse === null) return byArea;
      const coarsePrices = grid.placements.map(({ item }) => prices[item]!);
      return Math.min(byArea, bestValues(coarse, coarsePrices)[coarse.whole]!);
    },
  };
}

const fineness = 160;

/** The coarse sheet, with an item for each placement of the true one; `null` when one is too small to be seen. */
function coarseGrid(grid: SheetGrid, task: CuttingTask, sheet: SheetType): SheetGrid | null {
  const items = grid.placements.map(({ item, width, height }) => ({
    width: Math.floor((width * fineness) / sheet.width),
    height: Math.floor((height * fineness) / sheet.height),
    need: task.items[item]!.need,
    turns: false,
  }));
  if (items.some(({ width, height }) => width === 0 || height === 0)) return null;
  const coarse = sheetGrid({
    sheetWidth: fineness,
    sheetHeight: fineness,
    items,
    limits: unlimited,
    mostPositions: fineness + 1,
    mostSplits: Number.POSITIVE_INFINITY,
  });
  return coarse.thinned ? null : coarse;
}
