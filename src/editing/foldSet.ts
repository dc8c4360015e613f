import { type SavedLayout, valueAt } from '../files/index.ts';
import { type FoldKind, opensEitherWay, takesAllowance } from '../making/index.ts';
import { type Edit, settingOf, together } from './edit.ts';

/**
 * The base folded otherwise; what only other folds have goes.
 *
 * `from` is the same layout as it was before an earlier choice: what was said there is said again where the fold has it, so
 * that trying one fold after another loses nothing.
 */
export function foldSet(file: SavedLayout, fold: FoldKind, from: SavedLayout = file): Edit {
  const said = (field: string, has: boolean) => (has ? valueAt(from, ['base', field]) : undefined);
  const wanted = {
    opens: said('opens', opensEitherWay(fold)),
    allowance: said('allowance', takesAllowance(fold)),
  };
  return together(
    settingOf(file, ['base', 'fold'], fold),
    ...Object.entries(wanted)
      .filter(([field, value]) => valueAt(file, ['base', field]) !== value)
      .map(([field, value]) => settingOf(file, ['base', field], value)),
  );
}
