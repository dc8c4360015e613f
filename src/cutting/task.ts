/**
 * What is to be cut out of what: rectangles and sheets in whole numbers of one unit, whatever the unit is.
 * Nothing here knows paper or cards.
 */
export interface CuttingTask {
  readonly items: readonly Item[];
  readonly sheets: readonly SheetType[];
  readonly limits: CutLimits;
}

/** A kind of rectangle that is wanted. */
export interface Item {
  readonly width: number;
  readonly height: number;
  /** How many are wanted, at least 1; more may come out. */
  readonly need: number;
  /** Whether width and height may be exchanged. */
  readonly turns: boolean;
}

/** A kind of sheet to cut from. Sheets are never turned: an item turns in them instead. */
export interface SheetType {
  readonly width: number;
  readonly height: number;
  /** How many there are; `null`: as many as needed. */
  readonly count: number | null;
  /** Cost of one, a whole number of any unit, not negative; scraps cost 0. */
  readonly cost: number;
}

/**
 * What the trimmer can do, as a condition on every cut. A cut measures one of its two sides: that side is a
 * whole multiple of `step` and no longer than `reach`; the other side is what remains, and may be anything.
 */
export interface CutLimits {
  /** Distance of the marks the blade can be set to; `null`: any setting. */
  readonly step: number | null;
  /** The longest cut; `null`: any. A cut along `width` at x is as long as the workpiece is high. */
  readonly longest: number | null;
  /** The longest side that can be measured; `null`: any. Not positive: nothing can be cut. */
  readonly reach: number | null;
}

/** No limits at all. */
export const unlimited: CutLimits = { step: null, longest: null, reach: null };
