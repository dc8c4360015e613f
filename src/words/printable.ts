/** The text with a visible stand-in for what cannot be seen or would upset the line. */
export function printable(text: string): string {
  return text.replace(unprintable, '\ufffd');
}

/** Controls, invisible format characters, halves of surrogate pairs, line and paragraph separators. */
const unprintable = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;
