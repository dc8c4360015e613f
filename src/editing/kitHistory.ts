import { type KitFileProblem, readSavedKit, type SavedKit, writeKitFile } from '../files/index.ts';
import type { Kit } from '../layout/index.ts';
import { type Change, changed } from './change.ts';
import type { KitEdit } from './kitEdit.ts';

/** A kit file with all that was done to it, so that everything can be undone and done again. Plain data. */
export interface KitTrack {
  readonly file: SavedKit;
  /** The latest last, and what undoes it. */
  readonly done: readonly KitDone[];
  /** The first to be done again last. */
  readonly undone: readonly KitDone[];
}

export interface KitDone {
  readonly edit: KitEdit;
  readonly back: readonly Change[];
}

/** As a track, with what its file is read as. */
export interface KitHistory extends KitTrack {
  readonly kit: Kit;
}

type Refused = { readonly problems: readonly KitFileProblem[] };

/** The history of a track; or what is wrong with its file. All layouts stand in it. */
export function kitOpened(track: KitTrack): KitHistory | Refused {
  const read = readSavedKit(track.file);
  return 'problems' in read ? read : { ...track, kit: read.kit };
}

/**
 * The history after an edit; or what would be wrong with the file then, and nothing is done. With `joined` it is one
 * thing to undo with what was done last; both are gone where they lead back.
 */
export function kitEdited({ file, done }: KitHistory, edit: KitEdit, joined = false): KitHistory | Refused {
  const after = changed(file, edit.changes);
  const last = joined ? done.at(-1) : undefined;
  if (last === undefined)
    return kitOpened({ file: after.file, done: [...done, { edit, back: after.back }], undone: [] });
  const before = done.slice(0, -1);
  const back = [...after.back, ...last.back];
  if (writeKitFile(changed(after.file, back).file) === writeKitFile(after.file))
    return kitOpened({ file: after.file, done: before, undone: [] });
  const both = { ...edit, changes: [...last.edit.changes, ...edit.changes] };
  return kitOpened({ file: after.file, done: [...before, { edit: both, back }], undone: [] });
}

/** What was done last undone, or what was undone last done again; the history itself where there is nothing. */
export function kitStepped(history: KitHistory, which: 'undo' | 'redo'): KitHistory {
  const { file, done, undone } = history;
  const last = which === 'undo' ? done.at(-1) : undone.at(-1);
  if (last === undefined) return history;
  const next =
    which === 'undo'
      ? { file: changed(file, last.back).file, done: done.slice(0, -1), undone: [...undone, last] }
      : { file: changed(file, last.edit.changes).file, done: [...done, last], undone: undone.slice(0, -1) };
  const opened = kitOpened(next);
  return 'problems' in opened ? history : opened;
}
