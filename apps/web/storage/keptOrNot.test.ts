import { afterEach, expect, it, vi } from 'vitest';
import { opened, type Step, settingOf, stepped } from '../../../src/editing/index.ts';
import { readLayoutFile, starterLayout } from '../../../src/files/index.ts';
import { type Connection, databaseNamed } from './database.ts';
import { keptOrNot } from './keptOrNot.ts';
import { databaseInMemory } from './memory.ts';
import { shelfIn } from './shelf.ts';

afterEach(() => vi.unstubAllGlobals());

const failsWith = (name: string): Connection => {
  const fail = async () => {
    throw new DOMException('for a test', name);
  };
  return { read: fail, write: fail };
};

it('works in memory where the browser has no database at all, and says that nothing is kept', async () => {
  vi.stubGlobal('indexedDB', undefined);
  vi.stubGlobal('IDBKeyRange', undefined);
  const database = keptOrNot({ has: () => false, database: databaseNamed('none') }, databaseInMemory);
  expect(await database.isKept).toBe(false);
  const shelf = shelfIn(database, () => 'new');
  const read = readLayoutFile(starterLayout({ units: 'in', title: 'Notes' }));
  if (!('file' in read)) throw new Error('the starter is sound');
  const { id } = await shelf.add(read.file);
  let history = opened(read.file);
  for (let revision = 0; revision < 60; revision += 1) {
    if ('problems' in history) throw new Error('any number of cards is sound');
    const edit = settingOf(history.file, ['cards'], revision + 1);
    const step: Step = { kind: 'edit', edit, joins: null };
    history = stepped(history, step);
    if ('problems' in history) throw new Error('any number of cards is sound');
    await shelf.save({ id, revision }, step, history, `entry ${revision}`);
  }
  expect((await shelf.open(id))?.history).toEqual(history);
});

it('stands in for a database that pages may not have, and for none that only fails', async () => {
  const isKept = (name: string) =>
    keptOrNot({ has: () => true, database: failsWith(name) }, databaseInMemory).isKept;
  expect(await isKept('SecurityError')).toBe(false);
  expect(await isKept('InvalidStateError')).toBe(false);
  for (const name of ['UnknownError', 'QuotaExceededError', 'VersionError', 'AbortError'])
    expect(await isKept(name)).toBe(true);
});
