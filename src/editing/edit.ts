import {
  isList,
  isObject,
  type Json,
  type JsonObject,
  type Path,
  pathText,
  type SavedLayout,
  valueAt,
} from '../files/index.ts';
import { assert } from '../problem/index.ts';
import type { EditOwner, EditTold } from '../words/index.ts';
import { type Change, changesTo } from './change.ts';

/** Something that was done to a layout file: plain data, with what a sentence says of it. */
export interface Edit {
  readonly told: EditTold;
  readonly changes: readonly Change[];
}

/** One field of the file, or of a part or paper of it, set to another value; `undefined` takes it away. */
export function settingOf(file: SavedLayout, path: Path, value: Json | undefined): Edit {
  const before = valueAt(file, path);
  return {
    told: {
      what: 'set',
      ...ownerOf(file, path),
      from: shownAt(file, path, before),
      to: shownAt(file, path, value),
    },
    changes: changesTo(file, path, value),
  };
}

/** A part laid on the pile at `at`, counted from the bottom. */
export function partAdded(at: number, part: JsonObject): Edit {
  return {
    told: { what: 'part added', name: nameOf(part) },
    changes: [{ kind: 'add', path: ['parts', at], at, value: part }],
  };
}

/**
 * A part taken off the pile. What lay on it lies on what it lay on itself, at the same distances; what was laid to it
 * is laid there no more, and it goes out of the order of assembly.
 */
export function partTaken(file: SavedLayout, at: number): Edit {
  const part = partAt(file, at);
  const others = partsOf(file).flatMap((other, index) =>
    index === at ? [] : freedFrom(file, other, ['parts', index], part),
  );
  return {
    told: { what: 'part taken', name: nameOf(part) },
    changes: [...others, ...outOfOrder(file, part.id), { kind: 'take', path: ['parts', at] }],
  };
}

/** A part moved to another place of the pile. */
export function partMoved(file: SavedLayout, from: number, to: number): Edit {
  const part = partAt(file, from);
  return {
    told: { what: 'part moved', name: nameOf(part), up: to > from },
    changes: [
      { kind: 'take', path: ['parts', from] },
      { kind: 'add', path: ['parts', to], at: to, value: part },
    ],
  };
}

/** A paper put into the stash, after the others. */
export function paperAdded(file: SavedLayout, id: string, paper: JsonObject): Edit {
  const papers = file.papers as JsonObject;
  return {
    told: { what: 'paper added', name: nameOf({ id, ...paper }) },
    changes: [{ kind: 'add', path: ['papers', id], at: Object.keys(papers).length, value: paper }],
  };
}

/** A paper taken out of the stash. Parts that are cut from it have to be given another first. */
export function paperTaken(file: SavedLayout, id: string): Edit {
  const paper = valueAt(file, ['papers', id]);
  assert(isObject(paper), 'A paper that is taken is there', { id });
  return {
    told: { what: 'paper taken', name: nameOf({ id, ...paper }) },
    changes: [{ kind: 'take', path: ['papers', id] }],
  };
}

/** Several edits that are done, and undone, as one; the first says what they are. */
export function together(first: Edit, ...more: readonly Edit[]): Edit {
  return { told: first.told, changes: [first, ...more].flatMap(({ changes }) => changes) };
}

// --- Changes ---

const neighbours = ['below', 'above', 'rightOf', 'leftOf'] as const;

/** What takes a part that goes out of the order of assembly, and that itself where it says nothing then. */
function outOfOrder(file: SavedLayout, id: Json | undefined): readonly Change[] {
  const { order } = file;
  if (!isList(order) || !order.includes(id ?? null)) return [];
  const left = order.filter((each) => each !== id);
  return changesTo(file, ['order'], left.length === 0 ? undefined : left);
}

/** What frees a part from another that goes. */
function freedFrom(file: SavedLayout, part: JsonObject, path: Path, gone: JsonObject): readonly Change[] {
  const on = part.on === gone.id ? changesTo(file, [...path, 'on'], gone.on ?? 'base') : [];
  const { place } = part;
  const places: readonly (readonly [Json | undefined, Path])[] = isList(place)
    ? place.map((one, index) => [one, [...path, 'place', index]] as const)
    : [[place, [...path, 'place']]];
  const loosened = places.flatMap(([one, at]): readonly Change[] => {
    if (!isObject(one)) return [];
    const laid = neighbours.filter((neighbour) => one[neighbour] === gone.id);
    const stays = neighbours.some((neighbour) => neighbour in one && !laid.includes(neighbour));
    const fields = [...laid, ...(laid.length > 0 && !stays && 'gap' in one ? ['gap'] : [])];
    return fields.map((field) => ({ kind: 'take', path: [...at, field] }));
  });
  return [...on, ...loosened];
}

// --- What a sentence says ---

/** What a path is a field of, by the name people know it by, and the rest of the path. */
function ownerOf(file: SavedLayout, path: Path): { readonly of: EditOwner; readonly field: string } {
  const [list, key, ...rest] = path;
  if (list === 'parts' && typeof key === 'number') {
    return { of: { kind: 'part', name: nameOf(partAt(file, key)) }, field: pathText(rest) };
  }
  if (list === 'papers' && typeof key === 'string') {
    const paper = valueAt(file, ['papers', key]);
    const name = nameOf({ id: key, ...(isObject(paper) ? paper : {}) });
    return { of: { kind: 'paper', name }, field: pathText(rest) };
  }
  if (list === 'base') return { of: { kind: 'base' }, field: pathText(path.slice(1)) };
  return { of: { kind: 'set' }, field: pathText(path) };
}

function partsOf(file: SavedLayout): readonly JsonObject[] {
  return file.parts as readonly JsonObject[];
}

function partAt(file: SavedLayout, at: number): JsonObject {
  const part = partsOf(file)[at];
  assert(part !== undefined, 'A part that is edited is there', { at });
  return part;
}

function nameOf({ name, id }: JsonObject): string {
  return typeof name === 'string' ? name : typeof id === 'string' ? id : '';
}

/**
 * A value as a sentence shows it: a text as it is, `null` for nothing, else as JSON; parts and papers by their names.
 * What a part lies on is the front where nothing is said.
 */
function shownAt(file: SavedLayout, path: Path, value: Json | undefined): string | null {
  const field = path[2];
  const shown = value === undefined && path.length === 3 && field === 'on' ? 'base' : value;
  if (shown === undefined) return null;
  const named = namedIn(file, path, shown);
  return typeof named === 'string' ? named : JSON.stringify(named);
}

/** The value with the names of parts and papers in place of their ids. */
function namedIn(file: SavedLayout, path: Path, value: Json): Json {
  const field = path.findLast((key) => typeof key === 'string');
  if (isList(value)) return value.map((one, index) => namedIn(file, [...path, index], one));
  if (isObject(value)) {
    return Object.fromEntries(
      Object.entries(value).map(([name, one]) => [name, namedIn(file, [...path, name], one)]),
    );
  }
  if (typeof value !== 'string' || (path[0] !== 'parts' && path[0] !== 'base')) return value;
  if (field === 'paper') {
    const paper = valueAt(file, ['papers', value]);
    return isObject(paper) ? nameOf({ id: value, ...paper }) : value;
  }
  if (field !== 'on' && !neighbours.some((neighbour) => neighbour === field)) return value;
  const part = partsOf(file).find(({ id }) => id === value);
  return part === undefined ? value : nameOf(part);
}
