import {
  type FileProblem,
  isObject,
  type Json,
  type JsonObject,
  readTrimmerFile,
} from '../../../../src/files/index.ts';
import type { Units } from '../../../../src/measure/index.ts';
import { utf8Text } from '../../exchange/utf8Text.ts';

/** A trimmer of which nothing is said yet but how it is measured: it has no limits. */
export function newTrimmer(units: Units): JsonObject {
  return { cardwright_trimmer: 1, units };
}

/** The path of a field; those of `reach` and `testCut` by themselves. */
export type TrimmerField = readonly [string] | readonly [string, string];

/** The file with a field set, or with `undefined` taken away. */
export function withField(file: JsonObject, path: TrimmerField, value: Json | undefined): JsonObject {
  const [name, inner] = path;
  const { [name]: before, ...others } = file;
  let now = value;
  if (inner !== undefined) {
    const inside = Object.entries(isObject(before ?? null) ? (before as JsonObject) : {}).filter(
      ([field]) => field !== inner,
    );
    if (value !== undefined) inside.push([inner, value]);
    now = inside.length === 0 ? undefined : Object.fromEntries(inside);
  }
  if (now === undefined) return others;
  // A field that stands there stays where it stands.
  return { ...file, [name]: now };
}

/** The text in a field; `null` where none stands. */
export function textIn(file: JsonObject, path: TrimmerField): string | null {
  const [name, inner] = path;
  const outer = file[name] ?? null;
  const value = inner === undefined ? outer : isObject(outer) ? outer[inner] : null;
  return typeof value === 'string' ? value : null;
}

/** What is in a file that was opened. */
export type TrimmerOpened =
  | { readonly file: JsonObject }
  | { readonly problems: readonly FileProblem[] }
  /** It is no text at all. */
  | { readonly problems: null };

/** The trimmer file in these bytes, or what is wrong with it. */
export function openTrimmer(bytes: Uint8Array<ArrayBuffer>): TrimmerOpened {
  const text = utf8Text(bytes);
  if (text === null) return { problems: null };
  const read = readTrimmerFile(text);
  return 'problems' in read ? read : { file: JSON.parse(text) as JsonObject };
}

/** The text of a trimmer file, to be read by people too. */
export function trimmerText(file: JsonObject): string {
  return `${JSON.stringify(file, null, 2)}\n`;
}
