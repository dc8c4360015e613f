import type { Severity } from '../problem/index.ts';

/**
 * What can be wrong with a layout as far as its geometry and its papers' directions tell, and how badly.
 *
 * An error spoils the set or leaves a size unknown. What the person typed is taken as meant and only cautioned
 * (a negative distance is an overhang she asked for); what merely came out of other numbers is an error where
 * it would show on the finished card.
 */
export const layoutCodes = {
  /** Both ends and the size of a part are given, and border + size + border is not what it lies on. */
  sumOff: 'error',
  /** A part that fills the room between two edges finds none. */
  noRoom: 'error',
  /** Twice the inset is as large as what the part lies on. */
  insetTooLarge: 'error',
  /** The pieces of a part fill rooms of different sizes, so the part has no one size. */
  roomsDiffer: 'error',
  /** All of a part, or more, is torn off. */
  tornAway: 'error',
  /** All of a part, or more, is torn off, tucked behind or left by a die. */
  nothingSeen: 'error',
  /** A strip is shorter than its folds need. Numbers: length, least. */
  stripTooShort: 'error',
  /** Loops overlap by more than one of them is long. Numbers: overlap, template. */
  overlapTooLong: 'error',
  /**
   * The tails of a folded ribbon lie on one another. Numbers: over (by how much), slant (the least, in degrees, that keeps
   * them apart), template (the least that does at this slant, where there is one).
   */
  foldedOverItself: 'error',
  /** A strip has another length than its loops take. Numbers: length, wanted, difference, loops, template, overlap, left. */
  loopsOff: 'error',
  /** A part is laid to a neighbour on another face of the card. */
  neighbourElsewhere: 'error',
  /** The allowance of the base takes more than a quarter of its front. */
  allowanceTooLarge: 'error',
  /** A part lies on the inside of a card that has none. */
  noInside: 'error',
  /** A part is wider or higher than the card it lies on. */
  largerThanCard: 'error',
  /** A part is wider or higher than the part it lies on, and no overhang was asked for. */
  largerThanPart: 'error',
  /** A part hangs over the edge of the card, and no overhang was asked for. */
  overCardEdge: 'error',
  /** An inset part was pushed over the edge of what it lies on. */
  negativeBorder: 'error',
  /** A part hangs over the edge of the part it lies on, but not over the card's. */
  overPartEdge: 'caution',
  /** A part hangs over by a negative distance that was typed. */
  overhang: 'caution',
  /** Borders of a part, or of parts side by side, that cover most of what they lie on and are not even. */
  unevenBorder: 'caution',
  /** Two parts on the same thing lie partly on one another. */
  overlap: 'caution',
  /** The gap to a neighbour was typed negative: the two lie on one another. */
  negativeGap: 'caution',
  /** Nothing of a part is seen: another lies over all of it. */
  hidden: 'caution',
  /** Pieces of one part lie exactly on one another. */
  piecesStacked: 'caution',
  /** A part lies on both doors of the front, and would hold the card shut. */
  acrossSlit: 'caution',
  /** A part is to be cut from leftovers of papers that nothing else is cut from. Numbers: papers. */
  noLeftovers: 'caution',
  /** However the base is cut from the sheet, its fold crosses the grain. */
  foldAcrossGrain: 'caution',
  /** The base may be turned, and the turn that crosses the grain gives as many bases or more. */
  foldMayCrossGrain: 'caution',
  /** A print with a direction was freed to turn, so it may lie on its side. */
  directionFreed: 'caution',
} as const satisfies Record<string, Severity>;

/** Code of a problem of a layout. */
export type LayoutCode = keyof typeof layoutCodes;
