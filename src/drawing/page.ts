import type { Mark } from './mark.ts';

/** One drawn page or picture at physical size. */
export interface Page {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly marks: readonly Mark[];
}

/** Pages that make one printed thing. */
export interface Booklet {
  readonly title: string;
  /** BCP 47 tag of the language of the words, `en`. */
  readonly language: string;
  readonly pages: readonly Page[];
}

/** A size of paper and the margins that text keeps. */
export interface PageFormat {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly marginPt: {
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
    readonly left: number;
  };
}

/** 8 1/2 x 11 in (ANSI/ASME Y14.1 size A). */
export const letterFormat: PageFormat = {
  widthPt: 612,
  heightPt: 792,
  marginPt: { top: 60, right: 54, bottom: 60, left: 54 },
};

/** 210 x 297 mm (ISO 216), not rounded to whole points. */
export const a4Format: PageFormat = {
  widthPt: (210 * 72) / 25.4,
  heightPt: (297 * 72) / 25.4,
  marginPt: { top: 62, right: 51, bottom: 62, left: 51 },
};

/** What is left between the margins. */
export function textWidthPt(format: PageFormat): number {
  return format.widthPt - format.marginPt.left - format.marginPt.right;
}
