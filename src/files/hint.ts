import { excerpt } from './excerpt.ts';
import type { FileProblem } from './fileProblem.ts';
import { isList, isObject, type Json, type JsonObject, valueAt } from './json.ts';
import { faces } from './layoutShape.ts';
import { nearest } from './nearest.ts';

/**
 * The problem with the id that was probably meant as `nearest`, where it is about an id that names nothing.
 *
 * It is looked for only once a problem is to be told, for every id of the file has to be compared: a file of
 * nothing but unknown ids would else take minutes.
 */
export function withHint(problem: FileProblem, file: JsonObject): FileProblem {
  const found = valueAt(file, problem.path);
  const candidates = candidatesFor(problem, file);
  if (typeof found !== 'string' || candidates === null) return problem;
  const meant = nearest(found, candidates);
  return meant === null ? problem : { ...problem, names: { ...problem.names, nearest: excerpt(meant) } };
}

/** The ids that might have stood there; `null` for a problem about something else. */
function candidatesFor({ code, path }: FileProblem, file: JsonObject): readonly string[] | null {
  if (code === 'paperUnknown') return isObject(file.papers) ? Object.keys(file.papers) : null;
  if (code === 'orderUnknown') return idsBefore(Infinity, file.parts);
  if (code !== 'onUnknown') return null;
  return [...(path.at(-1) === 'on' ? faces : []), ...idsBefore(path[1], file.parts)];
}

function idsBefore(index: string | number | undefined, parts: Json | undefined): string[] {
  if (!isList(parts) || typeof index !== 'number') return [];
  return parts
    .slice(0, index)
    .map((part) => (isObject(part) ? part.id : null))
    .filter((id) => typeof id === 'string');
}
