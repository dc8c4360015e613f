import type { CutLimits, CuttingTask, Item } from '../index.ts';

/**
 * All that edge-to-edge cuts can make of one workpiece, tried out at every whole position: the oracle for small
 * sheets. Written from the rules of the limits alone; shares nothing with the planner.
 *
 * Counts are capped at the needs; only those that no other exceeds are kept.
 */
export function everyProduction(
  items: readonly Item[],
  limits: CutLimits,
  sheet: { readonly width: number; readonly height: number },
): number[][] {
  const { step, longest, reach } = limits;
  const known = new Map<string, number[][]>();
  const marked = (size: number) => (step === null || size % step === 0) && (reach === null || size <= reach);
  const of = (width: number, height: number): number[][] => {
    const key = `${width} ${height}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = new Map<string, number[]>();
    const offer = (made: number[]) => found.set(made.join(), made);
    offer(items.map(() => 0));
    items.forEach((item, index) => {
      const fits =
        (item.width === width && item.height === height) ||
        (item.turns && item.width === height && item.height === width);
      if (fits) offer(items.map((_, other) => (other === index ? 1 : 0)));
    });
    const join = (first: number[][], second: number[][]) => {
      for (const a of first) {
        for (const b of second) offer(a.map((count, i) => Math.min(items[i]!.need, count + b[i]!)));
      }
    };
    if (longest === null || height <= longest) {
      for (let x = 1; x <= width / 2; x++) {
        if (marked(x) || marked(width - x)) join(of(x, height), of(width - x, height));
      }
    }
    if (longest === null || width <= longest) {
      for (let y = 1; y <= height / 2; y++) {
        if (marked(y) || marked(height - y)) join(of(width, y), of(width, height - y));
      }
    }
    const kept = unexceeded([...found.values()]);
    known.set(key, kept);
    return kept;
  };
  return of(sheet.width, sheet.height);
}

/** The least cost, and the fewest sheets at that cost, by trying all numbers of sheets up to `mostSheets`. */
export function leastByTrying(
  task: CuttingTask,
  mostSheets: number,
): { readonly cost: number; readonly sheets: number } | null {
  const productions = task.sheets.map((sheet) => everyProduction(task.items, task.limits, sheet));
  const needs = task.items.map((item) => item.need);
  let best: { cost: number; sheets: number } | null = null;
  const better = (cost: number, sheets: number) =>
    best === null || cost < best.cost || (cost === best.cost && sheets < best.sheets);
  const visit = (kind: number, cost: number, sheets: number, made: number[][]): void => {
    if (!better(cost, sheets)) return;
    if (made.some((counts) => counts.every((count, item) => count >= needs[item]!))) {
      best = { cost, sheets };
      return;
    }
    if (kind === task.sheets.length) return;
    const sheet = task.sheets[kind]!;
    let sums = made;
    visit(kind + 1, cost, sheets, sums);
    for (let n = 1; n <= (sheet.count ?? mostSheets) && sheets + n <= mostSheets; n++) {
      const next = new Map<string, number[]>();
      for (const a of sums) {
        for (const b of productions[kind]!) {
          const sum = a.map((count, item) => Math.min(needs[item]!, count + b[item]!));
          next.set(sum.join(), sum);
        }
      }
      sums = unexceeded([...next.values()]);
      visit(kind + 1, cost + n * sheet.cost, sheets + n, sums);
    }
  };
  visit(0, 0, 0, [needs.map(() => 0)]);
  return best;
}

function unexceeded(vectors: readonly number[][]): number[][] {
  return vectors.filter(
    (vector) =>
      !vectors.some(
        (other) =>
          other !== vector &&
          other.every((count, i) => count >= vector[i]!) &&
          other.join() !== vector.join(),
      ),
  );
}
