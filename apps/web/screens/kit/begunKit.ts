import autumnAfternoon from '../../../../examples/autumn-afternoon.kit.json?raw';
import { newKit } from '../../../../src/editing/index.ts';
import { readKitFile, readLayoutFile, readSavedKit, type SavedKit } from '../../../../src/files/index.ts';
import { assert } from '../../../../src/problem/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';

/** The example that comes with the app. */
export function exampleKit(): SavedKit {
  const read = readKitFile(autumnAfternoon);
  assert('file' in read, 'The example is sound');
  return read.file;
}

/** A kit of layouts, with as many seats as the first has cards; or why there is none. `null`: no layout can be read. */
export function begunKit(
  texts: readonly string[],
  title: string,
): { readonly file: SavedKit } | { readonly problems: readonly string[] } | null {
  const layouts = texts.flatMap((text) => {
    const read = readLayoutFile(text);
    return 'file' in read ? [read] : [];
  });
  const [first] = layouts;
  if (first === undefined) return null;
  const file = newKit(
    layouts.map((layout) => layout.file),
    // More seats than a kit may have are a slip of the layout, not of the kit.
    { title, seats: Math.min(1_000, first.layout.cards), units: first.layout.units },
  );
  const kit = readSavedKit(file);
  return 'problems' in kit ? { problems: kit.problems.map(fileProblemSentence) } : { file: kit.file };
}
