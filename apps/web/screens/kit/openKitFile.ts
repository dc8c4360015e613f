import { gatheredKit, layoutFilesOf, readKitFile } from '../../../../src/files/index.ts';
import type { KitShelf } from '../../storage/kits.ts';
import type { FileOpened } from '../shelf/openFile.ts';

/** Puts a kit onto the shelf; the layout files that it names are looked for among those that were chosen with it. */
export async function openKitFile(
  text: string,
  kits: KitShelf,
  chosen: readonly File[],
): Promise<FileOpened> {
  const beside = new Map<string, string>();
  for (const path of layoutFilesOf(text)) {
    const name = path.split(/[\\/]/u).at(-1);
    const file = chosen.find((one) => one.name === name);
    if (file !== undefined) beside.set(path, await file.text());
  }
  const read = readKitFile(text, beside);
  if ('problems' in read) return { kind: 'layout file', problems: read.problems };
  const { id } = await kits.add(gatheredKit(read.file, beside));
  return { kind: 'kit', id };
}
