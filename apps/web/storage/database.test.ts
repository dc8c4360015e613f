import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import { databaseNamed } from './database.ts';
import { type Shelf, shelfIn } from './shelf.ts';
import version1 from './testing/version1.json' with { type: 'json' };
import version2 from './testing/version2.json' with { type: 'json' };

/** A store as a version of the page had made it, and what was in it: by key where the values have none in them. */
type Stores = Readonly<
  Record<string, { readonly keyPath?: string | string[]; readonly holds: readonly unknown[] | object }>
>;

/** What the page of an earlier version had written, put into a database as it had made it. */
function asVersion(version: number, name: string, stores: Stores): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, version);
    request.onupgradeneeded = () => {
      for (const [store, { keyPath, holds }] of Object.entries(stores)) {
        const made = request.result.createObjectStore(store, keyPath === undefined ? {} : { keyPath });
        if (Array.isArray(holds)) for (const value of holds) made.add(value);
        else for (const [key, value] of Object.entries(holds)) made.add(value, key);
      }
    };
    request.onsuccess = () => {
      request.result.close();
      resolve();
    };
    request.onerror = () => reject(request.error);
  });
}

const asVersion1 = (name: string) =>
  asVersion(1, name, {
    documents: { keyPath: 'id', holds: version1.documents },
    steps: { keyPath: ['document', 'revision'], holds: version1.steps },
    snapshots: { keyPath: ['document', 'revision'], holds: version1.snapshots },
  });

const asVersion2 = (name: string) =>
  asVersion(2, name, {
    documents: { keyPath: 'id', holds: version2.documents },
    steps: { keyPath: ['document', 'revision'], holds: version2.steps },
    snapshots: { keyPath: ['document', 'revision'], holds: version2.snapshots },
    preferences: { holds: version2.preferences },
  });

/** What a layout on the shelf was when a version wrote it, counted then. */
interface Written {
  readonly id: string;
  readonly title: string;
  readonly cards: number;
  readonly revision: number;
  readonly done: number;
  readonly undone: number;
  readonly binned: number | null;
  readonly besides: string | null;
  readonly copied: { readonly revision: number; readonly when: number } | null;
}

/** Whether everything that was written is there, and opens with all that was done to it. */
async function expectAllThere(shelf: Shelf, written: readonly Written[]): Promise<void> {
  expect(await shelf.documents()).toMatchObject(
    written.map(({ id, title, revision, binned, besides, copied }) => ({
      id,
      title,
      revision,
      binned,
      besides,
      copied,
    })),
  );
  for (const { id, title, cards, done, undone } of written) {
    const found = await shelf.open(id);
    expect(found?.history.layout).toMatchObject({ title, cards });
    expect([found?.history.done.length, found?.history.undone.length]).toEqual([done, undone]);
  }
}

it('what version 1 kept is all there, and can be gone on with', async () => {
  await asVersion1('from version 1');
  const shelf = shelfIn(databaseNamed('from version 1'), () => 'new');
  const never = { besides: null, binned: null, copied: null };
  await expectAllThere(shelf, [
    {
      ...never,
      id: 'id-2',
      title: 'Button tin',
      cards: 9,
      revision: 0,
      done: 0,
      undone: 0,
      binned: 1_750_000_000_000,
    },
    { ...never, id: 'id-1', title: 'Kite day', cards: 5, revision: 56, done: 35, undone: 1 },
    {
      ...never,
      id: 'id-3',
      title: 'Kite day, the other',
      cards: 14,
      revision: 1,
      done: 1,
      undone: 0,
      besides: 'id-1',
    },
  ]);
  const kite = await shelf.open('id-1');
  expect(await shelf.save({ id: 'id-1', revision: 56 }, { kind: 'undo' }, kite!.history, 'entry')).toEqual({
    at: { id: 'id-1', revision: 57 },
    beside: false,
  });
  await shelf.prefer('units', 'mm');
  expect(await shelf.preference('units')).toBe('mm');
});

it('what version 2 kept is all there, and can be gone on with', async () => {
  await asVersion2('from version 2');
  const shelf = shelfIn(databaseNamed('from version 2'), () => 'new');
  await expectAllThere(shelf, [
    {
      id: 'id-2',
      title: 'Button tin',
      cards: 8,
      revision: 0,
      done: 0,
      undone: 0,
      binned: 1_757_000_000_000,
      besides: null,
      copied: { revision: 0, when: 1_755_000_000_000 },
    },
    {
      id: 'entry-59',
      title: 'Harbour lamps',
      cards: 31,
      revision: 1,
      done: 1,
      undone: 0,
      binned: null,
      besides: 'id-1',
      copied: null,
    },
    {
      id: 'id-1',
      title: 'Harbour lamps',
      cards: 22,
      revision: 58,
      done: 49,
      undone: 1,
      binned: null,
      besides: null,
      copied: { revision: 40, when: 1_760_000_000_000 },
    },
  ]);
  expect(await shelf.preference('ground')).toBe('dark');
  expect(await shelf.preference('units')).toBe('mm');
  const lamps = await shelf.open('id-1');
  const at = { id: 'id-1', revision: 57 };
  // A step that was saved then is known by its name, and not saved twice.
  const again = await shelf.save(at, { kind: 'redo' }, lamps!.history, 'entry-58');
  expect(again).toEqual({ at: { id: 'id-1', revision: 58 }, beside: false });
  expect(await shelf.save(again.at, { kind: 'undo' }, lamps!.history, 'entry')).toEqual({
    at: { id: 'id-1', revision: 59 },
    beside: false,
  });
});

it('a page gives way to a later one, and says so when it saves', async () => {
  const shelf = shelfIn(databaseNamed('given way'), () => 'new');
  await shelf.documents();
  const later = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open('given way', 99);
    request.onsuccess = () => resolve(request.result);
    request.onblocked = () => reject(new Error('blocked'));
  });
  await expect(shelf.documents()).rejects.toMatchObject({ name: 'VersionError' });
  later.close();
});
