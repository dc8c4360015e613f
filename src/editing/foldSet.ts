import { type SavedLayout, valueAt } from '../files/index.ts';
import { type FoldKind, opensEitherWay, takesAllowance } from '../making/index.ts';
import { type Edit, settingOf, together } from './edit.ts';

/** The base folded otherwise; what its file said of the fold before that the other does not have goes. */
export function foldSet(file: SavedLayout, fold: FoldKind): Edit {
  const gone = [
    ...(opensEitherWay(fold) ? [] : ['opens']),
    ...(takesAllowance(fold) ? [] : ['allowance']),
  ].filter((field) => valueAt(file, ['base', field]) !== undefined);
  return together(
    settingOf(file, ['base', 'fold'], fold),
    ...gone.map((field) => settingOf(file, ['base', field], undefined)),
  );
}
