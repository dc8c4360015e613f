/** A row of a linear programme: the sum over the columns is at least, or at most, `limit`, a number not negative. */
export interface ProgrammeRow {
  readonly kind: 'least' | 'most';
  readonly limit: number;
}

export interface ProgrammeColumn {
  readonly cost: number;
  /** By row. */
  readonly entries: readonly number[];
}

export interface ProgrammeAnswer {
  readonly cost: number;
  /** By column of the pool, which may have grown. */
  readonly times: readonly number[];
  /** By row: what one unit of its limit is worth. */
  readonly duals: readonly number[];
  /** What the columns cannot give, over all rows that ask for at least something; 0 for a programme that can be met. */
  readonly wanting: number;
  /** False where the limit of work was met first. */
  readonly finished: boolean;
}

/**
 * The linear programme of least cost over columns that are found when their price is right, by the revised simplex
 * method (P. C. Gilmore & R. E. Gomory 1961). In floating point.
 *
 * `price` is asked, for duals by row, for columns whose cost is less than what their entries are worth.
 */
export function solveColumns<Column extends ProgrammeColumn>(
  rows: readonly ProgrammeRow[],
  pool: Column[],
  price: (duals: readonly number[]) => readonly Column[],
  { wantingCost, pivots }: { readonly wantingCost: number; readonly pivots: number },
): ProgrammeAnswer {
  const size = rows.length;
  // Variables: what is wanting in, or left of, row r = r; surplus of row r = size + r; then the columns.
  const first = 2 * size;
  const sign = rows.map(({ kind }) => (kind === 'least' ? -1 : 0));
  const costOf = (variable: number): number => {
    if (variable < size) return rows[variable]!.kind === 'least' ? wantingCost : 0;
    return variable < first ? 0 : pool[variable - first]!.cost;
  };
  const entry = (variable: number, row: number): number => {
    if (variable < size) return variable === row ? 1 : 0;
    if (variable < first) return variable - size === row ? sign[row]! : 0;
    return pool[variable - first]!.entries[row]!;
  };
  const basis = rows.map((_, row) => row);
  const levels = rows.map(({ limit }) => limit);
  const inverse = rows.map((_, row) => Float64Array.from(rows, (__, other) => (other === row ? 1 : 0)));
  const duals = new Float64Array(size);
  const direction = new Float64Array(size);
  let finished = false;

  for (let pivot = 0; pivot < pivots; pivot++) {
    duals.fill(0);
    for (let row = 0; row < size; row++) {
      const cost = costOf(basis[row]!);
      if (cost === 0) continue;
      for (let k = 0; k < size; k++) duals[k]! += cost * inverse[row]![k]!;
    }
    let entering = -1;
    let least = -1e-7;
    const consider = (variable: number) => {
      let reduced = costOf(variable);
      for (let row = 0; row < size; row++) reduced -= duals[row]! * entry(variable, row);
      if (reduced < least) {
        least = reduced;
        entering = variable;
      }
    };
    for (let row = 0; row < size; row++) consider(rows[row]!.kind === 'least' ? size + row : row);
    for (let column = 0; column < pool.length; column++) consider(first + column);
    if (entering < 0) {
      for (const column of price([...duals])) {
        pool.push(column);
        const before = entering;
        consider(first + pool.length - 1);
        if (entering === before && before < 0) pool.pop();
      }
      if (entering < 0) {
        finished = true;
        break;
      }
    }

    // Leaving variable: the first to reach zero; of equals the one with the largest pivot.
    direction.fill(0);
    for (let row = 0; row < size; row++) {
      const value = entry(entering, row);
      if (value === 0) continue;
      for (let k = 0; k < size; k++) direction[k]! += inverse[k]![row]! * value;
    }
    let leaving = -1;
    let ratio = Number.POSITIVE_INFINITY;
    for (let row = 0; row < size; row++) {
      if (direction[row]! <= 1e-9) continue;
      const reached = levels[row]! / direction[row]!;
      if (reached < ratio - 1e-12 || (reached <= ratio + 1e-12 && direction[row]! > direction[leaving]!)) {
        ratio = Math.min(ratio, reached);
        leaving = row;
      }
    }
    if (leaving < 0) break;
    const line = inverse[leaving]!;
    const divisor = direction[leaving]!;
    for (let k = 0; k < size; k++) line[k]! /= divisor;
    for (let row = 0; row < size; row++) {
      const factor = direction[row]!;
      if (row === leaving || factor === 0) continue;
      for (let k = 0; k < size; k++) inverse[row]![k]! -= factor * line[k]!;
      levels[row] = Math.max(0, levels[row]! - factor * ratio);
    }
    levels[leaving] = ratio;
    basis[leaving] = entering;
  }

  const times = pool.map(() => 0);
  let cost = 0;
  let wanting = 0;
  basis.forEach((variable, row) => {
    if (variable >= first) {
      times[variable - first] = levels[row]!;
      cost += levels[row]! * costOf(variable);
    } else if (variable < size && rows[variable]!.kind === 'least') wanting += levels[row]!;
  });
  return { cost, times, duals: [...duals], wanting, finished };
}
