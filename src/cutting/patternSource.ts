import type { SearchEffort } from './effort.ts';
import { bestRecipe, bestValues, madeBy } from './knapsack.ts';
import type { MasterColumn } from './masterProgramme.ts';
import { type ProductionsRequest, productionsWithin } from './productions.ts';
import type { Recipe } from './recipe.ts';
import { type SheetGrid, sheetGrid } from './sheetGrid.ts';
import { sheetWorth } from './sheetWorth.ts';
import type { CuttingTask } from './task.ts';

/** A way of cutting one sheet, once. */
export interface PatternColumn extends MasterColumn {
  readonly recipe: Recipe;
}

/** Everything that can be asked about single sheets of a task, with the work that is left for asking. */
export interface PatternSource {
  readonly grids: readonly SheetGrid[];
  /** For each sheet the pattern worth most at these prices; `null` when the work is used up. */
  best(prices: readonly number[]): PatternColumn[] | null;
  /** By sheet, what no pattern exceeds, at whole prices. */
  worthOfSheets(prices: readonly number[]): number[];
  /** All productions of the sheet near the best; see `productionsWithin`. Never complete on a thinned grid. */
  near(
    sheet: number,
    request: Pick<ProductionsRequest, 'prices' | 'caps' | 'slack' | 'combinations' | 'keep'>,
  ): { readonly columns: PatternColumn[]; readonly complete: boolean };
}

/** The source for a task. */
export function patternSource(task: CuttingTask, effort: SearchEffort): PatternSource {
  const grids = task.sheets.map((sheet) =>
    sheetGrid({
      sheetWidth: sheet.width,
      sheetHeight: sheet.height,
      items: task.items,
      limits: task.limits,
      mostPositions: effort.positions,
      mostSplits: effort.gridSplits,
    }),
  );
  const worths = task.sheets.map((sheet, index) => sheetWorth(grids[index]!, task, sheet));
  let left = effort.splits;
  let combinations = effort.combinationsInAll;
  const items = task.items.length;
  return {
    grids,
    best: (prices) => {
      if (left < 0) return null;
      return grids.map((grid, sheet) => {
        left -= grid.splits + 5000;
        const recipe = bestRecipe(grid, prices, bestValues(grid, prices));
        return { sheet, made: madeBy(grid, recipe, items), recipe };
      });
    },
    worthOfSheets: (prices) => worths.map((worth) => worth.atMost(prices)),
    near: (sheet, request) => {
      const grid = grids[sheet]!;
      // Below this not even the smallest enumeration comes to an end.
      if (combinations < grid.columns * grid.rows) return { columns: [], complete: false };
      combinations -= grid.splits / 16;
      const values = bestValues(grid, request.prices);
      const allowed = Math.max(0, Math.min(request.combinations, combinations));
      const found = productionsWithin({ ...request, combinations: allowed, grid, values });
      const { productions, complete } = found;
      combinations -= found.combinations;
      return {
        columns: productions.map(({ made, recipe }) => ({ sheet, made, recipe })),
        complete: complete && !grid.thinned,
      };
    },
  };
}
