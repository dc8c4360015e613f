import { databaseNamed } from '../../apps/web/storage/database.ts';
import { shelfIn } from '../../apps/web/storage/shelf.ts';
import { readLayoutFile } from '../../src/files/index.ts';

/* Runs in the page, over the very storage that the app has there; `appPage.ts` carries it in. */

/** Puts a layout file on the shelf of the page's browser; its id there. The page sees it when it is loaded again. */
export async function layOnShelf(text: string): Promise<string> {
  const read = readLayoutFile(text);
  if (!('file' in read)) throw new Error('A layout of a test can be opened');
  const newId = () => crypto.getRandomValues(new Uint32Array(4)).join('-');
  const { id } = await shelfIn(databaseNamed('cardwright'), newId).add(read.file);
  return id;
}
