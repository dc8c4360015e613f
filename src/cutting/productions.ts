import { nothing, type Recipe } from './recipe.ts';
import type { SheetGrid } from './sheetGrid.ts';

/** What can come out of one sheet, no item counted beyond its cap, and how. */
export interface Production {
  readonly made: readonly number[];
  /** The worth of the sheet (`bestValues`) less the worth of `made`. */
  readonly loss: number;
  readonly recipe: Recipe;
}

export interface ProductionsRequest {
  readonly grid: SheetGrid;
  /** Whole prices, not negative, and `bestValues` of the grid for them. */
  readonly prices: readonly number[];
  readonly values: Float64Array;
  /** No more of an item counts. */
  readonly caps: readonly number[];
  /** The loss that is allowed. */
  readonly slack: number;
  /** Pairs of productions to combine at most. */
  readonly combinations: number;
  /** Keep only so many of the best in each cell; `null`: all. */
  readonly keep: number | null;
}

/**
 * All productions of the sheet whose loss is within the slack and that no other of them exceeds; least loss first.
 *
 * `complete` is false when a limit cut the enumeration short: then some are missing, but those given are true.
 * From the whole sheet down, each cell gets the loss it may still have when the rest of the sheet loses nothing;
 * from the smallest cell up, productions of the two parts of each split are added within that loss.
 */
export function productionsWithin(request: ProductionsRequest): {
  readonly productions: readonly Production[];
  readonly complete: boolean;
} {
  const { grid, prices, values, caps, slack, keep } = request;
  const { rows, width, height } = grid;
  const slacks = slacksOf(request);
  const sets = new Map<number, readonly Production[]>();
  const none: Production = { made: caps.map(() => 0), loss: 0, recipe: nothing };
  const setOf = (cell: number) => sets.get(cell) ?? [none];
  const keyOf = keyFunction(caps);
  let left = request.combinations;
  let complete = true;
  const fits = grid.placements.map((placement) => ({
    item: placement.item,
    columns: new Set(placement.columns),
    rows: new Set(placement.rows),
  }));

  for (let i = 1; i < grid.columns; i++) {
    for (let j = 1; j < rows; j++) {
      const cell = i * rows + j;
      const allowed = slacks[cell]!;
      if (allowed < 0) continue;
      const value = values[cell]!;
      const found = new Map<number | string, Production>();
      const least = new LeastLosses(keep === null ? null : 2 * keep);
      const offer = (made: readonly number[], loss: number, recipe: () => Recipe) => {
        if (loss > allowed || loss > least.highest) return;
        const key = keyOf(made);
        if (found.has(key)) return;
        found.set(key, { made, loss, recipe: recipe() });
        least.add(loss);
      };
      offer(none.made, value, () => nothing);
      fits.forEach(({ item, columns, rows: rowsOf }, placement) => {
        if (caps[item] === 0 || !columns.has(i) || !rowsOf.has(j)) return;
        const made = none.made.map((_, other) => (other === item ? 1 : 0));
        offer(made, value - prices[item]!, () => ({ kind: 'piece', placement }));
      });

      const combine = (firstCell: number, secondCell: number, recipe: (a: Recipe, b: Recipe) => Recipe) => {
        const here = value - values[firstCell]! - values[secondCell]!;
        if (here > allowed || left <= 0) return;
        const firsts = setOf(firstCell);
        const seconds = setOf(secondCell);
        for (let a = 0; a < firsts.length; a++) {
          const first = firsts[a]!;
          if (here + first.loss > Math.min(allowed, least.highest)) break;
          for (let b = firstCell === secondCell ? a : 0; b < seconds.length; b++) {
            const second = seconds[b]!;
            if (here + first.loss + second.loss > Math.min(allowed, least.highest)) break;
            if (left-- <= 0) return;
            const made = new Array<number>(caps.length);
            let worthMade = 0;
            for (let item = 0; item < caps.length; item++) {
              const count = Math.min(caps[item]!, first.made[item]! + second.made[item]!);
              made[item] = count;
              worthMade += count * prices[item]!;
            }
            offer(made, value - worthMade, () => recipe(first.recipe, second.recipe));
          }
        }
      };
      const size = { width: width.sizes[i]!, height: height.sizes[j]! };
      if (grid.cutsHeight[i]) {
        for (let split = height.start[j]!; split < height.start[j + 1]!; split++) {
          const first = height.first[split]!;
          combine(i * rows + first, i * rows + height.second[split]!, (a, b) => {
            return { kind: 'split', axis: 'height', ...size, set: height.sizes[first]!, first: a, second: b };
          });
        }
      }
      if (grid.cutsWidth[j]) {
        for (let split = width.start[i]!; split < width.start[i + 1]!; split++) {
          const first = width.first[split]!;
          combine(first * rows + j, width.second[split]! * rows + j, (a, b) => {
            return { kind: 'split', axis: 'width', ...size, set: width.sizes[first]!, first: a, second: b };
          });
        }
      }
      const best = unexceeded(found);
      left -= found.size + (found.size * best.length) / 8;
      const kept = keep === null ? best : best.slice(0, keep);
      if (keep !== null && (kept.length < best.length || least.full)) complete = false;
      sets.set(cell, kept);
    }
  }
  if (left <= 0) complete = false;
  const productions = grid.whole === 0 || slack < 0 ? [] : (sets.get(grid.whole) ?? []);
  return { productions, complete };
}

