import type { Highs } from 'highs';
import { assert } from '../problem/index.ts';
import type { LinearAnswer, LinearProgramme, LinearSolver } from './solver.ts';

/**
 * A loaded `highs` module as a `LinearSolver`.
 *
 * Models go in as arrays (its text reader takes nonsense for an empty model) and are disposed of, or they leak.
 * No time limit is ever set, so the same programme has the same answer everywhere.
 */
export function highsSolver(highs: Highs): LinearSolver {
  return { solve: (programme) => solveWith(highs, programme) };
}

function solveWith(highs: Highs, programme: LinearProgramme): LinearAnswer {
  const { rows, columns, whole, nodeLimit } = programme;
  const starts = new Int32Array(columns.length + 1);
  columns.forEach((column, index) => {
    starts[index + 1] = starts[index]! + column.entries.length;
  });
  const entries = columns.flatMap((column) => column.entries);
  const { variableType, modelStatus } = highs.constants;
  const model = highs.createModel({
    numCols: columns.length,
    numRows: rows.length,
    colCost: columns.map((column) => column.cost),
    colLower: columns.map(() => 0),
    colUpper: columns.map((column) => column.upper),
    rowLower: rows.map((row) => row.lower),
    rowUpper: rows.map((row) => row.upper),
    matrix: {
      format: 'csc',
      numRows: rows.length,
      numCols: columns.length,
      starts,
      indices: Int32Array.from(entries, (entry) => entry.row),
      values: Float64Array.from(entries, (entry) => entry.value),
    },
    integrality: columns.map(() => (whole ? variableType.integer : variableType.continuous)),
  });
  try {
    model.options.set({ output_flag: false, mip_rel_gap: 0, random_seed: 0 });
    if (nodeLimit !== null) model.options.set({ mip_max_nodes: nodeLimit });
    model.run();
    const status = model.getModelStatus();
    assert(
      status !== modelStatus.loadError && status !== modelStatus.modelError && status !== modelStatus.empty,
      'the solver did not take the programme',
      { status, rows: rows.length, columns: columns.length },
    );
    if (status === modelStatus.infeasible) return { status: 'infeasible' };
    const found = model.info.get('primal_solution_status') === 2;
    if (!found) return { status: 'unknown' };
    const solution = model.getSolution();
    const objective = model.getObjectiveValue();
    const optimal = status === modelStatus.optimal;
    const dualBound = whole ? model.info.get('mip_dual_bound') : undefined;
    return {
      status: optimal ? 'optimal' : 'feasible',
      objective,
      x: Array.from(solution.colValue),
      duals: whole ? [] : Array.from(solution.rowDual),
      bound: optimal ? objective : Number(dualBound ?? Number.NEGATIVE_INFINITY),
    };
  } finally {
    model.dispose();
  }
}
