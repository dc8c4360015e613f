import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Edit,
  type History,
  opened,
  type Step,
  settingOf,
  stepped,
} from '../../../src/editing/index.ts';
import { readLayoutFile, type SavedLayout, writeLayoutFile } from '../../../src/files/index.ts';
import { benchIn } from './bench.ts';
import type { BenchEvent } from './benchLog.ts';
import { type Connection, databaseNamed } from './database.ts';
import { databaseInMemory } from './memory.ts';
import { type At, type Shelf, shelfIn } from './shelf.ts';

let databases = 0;

const inMemory = new Map<string, Connection>();

/** The ways to keep a shelf: the database of a name. */
const ways: Readonly<Record<string, (name: string) => Connection>> = {
  "the browser's database": databaseNamed,
  memory(name) {
    const there = inMemory.get(name) ?? databaseInMemory();
    inMemory.set(name, there);
    return there;
  },
};

/** A shelf of its own; `again` is the same one as another tab, or a later visit, has it. */
async function newShelfIn(databaseOf: (name: string) => Connection): Promise<{
  readonly shelf: Shelf;
  readonly again: () => Promise<Shelf>;
  readonly database: Connection;
}> {
  databases += 1;
  const name = `shelf-${databases}`;
  let ids = 0;
  const open = () =>
    shelfIn(databaseOf(name), () => {
      ids += 1;
      return `id-${ids}`;
    });
  return { shelf: open(), again: async () => open(), database: databaseOf(name) };
}

function file(title = 'Notes'): SavedLayout {
  const read = readLayoutFile(
    JSON.stringify({
      cardwright: 1,
      title,
      units: 'in',
      cards: 10,
      base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
      papers: {},
      parts: [],
    }),
  );
  if (!('file' in read)) throw new Error('the file is sound');
  return read.file;
}

function sound(history: ReturnType<typeof stepped>): History {
  if ('problems' in history) throw new Error(JSON.stringify(history.problems));
  return history;
}

const edit = (of: Edit): Step => ({ kind: 'edit', edit: of, joins: null });
const cards = (history: History, count: number): Step => edit(settingOf(history.file, ['cards'], count));
const textOf = (history: History | undefined) => history && writeLayoutFile(history.file);

/** The shelf keeps whatever is told at a bench; what can have happened there is not for it to say. */
const made = (line: string): BenchEvent => ({ kind: 'made', line });

let entries = 0;
function entry(): string {
  entries += 1;
  return `entry-${entries}`;
}

/** One page with a layout open. */
class Tab {
  at: At;
  history: History;

  constructor(
    readonly shelf: Shelf,
    at: At,
    history: History,
  ) {
    this.at = at;
    this.history = history;
  }

  static async open(shelf: Shelf, id: string): Promise<Tab> {
    const found = await shelf.open(id);
    if (found === null) throw new Error('it is on the shelf');
    return new Tab(shelf, { id, revision: found.document.revision }, found.history);
  }

  async make(step: Step): Promise<boolean> {
    this.history = sound(stepped(this.history, step));
    const saved = await this.shelf.save(this.at, step, this.history, entry());
    this.at = saved.at;
    return saved.beside;
  }
}

