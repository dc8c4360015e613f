import { readSvgFile, type SvgOutline } from '../../../../src/files/index.ts';
import { svgProblemSentence } from '../../../../src/words/index.ts';
import { utf8Text } from '../../exchange/utf8Text.ts';

/** The outline in the bytes of an SVG document, or why there is none, in sentences; `null`: it is no text. */
export function outlineFile(
  bytes: Uint8Array<ArrayBuffer>,
): SvgOutline | { readonly refused: readonly string[] } | null {
  const text = utf8Text(bytes);
  if (text === null) return null;
  const read = readSvgFile(text);
  return 'problems' in read ? { refused: read.problems.map(svgProblemSentence) } : read;
}
