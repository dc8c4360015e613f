import { isList, isObject, type Json, type JsonObject } from './json.ts';

/** Whether a field of an object belongs to another tool. */
export function isForeign(name: string): boolean {
  return name.startsWith('x-');
}

/**
 * Whether an entry of `papers` belongs to another tool: names there are ids that people choose, so one that begins
 * with `x-` is still a paper when it has sheets.
 */
export function isForeignPaper(name: string, value: Json): boolean {
  return isForeign(name) && !(isObject(value) && 'sheets' in value);
}

/** The file without the fields that belong to other tools, which may hold anything. */
export function withoutForeignFields(file: JsonObject): JsonObject {
  return kept(file, (name, value) =>
    name === 'papers' && isObject(value) ? withoutForeignPapers(value) : own(value),
  );
}

function withoutForeignPapers(papers: JsonObject): JsonObject {
  return kept(papers, (_, paper) => own(paper), isForeignPaper);
}

function own(value: Json): Json {
  if (isList(value)) return value.map(own);
  return isObject(value) ? kept(value, (_, entry) => own(entry)) : value;
}

function kept(
  object: JsonObject,
  entryOf: (name: string, value: Json) => Json,
  foreign: (name: string, value: Json) => boolean = isForeign,
): JsonObject {
  const result = Object.create(null) as { [field: string]: Json };
  for (const [name, value] of Object.entries(object)) {
    if (!foreign(name, value)) result[name] = entryOf(name, value);
  }
  return result;
}
