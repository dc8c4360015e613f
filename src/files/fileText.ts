import { excerpt } from './excerpt.ts';
import { isId } from './field.ts';
import { inFileOrder, mostProblems } from './fileOrder.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { isList, isObject, type JsonObject, readJson } from './json.ts';
import type { Path } from './path.ts';

/** The fields that tell our kinds of files apart, each with its version. */
const markers = [
  'cardwright',
  'cardwright_kit',
  'cardwright_trimmer',
  'cardwright_plan',
  'cardwright_post',
] as const;

type Marker = (typeof markers)[number];

/** The longest file that is read, in characters. */
export const longestFile = 5_000_000;

/**
 * The object in the text of a file of ours, which `marker` (its field with the version) tells from others; or why
 * it is none that this program reads. `repeated` are problems that leave an object to look at.
 */
export function readFileText(
  text: string,
  marker: Marker,
  version: number,
): { file: JsonObject; repeated: FileProblem[] } | { problems: FileProblem[] } {
  if (text.length > longestFile)
    return { problems: [fileProblem('fileTooLarge', [], {}, { found: text.length, high: longestFile })] };
  if (/^\uFEFF?[ \t\r\n]*$/.test(text))
    return { problems: [fileProblem('fileEmpty', [], { field: marker })] };
  const read = readJson(text);
  if (!read.ok) return { problems: read.problems };
  const { value: file } = read;
  if (!isObject(file))
    return { problems: [fileProblem('fieldType', [], { found: excerpt(file), wanted: 'file' })] };
  const found = file[marker];
  if (found === undefined) {
    const other = markers.find((one) => one in file);
    const names = { field: marker, ...(other === undefined ? {} : { other }) };
    return { problems: [fileProblem('fileKind', [marker], names)] };
  }
  if (typeof found === 'number' && Number.isInteger(found) && found > version)
    return { problems: [fileProblem('versionNewer', [marker], { found: String(found) })] };
  return { file, repeated: read.problems };
}

/** The problems in the order of the file, each with the id of its part, and no more of them than people read. */
export function tellable(problems: readonly FileProblem[], file: JsonObject): FileProblem[] {
  const more = fileProblem('moreProblems', [], {}, { shown: mostProblems });
  return inFileOrder(problems, file, more).map((problem) => {
    const part = partIdAt(problem.path, file);
    return part === null ? problem : { ...problem, part };
  });
}

function partIdAt([list, index]: Path, { parts }: JsonObject): string | null {
  if (list !== 'parts' || typeof index !== 'number' || !isList(parts)) return null;
  const part = parts[index];
  const id = isObject(part) ? part.id : null;
  return typeof id === 'string' && isId(id) ? id : null;
}
