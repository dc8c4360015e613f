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
