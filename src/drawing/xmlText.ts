import { shownText } from './shownText.ts';

/** The text for XML content and double-quoted attributes; characters that XML 1.0 cannot hold become boxes. */
export function xmlText(text: string): string {
  return shownText(text, (character) => xmlCharacter.test(character))
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** XML 1.0, production 2 (Char). */
const xmlCharacter = /^[\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]$/u;
