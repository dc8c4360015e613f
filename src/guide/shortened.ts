import type { Typeface } from '../drawing/index.ts';

/** As much of the text as fits on a line so wide, with an ellipsis where it is cut. */
export function shortened(
  text: string,
  widthPt: number,
  { sizePt, typeface }: { readonly sizePt: number; readonly typeface: Typeface },
): string {
  const wide = (of: string) => typeface.widthPt(of, sizePt, 'regular');
  if (wide(text) <= widthPt) return text;
  const characters = [...text];
  while (characters.length > 1 && wide(`${characters.join('')}…`) > widthPt) characters.pop();
  return `${characters.join('')}…`;
}
