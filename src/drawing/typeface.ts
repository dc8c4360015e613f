/** What the pages need to know of the type they are set in; made from the real font by `printing`. */
export interface Typeface {
  /** Advance of a run of text as the font sets it, fractions formed around U+2044. */
  widthPt(text: string, sizePt: number, weight: 'regular' | 'semibold'): number;
  /** Whether the font has every character of the text. */
  has(text: string): boolean;
}
