/**
 * How much work a search may do, in counts of its own small steps and never in seconds, so that the same task has
 * the same answer on every machine. A search that meets a limit answers with what it has, and says so.
 */
export interface SearchEffort {
  /** Most sizes of workpieces along one axis of a sheet. Beyond these two limits positions are thinned out. */
  readonly positions: number;
  /** Splits in one pass of the dynamic programme over a sheet. */
  readonly gridSplits: number;
  /** Splits tried by the dynamic programme in all. */
  readonly splits: number;
  /** Pairs of productions combined, in each enumeration and in all. */
  readonly combinations: number;
  readonly combinationsInAll: number;
  /** Nodes of a search for a choice of patterns, at most. */
  readonly coverNodes: number;
  /** Nodes the integer programme solver may open, each time. */
  readonly solverNodes: number;
  /** Columns it is given at most; and columns times the square of rows, over all searches for a choice. */
  readonly solverColumns: number;
  readonly solverSizes: number;
  /** Rooms looked at by ruin and recreate for one choice of sheet counts, about; and pieces, at most. */
  readonly ruinWork: number;
  /** How often it is tried with that work, from another seed each time. */
  readonly ruinRounds: number;
  readonly ruinPieces: number;
  /** Choices of sheet counts that are tried. */
  readonly sheetChoices: number;
  /** Whether the most that short sheets give is worked out; else an answer that is short says nothing is given. */
  readonly partial: boolean;
}

/** Answers within about a second for usual sets of cards, and within some seconds for anything. */
export const usualEffort: SearchEffort = {
  positions: 500,
  gridSplits: 5_000_000,
  splits: 600_000_000,
  combinations: 1_000_000,
  combinationsInAll: 8_000_000,
  coverNodes: 30_000,
  solverNodes: 100,
  solverColumns: 800,
  solverSizes: 3_000_000,
  ruinWork: 5_000_000,
  ruinRounds: 1,
  ruinPieces: 300,
  sheetChoices: 40,
  partial: true,
};

/** About ten seconds more where a task is not settled before. */
export const thoroughEffort: SearchEffort = {
  ...usualEffort,
  positions: 1000,
  gridSplits: 50_000_000,
  splits: 3_000_000_000,
  combinations: 4_000_000,
  combinationsInAll: 60_000_000,
  solverNodes: 400,
  solverColumns: 3000,
  solverSizes: 30_000_000,
  ruinWork: 120_000_000,
  ruinRounds: 2,
};
