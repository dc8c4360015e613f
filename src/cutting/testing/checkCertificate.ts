import type { BoundCertificate, CuttingTask, SheetType, WorthCondition } from '../index.ts';

/** What came of checking a certificate. */
export interface CertificateCheck {
  /** Everything that is wrong with it, in words; none where the proof stands. */
  readonly faults: readonly string[];
  /** The least cost of sheet counts that it leaves; `null`: it leaves none, and there is no plan. */
  readonly bound: number | null;
  /** The fewest sheets of counts that it leaves and that cost no more than `cost`. */
  readonly sheetsBound: number | null;
  /** How many refuted counts were shown anew to be impossible. */
  readonly refutedAgain: number;
  /** How many conditions and refuted counts were too much to go through. */
  readonly unchecked: number;
}

/**
 * Goes through the proof of a lower bound anew, from the rules of the task alone; shares nothing with the planner.
 *
 * Every condition is checked by a dynamic programme over every whole size of workpiece, so lengths must be small
 * (some two hundred units a side). Refuted counts are shown to be impossible by listing every way of cutting a
 * sheet that loses no more than can be lost, and trying all choices of them; `patience` is how many ways and
 * choices are looked at before such a list is given up. `cost` is what the plan costs, if there is one.
 */
export function checkCertificate(
  task: CuttingTask,
  certificate: BoundCertificate,
  cost: number | null,
  patience = 2_000_000,
): CertificateCheck {
  const faults: string[] = [];
  const { groups, conditions, refuted } = certificate;
  const { items, sheets } = task;

  // Groups: each sheet once; alike in one group; what is left out gives nothing.
  const grouped = groups.flat();
  if (new Set(grouped).size !== grouped.length) faults.push('a sheet stands in two groups');
  for (const group of groups) {
    const first = sheets[group[0]!];
    if (first === undefined) faults.push('an empty group');
    for (const at of group) {
      const sheet = sheets[at];
      const alike =
        sheet?.width === first?.width && sheet?.height === first?.height && sheet?.cost === first?.cost;
      if (!alike) faults.push(`sheets ${group.join()} are not alike`);
    }
  }
  const ones = items.map(() => 1);
  sheets.forEach((sheet, at) => {
    if (grouped.includes(at) || sheet.count === 0) return;
    if (worthMost(task, ones, sheet)(sheet.width, sheet.height) > 0)
      faults.push(`sheet ${at} is left out and gives something`);
  });

  // Conditions: no sheet is worth more than is said, pieces beyond the need not counted.
  let unchecked = 0;
  const pieces = items.reduce((sum, { need }) => sum + need, 0);
  const wanted = conditions.map(({ prices }) =>
    prices.reduce((sum, price, item) => sum + price * items[item]!.need, 0),
  );
  for (const [c, { prices, sheets: said }] of conditions.entries()) {
    if (prices.some((price) => !Number.isSafeInteger(price) || price < 0))
      faults.push(`condition ${c}: prices`);
    groups.forEach((group, g) => {
      const sheet = sheets[group[0]!]!;
      const worth = worthMost(task, prices, sheet)(sheet.width, sheet.height);
      if (worth <= said[g]!) return;
      // Only with pieces that nobody needs, perhaps.
      const more = waysWorth(task, prices, sheet, said[g]! + 1, { left: patience });
      if (more === null) unchecked += 1;
      else if (more.length > 0)
        faults.push(`condition ${c}, group ${g}: said ${said[g]}, and ${more[0]!.join()} can be cut`);
    });
  }

  // Refuted counts.
  let refutedAgain = 0;
  for (const [r, { counts, condition }] of refuted.entries()) {
    const at = conditions[condition];
    if (at === undefined) {
      faults.push(`refuted ${r}: no condition ${condition}`);
      continue;
    }
    const found = choiceWithin(task, certificate, counts, at, wanted[condition]!, patience);
    if (found === 'unknown') unchecked += 1;
    else if (found) faults.push(`refuted ${r}: ${counts.join()} sheets do give all`);
    else refutedAgain += 1;
  }

  // The least cost of counts that are left.
  const most = groups.map((group) => {
    const onHand = group.reduce((sum, at) => sum + (sheets[at]!.count ?? pieces), 0);
    return Math.min(onHand, pieces);
  });
  const costs = groups.map((group) => sheets[group[0]!]!.cost);
  const least = (by: readonly number[], limit: number): number | null => {
    let best: number | null = null;
    const visit = (counts: readonly number[], sum: number, spent: number): void => {
      if (spent > limit || (best !== null && sum >= best)) return;
      const g = counts.length;
      if (g < groups.length) {
        for (let n = 0; n <= most[g]!; n++) visit([...counts, n], sum + n * by[g]!, spent + n * costs[g]!);
        return;
      }
      const enough = conditions.every(
        ({ sheets: worths }, c) => counts.reduce((total, n, at) => total + n * worths[at]!, 0) >= wanted[c]!,
      );
      if (enough && !refuted.some((no) => counts.every((n, at) => n <= no.counts[at]!))) best = sum;
    };
    visit([], 0, 0);
    return best;
  };
  return {
    faults,
    bound: least(costs, Number.POSITIVE_INFINITY),
    sheetsBound:
      cost === null
        ? null
        : least(
            groups.map(() => 1),
            cost,
          ),
    refutedAgain,
    unchecked,
  };
}

