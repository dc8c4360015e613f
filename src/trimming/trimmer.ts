import { type CutLimits, unlimited } from '../cutting/index.ts';
import type { Length, Size } from '../measure/index.ts';

/** A person's trimmer: what it can do is a condition on every plan made for it. */
export interface Trimmer {
  readonly name: string;
  /** Distance of its marks; every setting is a whole multiple; `null`: it can be set anywhere. */
  readonly marks: Length | null;
  /** Longest cut. */
  readonly longest: Length | null;
  /** Narrowest strip that is kept or cut again; waste may be narrower. */
  readonly narrowest: Length | null;
  /** The side of the blade on which work is measured. */
  readonly measuringEdge: 'left' | 'right';
  readonly hand: 'left' | 'right';
  /** How many sheets it cuts at one stroke, at least 1. */
  readonly sheetsAtOnce: number;
  /** Cuts after which the person wants a break; `null`: no limit. */
  readonly cutsPerSitting: number | null;
}

/** Whether the trimmer can be set to a length: a positive whole multiple of its marks. With no trimmer, any positive length. */
export function settable(length: Length, trimmer: Trimmer | null): boolean {
  const marks = trimmer?.marks ?? null;
  return length > 0 && (marks === null || length % marks === 0);
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
  return trimmer === null ? unlimited : { step: trimmer.marks, longest: trimmer.longest };
}
