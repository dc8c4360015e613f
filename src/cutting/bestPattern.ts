import type { CutTree } from './cutTree.ts';
import { type SearchEffort, usualEffort } from './effort.ts';
import { bestRecipe, bestValues, madeBy } from './knapsack.ts';
import { type Production, productionsWithin, worth } from './productions.ts';
import { nothing } from './recipe.ts';
import { sheetGrid } from './sheetGrid.ts';
import type { CutLimits, Item } from './task.ts';
import { treeOf } from './treeBuilding.ts';

export interface BestPattern {
  readonly value: number;
  /** No pattern is worth more; equal to `value` when that is proved. */
  readonly bound: number;
  readonly made: readonly number[];
  readonly tree: CutTree;
}

/**
 * The pattern of one sheet that is worth most when item i has the value `values[i]`, a whole number, and only
 * `need` of it count.
 *
 * Where an item comes out too often its price is lowered (Lagrangian relaxation of the caps, by subgradient steps),
 * which brings the bound of the unlimited programme down; then the productions near that bound are listed, within
 * a growing loss, until the best of them proves itself.
 */
export function bestPattern(
  problem: {
    readonly sheet: { readonly width: number; readonly height: number };
    readonly items: readonly Item[];
    readonly values: readonly number[];
    readonly limits: CutLimits;
  },
  effort: SearchEffort = usualEffort,
): BestPattern {
  const { sheet, items, values, limits } = problem;
  const grid = sheetGrid({
    sheetWidth: sheet.width,
    sheetHeight: sheet.height,
    items,
    limits,
    mostPositions: effort.positions,
    mostSplits: effort.gridSplits,
  });
  const caps = items.map((item) => item.need);
  // Prices are counted in fractions of the values, so that they can be lowered by little.
  const fraction = 256;
  const full = values.map((value) => value * fraction);
  const boundAt = (cuts: readonly number[]) => {
    const prices = full.map((value, item) => value - cuts[item]!);
    const best = bestValues(grid, prices);
    return { prices, best, bound: best[grid.whole]! + worth(caps, cuts) };
  };

  let best: Pick<Production, 'made' | 'recipe'> | null = null;
  let cuts = full.map(() => 0);
  let kept = boundAt(cuts);
  let tried = kept;
  let reach = 1;
  for (let round = 0; round < 80; round++) {
    const recipe = bestRecipe(grid, tried.prices, tried.best);
    const made = madeBy(grid, recipe, items.length);
    const excess = made.map((count, item) => count - caps[item]!);
    const counted = made.map((count, item) => Math.min(count, caps[item]!));
    if (best === null || worth(counted, values) > worth(best.made, values)) best = { made: counted, recipe };
    if (kept.bound <= worth(best.made, full)) break;
    const square = excess.reduce((sum, e, item) => sum + (e > 0 || cuts[item]! > 0 ? e * e : 0), 0);
    if (square === 0) break;
    const stride = (reach * 0.03 * kept.bound) / square;
    cuts = cuts.map((cut, item) =>
      Math.min(full[item]!, Math.max(0, Math.round(cut + stride * excess[item]!))),
    );
    tried = boundAt(cuts);
    if (tried.bound < kept.bound) kept = tried;
    else reach *= 0.9;
  }

  // Without excess the unlimited programme has answered already.
  let complete = true;
  let settled = best !== null && kept.bound <= worth(best.made, full);
  const total = kept.best[grid.whole]!;
  for (let slack = Math.ceil(kept.bound / 200); complete && !settled; slack *= 2) {
    const allowed = Math.min(slack, total);
    const { combinations } = effort;
    const request = {
      grid,
      prices: kept.prices,
      values: kept.best,
      caps,
      slack: allowed,
      combinations,
      keep: null,
    };
    const found = productionsWithin(request);
    complete = found.complete;
    for (const production of found.productions) {
      if (best === null || worth(production.made, values) > worth(best.made, values)) best = production;
    }
    const value = best === null ? 0 : worth(best.made, full);
    settled = kept.bound - value <= allowed || allowed === total;
  }
  const value = best === null ? 0 : worth(best.made, values);
  return {
    value,
    bound: complete && !grid.thinned ? value : Math.floor(kept.bound / fraction),
    made: best?.made ?? caps.map(() => 0),
    tree: treeOf(grid, best?.recipe ?? nothing),
  };
}
