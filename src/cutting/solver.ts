/** A linear or integer programme: find x with the least cost · x, every row within its bounds, 0 <= x <= upper. */
export interface LinearProgramme {
  readonly rows: readonly { readonly lower: number; readonly upper: number }[];
  readonly columns: readonly LinearColumn[];
  /** Whether every x must be whole. */
  readonly whole: boolean;
  /** Work limit, so that answers do not depend on the machine's speed; `null`: to the end. */
  readonly nodeLimit: number | null;
}

export interface LinearColumn {
  readonly cost: number;
  readonly upper: number;
  /** Coefficients by row; rows not named are 0. */
  readonly entries: readonly { readonly row: number; readonly value: number }[];
}

export type LinearAnswer =
  | {
      readonly status: 'optimal' | 'feasible';
      readonly objective: number;
      readonly x: readonly number[];
      /** One for each row; empty for an integer programme. */
      readonly duals: readonly number[];
      /** A lower bound on the objective as far as the solver got (equal to it when optimal). */
      readonly bound: number;
    }
  | { readonly status: 'infeasible' | 'unknown' };

/** The solver that the shell hands in; floating point, so whatever it says is checked in whole numbers here. */
export interface LinearSolver {
  solve(programme: LinearProgramme): LinearAnswer;
}
