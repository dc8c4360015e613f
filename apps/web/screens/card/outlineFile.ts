import { readSvgFile, type SvgOutline } from '../../../../src/files/index.ts';
import { svgProblemSentence } from '../../../../src/words/index.ts';

/** The outline in the bytes of an SVG document, or why there is none, in sentences; `null`: it is no text. */
export function outlineFile(bytes: Uint8Array): SvgOutline | { readonly refused: readonly string[] } | null {
  const text = textOf(bytes);
  if (text === null) return null;
  const read = readSvgFile(text);
  return 'problems' in read ? { refused: read.problems.map(svgProblemSentence) } : read;
}

/** UTF-8 alone: in another encoding the text would be another. */
function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
