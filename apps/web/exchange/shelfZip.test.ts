import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { type History, settingOf, stepped } from '../../../src/editing/index.ts';
import { readLayoutFile, type SavedLayout, writeLayoutFile } from '../../../src/files/index.ts';
import { randomFile } from '../../../src/files/testing/randomFile.ts';
import { makingOf } from '../state/benchState.ts';
import { benchIn } from '../storage/bench.ts';
import type { BenchEvent } from '../storage/benchLog.ts';
import { type Connection, type DocumentRecord, databaseNamed } from '../storage/database.ts';
import { type Shelf, shelfIn } from '../storage/shelf.ts';
import { randomBench } from '../storage/testing/randomBench.ts';
import version3 from '../storage/testing/version3.json' with { type: 'json' };
import { fileNameOf, stemOf } from './fileName.ts';
import { readShelfZip, shelfZip } from './shelfZip.ts';
import { otherUnzip, otherZip } from './testing/otherZip.ts';

let shelves = 0;
let ids = 0;
const databases = new WeakMap<Shelf, Connection>();
const newShelf = () => {
  shelves += 1;
  const database = databaseNamed(`zip-${shelves}`);
  const shelf = shelfIn(database, () => {
    ids += 1;
    return `id-${ids}`;
  });
  databases.set(shelf, database);
  return shelf;
};

/** The bench of a layout on one of these shelves. */
const benchOn = (shelf: Shelf) => benchIn(databases.get(shelf)!);

async function tellAt(shelf: Shelf, id: string, told: readonly BenchEvent[]) {
  const bench = benchOn(shelf);
  for (const event of told) {
    ids += 1;
    await bench.add(id, (await bench.events(id)).length, event, `told-${ids}`);
  }
}

let someBench: fc.Arbitrary<readonly BenchEvent[]>;
beforeAll(async () => {
  someBench = await randomBench();
}, 60_000);

/** A bench at which a set was begun, cut, spoiled and planned again. */
const aBench = version3.bench.flatMap(({ document, event }) =>
  // As it was written; the types of a JSON file know nothing of kinds.
  document === 'id-1' ? [event as unknown as BenchEvent] : [],
);

function fileOf(text: string): SavedLayout {
  const read = readLayoutFile(text);
  if (!('file' in read)) throw new Error(JSON.stringify(read.problems));
  return read.file;
}

const notes = (title = 'Notes', cards = 10) =>
  JSON.stringify({
    cardwright: 1,
    title,
    units: 'in',
    cards,
    base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
    papers: {},
    parts: [],
  });

function sound(history: ReturnType<typeof stepped>): History {
  if ('problems' in history) throw new Error(JSON.stringify(history.problems));
  return history;
}

/** Sets the number of cards, from a revision on. */
async function cardsTo(shelf: Shelf, id: string, count: number, from?: number) {
  const { document, history } = (await shelf.open(id))!;
  const step = { kind: 'edit', edit: settingOf(history.file, ['cards'], count), joins: null } as const;
  ids += 1;
  return shelf.save(
    { id, revision: from ?? document.revision },
    step,
    sound(stepped(history, step)),
    `id-${ids}`,
  );
}

async function undoOn(shelf: Shelf, id: string) {
  const { document, history } = (await shelf.open(id))!;
  ids += 1;
  await shelf.save(
    { id, revision: document.revision },
    { kind: 'undo' },
    sound(stepped(history, { kind: 'undo' })),
    `id-${ids}`,
  );
}

const exported = async (shelf: Shelf) => shelfZip(await shelf.everything());

async function putBack(shelf: Shelf, zip: Uint8Array<ArrayBuffer>) {
  const read = await readShelfZip(zip);
  if ('problem' in read) throw new Error(JSON.stringify(read.problem));
  return shelf.putBack(read.everything, 7_000);
}

/** What became of layouts that were put back where there were none. */
const nothing = { added: 0, beside: 0, further: 0, there: 0 };

/** What stands on a shelf, apart from when it was copied. */
const standing = async (shelf: Shelf) =>
  (await shelf.documents())
    .filter(({ binned }) => binned === null)
    .map(({ copied: _, ...rest }: DocumentRecord) => rest);

