import { changedFile, type SavedLayout, valueAt } from '../files/index.ts';
import { type Layout, roomNames } from '../layout/index.ts';
import type { LengthChange } from '../planning/index.ts';
import { type Change, changesTo } from './change.ts';
import type { Edit } from './edit.ts';

/**
 * Lengths of a layout set to others, all at once and undone as one; the first leads and says what was done. `null`
 * where the file may not hold them, or the first is a tear, for which there are no words.
 */
export function lengthsChanged(
  { file, layout }: { readonly file: SavedLayout; readonly layout: Layout },
  changes: readonly LengthChange[],
): Edit | null {
  const [main] = changes;
  const of = roomNames.find((name) => name === main?.name);
  if (main === undefined || of === undefined) return null;
  const written = changedFile(file, { lengths: new Map(changes.map(({ path, to }) => [path, to])) });
  if ('problems' in written) return null;
  const parts = layout.parts.map((_, index) => ['parts', index] as const);
  return {
    told: {
      what: 'mended',
      of:
        main.part === 'base'
          ? { kind: 'base' }
          : { kind: 'part', name: layout.parts.find(({ id }) => id === main.part)?.name ?? main.part },
      mend: { by: 'length', of, to: main.to },
      units: layout.units,
    },
    changes: [['base'] as const, ...parts].flatMap((path): readonly Change[] => {
      const [before, after] = [valueAt(file, path), valueAt(written.file, path)];
      return JSON.stringify(before) === JSON.stringify(after) ? [] : changesTo(file, path, after);
    }),
  };
}
