import {
  changed,
  type History,
  opened,
  replayed,
  type Step,
  settingOf,
  type Track,
} from '../../../src/editing/index.ts';
import { type Json, type SavedLayout, writeLayoutFile } from '../../../src/files/index.ts';
import { assert } from '../../../src/problem/index.ts';
import { type BenchEntry, beyond } from './benchLog.ts';
import type {
  Connection,
  Copied,
  DocumentRecord,
  Reading,
  SnapshotRecord,
  StepRecord,
  Writing,
} from './database.ts';
import type { Everything, KeptLayout, PutBack } from './everything.ts';
import { kitsOf, putKitsBack } from './kits.ts';
import { rangeOf, upTo } from './range.ts';

/** Every layout of a person, kept in her browser. Each call is one transaction: all of it is done, or it rejects. */
export interface Shelf {
  /** What stands on the shelf or lies in the bin, by title. */
  documents(): Promise<readonly DocumentRecord[]>;
  /** Puts a layout on the shelf; `copied`: when it was read from a file, if it was. */
  add(file: SavedLayout, copied?: number | null): Promise<DocumentRecord>;
  /** A layout as it was saved last, with all that was done to it; `null`: there is none of that id. */
  open(id: string): Promise<OpenDocument | null>;
  /** The text of a layout's file as it was saved last, and at which revision; `null`: there is none of that id. */
  file(id: string): Promise<{ readonly text: string; readonly revision: number } | null>;
  /**
   * Saves one step that was done to the layout at a revision, and what came of it. Where it has been saved from
   * somewhere else since, nothing is overwritten: the step is kept in a second version, which stands on the shelf
   * beside the first and has a bench of its own, as that of the first stands then. One that is there no more is there
   * again, and one from the bin stands on the shelf again.
   *
   * `entry` is a name of its own for this step: given again, after it could not be told whether it was saved, it is
   * saved once all the same.
   */
  save(at: At, step: Step, after: Track, entry: string): Promise<Saved>;
  /**
   * A layout of another title that begins as this one was saved last, with nothing to undo and nothing begun at its
   * bench; `null`: none of that id.
   */
  duplicate(id: string, title: string): Promise<DocumentRecord | null>;
  /** Keeps in mind that a revision of a layout was written to a file. */
  copied(id: string, copied: Copied): Promise<void>;
  /** Puts a layout into the bin, or with `null` back on the shelf. */
  bin(id: string, when: number | null): Promise<void>;
  /** Takes out of the bin for good what was put there before that moment, with what was told at its bench. */
  empty(before: number): Promise<void>;
  /** All that stands on the shelf, at one moment. */
  everything(): Promise<Everything>;
  /**
   * Puts back what was written to a file at one time: all of it, or nothing. A layout that stands there with the same
   * text stays as it is, and of the two benches the one stands that goes on where the other ends; one of another text,
   * or at whose bench something else was told, becomes a second version beside it; what lies in the bin with the same
   * text stands on the shelf again. Preferences that are there already stay. `when`: the time, since it is copied to a
   * file.
   */
  putBack(everything: Everything, when: number): Promise<PutBack>;
  /** What was preferred under a name; `undefined`: nothing yet. */
  preference(name: string): Promise<Json | undefined>;
  /** Keeps what is preferred under a name. */
  prefer(name: string, value: Json): Promise<void>;
}

export interface OpenDocument {
  readonly document: DocumentRecord;
  readonly history: History;
}

/** A layout at a revision. */
export interface At {
  readonly id: string;
  readonly revision: number;
}

export interface Saved {
  readonly at: At;
  /** Whether it became a second version. */
  readonly beside: boolean;
}

/** How many steps are gone through at most when a layout is opened. */
const stepsBetweenSnapshots = 50;

/**
 * The shelf in a database; `newId` makes an id that was never there before. `news` is called when the shelf has
 * changed, by a hand in this page.
 */
