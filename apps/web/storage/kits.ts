import type { KitTrack } from '../../../src/editing/index.ts';
import { type SavedKit, writeKitFile } from '../../../src/files/index.ts';
import type { Connection, KitRecord, Reading, Writing } from './database.ts';

/** The kits of a person, kept beside her layouts. Each call is one transaction. */
export interface KitShelf {
  /** What stands on the shelf or lies in the bin, by title. */
  all(): Promise<readonly KitRecord[]>;
  add(file: SavedKit): Promise<KitRecord>;
  /** `null`: there is none of that id. */
  open(id: string): Promise<KitRecord | null>;
  /**
   * Saves a kit as it is after something was done to it at a revision. Where it has been saved from somewhere else since,
   * nothing is overwritten: it becomes a second version, under an id of its own.
   */
  save(at: Pick<KitRecord, 'id' | 'revision'>, track: KitTrack): Promise<KitRecord>;
  /** Puts a kit into the bin, or with `null` back on the shelf. */
  bin(id: string, when: number | null): Promise<void>;
  /** Takes out of the bin for good what was put there before that moment. */
  empty(before: number): Promise<void>;
}

/** The kits in a database; `newId` makes an id that was never there before; `news` is called when they have changed. */
export function kitsIn(database: Connection, newId: () => string, news: () => void = () => {}): KitShelf {
  async function write<Result>(work: (transaction: Writing) => Promise<Result>): Promise<Result> {
    const result = await database.write(work);
    news();
    return result;
  }
  const put = async (transaction: Writing, record: KitRecord) => {
    await transaction.objectStore('kits').put(record);
    return record;
  };
  return {
    all: async () => (await database.read((transaction) => kitsOf(transaction))).sort(byTitle),
    add: (file) =>
      write((transaction) => put(transaction, recordOf(newId(), 0, { file, done: [], undone: [] }))),
    open: async (id) =>
      (await database.read((transaction) => transaction.objectStore('kits').get(id))) ?? null,
    save: ({ id, revision }, track) =>
      write(async (transaction) => {
        const now = await transaction.objectStore('kits').get(id);
        const own = now === undefined || now.revision === revision;
        return put(transaction, recordOf(own ? id : newId(), revision + 1, track));
      }),
    bin: (id, when) =>
      write(async (transaction) => {
        const now = await transaction.objectStore('kits').get(id);
        if (now !== undefined) await transaction.objectStore('kits').put({ ...now, binned: when });
      }),
    empty: (before) =>
      database.write(async (transaction) => {
        for (const { id, binned } of await kitsOf(transaction))
          if (binned !== null && binned < before) await transaction.objectStore('kits').delete(id);
      }),
  };
}

/** All of them, within a transaction of the shelf. */
export function kitsOf(transaction: Reading | Writing): Promise<KitRecord[]> {
  // A transaction that may write reads like any other; the types of the package keep the two apart.
  return (transaction as Reading).objectStore('kits').getAll();
}

/** Puts kits back that were written to a file: one that is there with the same text stays, and is on the shelf again. */
export async function putKitsBack(
  transaction: Writing,
  files: readonly SavedKit[],
  newId: () => string,
): Promise<{ readonly added: number; readonly there: number }> {
  const told = { added: 0, there: 0 };
  for (const file of files) {
    const text = writeKitFile(file);
    const same = (await kitsOf(transaction)).find((one) => writeKitFile(one.file) === text);
    if (same === undefined) {
      await transaction.objectStore('kits').put(recordOf(newId(), 0, { file, done: [], undone: [] }));
      told.added += 1;
    } else {
      await transaction.objectStore('kits').put({ ...same, binned: null });
      told.there += 1;
    }
  }
  return told;
}

function recordOf(id: string, revision: number, { file, done, undone }: KitTrack): KitRecord {
  const title = typeof file.title === 'string' ? file.title : '';
  return { id, revision, title, binned: null, file, done, undone };
}

function byTitle(one: KitRecord, other: KitRecord): number {
  if (one.title !== other.title) return one.title < other.title ? -1 : 1;
  return one.id < other.id ? -1 : 1;
}