describe('everything in one zip', () => {
  it('opens again equal, whatever is on the shelf', async () => {
    const choice = fc.record({
      what: fc.constantFrom('cards', 'cards', 'undo', 'second', 'bin'),
      of: fc.nat(),
      count: fc.integer({ min: 1, max: 999 }),
    });
    let steps = 0;
    let told = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(randomFile(), { minLength: 1, maxLength: 4 }),
        fc.array(choice, { maxLength: 14 }),
        fc.array(someBench, { maxLength: 2 }),
        async (files, choices, benches) => {
          const shelf = newShelf();
          const kept: string[] = [];
          for (const file of files) kept.push((await shelf.add(fileOf(JSON.stringify(file)))).id);
          await shelf.prefer('ground', 'dark');
          for (const { what, of, count } of choices) {
            const id = kept[of % kept.length]!;
            if (what === 'cards') await cardsTo(shelf, id, count);
            else if (what === 'undo') await undoOn(shelf, id);
            else if (what === 'bin') await shelf.bin(id, 1_000);
            else {
              const { revision } = (await shelf.open(id))!.document;
              if (revision > 0) kept.push((await cardsTo(shelf, id, count, revision - 1)).at.id);
            }
          }
          for (const [index, events] of benches.entries())
            if (kept[index] !== undefined) await tellAt(shelf, kept[index], events);
          const before = await shelf.everything();
          told += before.layouts.reduce((sum, { bench }) => sum + bench.length, 0);
          steps += before.layouts.reduce((sum, { track }) => sum + track.done.length, 0);
          const zip = await shelfZip(before);
          if (before.layouts.length === 0) {
            expect(await readShelfZip(zip)).toEqual({ problem: { kind: 'nothing of ours' } });
            return;
          }
          const other = newShelf();
          expect(await putBack(other, zip)).toEqual({
            ...nothing,
            added: before.layouts.length,
          });
          expect(await other.everything()).toEqual(before);
          expect(await standing(other)).toEqual(await standing(shelf));
          expect(await exported(other)).toEqual(zip);
          // Once more, or on the shelf it came from, it changes nothing.
          for (const again of [other, shelf]) {
            const was = await standing(again);
            expect(await putBack(again, zip)).toEqual({ ...nothing, there: before.layouts.length });
            expect(await standing(again)).toEqual(was);
          }
          // Each can be gone on with, and undone to its beginning.
          for (const { id, track, bench } of before.layouts) {
            for (const _ of track.done) await undoOn(other, id!);
            const start = (await other.open(id!))!.history;
            expect(start.done).toEqual([]);
            expect(start.undone).toHaveLength(track.undone.length + track.done.length);
            // A bench as well: what a hand tells next comes after all that was told.
            await tellAt(other, id!, aBench.slice(0, 1));
            expect(await benchOn(other).events(id!)).toHaveLength(bench.length + 1);
          }
        },
      ),
      { numRuns: 25 },
    );
    expect(steps).toBeGreaterThan(8);
    expect(told).toBeGreaterThan(20);
  });

  it('holds each layout as a file of its own, that other programs unpack', async () => {
    const shelf = newShelf();
    for (const title of ['Été à la mer', 'Ete a la mer', 'con', '', '../../etc', '花の便り'])
      await shelf.add(fileOf(notes(title)));
    const files = await otherUnzip(await exported(shelf));
    const layouts = [...files].filter(([name]) => name.endsWith('.card.json'));
    expect(layouts.map(([name]) => name).sort()).toEqual(
      [
        'cards.card.json',
        'con-cards.card.json',
        'ete-a-la-mer-2.card.json',
        'ete-a-la-mer.card.json',
        'etc.card.json',
        '花の便り.card.json',
      ].sort(),
    );
    const texts = (await shelf.everything()).layouts.map(({ track }) => writeLayoutFile(track.file));
    expect(layouts.map(([, text]) => text)).toEqual(texts);
    expect(files.has('preferences.json')).toBe(true);
  });

  it('is the same to the byte, whenever it is made', async () => {
    const shelf = newShelf();
    const { id } = await shelf.add(fileOf(notes()));
    await cardsTo(shelf, id, 12);
    const one = await exported(shelf);
    await shelf.copied(id, { revision: 1, when: 9_000 });
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(await exported(shelf)).toEqual(one);
  });

  it('lays a layout that differs beside the one that is there, and takes one that does not from the bin', async () => {
    const shelf = newShelf();
    const { id } = await shelf.add(fileOf(notes()));
    await shelf.prefer('units', 'in');
    const zip = await exported(shelf);
    await cardsTo(shelf, id, 12);
    await shelf.prefer('units', 'mm');
    expect(await putBack(shelf, zip)).toEqual({ ...nothing, beside: 1 });
    expect((await standing(shelf)).map(({ besides }) => besides).sort()).toEqual([id, null].sort());
    expect(await putBack(shelf, zip)).toEqual({ ...nothing, there: 1 });
    expect(await shelf.preference('units')).toBe('mm');
    const both = await exported(shelf);
    await shelf.bin(id, 5_000);
    expect(await putBack(shelf, both)).toEqual({ ...nothing, there: 2 });
    expect((await shelf.documents()).map(({ binned }) => binned)).toEqual([null, null]);
    expect((await shelf.documents()).map(({ copied }) => copied?.when)).toEqual([7_000, 7_000]);
  });

  it('puts the bench back: the one that goes on stands, and two of which neither does stand beside each other', async () => {
    // How much of one log is in the zip, how much of it or of another is told on the shelf since.
    const cases = fc.record({
      one: someBench,
      other: someBench,
      zipped: fc.nat(14),
      here: fc.nat(14),
      isOther: fc.boolean(),
    });
    const seen = new Map<string, number>();
    await fc.assert(
      fc.asyncProperty(cases, async ({ one, other, zipped, here, isOther }) => {
        const shelf = newShelf();
        const { id } = await shelf.add(fileOf(notes()));
        const inZip = one.slice(0, zipped);
        const onShelf = (isOther ? other : one).slice(0, here);
        await tellAt(shelf, id, onShelf);
        const { preferences, layouts } = await shelf.everything();
        const bench = inZip.map((event, index) => ({ event, entry: `zipped-${index}` }));
        const zip = await shelfZip({ preferences, layouts: [{ ...layouts[0]!, bench }] });

        const text = (events: readonly BenchEvent[]) =>
          events.map((event) => `${JSON.stringify(event)}\n`).join('');
        const expected = text(onShelf).startsWith(text(inZip))
          ? 'there'
          : text(inZip).startsWith(text(onShelf))
            ? 'further'
            : 'beside';
        seen.set(expected, (seen.get(expected) ?? 0) + 1);
        expect(await putBack(shelf, zip)).toEqual({ ...nothing, [expected]: 1 });
        const benches = (await shelf.everything()).layouts.map((layout) => [
          layout.besides,
          layout.bench.map(({ event }) => event),
        ]);
        const first = [null, expected === 'further' ? inZip : onShelf];
        expect(benches).toHaveLength(expected === 'beside' ? 2 : 1);
        expect(benches).toContainEqual(first);
        if (expected === 'beside') expect(benches).toContainEqual([id, inZip]);
        // Once more, it is all there.
        expect(await putBack(shelf, zip)).toEqual({ ...nothing, there: 1 });
      }),
      {
        numRuns: 25,
        examples: [
          [{ one: aBench, other: [], zipped: 8, here: 5, isOther: false }],
          [{ one: aBench, other: [], zipped: 5, here: 8, isOther: false }],
          [{ one: aBench, other: aBench.slice(0, 1), zipped: 0, here: 1, isOther: true }],
          [{ one: aBench, other: [aBench[0]!, aBench[2]!], zipped: 4, here: 2, isOther: true }],
        ],
      },
    );
    for (const kind of ['there', 'further', 'beside']) expect(seen.get(kind)).toBeGreaterThan(0);
  });

  it('can be a zip of layout files alone, made by another program', async () => {
    const shelf = newShelf();
    const content = (text: string) => new TextEncoder().encode(text);
    const zip = await otherZip([
      { name: 'sets/one.card.json', content: content(notes('One')) },
      { name: 'sets/two.card.json', content: content(notes('Two')) },
      { name: '__MACOSX/sets/._two.card.json', content: content('Mac OS X') },
      { name: 'photo.jpg', content: Uint8Array.from([1, 2, 3]) },
    ]);
    expect(await putBack(shelf, zip)).toEqual({ ...nothing, added: 2 });
    expect(await putBack(shelf, zip)).toEqual({ ...nothing, there: 2 });
    expect((await standing(shelf)).map(({ title }) => title)).toEqual(['One', 'Two']);
  });
});