export function shelfIn(database: Connection, newId: () => string, news: () => void = () => {}): Shelf {
  /** As `database.write`, and then the news are told. */
  async function write<Result>(work: (transaction: Writing) => Promise<Result>): Promise<Result> {
    const result = await database.write(work);
    news();
    return result;
  }

  const open = (id: string) => database.read((transaction) => openedFrom(transaction, id));

  return {
    async documents() {
      const all = await database.read((transaction) => transaction.objectStore('documents').getAll());
      return all.sort(byTitle);
    },

    add(file, copied = null) {
      const document = newDocument(newId(), file, copied);
      return write(async (transaction) => {
        await putFirst(transaction, document, { file, done: [], undone: [] });
        return document;
      });
    },

    open,

    async file(id) {
      const found = await open(id);
      return found && { text: writeLayoutFile(found.history.file), revision: found.document.revision };
    },

    save(at, step, after, entry) {
      return write((transaction) => savedStep(transaction, at, step, after, entry));
    },

    duplicate(id, title) {
      const fresh = newId();
      return write(async (transaction) => {
        const found = await openedFrom(transaction, id);
        if (found === null) return null;
        const { file } = changed(found.history.file, settingOf(found.history.file, ['title'], title).changes);
        const history = opened(file);
        assert(!('problems' in history), 'A sound layout is sound under any title', { title });
        const document = newDocument(fresh, history.file, null);
        await putFirst(transaction, document, { file: history.file, done: [], undone: [] });
        return document;
      });
    },

    copied(id, copied) {
      return write((transaction) => changedDocument(transaction, id, { copied }));
    },

    bin(id, when) {
      return write((transaction) => changedDocument(transaction, id, { binned: when }));
    },

    empty(before) {
      return write(async (transaction) => {
        for (const { id, binned } of await transaction.objectStore('documents').getAll()) {
          if (binned === null || binned >= before) continue;
          await transaction.objectStore('documents').delete(id);
          await transaction.objectStore('steps').delete(upTo(id, Number.MAX_SAFE_INTEGER));
          await transaction.objectStore('snapshots').delete(upTo(id, Number.MAX_SAFE_INTEGER));
          await transaction.objectStore('bench').delete(upTo(id, Number.MAX_SAFE_INTEGER));
        }
      });
    },

    everything() {
      return database.read(async (transaction) => {
        const documents = await transaction.objectStore('documents').getAll();
        const standing = documents.filter(({ binned }) => binned === null).sort(byTitle);
        const layouts: KeptLayout[] = [];
        for (const { id, revision, besides } of standing) {
          const found = await openedFrom(transaction, id);
          const { file, done, undone } = found!.history;
          const bench = await benchAt(transaction, id);
          layouts.push({ id, revision, besides, track: { file, done, undone }, bench });
        }
        const kits = (await kitsOf(transaction))
          .filter(({ binned }) => binned === null)
          .map(({ file }) => file);
        return {
          layouts,
          ...(kits.length === 0 ? {} : { kits }),
          preferences: await preferencesOf(transaction),
        };
      });
    },

    putBack(everything, when) {
      return write((transaction) => putBackAll(transaction, everything, when, newId));
    },

    preference: (name) => database.read((transaction) => transaction.objectStore('preferences').get(name)),

    async prefer(name, value) {
      await database.write((transaction) => transaction.objectStore('preferences').put(value, name));
    },
  };
}

// --- Reading ---

async function openedFrom(transaction: Reading | Writing, id: string): Promise<OpenDocument | null> {
  const document = await documentOf(transaction, id);
  if (document === undefined) return null;
  const { snapshot, steps } = await recordsOf(transaction, id, document.revision);
  const { file, done, undone } = snapshot;
  return {
    document,
    history: replayed(
      { file, done, undone },
      steps.map(({ step }) => step),
    ),
  };
}

