import type { Weight } from './mark.ts';

/** What the pages need to know of the type they are set in; made from the real font by `printing`. */
export interface Typeface {
  /** Advance of a run of text as the font sets it, fractions formed around U+2044. */
  widthPt(text: string, sizePt: number, weight: Weight): number;
  /** Whether the font has every character of the text that is meant to be seen. */
  has(text: string): boolean;
  /** Height of the capitals and of the figures over the baseline, for type of 1 pt. */
  readonly capHeight: number;
}
