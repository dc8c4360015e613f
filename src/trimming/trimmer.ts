import type { Length } from '../measure/index.ts';

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
