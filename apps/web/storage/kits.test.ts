import 'fake-indexeddb/auto';
import { describe, expect, it } from 'vitest';
import autumnAfternoon from '../../../examples/autumn-afternoon.kit.json?raw';
import { kitCounted, kitEdited, kitOpened, kitStepped } from '../../../src/editing/index.ts';
import { readKitFile, type SavedKit } from '../../../src/files/index.ts';
import { readShelfZip, shelfZip } from '../exchange/shelfZip.ts';
import { type Connection, databaseNamed } from './database.ts';
import { kitsIn } from './kits.ts';
import { databaseInMemory } from './memory.ts';
import { shelfIn } from './shelf.ts';

const read = readKitFile(autumnAfternoon);
const file: SavedKit = 'file' in read ? read.file : {};

let ids = 0;
const newId = () => {
  ids += 1;
  return `kit-${ids}`;
};

const databases: readonly (readonly [string, () => Connection])[] = [
  ['the browser’s own database', () => databaseNamed(newId())],
  ['a database in memory', databaseInMemory],
];

describe.each(databases)('kits in %s', (_, database) => {
  it('are kept with what was done to them, and a second hand overwrites nothing', async () => {
    const kits = kitsIn(database(), newId);
    const first = await kits.add(file);
    const opened = kitOpened((await kits.open(first.id))!);
    if ('problems' in opened) throw new Error('The example is sound');
    const edited = kitEdited(opened, kitCounted(file, 'seats', 16));
    if ('problems' in edited) throw new Error('Sixteen may sit there');
    const { kit: seated, ...track } = edited;
    expect(seated.layouts[0]!.layout.cards).toBe(18);
    const saved = await kits.save(first, track);
    expect(saved).toMatchObject({ id: first.id, revision: 1 });
    // From a page that knows only the first revision.
    const beside = await kits.save(first, { file, done: [], undone: [] });
    expect(beside.id).not.toBe(first.id);
    expect((await kits.open(first.id))!.file.seats).toBe(16);
    expect(await kits.all()).toHaveLength(2);
    const again = kitOpened((await kits.open(first.id))!);
    if ('problems' in again) throw new Error('What was kept is sound');
    expect(kitStepped(again, 'undo').file).toEqual(file);
    expect(kitStepped(kitStepped(again, 'undo'), 'redo').file).toEqual(track.file);
  });

  it('lie in the bin until it is emptied', async () => {
    const kits = kitsIn(database(), newId);
    const { id } = await kits.add(file);
    await kits.bin(id, 100);
    await kits.empty(100);
    expect((await kits.open(id))!.binned).toBe(100);
    await kits.bin(id, null);
    await kits.empty(1_000);
    expect((await kits.open(id))!.binned).toBeNull();
    await kits.bin(id, 100);
    await kits.empty(101);
    expect(await kits.open(id)).toBeNull();
  });

  it('are in the zip of the shelf, and come back once', async () => {
    const here = database();
    await kitsIn(here, newId).add(file);
    const zip = await shelfZip(await shelfIn(here, newId).everything());
    const unpacked = await readShelfZip(zip);
    if ('problem' in unpacked) throw new Error('What was zipped is read');
    const there = database();
    const shelf = shelfIn(there, newId);
    expect(await shelf.putBack(unpacked.everything, 1)).toMatchObject({ added: 1, there: 0 });
    expect(await shelf.putBack(unpacked.everything, 1)).toMatchObject({ added: 0, there: 1 });
    const kits = await kitsIn(there, newId).all();
    expect(kits.map((kit) => kit.file)).toEqual([file]);
  });
});
