import type { Json, Path, SavedLayout } from '../files/index.ts';
import { isList, isObject } from '../files/index.ts';
import type { MinutesLearnt } from '../finished/index.ts';
import { changed } from './change.ts';
import { type Edit, settingOf, together } from './edit.ts';

/** Minutes a piece written into the file as they were at the bench; `null`: it has none of these parts any more. */
export function minutesSet(file: SavedLayout, learnt: readonly MinutesLearnt[]): Edit | null {
  const edits: Edit[] = [];
  let now = file;
  for (const { field, part, now: minutes } of learnt) {
    const path = pathOf(now, field, part);
    if (path === null) continue;
    const edit = settingOf(now, path, minutes);
    edits.push(edit);
    now = changed(now, edit.changes).file;
  }
  const [first, ...more] = edits;
  return first === undefined ? null : together(first, ...more);
}

function pathOf({ parts }: SavedLayout, field: string, part: string | null): Path | null {
  if (part === null) return ['making', 'minutes', field];
  const of: readonly Json[] = isList(parts) ? parts : [];
  const index = of.findIndex((each) => isObject(each) && each.id === part);
  return index === -1 ? null : ['parts', index, 'minutes', field];
}
