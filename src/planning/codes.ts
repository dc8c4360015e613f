import type { Problem, Severity } from '../problem/index.ts';

/** What can be wrong between a layout and the papers and trimmer on hand, and how badly. */
export const planningCodes = {
  /**
   * The sheets on hand do not give all the pieces of a kind. Numbers: missing, need, proved (0 or 1), cards (the
   * largest smaller set that was found), cardsProved (1: there is none larger), sheets (0 where there are none at
   * all), and 1 for each limit without which these sheets would do: trimmer, direction, margins.
   */
  short: 'error',
  /**
   * No sheet of its paper is large enough for a piece as it may lie. Numbers: width, height, and 1 for the limit
   * without which it would come out: direction, margins.
   */
  pieceTooLarge: 'error',
  /** A piece is narrower than what the trimmer can hold. Numbers: width, height, narrowest. */
  pieceTooNarrow: 'error',
  /**
   * A cut size falls between the trimmer's marks (with no trimmer given: 1/16 in or 1 mm, by the layout's
   * units). Numbers: length, marks, off (past the mark below).
   */
  betweenMarks: 'caution',
  /**
   * Pieces use a whole side of the sheet up: were the sheet a mark shorter, they would not all come out.
   * Numbers: side, count, set, and what one mark less would cost: missing (pieces) or moreSheets.
   */
  nothingToSpare: 'caution',
  /** The trimmer cannot square a sheet's margins off, so the sheet is left alone. Numbers: width, height. */
  cannotSquare: 'caution',
} as const satisfies Record<string, Severity>;

/** Code of a problem between a layout and what is on hand. */
export type PlanningCode = keyof typeof planningCodes;

/** `names`: `paper` (its name), `piece` (its id) and, for sizes, `axis`. */
export type PlanningProblem = Problem<PlanningCode>;