/** What a workpiece can be worth at most, at these prices of the items, any number of each: by size, worked out once. */
function worthMost(
  { items, limits }: CuttingTask,
  prices: readonly number[],
  sheet: Pick<SheetType, 'width' | 'height'>,
): (width: number, height: number) => number {
  const across = sheet.height + 1;
  const { step, longest, reach } = limits;
  const measured = Array.from({ length: Math.max(sheet.width, across) }, (_, length) => {
    return (step === null || length % step === 0) && (reach === null || length <= reach);
  });
  const known = new Float64Array((sheet.width + 1) * across).fill(-1);
  const of = (width: number, height: number): number => {
    const at = width * across + height;
    if (known[at]! >= 0) return known[at]!;
    let best = 0;
    items.forEach((item, index) => {
      if (isItem(item, width, height)) best = Math.max(best, prices[index]!);
    });
    // The loops of `halves`, written out: this is where the time goes.
    if (longest === null || height <= longest) {
      for (let x = 1; 2 * x <= width; x++) {
        if (measured[x] || measured[width - x]) {
          const both = of(x, height) + of(width - x, height);
          if (both > best) best = both;
        }
      }
    }
    if (longest === null || width <= longest) {
      for (let y = 1; 2 * y <= height; y++) {
        if (measured[y] || measured[height - y]) {
          const both = of(width, y) + of(width, height - y);
          if (both > best) best = both;
        }
      }
    }
    known[at] = best;
    return best;
  };
  return of;
}

type Size = readonly [width: number, height: number];

/** Both workpieces of every cut that the limits allow: one of them is measured off, the other is what remains. */
function* halves(width: number, height: number, limits: CuttingTask['limits']): Generator<[Size, Size]> {
  const { step, longest, reach } = limits;
  const measured = (length: number) =>
    (step === null || length % step === 0) && (reach === null || length <= reach);
  if (longest === null || height <= longest) {
    for (let x = 1; 2 * x <= width; x++) {
      if (measured(x) || measured(width - x))
        yield [
          [x, height],
          [width - x, height],
        ];
    }
  }
  if (longest === null || width <= longest) {
    for (let y = 1; 2 * y <= height; y++) {
      if (measured(y) || measured(height - y))
        yield [
          [width, y],
          [width, height - y],
        ];
    }
  }
}

function isItem(item: CuttingTask['items'][number], width: number, height: number): boolean {
  if (item.width === width && item.height === height) return true;
  return item.turns && item.width === height && item.height === width;
}

/**
 * Whether the needs can be met with at most such counts of sheets. At the condition's prices all sheets together
 * are worth `slack` more than is needed, so a sheet of such a plan, its pieces beyond the need not counted, is
 * worth at most so much less than it could be: every such way is listed, and all choices of them are tried.
 */
