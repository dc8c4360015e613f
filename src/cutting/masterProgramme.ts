/**
 * The linear programme over patterns, each pattern a column that is found when its price is right.
 *
 * Minimise cost over how often each pattern is cut (parts of a sheet allowed), every item made as often as it is
 * needed. In floating point: what comes of it is prices and patterns, both checked in whole numbers elsewhere.
 */
export interface Master {
  readonly needs: readonly number[];
  /** By sheet: cost of one, and how many may be used; `Infinity` where nothing limits it. */
  readonly costs: readonly number[];
  readonly most: readonly number[];
  /** Adds `share` x `most` sheets for the cost of `share`, in place of `most`: finds the share that is needed. */
  readonly sharing: boolean;
}

export interface MasterColumn {
  readonly sheet: number;
  readonly made: readonly number[];
}

export interface MasterAnswer {
  readonly cost: number;
  /** By column of the pool, which may have grown. */
  readonly times: readonly number[];
  /** By item, not negative. */
  readonly prices: readonly number[];
  /** Pieces that the sheets cannot give even so. */
  readonly shortage: number;
}

/**
 * Solves it by the revised simplex method (P. C. Gilmore & R. E. Gomory 1961).
 *
 * `pool` holds the columns to start with; `price` is asked, for prices by item, for the best column of each sheet,
 * and `null` ends the search where it stands.
 */
export function solveMaster<Column extends MasterColumn>(
  master: Master,
  pool: Column[],
  price: (prices: readonly number[]) => readonly Column[] | null,
): MasterAnswer {
  const { needs, costs, most, sharing } = master;
  const items = needs.length;
  const sheets = costs.length;
  const size = items + sheets;
  const dearest = Math.max(...costs, sharing ? 1 : 0);
  // Buying a piece ready made must be dearer than any way of cutting it; when nothing costs, it is all that costs.
  const buying = dearest === 0 ? 1 : dearest * 1000;

  // Variables: piece i bought = i; surplus of item i = items + i; unused sheets k = 2 items + k; the share
  // = 2 items + sheets; then the columns of the pool.
  const shareVariable = 2 * items + sheets;
  const firstColumn = shareVariable + 1;
  const limited = (sheet: number) => sharing || Number.isFinite(most[sheet]!);
  const entriesOf = (variable: number): [row: number, value: number][] => {
    if (variable < items) return [[variable, 1]];
    if (variable < 2 * items) return [[variable - items, -1]];
    if (variable < shareVariable) return [[variable - items, 1]];
    if (variable === shareVariable) return costs.map((_, sheet) => [items + sheet, -most[sheet]!]);
    const column = pool[variable - firstColumn]!;
    const entries: [number, number][] = [];
    column.made.forEach((count, item) => {
      if (count > 0) entries.push([item, count]);
    });
    if (limited(column.sheet)) entries.push([items + column.sheet, 1]);
    return entries;
  };
  const costOf = (variable: number) => {
    if (variable < items) return buying;
    if (variable < shareVariable) return 0;
    if (variable === shareVariable) return 1;
    return sharing ? 0 : costs[pool[variable - firstColumn]!.sheet]!;
  };

  const basis = [...needs.map((_, item) => item), ...costs.map((_, sheet) => 2 * items + sheet)];
  const levels = [...needs, ...most.map((count, sheet) => (sharing ? 0 : limited(sheet) ? count : 1))];
  const inverse = Array.from({ length: size }, (_, row) => {
    const line = new Float64Array(size);
    line[row] = 1;
    return line;
  });
  const duals = new Float64Array(size);
  const tolerance = 1e-9 * buying;

  for (let pivots = 0; pivots < 400 + 60 * size; pivots++) {
    duals.fill(0);
    for (let row = 0; row < size; row++) {
      const cost = costOf(basis[row]!);
      if (cost === 0) continue;
      const line = inverse[row]!;
      for (let k = 0; k < size; k++) duals[k]! += cost * line[k]!;
    }
    const reducedCost = (variable: number) => {
      let value = costOf(variable);
      for (const [row, entry] of entriesOf(variable)) value -= duals[row]! * entry;
      return value;
    };
    // Entering variable: the most negative reduced cost; new columns are asked for when no known one has any.
    let entering = -1;
    let least = -tolerance;
    const consider = (variable: number) => {
      const value = reducedCost(variable);
      if (value < least) {
        least = value;
        entering = variable;
      }
    };
    for (let variable = items; variable < shareVariable; variable++) {
      if (variable < 2 * items || limited(variable - 2 * items)) consider(variable);
    }
    if (sharing) consider(shareVariable);
    for (let column = 0; column < pool.length; column++) consider(firstColumn + column);
    if (entering < 0) {
      const found = price(Array.from(duals.subarray(0, items), (value) => Math.max(0, value)));
      if (found === null) break;
      for (const column of found) {
        pool.push(column);
        consider(firstColumn + pool.length - 1);
        if (
          entering !== firstColumn + pool.length - 1 &&
          reducedCost(firstColumn + pool.length - 1) >= -tolerance
        )
          pool.pop();
      }
      if (entering < 0) break;
    }

    // Leaving variable: the first to reach zero; of equals the one with the largest pivot.
    const direction = new Float64Array(size);
    for (const [row, entry] of entriesOf(entering)) {
      for (let k = 0; k < size; k++) direction[k]! += inverse[k]![row]! * entry;
    }
    let leaving = -1;
    let ratio = Number.POSITIVE_INFINITY;
    for (let row = 0; row < size; row++) {
      if (direction[row]! <= 1e-9) continue;
      const bound = Math.max(0, levels[row]!) / direction[row]!;
      const closer = bound < ratio - 1e-12;
      if (closer || (bound <= ratio + 1e-12 && direction[row]! > direction[leaving]!)) {
        ratio = Math.min(ratio, bound);
        leaving = row;
      }
    }
    if (leaving < 0) break;
    const pivot = direction[leaving]!;
    const pivotLine = inverse[leaving]!;
    for (let k = 0; k < size; k++) pivotLine[k]! /= pivot;
    for (let row = 0; row < size; row++) {
      if (row === leaving || direction[row] === 0) continue;
      const factor = direction[row]!;
      const line = inverse[row]!;
      for (let k = 0; k < size; k++) line[k]! -= factor * pivotLine[k]!;
      levels[row] = Math.max(0, levels[row]! - factor * ratio);
    }
    levels[leaving] = ratio;
    basis[leaving] = entering;
  }

  const times = pool.map(() => 0);
  let cost = 0;
  let shortage = 0;
  basis.forEach((variable, row) => {
    if (variable < items) shortage += levels[row]!;
    else cost += costOf(variable) * levels[row]!;
    if (variable >= firstColumn) times[variable - firstColumn] = levels[row]!;
  });
  const prices = Array.from(duals.subarray(0, items), (value) => Math.max(0, value));
  return { cost, times, prices, shortage };
}
