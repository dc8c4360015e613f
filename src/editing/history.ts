import { type FileProblem, readSavedLayout, type SavedLayout } from '../files/index.ts';
import type { Layout } from '../layout/index.ts';
import { type Change, changed } from './change.ts';
import type { Edit } from './edit.ts';

/** A layout file with all that was done to it since it was opened, so that everything can be undone and done again. */
export interface History {
  readonly file: SavedLayout;
  /** What `file` is read as. */
  readonly layout: Layout;
  /** What was done, the latest last, and what undoes it. */
  readonly done: readonly Done[];
  /** What was undone, the first to be done again last. */
  readonly undone: readonly Done[];
}

export interface Done {
  readonly edit: Edit;
  readonly back: readonly Change[];
  /** Edits of one name that follow one another count as one: a drag, a word being typed. */
  readonly joins: string | null;
}

/** The history of a file that was just opened; or what is wrong with the file. */
export function opened(file: SavedLayout): History | { readonly problems: readonly FileProblem[] } {
  const read = readSavedLayout(file);
  return 'problems' in read ? read : { file, layout: read.layout, done: [], undone: [] };
}

/**
 * The history with one more edit; or what would be wrong with the file then, and nothing is done. What was undone
 * before can be done again no more.
 */
export function edited(
  history: History,
  edit: Edit,
  { joins = null }: { readonly joins?: string | null } = {},
): History | { readonly problems: readonly FileProblem[] } {
  const { file, back } = changed(history.file, edit.changes);
  const read = readSavedLayout(file);
  if ('problems' in read) return read;
  const last = history.done.at(-1);
  const joined = joins !== null && last?.joins === joins && history.undone.length === 0;
  const done: Done = joined
    ? {
        edit: { told: toldOf(last.edit, edit), changes: [...last.edit.changes, ...edit.changes] },
        back: [...back, ...last.back],
        joins,
      }
    : { edit, back, joins };
  return {
    file,
    layout: read.layout,
    done: [...history.done.slice(0, joined ? -1 : undefined), done],
    undone: [],
  };
}

/** Where two edits count as one, it leads from what the first began with to what the second came to. */
function toldOf({ told: first }: Edit, { told }: Edit): Edit['told'] {
  return first.what === 'set' && told.what === 'set' ? { ...told, from: first.from } : told;
}

/** The history with the latest edit undone; itself where there is none. */
export function undone(history: History): History {
  const last = history.done.at(-1);
  if (last === undefined) return history;
  const { file } = changed(history.file, last.back);
  return at(file, history.done.slice(0, -1), [...history.undone, last]);
}

/** The history with the edit that was undone last done again; itself where there is none. */
export function redone(history: History): History {
  const last = history.undone.at(-1);
  if (last === undefined) return history;
  const { file } = changed(history.file, last.edit.changes);
  return at(file, [...history.done, last], history.undone.slice(0, -1));
}

function at(file: SavedLayout, done: readonly Done[], undoneNow: readonly Done[]): History {
  const read = readSavedLayout(file);
  if ('problems' in read) throw new Error('A file that was sound is sound again');
  return { file, layout: read.layout, done, undone: undoneNow };
}
