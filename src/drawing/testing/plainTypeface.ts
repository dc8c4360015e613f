import type { Typeface } from '../typeface.ts';

/** A made-up typeface of known widths: each character some tenths of the size, semibold a tenth more; Latin only. */
export const plainTypeface: Typeface = {
  widthPt: (text, sizePt, weight) =>
    [...text].reduce(
      (total, character) => total + (characterTenths(character) + (weight === 'semibold' ? 1 : 0)) / 10,
      0,
    ) * sizePt,
  has: (text) => [...text].every((character) => character.codePointAt(0)! < 0x2100),
  capHeight: 0.65,
};

function characterTenths(character: string): number {
  return character === '\u2044' ? 2 : 3 + (character.codePointAt(0)! % 5);
}
