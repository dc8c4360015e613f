import type { Axis } from '../measure/index.ts';
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
  /** How many were combined. */
  readonly combinations: number;
} {
  const { grid, prices, values, caps, slack, keep } = request;
  const { rows, width, height } = grid;
  const slacks = slacksOf(request);
  const none: Production = { made: caps.map(() => 0), loss: 0, recipe: nothing };
  const sets = new Array<readonly Production[] | undefined>(values.length);
  const empty = [none];
  const single = caps.map((_, item) => caps.map((_, other) => (other === item ? 1 : 0)));
  const fits = grid.placements.map((placement) => ({
    item: placement.item,
    columns: new Set(placement.columns),
    rows: new Set(placement.rows),
  }));
  const pair = 1 + caps.length / 16;
  let left = request.combinations - values.length / 8;
  let complete = true;

  for (let i = 1; i < grid.columns; i++) {
    for (let j = 1; j < rows; j++) {
      const cell = i * rows + j;
      const allowed = slacks[cell]!;
      if (allowed < 0) continue;
      // What a cell costs to look at, in combinations.
      left -= 1 + grid.placements.length / 4;
      if (left <= 0) return { productions: [], complete: false, combinations: request.combinations };
      const value = values[cell]!;
      const candidates = new Candidates(prices, caps, value, allowed, keep);
      candidates.offer(none.made, none.made, () => nothing);
      fits.forEach(({ item, columns, rows: rowsOf }, placement) => {
        if (!columns.has(i) || !rowsOf.has(j)) return;
        candidates.offer(single[item]!, none.made, () => ({ kind: 'piece', placement }));
      });

      const size = { width: width.sizes[i]!, height: height.sizes[j]! };
      const combine = (axis: Axis, set: number, firstCell: number, secondCell: number, here: number) => {
        const firsts = values[firstCell] === 0 && sets[firstCell] === undefined ? empty : sets[firstCell];
        const seconds = values[secondCell] === 0 && sets[secondCell] === undefined ? empty : sets[secondCell];
        if (firsts === undefined || seconds === undefined) return;
        for (let a = 0; a < firsts.length; a++) {
          const first = firsts[a]!;
          if (here + first.loss > candidates.limit) break;
          for (let b = firstCell === secondCell ? a : 0; b < seconds.length; b++) {
            const second = seconds[b]!;
            if (here + first.loss + second.loss > candidates.limit) break;
            left -= pair;
            if (left <= 0) return;
            candidates.offer(first.made, second.made, () => {
              return { kind: 'split', axis, ...size, set, first: first.recipe, second: second.recipe };
            });
          }
        }
      };
      if (grid.cutsHeight[i] && left > 0) {
        for (let split = height.start[j]!; split < height.start[j + 1]!; split++) {
          const first = i * rows + height.first[split]!;
          const second = i * rows + height.second[split]!;
          const here = value - values[first]! - values[second]!;
          if (here <= candidates.limit)
            combine('height', height.sizes[height.first[split]!]!, first, second, here);
        }
      }
      if (grid.cutsWidth[j] && left > 0) {
        for (let split = width.start[i]!; split < width.start[i + 1]!; split++) {
          const first = width.first[split]! * rows + j;
          const second = width.second[split]! * rows + j;
          const here = value - values[first]! - values[second]!;
          if (here <= candidates.limit)
            combine('width', width.sizes[width.first[split]!]!, first, second, here);
        }
      }
      const best = candidates.unexceeded();
      left -= candidates.size + (candidates.size * best.length) / 8;
      if (candidates.dropped || (keep !== null && best.length > keep)) complete = false;
      sets[cell] = keep === null ? best : best.slice(0, keep);
    }
  }
  if (left <= 0) complete = false;
  const productions = grid.whole === 0 || slack < 0 ? [] : (sets[grid.whole] ?? []);
  return { productions, complete, combinations: request.combinations - left };
}

/** The productions of one cell as they are found, each once. */
class Candidates {
  /** What loses more is not wanted: the slack of the cell, or less when there are enough that are better. */
  limit: number;
  /** Whether anything within the slack was turned away. */
  dropped = false;
  private readonly found = new Map<number | string, Production>();
  private readonly shortKeys: boolean;
  /** The least losses so far, ascending, twice as many as are kept. */
  private readonly losses: number[] = [];

  constructor(
    private readonly prices: readonly number[],
    private readonly caps: readonly number[],
    private readonly value: number,
    private readonly slack: number,
    private readonly keep: number | null,
  ) {
    this.limit = slack;
    // One number identifies the counts where all of them fit in 53 bits.
    this.shortKeys = caps.reduce((product, cap) => product * (cap + 1), 1) <= Number.MAX_SAFE_INTEGER;
  }

  get size(): number {
    return this.found.size;
  }

  /** Two productions put together, as far as they count. */
  offer(first: readonly number[], second: readonly number[], recipe: () => Recipe): void {
    const { caps, prices } = this;
    let loss = this.value;
    let key = 0;
    for (let item = 0; item < caps.length; item++) {
      const cap = caps[item]!;
      const sum = first[item]! + second[item]!;
      const count = Math.min(sum, cap);
      loss -= count * prices[item]!;
      key = key * (cap + 1) + count;
    }
    if (loss > this.limit) {
      if (loss <= this.slack) this.dropped = true;
      return;
    }
    if (this.shortKeys && this.found.has(key)) return;
    const made = first.map((count, item) => Math.min(caps[item]!, count + second[item]!));
    const name = this.shortKeys ? key : made.join();
    if (this.found.has(name)) return;
    this.found.set(name, { made, loss, recipe: recipe() });
    if (this.keep !== null) this.note(loss, 2 * this.keep);
  }

  /** Those that no other exceeds, least loss first. */
  unexceeded(): Production[] {
    // One that exceeds another is worth at least as much and has more pieces.
    const pieces = ({ made }: Production) => made.reduce((sum, count) => sum + count, 0);
    const sorted = [...this.found.values()].sort((a, b) => a.loss - b.loss || pieces(b) - pieces(a));
    const kept: Production[] = [];
    for (const production of sorted) {
      if (!kept.some((better) => covers(better.made, production.made))) kept.push(production);
    }
    return kept;
  }

  private note(loss: number, most: number): void {
    const { losses } = this;
    let place = losses.length;
    while (place > 0 && losses[place - 1]! > loss) place--;
    losses.splice(place, 0, loss);
    if (losses.length > most) losses.pop();
    if (losses.length === most) this.limit = Math.min(this.slack, losses.at(-1)!);
    if (this.limit < this.slack) this.dropped = true;
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
