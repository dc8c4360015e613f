import { excerpt } from './excerpt.ts';
import { inFileOrder, mostProblems } from './fileOrder.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { isObject, type Json, type JsonObject, readJson } from './json.ts';

/** The longest file that is read, in characters. */
export const longestFile = 5_000_000;

/**
 * The object in the text of a file of ours, which `marker` (its field with the version) tells from others; or why
 * it is none that this program reads. `repeated` are problems that leave an object to look at.
 */
export function readFileText(
  text: string,
  marker: 'cardwright' | 'cardwright_trimmer',
  version: number,
): { file: JsonObject; repeated: FileProblem[] } | { problems: FileProblem[] } {
  if (text.length > longestFile)
    return { problems: [fileProblem('file-too-large', [], {}, { found: text.length, high: longestFile })] };
  if (/^\uFEFF?[ \t\r\n]*$/.test(text)) return { problems: [fileProblem('file-empty', [])] };
  const read = readJson(text);
  if (!read.ok) return { problems: read.problems };
  const { value: file } = read;
  if (!isObject(file))
    return { problems: [fileProblem('field-type', [], { found: excerpt(file), wanted: 'file' })] };
  const found = file[marker];
  if (found === undefined) return { problems: [fileProblem('file-kind', [marker], { field: marker })] };
  if (typeof found === 'number' && found > version)
    return { problems: [fileProblem('version-newer', [marker], { found: String(found) })] };
  return { file, repeated: read.problems };
}

/** The problems in the order of the file, and no more of them than people read. */
export function tellable(problems: readonly FileProblem[], file: Json): FileProblem[] {
  return inFileOrder(problems, file, fileProblem('more-problems', [], {}, { shown: mostProblems }));
}
