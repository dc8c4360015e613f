import { assert } from '../problem/index.ts';
import { nothing, type Recipe } from './recipe.ts';
import type { SheetGrid } from './sheetGrid.ts';

/**
 * By cell, the greatest worth of pieces that edge-to-edge cuts can take from its workpiece, each item having a
 * price and any number of each being welcome.
 *
 * Dynamic programme of P. C. Gilmore & R. E. Gomory (1966), as in G. F. Cintra et al. (2008), over the grid's
 * splits. Exact when the prices are whole and the worth of a sheet stays below 2^53. Cost: `grid.splits`.
 */
export function bestValues(grid: SheetGrid, prices: readonly number[]): Float64Array {
  const { width, height, columns, rows, cutsWidth, cutsHeight } = grid;
  const values = new Float64Array(columns * rows);
  for (const placement of grid.placements) {
    const price = prices[placement.item]!;
    if (price <= 0) continue;
    for (const i of placement.columns) {
      for (const j of placement.rows) {
        if (values[i * rows + j]! < price) values[i * rows + j] = price;
      }
    }
  }
  const allRows = cutsWidth.every(Boolean);
  for (let i = 1; i < columns; i++) {
    const row = i * rows;
    for (let split = width.start[i]!; split < width.start[i + 1]!; split++) {
      const first = width.first[split]! * rows;
      const second = width.second[split]! * rows;
      for (let j = 1; j < rows; j++) {
        if (!allRows && !cutsWidth[j]) continue;
        const value = values[first + j]! + values[second + j]!;
        if (value > values[row + j]!) values[row + j] = value;
      }
    }
    if (!cutsHeight[i]) continue;
    for (let j = 1; j < rows; j++) {
      let best = values[row + j]!;
      for (let split = height.start[j]!; split < height.start[j + 1]!; split++) {
        const value = values[row + height.first[split]!]! + values[row + height.second[split]!]!;
        if (value > best) best = value;
      }
      values[row + j] = best;
    }
  }
  return values;
}

/** A way to reach the whole sheet's value of `bestValues`. */
export function bestRecipe(grid: SheetGrid, prices: readonly number[], values: Float64Array): Recipe {
  const { width, height, rows } = grid;
  const trace = (i: number, j: number): Recipe => {
    const cell = i * rows + j;
    const value = values[cell]!;
    if (value === 0) return nothing;
    const placement = grid.placements.findIndex(
      (p) => prices[p.item] === value && p.columns.includes(i) && p.rows.includes(j),
    );
    if (placement >= 0) return { kind: 'piece', placement };
    const size = { width: width.sizes[i]!, height: height.sizes[j]! };
    if (grid.cutsHeight[i]) {
      for (let split = height.start[j]!; split < height.start[j + 1]!; split++) {
        const first = height.first[split]!;
        const second = height.second[split]!;
        if (values[i * rows + first]! + values[i * rows + second]! !== value) continue;
        const set = height.sizes[first]!;
        return {
          kind: 'split',
          axis: 'height',
          ...size,
          set,
          first: trace(i, first),
          second: trace(i, second),
        };
      }
    }
    if (grid.cutsWidth[j]) {
      for (let split = width.start[i]!; split < width.start[i + 1]!; split++) {
        const first = width.first[split]!;
        const second = width.second[split]!;
        if (values[first * rows + j]! + values[second * rows + j]! !== value) continue;
        const set = width.sizes[first]!;
        return {
          kind: 'split',
          axis: 'width',
          ...size,
          set,
          first: trace(first, j),
          second: trace(second, j),
        };
      }
    }
    assert(false, 'no split gives the value of the cell', { i, j, value });
  };
  return trace(width.whole, height.whole);
}

/** How many of each item come out of a recipe. */
export function madeBy(grid: SheetGrid, recipe: Recipe, items: number): number[] {
  const made = new Array<number>(items).fill(0);
  const count = (part: Recipe): void => {
    if (part.kind === 'piece') made[grid.placements[part.placement]!.item]!++;
    if (part.kind === 'split') {
      count(part.first);
      count(part.second);
    }
  };
  count(recipe);
  return made;
}
