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

/** What is kept of a layout. */
export interface KeptInBrowser {
  readonly id: string;
  readonly revision: number;
  readonly besides: string | null;
  readonly cards: number;
}

/** Every layout that the page's browser keeps, each opened from its steps; throws where one cannot be. */
export async function keptInBrowser(): Promise<readonly KeptInBrowser[]> {
  const shelf = shelfIn(databaseNamed('cardwright'), () => '');
  const kept: KeptInBrowser[] = [];
  for (const { id, revision, besides } of await shelf.documents()) {
    const found = await shelf.open(id);
    if (found === null) throw new Error(`${id} is on the shelf and cannot be opened`);
    kept.push({ id, revision, besides, cards: found.history.layout.cards });
  }
  return kept;
}

/** Everything on the shelf of the page's browser, by title: its id there and the text of its file. */
export async function allOnShelf(): Promise<readonly { readonly id: string; readonly text: string }[]> {
  const shelf = shelfIn(databaseNamed('cardwright'), () => '');
  const documents = await shelf.documents();
  return Promise.all(documents.map(async ({ id }) => ({ id, text: (await shelf.file(id))?.text ?? '' })));
}