describe.each(Object.entries(ways))('a shelf in %s', (_, databaseOf) => {
  const newShelf = () => newShelfIn(databaseOf);

  it('keeps what was put on it, by title, for the next visit', async () => {
    const { shelf, again } = await newShelf();
    await shelf.add(file('Moths'));
    const { id } = await shelf.add(file('Bees'));
    const later = await again();
    expect((await later.documents()).map(({ title, revision }) => [title, revision])).toEqual([
      ['Bees', 0],
      ['Moths', 0],
    ]);
    expect(textOf((await later.open(id))?.history)).toBe(writeLayoutFile(file('Bees')));
    expect(await later.open('nothing')).toBeNull();
  });

  it('keeps every step, with the way back from each, across many of them', async () => {
    const { shelf, again } = await newShelf();
    const { id } = await shelf.add(file());
    const tab = await Tab.open(shelf, id);
    for (let count = 1; count <= 120; count += 1) await tab.make(cards(tab.history, count));
    for (let count = 0; count < 7; count += 1) await tab.make({ kind: 'undo' });
    await tab.make({ kind: 'redo' });
    const found = await Tab.open(await again(), id);
    expect(found.at.revision).toBe(128);
    expect(found.history.layout.cards).toBe(114);
    expect(found.history.done).toHaveLength(114);
    expect(found.history.undone).toHaveLength(6);
    expect(found.history).toEqual(tab.history);
  });

  it('lets a title follow the layout', async () => {
    const { shelf } = await newShelf();
    const { id } = await shelf.add(file('Moths'));
    const tab = await Tab.open(shelf, id);
    await tab.make(edit(settingOf(tab.history.file, ['title'], 'Moths by night')));
    expect((await shelf.documents()).map(({ title }) => title)).toEqual(['Moths by night']);
  });

  it('makes a second version of what was saved from elsewhere meanwhile, and overwrites nothing', async () => {
    const { shelf, again } = await newShelf();
    const { id } = await shelf.add(file());
    const [one, other] = [await Tab.open(shelf, id), await Tab.open(await again(), id)];
    await one.make(cards(one.history, 12));
    expect(await other.make(cards(other.history, 20))).toBe(true);
    expect(other.at.id).not.toBe(id);
    // The second tab goes on in its own version.
    expect(await other.make(cards(other.history, 21))).toBe(false);
    expect((await Tab.open(shelf, id)).history.layout.cards).toBe(12);
    const second = await Tab.open(shelf, other.at.id);
    expect(second.history.layout.cards).toBe(21);
    expect(second.history.done).toHaveLength(2);
    expect((await shelf.documents()).map(({ besides }) => besides).sort()).toEqual([id, null].sort());
  });

  it('saves what is not on the shelf any more, and takes what lies in the bin out of it', async () => {
    const { shelf, again } = await newShelf();
    const { id } = await shelf.add(file());
    const [one, other] = [await Tab.open(shelf, id), await Tab.open(shelf, id)];
    await one.make(cards(one.history, 12));
    await shelf.bin(id, 1_000);
    await one.make(cards(one.history, 13));
    expect((await shelf.documents())[0]!.binned).toBeNull();
    await shelf.bin(id, 1_000);
    await shelf.empty(2_000);
    expect(await one.make(cards(one.history, 14))).toBe(false);
    expect((await Tab.open(await again(), id)).history).toEqual(one.history);
    expect(await other.make(cards(other.history, 20))).toBe(true);
    expect((await Tab.open(await again(), other.at.id)).history).toEqual(other.history);
  });

  it('keeps few snapshots of a layout, however long it is worked on', async () => {
    const { shelf, again, database } = await newShelf();
    const { id } = await shelf.add(file());
    const tab = await Tab.open(shelf, id);
    for (let count = 1; count <= 320; count += 1) await tab.make(cards(tab.history, (count % 90) + 1));
    const revisions = await database.read(async (transaction) =>
      (await transaction.objectStore('snapshots').getAll()).map(({ revision }) => revision),
    );
    expect(revisions).toEqual([0, 250, 300]);
    expect((await Tab.open(await again(), id)).history).toEqual(tab.history);
  });

  it('makes a fresh layout of one that is there', async () => {
    const { shelf } = await newShelf();
    const { id } = await shelf.add(file(), 5_000);
    const tab = await Tab.open(shelf, id);
    await tab.make(cards(tab.history, 12));
    const copy = await shelf.duplicate(id, 'Notes for the fair');
    const found = await Tab.open(shelf, copy!.id);
    expect(textOf(found.history)).toBe(textOf(tab.history)!.replace('"Notes"', '"Notes for the fair"'));
    expect(copy).toMatchObject({ title: 'Notes for the fair', revision: 0, besides: null, copied: null });
    expect(found.history.done).toEqual([]);
    await found.make(cards(found.history, 3));
    expect((await Tab.open(shelf, id)).history).toEqual(tab.history);
    expect(await shelf.duplicate('nothing', 'Copy')).toBeNull();
  });

  it('lets nothing be begun at the bench of a copy, and a second version go on where the first stands', async () => {
    const { shelf, database } = await newShelf();
    const { id } = await shelf.add(file());
    const bench = benchIn(database);
    await bench.add(id, 0, made('one'), entry());
    const copy = await shelf.duplicate(id, 'Notes for the fair');
    expect(await bench.events(copy!.id)).toEqual([]);
    const [one, other] = [await Tab.open(shelf, id), await Tab.open(shelf, id)];
    await one.make(cards(one.history, 12));
    expect(await other.make(cards(other.history, 20))).toBe(true);
    await bench.add(id, 1, made('two'), entry());
    expect(await bench.events(other.at.id)).toEqual([made('one')]);
    expect(await bench.events(id)).toEqual([made('one'), made('two')]);
    // What is there already, because it could not be told that it was kept, is not told twice.
    const again = cards(other.history, 30);
    const name = entry();
    for (const _ of ['once', 'twice'])
      await shelf.save({ id, revision: 0 }, again, sound(stepped(other.history, again)), name);
    expect(await bench.events(name)).toEqual([made('one'), made('two')]);
  });

  it('keeps the bench of what lies in the bin, and empties it with the rest', async () => {
    const { shelf, database } = await newShelf();
    let news = 0;
    const bench = benchIn(database, () => {
      news += 1;
    });
    const [one, other] = [await shelf.add(file('Moths')), await shelf.add(file('Bees'))];
    for (const { id } of [one, other]) await bench.add(id, 0, made('one'), entry());
    await shelf.bin(one.id, 1_000);
    expect(await bench.events(one.id)).toEqual([made('one')]);
    // Who makes a set wants it.
    expect(news).toBe(0);
    await bench.add(one.id, 1, made('two'), entry());
    expect(news).toBe(1);
    expect((await shelf.documents()).map(({ binned }) => binned)).toEqual([null, null]);
    await shelf.bin(one.id, 1_000);
    await shelf.empty(2_000);
    expect(await bench.events(one.id)).toEqual([]);
    expect(await bench.events(other.id)).toEqual([made('one')]);
  });

  it('knows when a layout was written to a file, and which text that was', async () => {
    const { shelf, again } = await newShelf();
    const { id, copied } = await shelf.add(file(), 5_000);
    expect(copied).toEqual({ revision: 0, when: 5_000 });
    const tab = await Tab.open(shelf, id);
    await tab.make(cards(tab.history, 12));
    const written = await shelf.file(id);
    expect(written).toEqual({ text: textOf(tab.history), revision: 1 });
    await shelf.copied(id, { revision: 1, when: 6_000 });
    await tab.make(cards(tab.history, 13));
    const [document] = await (await again()).documents();
    expect(document).toMatchObject({ revision: 2, copied: { revision: 1, when: 6_000 } });
    expect(await shelf.file('nothing')).toBeNull();
    await shelf.copied('nothing', { revision: 1, when: 6_000 });
  });

  it('keeps preferences', async () => {
    const { shelf, again } = await newShelf();
    expect(await shelf.preference('ground')).toBeUndefined();
    await shelf.prefer('ground', 'dark');
    await shelf.prefer('trueSize', { millimetresPerPixel: 0.25 });
    expect(await (await again()).preference('trueSize')).toEqual({ millimetresPerPixel: 0.25 });
    expect(await (await again()).preference('ground')).toBe('dark');
  });

  it('tells the news when it has changed', async () => {
    let news = 0;
    const shelf = shelfIn(
      databaseOf('shelf-with-news'),
      () => 'a',
      () => {
        news += 1;
      },
    );
    await shelf.documents();
    expect(news).toBe(0);
    await shelf.add(file());
    expect(news).toBe(1);
    await expect(shelf.add(file())).rejects.toThrow();
    expect(news).toBe(1);
  });

  it('takes out of the bin what was put there long enough ago, and nothing else', async () => {
    const { shelf } = await newShelf();
    const [old, recent, kept] = [
      await shelf.add(file('Old')),
      await shelf.add(file('New')),
      await shelf.add(file()),
    ];
    const tab = await Tab.open(shelf, old.id);
    await tab.make(cards(tab.history, 3));
    await shelf.bin(old.id, 1_000);
    await shelf.bin(recent.id, 2_000);
    await shelf.bin(kept.id, 500);
    await shelf.bin(kept.id, null);
    await shelf.empty(1_500);
    expect((await shelf.documents()).map(({ title, binned }) => [title, binned])).toEqual([
      ['New', 2_000],
      ['Notes', null],
    ]);
    expect(await shelf.open(old.id)).toBeNull();
  });

  it('loses no step that was saved, however tabs take turns', async () => {
    const choice = fc.record({
      tab: fc.nat({ max: 2 }),
      what: fc.constantFrom('edit', 'undo', 'redo', 'open'),
      count: fc.integer({ min: 1, max: 99 }),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(choice, { maxLength: 40 }), async (choices) => {
        const { shelf, again } = await newShelf();
        const { id } = await shelf.add(file());
        const tabs = [
          await Tab.open(shelf, id),
          await Tab.open(shelf, id),
          await Tab.open(await again(), id),
        ];
        // What each version came to when it was saved last.
        const witness = new Map([[id, textOf(tabs[0]!.history)]]);
        for (const { tab: index, what, count } of choices) {
          const tab = tabs[index]!;
          if (what === 'open') tabs[index] = await Tab.open(shelf, tab.at.id);
          else {
            await tab.make(what === 'edit' ? cards(tab.history, count) : { kind: what });
            witness.set(tab.at.id, textOf(tab.history));
          }
        }
        const documents = await shelf.documents();
        expect(documents.map((document) => document.id).sort()).toEqual([...witness.keys()].sort());
        for (const document of documents) {
          const found = await Tab.open(await again(), document.id);
          expect(textOf(found.history)).toBe(witness.get(document.id));
          const start = found.history.done.reduce(
            (history) => sound(stepped(history, { kind: 'undo' })),
            found.history,
          );
          expect(textOf(start)).toBe(writeLayoutFile(file()));
        }
      }),
      { numRuns: 25 },
    );
  });

  it('begins with a file that is sound', () => {
    expect('problems' in opened({ ...file(), cards: 0 })).toBe(true);
  });
});
