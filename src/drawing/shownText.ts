/**
 * The text as it can be shown: white-space characters as spaces, and a box for each character that `canShow` does
 * not know, so that nothing is dropped unseen. Characters that are not meant to be seen (joiners, variation
 * selectors) go through.
 */
export function shownText(text: string, canShow: (character: string) => boolean): string {
  return [...text.replaceAll(/[\t\n\v\f\r\u0085\u2028\u2029]/g, ' ')]
    .map((character) => (unseen.test(character) || canShow(character) ? character : standIn))
    .join('');
}

/** Whether every character that is meant to be seen is known to `canShow`. */
export function allShown(text: string, canShow: (character: string) => boolean): boolean {
  return [...text].every((character) => unseen.test(character) || canShow(character));
}

/** WHITE SQUARE, for a character that cannot be shown. */
export const standIn = '\u25a1';

/** Unicode's default-ignorable characters. */
const unseen = /^\p{Default_Ignorable_Code_Point}$/u;
