import { type FileProblem, readSavedLayout, type SavedLayout } from '../files/index.ts';
import type { Layout } from '../layout/index.ts';
import { sum } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type Change, changed } from './change.ts';
import type { Edit } from './edit.ts';

/** A layout file with all that was done to it since it was begun, so that everything can be undone and done again. */
export interface Track {
  readonly file: SavedLayout;
  /** What was done, the latest last, and what undoes it. */
  readonly done: readonly Done[];
  /** What was undone, the first to be done again last. */
  readonly undone: readonly Done[];
}

/** As a track, with what its file is read as: the file is sound. */
export interface History extends Track {
  readonly layout: Layout;
}

export interface Done {
  readonly edit: Edit;
  readonly back: readonly Change[];
  /** Edits of one name that follow one another count as one: a drag, a word being typed. */
  readonly joins: string | null;
}

/** What was done: an edit, or the undoing or doing again of one. Plain data, to be saved and done again. */
export type Step =
  | { readonly kind: 'edit'; readonly edit: Edit; readonly joins: string | null }
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' };

type Refused = { readonly problems: readonly FileProblem[] };

/** The history of a file that was just opened; or what is wrong with the file. */
export function opened(file: SavedLayout): History | Refused {
  return read({ file, done: [], undone: [] });
}

/**
 * The history after one more step; or what would be wrong with the file then, and nothing is done. After an edit, what
 * was undone before can be done again no more; where there is nothing to undo or do again, the history itself.
 */
export function stepped(history: History, step: Step): History | Refused {
  const next = tracked(history, step);
  return next === history ? history : read(next);
}

/** A track gone on with by the steps that were once made from it, as they were saved. */
export function replayed(start: Track, steps: readonly Step[]): History {
  const history = read(steps.reduce(tracked, start));
  assert(!('problems' in history), 'Steps that were made once leave a sound file');
  return history;
}

/**
 * Two steps that follow one another as one that does the same, to the history and what it says: two edits of one name;
 * `null`: they stay two.
 */
export function joined(first: Step, second: Step): Step | null {
  if (first.kind !== 'edit' || second.kind !== 'edit') return null;
  if (first.joins === null || first.joins !== second.joins) return null;
  // What is said of three that are joined depends then on which two were joined first.
  if (first.edit.told.what !== 'set' && second.edit.told.what === 'set') return null;
  return { kind: 'edit', edit: bothOf(first.edit, second.edit), joins: first.joins };
}

function read(track: Track): History | Refused {
  const result = readSavedLayout(track.file);
  return 'problems' in result ? result : { ...track, layout: result.layout };
}

function tracked(track: Track, step: Step): Track {
  switch (step.kind) {
    case 'edit':
      return edited(track, step.edit, step.joins);
    case 'undo': {
      const last = track.done.at(-1);
      if (last === undefined) return track;
      const { file } = changed(track.file, last.back);
      return { file, done: track.done.slice(0, -1), undone: [...track.undone, last] };
    }
    case 'redo': {
      const last = track.undone.at(-1);
      if (last === undefined) return track;
      const { file } = changed(track.file, last.edit.changes);
      return { file, done: [...track.done, last], undone: track.undone.slice(0, -1) };
    }
  }
}

function edited(track: Track, edit: Edit, joins: string | null): Track {
  const { file, back } = changed(track.file, edit.changes);
  const last = track.done.at(-1);
  const joined = joins !== null && last?.joins === joins && track.undone.length === 0;
  if (!joined) return { file, done: [...track.done, { edit, back, joins }], undone: [] };
  const both: Done = {
    edit: bothOf(last.edit, edit),
    back: [...back, ...last.back],
    joins,
  };
  return { file, done: [...track.done.slice(0, -1), both], undone: [] };
}

function bothOf(first: Edit, second: Edit): Edit {
  return { told: toldOf(first, second), changes: [...first.changes, ...second.changes] };
}

/** Where two edits count as one, it leads from what the first began with to what the second came to. */
function toldOf({ told: first }: Edit, { told }: Edit): Edit['told'] {
  if (first.what === 'set' && told.what === 'set') return { ...told, from: first.from };
  if (first.what === 'piece moved' && told.what === 'piece moved') {
    return { ...told, across: sum(first.across, told.across), down: sum(first.down, told.down) };
  }
  return told;
}
