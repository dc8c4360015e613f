import type { Problem, Severity } from '../problem/index.ts';

/**
 * What is wrong with a plan that was written down, beside the layout it is to be cut for; and what no table can be that
 * a plan is cut on, or is said of it and nothing in the plan answers to.
 */
export const tableCodes = {
  /** The plan cuts a paper that the layout does not have. Names: paper, papers. */
  planPaperUnknown: 'error',
  /** The plan cuts a piece that the layout does not have for so many cards. Names: piece. Numbers: cards. */
  planPieceUnknown: 'error',
  /** The layout has a piece that the plan does not cut. Names: piece. Numbers: cards. */
  planPieceMissing: 'error',
  /** A piece is of another size or turns otherwise. Names: piece. Numbers: width, height, and those of the layout. */
  planPieceDiffers: 'error',
  /** A sheet is of another size, or the layout does not list it. Names: sheet, paper. Numbers: width, height. */
  planSheetDiffers: 'error',
  /** The plan has begun more sheets than the layout has of them. Names: paper. Numbers: begun, count. */
  planSheetsFewer: 'error',
  /** The plan does not come out when it is followed. Names: fault (its code), id, expected, found. Numbers: step (0: none). */
  planNotTrue: 'error',
  /** A step is said to be done that the plan does not have. Numbers: step, first, last (0: it has none). */
  stepUnknown: 'error',
  /** A step is said to be done for more workpieces than it takes. Numbers: step, said, workpieces. */
  stepHasFewer: 'error',
  /** A step is said to be done with a workpiece that is not made yet. Numbers: step, by (the step that makes it). */
  stepTooEarly: 'error',
  /** No workpiece of the plan has that id. Names: id, nearest where one is alike. */
  workpieceUnknown: 'error',
  /** A workpiece is said to be spoiled that has been cut up by then. Numbers: step. Names: id. */
  workpieceCutUp: 'error',
  /** A workpiece is said to be spoiled that is not made yet. Numbers: step. Names: id. */
  workpieceNotYet: 'error',
  /** The same workpiece is said to be spoiled twice. Names: id. */
  spoiledTwice: 'error',
  /** No piece of the set has that id. Names: piece, pieces. */
  pieceUnknown: 'error',
  /** More pieces of a kind are said to be spoiled than lie finished. Numbers: said, finished. Names: piece. */
  piecesTooFew: 'error',
  /** Something of a paper is said to be found that the layout does not have. Names: paper, papers. */
  paperUnknownOnTable: 'error',
} as const satisfies Record<string, Severity>;

/** Code of what is wrong with a table as it is told. */
export type TableCode = keyof typeof tableCodes;

/** `where` is empty: what is wrong is what was said, no field of a file. */
export type TableProblem = Problem<TableCode>;
