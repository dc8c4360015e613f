import { type FileProblem, readLayoutFile } from '../../../../src/files/index.ts';
import type { ShelfZipProblem } from '../../exchange/shelfZip.ts';
import { problemOf, type SavingProblem } from '../../state/saving.ts';
import type { PutBack } from '../../storage/everything.ts';
import type { KitShelf } from '../../storage/kits.ts';
import type { Shelf } from '../../storage/shelf.ts';

/** What came of a file that was opened. */
export type FileOpened =
  /** It is a layout, and stands on the shelf. */
  | { readonly kind: 'layout'; readonly id: string }
  /** It is a kit, and stands beside them. */
  | { readonly kind: 'kit'; readonly id: string }
  /** It is a zip of a shelf. */
  | { readonly kind: 'shelf'; readonly putBack: PutBack }
  | FileRefused;

/** Why nothing came of it. */
export type FileRefused =
  | { readonly kind: 'too long' }
  | { readonly kind: 'no text' }
  /** Some other text. */
  | { readonly kind: 'no layout' }
  | { readonly kind: 'layout file'; readonly problems: readonly FileProblem[] }
  | { readonly kind: 'zip'; readonly problem: ShelfZipProblem }
  | { readonly kind: 'storage'; readonly problem: SavingProblem };

/** More than any zip of a shelf comes to, in bytes. */
const longest = 100_000_000;

/** Puts onto the shelf what is in a file of the person's, all of it or nothing. */
export async function openFile(
  file: Blob,
  { shelf, kits }: { readonly shelf: Shelf; readonly kits: KitShelf },
  when: number,
  /** The files that were chosen with it, where a kit may name its layouts. */
  beside: readonly File[] = [],
): Promise<FileOpened> {
  if (file.size > longest) return { kind: 'too long' };
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    // A zip begins with the letters PK; no layout file does.
    if (bytes[0] === 0x50 && bytes[1] === 0x4b) return await openZip(bytes, shelf, when);
    const text = textOf(bytes);
    if (text !== null && /"cardwright_kit"\s*:/u.test(text)) {
      const { openKitFile } = await import('../kit/openKitFile.ts');
      return await openKitFile(text, kits, beside);
    }
    return await openLayoutFile(text, shelf, when);
  } catch (reason) {
    return { kind: 'storage', problem: problemOf(reason) };
  }
}

async function openZip(bytes: Uint8Array<ArrayBuffer>, shelf: Shelf, when: number): Promise<FileOpened> {
  const { readShelfZip } = await import('../../exchange/shelfZip.ts');
  const read = await readShelfZip(bytes);
  if ('problem' in read) return { kind: 'zip', problem: read.problem };
  return { kind: 'shelf', putBack: await shelf.putBack(read.everything, when) };
}

async function openLayoutFile(text: string | null, shelf: Shelf, when: number): Promise<FileOpened> {
  if (text === null) return { kind: 'no text' };
  // What would be wrong with it as a layout helps nobody who took the wrong file.
  if (/^\s*[^\s{]/u.test(text)) return { kind: 'no layout' };
  const read = readLayoutFile(text);
  if ('problems' in read) return { kind: 'layout file', problems: read.problems };
  const { id } = await shelf.add(read.file, when);
  return { kind: 'layout', id };
}

function textOf(bytes: Uint8Array<ArrayBuffer>): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}
