import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import { databaseNamed } from './database.ts';
import { shelfIn } from './shelf.ts';
import version1 from './testing/version1.json' with { type: 'json' };

/** What the page of version 1 had written, put into a database as it had made it. */
function asVersion1(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => {
      const database = request.result;
      const stores = {
        documents: database.createObjectStore('documents', { keyPath: 'id' }),
        steps: database.createObjectStore('steps', { keyPath: ['document', 'revision'] }),
        snapshots: database.createObjectStore('snapshots', { keyPath: ['document', 'revision'] }),
      };
      for (const document of version1.documents) stores.documents.add(document);
      for (const step of version1.steps) stores.steps.add(step);
      for (const snapshot of version1.snapshots) stores.snapshots.add(snapshot);
    };
    request.onsuccess = () => {
      request.result.close();
      resolve();
    };
    request.onerror = () => reject(request.error);
  });
}

it('what version 1 kept is all there, and can be gone on with', async () => {
  await asVersion1('from version 1');
  const shelf = shelfIn(databaseNamed('from version 1'), () => 'new');
  // Counted when it was written.
  const written = [
    {
      id: 'id-2',
      title: 'Button tin',
      cards: 9,
      revision: 0,
      done: 0,
      undone: 0,
      binned: 1_750_000_000_000,
      besides: null,
    },
    {
      id: 'id-1',
      title: 'Kite day',
      cards: 5,
      revision: 56,
      done: 35,
      undone: 1,
      binned: null,
      besides: null,
    },
    {
      id: 'id-3',
      title: 'Kite day, the other',
      cards: 14,
      revision: 1,
      done: 1,
      undone: 0,
      binned: null,
      besides: 'id-1',
    },
  ];
  const documents = await shelf.documents();
  expect(documents).toEqual(
    written.map(({ id, title, revision, binned, besides }) => ({
      id,
      title,
      revision,
      binned,
      besides,
      copied: null,
    })),
  );
  for (const { id, title, cards, done, undone } of written) {
    const found = await shelf.open(id);
    expect(found?.history.layout).toMatchObject({ title, cards });
    expect([found?.history.done.length, found?.history.undone.length]).toEqual([done, undone]);
  }
  const kite = await shelf.open('id-1');
  expect(await shelf.save({ id: 'id-1', revision: 56 }, { kind: 'undo' }, kite!.history, 'entry')).toEqual({
    at: { id: 'id-1', revision: 57 },
    beside: false,
  });
  await shelf.prefer('units', 'mm');
  expect(await shelf.preference('units')).toBe('mm');
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
