import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import { inches } from '../../../src/measure/index.ts';
import { benchOf } from '../state/bench.ts';
import type { Making } from '../state/benchState.ts';
import { cuttingKeptIn } from '../state/cutting.ts';
import { benchIn } from './bench.ts';
import { databaseNamed } from './database.ts';
import { type Shelf, shelfIn } from './shelf.ts';
import version1 from './testing/version1.json' with { type: 'json' };
import version2 from './testing/version2.json' with { type: 'json' };
import version3 from './testing/version3.json' with { type: 'json' };

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

const asVersion3 = (name: string) =>
  asVersion(3, name, {
    documents: { keyPath: 'id', holds: version3.documents },
    steps: { keyPath: ['document', 'revision'], holds: version3.steps },
    snapshots: { keyPath: ['document', 'revision'], holds: version3.snapshots },
    preferences: { holds: version3.preferences },
    bench: { keyPath: ['document', 'number'], holds: version3.bench },
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

/** Where a set that is being made stands, in what a person would look for at the table. */
function standing({ tallied, made }: Making) {
  const { inHand, soFar, table } = tallied;
  return {
    cards: inHand.plan.cards,
    steps: inHand.plan.steps.map(({ step }) => step),
    done: [...soFar.done],
    made: [...made],
    spoiled: [...table.spoiled.values()].flat().map(({ id, piece }) => [id, piece]),
    lying: table.onTable.lying.map(({ id }) => id).sort(),
    finished: [...table.finished.keys()].sort(),
    whole: table.whole.map(({ id }) => id).sort(),
  };
}

it('what version 3 kept is all there, with the benches, and can be gone on with', async () => {
  await asVersion3('from version 3');
  const database = databaseNamed('from version 3');
  const shelf = shelfIn(database, () => 'new');
  await expectAllThere(shelf, [
    {
      id: 'entry-4',
      title: 'Button tin',
      cards: 5,
      revision: 2,
      done: 2,
      undone: 0,
      binned: null,
      besides: 'id-1',
      copied: null,
    },
    {
      id: 'id-1',
      title: 'Button tin',
      cards: 8,
      revision: 3,
      done: 1,
      undone: 1,
      binned: null,
      besides: null,
      copied: { revision: 2, when: 1_771_000_000_000 },
    },
    {
      id: 'id-2',
      title: 'Porch lights',
      cards: 4,
      revision: 0,
      done: 0,
      undone: 0,
      binned: 1_772_000_000_000,
      besides: null,
      copied: null,
    },
  ]);
  expect(await shelf.preference('ground')).toBe('dark');
  expect(await shelf.preference('bench')).toEqual({ type: 'larger', voice: 'silent' });
  const cutting = cuttingKeptIn(shelf);
  await cutting.known;
  expect(cutting.getState()).toMatchObject({
    trimmer: {
      name: 'Trimmer on the craft table',
      marks: inches(1, 16),
      sheetsAtOnce: 1,
      cutsPerSitting: 60,
    },
    prefer: ['settings'],
  });

  const log = benchIn(database);
  const world = { later: () => () => {}, newId: () => 'entry' };
  const benchAt = async (id: string) => {
    const bench = benchOf(log, id, world);
    await expect.poll(() => bench.getState().stage).toBe('there');
    return bench;
  };
  // Three steps were cut, a base was spoiled, the rest planned again, a step of that cut, one taken back, the bases
  // scored, and then the offcut of a sheet spoiled as well.
  const tin = await benchAt('id-1');
  expect(tin.getState()).toMatchObject({ told: 11, making: { last: { mark: { kind: 'spoiled' } } } });
  const before = standing(tin.getState().making!);
  expect(before).toEqual({
    cards: 8,
    steps: [5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18],
    done: [[5, 1]],
    made: ['score'],
    spoiled: [['oat-3b', null]],
    lying: [
      'oat-1a',
      'oat-1b',
      'oat-2a',
      'oat-2b',
      'oat-3a1',
      'oat-3a2',
      'oat-3a3',
      'oat-4a1',
      'oat-4a2',
      'oat-4a3',
      'oat-4b',
      'oat-5a1',
      'oat-5a3',
      'oat-5b',
      'odds-1a',
      'odds-1b',
    ].sort(),
    finished: ['oat-3a1', 'oat-3a2', 'oat-4a1', 'oat-4a2', 'oat-5a1'],
    whole: ['kraft-1', 'kraft-2', 'oat-6', 'odds-2', 'odds-3'],
  });
  // Another sheet was taken for the one that was spoiled, so the layout is another from there on.
  expect(standing((await benchAt('id-2')).getState().making!)).toEqual({
    cards: 4,
    steps: [3, 4],
    done: [],
    made: [],
    spoiled: [],
    lying: ['dusk-1a1', 'dusk-1a3', 'dusk-1b', 'dusk-1c'],
    finished: ['dusk-1a1'],
    whole: ['dusk-2'],
  });
  expect((await benchAt('entry-4')).getState().making).toBeNull();

  tin.tell({ kind: 'taken back' });
  tin.tell({ kind: 'noted', mark: { kind: 'cut', step: 6, workpieces: 1 } });
  await expect.poll(() => tin.getState().isKept).toBe(true);
  const after = standing((await benchAt('id-1')).getState().making!);
  expect(after).toMatchObject({
    done: [
      [5, 1],
      [6, 1],
    ],
    spoiled: [],
    made: ['score'],
  });
  expect(after.lying).toContain('oat-3b');
  // What was told then is known by its name, and not kept twice.
  const twice = await log.add('id-1', 10, version3.bench[10]!.event as never, version3.bench[10]!.entry);
  expect(twice).toMatchObject({ isAdded: true, events: { length: 13 } });
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