/** The least losses met so far, so that what is worse than so many of them need not be looked at. */
class LeastLosses {
  private readonly losses: number[] = [];
  constructor(private readonly most: number | null) {}
  /** Nothing above this is among them. */
  get highest(): number {
    return this.most === null || this.losses.length < this.most
      ? Number.POSITIVE_INFINITY
      : this.losses.at(-1)!;
  }
  get full(): boolean {
    return this.losses.length === this.most;
  }
  add(loss: number): void {
    if (this.most === null) return;
    let place = this.losses.length;
    while (place > 0 && this.losses[place - 1]! > loss) place--;
    this.losses.splice(place, 0, loss);
    if (this.losses.length > this.most) this.losses.pop();
  }
}

/** By cell, the loss its production may have in a sheet that loses `slack` at most; -1 where it cannot occur. */
function slacksOf({ grid, values, slack }: ProductionsRequest): Float64Array {
  const { rows, width, height } = grid;
  const slacks = new Float64Array(values.length).fill(-1);
  slacks[grid.whole] = slack;
  const pass = (rest: number, part: number) => {
    if (rest > slacks[part]!) slacks[part] = rest;
  };
  for (let i = grid.columns - 1; i > 0; i--) {
    for (let j = rows - 1; j > 0; j--) {
      const cell = i * rows + j;
      const allowed = slacks[cell]!;
      if (allowed < 0) continue;
      const share = (first: number, second: number) => {
        const rest = allowed - (values[cell]! - values[first]! - values[second]!);
        if (rest < 0) return;
        pass(rest, first);
        pass(rest, second);
      };
      if (grid.cutsHeight[i]) {
        for (let split = height.start[j]!; split < height.start[j + 1]!; split++) {
          share(i * rows + height.first[split]!, i * rows + height.second[split]!);
        }
      }
      if (grid.cutsWidth[j]) {
        for (let split = width.start[i]!; split < width.start[i + 1]!; split++) {
          share(width.first[split]! * rows + j, width.second[split]! * rows + j);
        }
      }
    }
  }
  return slacks;
}

/** The worth of a production. */
export function worth(made: readonly number[], prices: readonly number[]): number {
  let sum = 0;
  for (let item = 0; item < made.length; item++) sum += made[item]! * prices[item]!;
  return sum;
}

/** Whether `made` is at least `other` in every item. */
function covers(made: readonly number[], other: readonly number[]): boolean {
  for (let item = 0; item < made.length; item++) if (made[item]! < other[item]!) return false;
  return true;
}

function unexceeded(found: ReadonlyMap<unknown, Production>): Production[] {
  // One that exceeds another is worth at least as much and has more pieces.
  const pieces = (production: Production) => production.made.reduce((sum, count) => sum + count, 0);
  const sorted = [...found.values()].sort((a, b) => a.loss - b.loss || pieces(b) - pieces(a));
  const kept: Production[] = [];
  for (const production of sorted) {
    if (!kept.some((better) => covers(better.made, production.made))) kept.push(production);
  }
  return kept;
}

/** A key for productions within the caps: one number where it fits in 53 bits. */
function keyFunction(caps: readonly number[]): (made: readonly number[]) => number | string {
  const fits = caps.reduce((product, cap) => product * (cap + 1), 1) <= Number.MAX_SAFE_INTEGER;
  if (!fits) return (made) => made.join();
  return (made) => {
    let key = 0;
    for (let item = 0; item < made.length; item++) key = key * (caps[item]! + 1) + made[item]!;
    return key;
  };
}