function choiceWithin(
  task: CuttingTask,
  { groups }: BoundCertificate,
  counts: readonly number[],
  { prices, sheets: said }: WorthCondition,
  need: number,
  patience: number,
): boolean | 'unknown' {
  const needs = task.items.map((item) => item.need);
  const slack = counts.reduce((sum, n, g) => sum + n * said[g]!, 0) - need;
  if (slack < 0) return false;
  const still = { left: patience };

  // The said worth may be more than the true one: then even less can be lost.
  const ways: number[][][] = [];
  for (const [g, group] of groups.entries()) {
    if (counts[g] === 0) ways.push([]);
    else {
      const list = waysWorth(task, prices, task.sheets[group[0]!]!, said[g]! - slack, still);
      if (list === null) return 'unknown';
      ways.push(list);
    }
  }

  // Some sheet gives the dearest piece that is still wanted: each way that does is tried.
  const dearest = needs.map((_, item) => item).sort((a, b) => prices[b]! - prices[a]!);
  const free = [...counts];
  const visit = (rest: readonly number[], lost: number): boolean => {
    const next = dearest.find((item) => rest[item]! > 0);
    if (next === undefined) return true;
    for (const [g, list] of ways.entries()) {
      if (free[g]! === 0) continue;
      for (const made of list) {
        if (made[next]! === 0) continue;
        if (still.left-- < 0) return false;
        const useful = made.reduce((sum, n, item) => sum + Math.min(n, rest[item]!) * prices[item]!, 0);
        const loss = lost + said[g]! - useful;
        if (loss > slack) continue;
        free[g]! -= 1;
        const left = rest.map((n, item) => Math.max(0, n - made[item]!));
        const found = visit(left, loss);
        free[g]! += 1;
        if (found) return true;
      }
    }
    return false;
  };
  const found = visit(needs, 0);
  return found ? true : still.left < 0 ? 'unknown' : false;
}

/**
 * Every way to cut a sheet that is worth at least `least` at these prices, pieces beyond the need not counted; `null`:
 * patience came to an end. By the same recursion as the worth: a part of such a way loses no more than the whole.
 */
function waysWorth(
  task: CuttingTask,
  prices: readonly number[],
  sheet: SheetType,
  least: number,
  patience: { left: number },
): number[][] | null {
  const needs = task.items.map((item) => item.need);
  const worthOf = (made: readonly number[]) => made.reduce((sum, n, item) => sum + n * prices[item]!, 0);
  const most = worthMost(task, prices, sheet);
  const known = new Map<string, number[][]>();
  const allowed = most(sheet.width, sheet.height) - least;
  if (allowed < 0) return [];
  const of = (width: number, height: number): number[][] => {
    const key = `${width} ${height}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const enough = most(width, height) - allowed;
    const found = new Map<string, number[]>();
    const offer = (made: number[]) => {
      if (worthOf(made) >= enough) found.set(made.join(), made);
    };
    offer(needs.map(() => 0));
    task.items.forEach((item, index) => {
      if (isItem(item, width, height)) offer(needs.map((_, other) => (other === index ? 1 : 0)));
    });
    for (const [first, second] of halves(width, height, task.limits)) {
      if (patience.left < 0) break;
      if (most(...first) + most(...second) < enough) continue;
      const others = of(...second);
      for (const a of of(...first)) {
        patience.left -= others.length;
        if (patience.left < 0) break;
        for (const b of others) offer(a.map((n, item) => Math.min(needs[item]!, n + b[item]!)));
      }
    }
    const kept = unexceeded([...found.values()]);
    known.set(key, kept);
    return kept;
  };
  const all = of(sheet.width, sheet.height);
  return patience.left < 0 ? null : all;
}

/** Those that no other exceeds: with more of something nothing is harder. */
function unexceeded(vectors: readonly number[][]): number[][] {
  return vectors.filter(
    (vector) => !vectors.some((other) => other !== vector && other.every((n, item) => n >= vector[item]!)),
  );
}
