import type { Worth } from './cover.ts';
import { leastSheetCounts, type SheetCondition } from './sheetCounts.ts';
import type { CuttingTask } from './task.ts';

/**
 * The condition that the sheets of a plan have at least the area of all that is needed: items priced by area.
 * Areas are counted in the largest unit that divides all of them; `null` where even so they are too large to be
 * added up exactly.
 */
function areaCondition({ items, sheets }: CuttingTask): (SheetCondition & { readonly worth: Worth }) | null {
  const all = items.map(({ width, height }) => width * height);
  const unit = all.reduce(greatestDivisor, 0);
  const prices = all.map((area) => area / unit);
  const weights = sheets.map(({ width, height }) => Math.floor((width * height) / unit));
  const need = items.reduce((sum, item, index) => sum + item.need * prices[index]!, 0);
  if (![...all, ...sheets.map(({ width, height }) => width * height), need].every(Number.isSafeInteger))
    return null;
  return { weights, need, worth: { prices, sheets: weights } };
}

/** What every plan costs at the least, and takes of sheets at the least, going by areas only; and the certificate. */
export function areaBound(task: CuttingTask): {
  readonly cost: number;
  readonly sheets: number;
  readonly conditions: readonly (SheetCondition & { readonly worth: Worth })[];
} {
  const condition = areaCondition(task);
  if (condition === null) return { cost: 0, sheets: 0, conditions: [] };
  const conditions = [condition];
  const pieces = task.items.reduce((sum, { need }) => sum + need, 0);
  const most = task.sheets.map(({ count }) => Math.min(count ?? pieces, pieces));
  const least = (objective: readonly number[]) => {
    const found = leastSheetCounts({ objective, most, conditions, refuted: [], budget: null, nodes: 1000 });
    if (found.kind !== 'counts') return 0;
    return found.counts.reduce((sum, count, sheet) => sum + count * objective[sheet]!, 0);
  };
  const costs = task.sheets.map(({ cost }) => cost);
  return { cost: least(costs), sheets: least(costs.map(() => 1)), conditions };
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}
