import { changedFile, type FileProblem, type SavedLayout } from '../files/index.ts';
import type { Length } from '../measure/index.ts';
import type { Recast } from '../planning/index.ts';

/**
 * The file of a layout as `recast` planned it again, with its names, its order and the fields of other tools; or what
 * would be wrong with it. `title`: another than it has.
 */
export function recastFile(
  file: SavedLayout,
  recast: Recast,
  title?: string,
): { readonly file: SavedLayout } | { readonly problems: readonly FileProblem[] } {
  const moved = recast.lengths.filter(({ from, to }) => from !== to);
  return changedFile(file, {
    lengths: new Map([
      ...moved.map(({ path, to }): [string, Length] => [path, to]),
      ...(recast.allowance === null ? [] : [['base.allowance', recast.allowance.to] as const]),
      ...recast.rooms,
    ]),
    units: recast.layout.units,
    cards: recast.layout.cards,
    sheets: recast.sheets,
    ...(title === undefined ? {} : { title }),
  });
}
