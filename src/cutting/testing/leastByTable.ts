import type { CuttingTask } from '../index.ts';
import { everyProduction } from './everyCut.ts';

/**
 * The least cost, and the fewest sheets at that cost, by a table over everything that may still be wanted; `null`:
 * there is no plan. For small sheets and few pieces: the table has (need + 1) places along every item. Takes
 * sheets of any price and number; shares nothing with the planner, nor with its solver.
 */
export function leastByTable(task: CuttingTask): { readonly cost: number; readonly sheets: number } | null {
  const needs = task.items.map(({ need }) => need);
  // Place of a state: what is still wanted, read as digits, the first item the lowest.
  const strides = needs.map((_, item) => needs.slice(0, item).reduce((size, need) => size * (need + 1), 1));
  const size = needs.reduce((product, need) => product * (need + 1), 1);
  const wanted = (state: number, item: number) => Math.floor(state / strides[item]!) % (needs[item]! + 1);
  // Cost and sheets in one number.
  const sheetsAtMost = 1e6;
  const spent = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  spent[size - 1] = 0;

  for (const sheet of task.sheets) {
    const ways = everyProduction(task.items, task.limits, sheet).filter((made) => made.some((n) => n > 0));
    const price = sheet.cost * sheetsAtMost + 1;
    /** Spends one more of this sheet on every state, from those with most wanted down. */
    const spendOne = (from: Float64Array): boolean => {
      let better = false;
      for (let state = size - 1; state > 0; state--) {
        if (from[state] === Number.POSITIVE_INFINITY) continue;
        for (const made of ways) {
          const next = needs.reduce(
            (at, _, item) => at + Math.max(0, wanted(state, item) - made[item]!) * strides[item]!,
            0,
          );
          if (from[state]! + price < spent[next]!) {
            spent[next] = from[state]! + price;
            better = true;
          }
        }
      }
      return better;
    };
    if (sheet.count === null) {
      // In place: what was just reached is gone on from, so one round takes any number.
      spendOne(spent);
    } else {
      for (let used = 0; used < sheet.count && spendOne(Float64Array.from(spent)); used++);
    }
  }
  const least = spent[0]!;
  if (least === Number.POSITIVE_INFINITY) return null;
  return { cost: Math.floor(least / sheetsAtMost), sheets: least % sheetsAtMost };
}
