import { type Path, type SavedLayout, valueAt } from '../../../../src/files/index.ts';

/** The text that stands at a place of the file, as it was typed; `undefined`: none does. */
export function asTyped(file: SavedLayout, path: Path): string | undefined {
  const text = valueAt(file, path);
  return typeof text === 'string' ? text : undefined;
}