describe('a zip that cannot be put on a shelf', () => {
  const content = (text: string) => new TextEncoder().encode(text);
  const problemOf = async (zip: Uint8Array<ArrayBuffer>) => {
    const read = await readShelfZip(zip);
    return 'problem' in read ? read.problem : null;
  };
  const history = (changes: object) => ({
    cardwright_history: 1,
    id: 'a',
    revision: 1,
    besides: null,
    done: [],
    undone: [],
    ...changes,
  });
  const edit = (path: string) => ({
    edit: { told: { what: 'part added', name: 'Mat' }, changes: [{ kind: 'put', path: [path], value: 3 }] },
    back: [{ kind: 'put', path: [path], value: 4 }],
    joins: null,
  });

  /** What a bench's file is made of. */
  interface Told {
    readonly cardwright_bench: number;
    readonly told: readonly { readonly event: object; readonly entry: string }[];
  }
  const next = (event: object) => ({ event, entry: 'after' });
  const begunWith = (changes: object) => (file: Told) => ({
    ...file,
    told: file.told.map(({ event, entry }, index) => ({
      event: index === 0 ? { ...event, ...changes } : event,
      entry,
    })),
  });

  it('says what it is', async () => {
    expect(await problemOf(content('PK, not really'))).toEqual({ kind: 'not a zip' });
    expect(await problemOf(new Uint8Array(0))).toEqual({ kind: 'not a zip' });
    expect(await problemOf(await otherZip([]))).toEqual({ kind: 'nothing of ours' });
    expect(await problemOf(await otherZip([{ name: 'photo.jpg', content: content('x') }]))).toEqual({
      kind: 'nothing of ours',
    });
  });

  it('names the layout in it that is wrong, and why', async () => {
    const wrong = await problemOf(
      await otherZip([
        { name: 'one.card.json', content: content(notes()) },
        { name: 'two.card.json', content: content(notes().replace('10', '0')) },
      ]),
    );
    expect(wrong).toMatchObject({
      kind: 'layout',
      name: 'two.card.json',
      problems: [{ code: 'numberRange' }],
    });
  });

  it.each<[string, object | string, string]>([
    ['no JSON', '{', 'history'],
    ['a list', '[]', 'history'],
    ['of a newer version', history({ cardwright_history: 2 }), 'newer'],
    ['without an id', history({ id: 3 }), 'history'],
    ['with a revision below none', history({ revision: -1 }), 'history'],
    ['with something done that is no edit', history({ done: [{}] }), 'history'],
    [
      'with a change that is none',
      history({ done: [{ ...edit('cards'), back: [{ kind: 'put' }] }] }),
      'history',
    ],
    [
      'with nothing that can be told',
      history({ done: [{ ...edit('cards'), edit: { told: { what: 'sung' }, changes: [] } }] }),
      'history',
    ],
    ['of another file', history({ done: [edit('colour')] }), 'history'],
    ['of another file, done again', history({ undone: [edit('colour')] }), 'history'],
    [
      'that begins with what is not sound',
      history({ done: [{ ...edit('cards'), back: [{ kind: 'put', path: ['cards'], value: 0 }] }] }),
      'history',
    ],
  ])('names the history in it that is wrong: %s', async (_, told, kind) => {
    const zip = await otherZip([
      { name: 'one.card.json', content: content(notes()) },
      { name: 'one.history.json', content: content(typeof told === 'string' ? told : JSON.stringify(told)) },
    ]);
    expect(await problemOf(zip)).toEqual({ kind, name: 'one.history.json' });
  });

  it.each<[string, (file: Told) => unknown, string]>([
    ['no JSON', () => '{', 'bench'],
    ['a list', () => [], 'bench'],
    ['of a newer version', (file) => ({ ...file, cardwright_bench: 2 }), 'newer'],
    ['of no version', ({ told }) => ({ told }), 'bench'],
    ['with nothing told', () => ({ cardwright_bench: 1 }), 'bench'],
    ['that begins in the middle', ({ told }) => ({ cardwright_bench: 1, told: told.slice(1) }), 'bench'],
    ['without names', (file) => ({ ...file, told: file.told.map(({ event }) => ({ event })) }), 'bench'],
    [
      'with what nobody tells',
      (file) => ({ ...file, told: [...file.told, next({ kind: 'sung' })] }),
      'bench',
    ],
    [
      'with a step that is not in the plan',
      (file) => ({
        ...file,
        told: [...file.told, next({ kind: 'noted', mark: { kind: 'cut', step: 99, workpieces: 1 } })],
      }),
      'bench',
    ],
    [
      'with a step that was cut less than never',
      (file) => ({
        ...file,
        told: [...file.told, next({ kind: 'noted', mark: { kind: 'cut', step: 1, workpieces: -1 } })],
      }),
      'bench',
    ],
    ['of a layout that is not sound', begunWith({ file: { cardwright: 1 } }), 'bench'],
    ['with a plan that is none', begunWith({ plan: { cardwright_plan: 1 } }), 'bench'],
    ['with no plan', begunWith({ plan: null }), 'bench'],
    ['with a trimmer that is none', begunWith({ trimmer: { name: 'Mine' } }), 'bench'],
  ])('names the bench in it that is wrong: %s', async (_, wrong, kind) => {
    const shelf = newShelf();
    const { id } = await shelf.add(fileOf(notes('One')));
    await tellAt(shelf, id, aBench);
    const files = new Map(await otherUnzip(await exported(shelf)));
    const name = 'one.bench.json';
    const told = wrong(JSON.parse(files.get(name)!) as Told);
    files.set(name, typeof told === 'string' ? told : JSON.stringify(told));
    const zip = await otherZip([...files].map(([of, text]) => ({ name: of, content: content(text) })));
    expect(await problemOf(zip)).toEqual({ kind, name });
  });

  it('takes a bench that fits, also beside a layout that nothing else is told of', async () => {
    const shelf = newShelf();
    const { id } = await shelf.add(fileOf(notes('One')));
    await tellAt(shelf, id, aBench);
    const files = new Map(await otherUnzip(await exported(shelf)));
    files.delete('one.history.json');
    const zip = await otherZip([...files].map(([name, text]) => ({ name, content: content(text) })));
    const other = newShelf();
    expect(await putBack(other, zip)).toEqual({ ...nothing, added: 1 });
    const [layout] = (await other.everything()).layouts;
    expect(layout!.bench.map(({ event }) => event)).toEqual(aBench);
    expect(makingOf(aBench)).not.toBeNull();
  });

  it('takes a history that fits', async () => {
    const zip = await otherZip([
      { name: 'one.card.json', content: content(notes()) },
      { name: 'one.history.json', content: content(JSON.stringify(history({ done: [edit('cards')] }))) },
    ]);
    expect(await problemOf(zip)).toBeNull();
  });

  it('is told wherever it is damaged, or holds what was written', async () => {
    const shelf = newShelf();
    await shelf.add(fileOf(notes('Moths')));
    await shelf.add(fileOf(notes('Bees')));
    const sound = await exported(shelf);
    const all = await shelf.everything();
    let told = 0;
    for (let at = 0; at < sound.length; at += 9) {
      const damaged = Uint8Array.from(sound, (byte, index) => (index === at ? byte ^ 0x10 : byte));
      const read = await readShelfZip(damaged);
      if ('problem' in read) told += 1;
      // What lies between the files says nothing; a name may be another.
      else
        for (const { track } of read.everything.layouts)
          expect(all.layouts.map(({ track: { file } }) => file)).toContainEqual(track.file);
    }
    expect(told).toBeGreaterThan(sound.length / 9 / 2);
    for (let length = 0; length < sound.length; length += 31)
      expect(await problemOf(sound.slice(0, length))).toEqual({ kind: 'not a zip' });
  });

  it('leaves the shelf as it was when it cannot be written', async () => {
    const from = newShelf();
    const { id } = await from.add(fileOf(notes('Moths')));
    await from.add(fileOf(notes('Bees')));
    const everything = await from.everything();
    const shelf = newShelf();
    const broken = {
      ...everything,
      layouts: [...everything.layouts, { ...everything.layouts[0]!, id, revision: Number.NaN }],
    };
    await expect(shelf.putBack(broken, 7_000)).rejects.toThrow();
    expect(await shelf.documents()).toEqual([]);
  });
});

describe("a file's name", () => {
  it('is one on every system', () => {
    expect(fileNameOf({ title: 'Kite day' })).toBe('kite-day.card.json');
    expect(stemOf('NUL')).toBe('nul-cards');
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (title) => {
        const name = fileNameOf({ title });
        expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(240);
        expect(name).toMatch(/^[\p{L}\p{N}][\p{L}\p{N}-]*\.card\.json$/u);
      }),
    );
  });
});
