import { isList, isObject, type Json, type JsonObject, type Path, valueAt } from '../files/index.ts';
import { assert } from '../problem/index.ts';

/**
 * The least that can be done to a layout file: a value put in place of another, one added at a position of its list or
 * object, or one taken away. Plain data, to be saved and done again.
 */
export type Change =
  | { readonly kind: 'put'; readonly path: Path; readonly value: Json }
  /** `at` counts the entries of the list, or the fields of the object, that then stand before it. */
  | { readonly kind: 'add'; readonly path: Path; readonly at: number; readonly value: Json }
  | { readonly kind: 'take'; readonly path: Path };

/**
 * The file with the changes made one after another, and the changes that lead back from it, to the order of every
 * field. Throws where a change does not fit the file: it was made for another one.
 */
export function changed(
  file: JsonObject,
  changes: readonly Change[],
): { readonly file: JsonObject; readonly back: readonly Change[] } {
  let now: Json = file;
  const back: Change[] = [];
  for (const change of changes) {
    back.unshift(backFrom(now, change));
    now = made(now, change.path, change);
  }
  return { file: now as JsonObject, back };
}

/**
 * What sets a field, wherever it stands, or with `undefined` takes it away: objects on the way to it that are not there
 * yet are made.
 */
export function changesTo(file: JsonObject, path: Path, value: Json | undefined): readonly Change[] {
  const before = valueAt(file, path);
  if (value === undefined) return before === undefined ? [] : [{ kind: 'take', path }];
  if (before !== undefined) return [{ kind: 'put', path, value }];
  const container = path.slice(0, -1);
  const inside = valueAt(file, container);
  const key = path.at(-1)!;
  if (inside === undefined && typeof key === 'string') return changesTo(file, container, { [key]: value });
  assert(typeof inside === 'object' && inside !== null, 'A field is set in an object or a list', { path });
  return [{ kind: 'add', path, at: Object.keys(inside).length, value }];
}

function backFrom(file: Json, change: Change): Change {
  const { path } = change;
  const before = valueAt(file, path);
  switch (change.kind) {
    case 'put':
      assert(before !== undefined, doesNotFit, { path });
      return { kind: 'put', path, value: before };
    case 'add':
      return { kind: 'take', path };
    case 'take':
      assert(before !== undefined, doesNotFit, { path });
      return {
        kind: 'add',
        path,
        at: positionIn(valueAt(file, path.slice(0, -1)), path.at(-1)!),
        value: before,
      };
  }
}

const doesNotFit = 'A change is made to the file it was made for';

function positionIn(container: Json | undefined, key: string | number): number {
  return typeof key === 'number' ? key : Object.keys(container as JsonObject).indexOf(key);
}

/** The value with the change made at the end of `path`; what is not on the way stays the very same. */
function made(value: Json | undefined, path: Path, change: Change): Json {
  const [key, ...further] = path;
  assert(key !== undefined, doesNotFit, { path: change.path });
  if (typeof key === 'number') {
    assert(isList(value), doesNotFit, { path: change.path });
    return listMade(value, key, further, change);
  }
  assert(isObject(value), doesNotFit, { path: change.path });
  return objectMade(value, key, further, change);
}

function listMade(list: readonly Json[], index: number, further: Path, change: Change): Json {
  assert(index >= 0 && index <= list.length, doesNotFit, { path: change.path });
  if (further.length > 0) return list.with(index, made(list[index], further, change));
  switch (change.kind) {
    case 'put':
      return list.with(index, change.value);
    case 'add':
      assert(change.at === index, doesNotFit, { path: change.path, at: change.at });
      return list.toSpliced(index, 0, change.value);
    case 'take':
      return list.toSpliced(index, 1);
  }
}

function objectMade(object: JsonObject, field: string, further: Path, change: Change): Json {
  const entries = Object.entries(object);
  const index = entries.findIndex(([name]) => name === field);
  assert(change.kind === 'add' && further.length === 0 ? index < 0 : index >= 0, doesNotFit, {
    path: change.path,
  });
  if (further.length > 0) return objectOf(entries.with(index, [field, made(object[field], further, change)]));
  switch (change.kind) {
    case 'put':
      return objectOf(entries.with(index, [field, change.value]));
    case 'add':
      return objectOf(entries.toSpliced(change.at, 0, [field, change.value]));
    case 'take':
      return objectOf(entries.toSpliced(index, 1));
  }
}

/** Without a prototype, as files are read. */
function objectOf(entries: readonly (readonly [string, Json])[]): JsonObject {
  return Object.assign<object, JsonObject>(Object.create(null) as object, Object.fromEntries(entries));
}
