import { type CutLimits, measurable, unlimited } from '../cutting/index.ts';
import { type Length, lengthOfTicks, minus, type Size, sum, zero } from '../measure/index.ts';

/** A person's trimmer: what it can do is a condition on every plan made for it. */
export interface Trimmer {
  readonly name: string;
  /** Distance of its marks; every length measured off is a whole multiple; `null`: any length. */
  readonly marks: Length | null;
  /** Longest cut. */
  readonly longest: Length | null;
  /** Narrowest strip that is kept or cut again; waste may be narrower. */
  readonly narrowest: Length | null;
  readonly reach: Reach;
  /** So much longer than it is set it cuts, on the measuring side; negative: shorter. Found by one test cut. */
  readonly correction: Length;
  /** The side of the blade on which work is measured. */
  readonly measuringEdge: 'left' | 'right';
  readonly hand: 'left' | 'right';
  /** How many sheets it cuts at one stroke, at least 1. */
  readonly sheetsAtOnce: number;
  /** Cuts after which the person wants a break; `null`: no limit. */
  readonly cutsPerSitting: number | null;
}

/** How far the rulers on either side of the blade go: the largest setting on each. Paper may hang over. */
export interface Reach {
  /** `null`: no limit. */
  readonly measuringSide: Length | null;
  /** `null`: there is no ruler. */
  readonly otherSide: Length | null;
}

/** Where the trimmer is set for a length, and what its ruler reads there. */
export interface Setting {
  /** Whether the length is measured across the blade from the measuring edge, because the ruler there does not read it. */
  readonly otherSide: boolean;
  /** The side of the blade on which the length is measured. */
  readonly edge: 'left' | 'right';
  /** What to set the ruler to; not positive where the correction is as large as the length. */
  readonly dial: Length;
}

/** Whether the trimmer can measure a length off: within its reach and on its marks. With no trimmer, any positive length. */
export function settable(length: Length, trimmer: Trimmer | null): boolean {
  return measurable(length, cutLimitsOf(trimmer));
}

/**
 * How the trimmer is set to cut a length that is `settable`. The correction was found on the measuring side, and holds
 * for that side only.
 */
export function settingOf(length: Length, trimmer: Trimmer): Setting {
  const { measuringEdge, correction, reach } = trimmer;
  const dial = minus(length, correction);
  const acrossIt = length <= (reach.otherSide ?? 0);
  if (dial <= (reach.measuringSide ?? Number.POSITIVE_INFINITY) && (dial > 0 || !acrossIt)) {
    return { otherSide: false, edge: measuringEdge, dial };
  }
  return { otherSide: true, edge: measuringEdge === 'left' ? 'right' : 'left', dial: length };
}

/**
 * Whether the trimmer can hold what is kept or cut again: neither side under its narrowest strip.
 *
 * Where every piece of a cut tree is wide enough, so is every workpiece on the way to it, because each
 * workpiece that is cut again holds a whole piece.
 */
export function wideEnough(size: Size, trimmer: Trimmer | null): boolean {
  return Math.min(size.width, size.height) >= (trimmer?.narrowest ?? 0);
}

/** What the planner of cuts must know of the trimmer. The narrowest strip is a condition on the pieces, see `wideEnough`. */
export function cutLimitsOf(trimmer: Trimmer | null): CutLimits {
  if (trimmer === null) return unlimited;
  return { step: trimmer.marks, longest: trimmer.longest, reach: longestMeasured(trimmer) };
}

/** The longest length that can be measured on either side of the blade; `null`: any. */
function longestMeasured({ reach, correction }: Trimmer): Length | null {
  if (reach.measuringSide === null) return null;
  const onMeasuringSide = sum(reach.measuringSide, correction);
  return lengthOfTicks(Math.max(onMeasuringSide, reach.otherSide ?? zero, 0));
}