/** The last snapshot up to a revision and the steps from there. */
async function recordsOf(
  transaction: Reading | Writing,
  id: string,
  revision: number,
): Promise<{ readonly snapshot: SnapshotRecord; readonly steps: readonly StepRecord[] }> {
  const snapshots = reader(transaction).objectStore('snapshots');
  const cursor = await snapshots.openCursor(upTo(id, revision), 'prev');
  assert(cursor !== null, 'A layout on the shelf has a snapshot', { id });
  const snapshot = cursor.value;
  if (snapshot.revision === revision) return { snapshot, steps: [] };
  const range = rangeOf([id, snapshot.revision], [id, revision], true);
  const steps = await reader(transaction).objectStore('steps').getAll(range);
  return { snapshot, steps };
}

async function benchAt(transaction: Reading | Writing, id: string): Promise<readonly BenchEntry[]> {
  const records = await reader(transaction).objectStore('bench').getAll(upTo(id, Number.MAX_SAFE_INTEGER));
  return records.map(({ event, entry }) => ({ event, entry }));
}

async function preferencesOf(transaction: Reading | Writing): Promise<Readonly<Record<string, Json>>> {
  const preferences = reader(transaction).objectStore('preferences');
  const [names, values] = [await preferences.getAllKeys(), await preferences.getAll()];
  return Object.fromEntries(names.map((name, index) => [name, values[index]!]));
}

function documentOf(transaction: Reading | Writing, id: string): Promise<DocumentRecord | undefined> {
  return reader(transaction).objectStore('documents').get(id);
}

/** A transaction that may write reads like any other; the types of the package keep the two apart. */
function reader(transaction: Reading | Writing): Reading {
  return transaction as Reading;
}

// --- Writing ---

/** What stands on the shelf of a layout that comes there. */
function newDocument(id: string, file: SavedLayout, copied: number | null): DocumentRecord {
  return {
    id,
    revision: 0,
    title: titleOf(file),
    besides: null,
    binned: null,
    copied: copied === null ? null : { revision: 0, when: copied },
  };
}

/** Puts a layout on the shelf that has not stood there before, with all that was done to it. */
async function putFirst(
  transaction: Writing,
  document: DocumentRecord,
  { file, done, undone }: Track,
): Promise<void> {
  await transaction.objectStore('documents').add(document);
  await transaction
    .objectStore('snapshots')
    .add({ document: document.id, revision: document.revision, file, done, undone });
}

/** Puts at the end of a layout's bench what was told there after the first so many events. */
async function putAtBench(
  transaction: Writing,
  document: string,
  { known, told }: { readonly known: number; readonly told: readonly BenchEntry[] },
): Promise<void> {
  const bench = transaction.objectStore('bench');
  for (const [index, { event, entry }] of told.entries())
    await bench.add({ document, number: known + index + 1, event, entry });
}

async function savedStep(
  transaction: Writing,
  { id, revision }: At,
  step: Step,
  after: Track,
  entry: string,
): Promise<Saved> {
  // A transaction that reads and writes runs alone, so nothing comes between this look and the writing.
  const now = await transaction.objectStore('documents').get(id);
  const next = revision + 1;
  const own: Saved = { at: { id, revision: next }, beside: false };
  const second: Saved = { at: { id: entry, revision: next }, beside: true };
  const { file, done, undone } = after;
  const changes = { revision: next, title: titleOf(file), binned: null };

  if (now?.revision === revision) {
    await transaction.objectStore('documents').put({ ...now, ...changes });
    await transaction.objectStore('steps').add({ document: id, revision: next, step, entry });
    if (next % stepsBetweenSnapshots === 0) {
      await transaction.objectStore('snapshots').add({ document: id, revision: next, file, done, undone });
      await forgetSnapshots(transaction, id);
    }
    return own;
  }

  // It may have been saved without our having been told.
  const there = await transaction.objectStore('steps').get([id, next]);
  if (now !== undefined && there?.entry === entry) return own;
  if ((await transaction.objectStore('documents').get(entry)) !== undefined) return second;

  const saved = now === undefined ? own : second;
  await putFirst(
    transaction,
    { id: saved.at.id, ...changes, besides: now === undefined ? null : id, copied: null },
    after,
  );
  await transaction.objectStore('steps').add({ document: saved.at.id, revision: next, step, entry });
  // Whoever cuts goes on where she was, whichever version she is at.
  if (saved === second)
    await putAtBench(transaction, entry, { known: 0, told: await benchAt(transaction, id) });
  return saved;
}

