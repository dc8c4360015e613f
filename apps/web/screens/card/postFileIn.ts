import { type FileProblem, type JsonObject, readPostFile } from '../../../../src/files/index.ts';
import { utf8Text } from '../../exchange/utf8Text.ts';

/** The post file in these bytes, or what is wrong with it; `null`: it is no text at all. */
export function postFileIn(
  bytes: Uint8Array<ArrayBuffer>,
): { readonly file: JsonObject } | { readonly problems: readonly FileProblem[] } | null {
  const text = utf8Text(bytes);
  if (text === null) return null;
  const read = readPostFile(text);
  return 'problems' in read ? read : { file: JSON.parse(text) as JsonObject };
}