/**
 * Takes away the snapshots between the first and the last two: everything that was done is in each of them, so they
 * would come to much more than the steps, and opening needs the last only.
 */
async function forgetSnapshots(transaction: Writing, id: string): Promise<void> {
  const snapshots = transaction.objectStore('snapshots');
  const keys = await snapshots.getAllKeys(upTo(id, Number.MAX_SAFE_INTEGER));
  for (const key of keys.slice(1, -2)) await snapshots.delete(key);
}

async function putBackAll(
  transaction: Writing,
  { layouts, kits, preferences }: Everything,
  when: number,
  newId: () => string,
): Promise<PutBack> {
  const outcome = { added: 0, beside: 0, further: 0, there: 0 };
  for (const layout of layouts) outcome[await putBackOne(transaction, layout, when, newId)] += 1;
  const told = await putKitsBack(transaction, kits ?? [], newId);
  outcome.added += told.added;
  outcome.there += told.there;
  const store = transaction.objectStore('preferences');
  for (const [name, value] of Object.entries(preferences))
    if ((await store.get(name)) === undefined) await store.put(value, name);
  return outcome;
}

async function putBackOne(
  transaction: Writing,
  { id, revision, besides, track, bench }: KeptLayout,
  when: number,
  newId: () => string,
): Promise<keyof PutBack> {
  const all = await transaction.objectStore('documents').getAll();
  const text = writeLayoutFile(track.file);
  const title = titleOf(track.file);
  const first = all.find((one) => one.id === id);
  const alike = all.filter((one) =>
    id === null ? one.title === title : first && (one === first || one.besides === id),
  );
  const fitting: {
    readonly one: DocumentRecord;
    readonly known: number;
    readonly told: readonly BenchEntry[];
  }[] = [];
  for (const one of alike) {
    const found = await openedFrom(transaction, one.id);
    if (found === null || writeLayoutFile(found.history.file) !== text) continue;
    const here = await benchAt(transaction, one.id);
    const told = beyond(here, bench);
    if (told !== null) fitting.push({ one, known: here.length, told });
  }
  // One that has it all comes before one whose bench would have to go on for it.
  const there = fitting.find(({ told }) => told.length === 0) ?? fitting[0];
  if (there !== undefined) {
    const { one, told } = there;
    const copied = { revision: one.revision, when };
    await transaction.objectStore('documents').put({ ...one, binned: null, copied });
    await putAtBench(transaction, one.id, there);
    return told.length === 0 ? 'there' : 'further';
  }
  const own = id === null || first !== undefined ? newId() : id;
  await putFirst(
    transaction,
    {
      id: own,
      revision,
      title,
      besides: first === undefined ? besides : first.id,
      binned: null,
      copied: { revision, when },
    },
    track,
  );
  await putAtBench(transaction, own, { known: 0, told: bench });
  return first === undefined ? 'added' : 'beside';
}

async function changedDocument(
  transaction: Writing,
  id: string,
  changes: Partial<Pick<DocumentRecord, 'binned' | 'copied'>>,
): Promise<void> {
  const document = await transaction.objectStore('documents').get(id);
  if (document !== undefined) await transaction.objectStore('documents').put({ ...document, ...changes });
}

function titleOf({ title }: SavedLayout): string {
  return typeof title === 'string' ? title : '';
}

function byTitle(a: DocumentRecord, b: DocumentRecord): number {
  return a.title === b.title ? compare(a.id, b.id) : compare(a.title, b.title);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
