import { type History, replayed, type Step, type Track } from '../../../src/editing/index.ts';
import type { SavedLayout } from '../../../src/files/index.ts';
import { assert } from '../../../src/problem/index.ts';
import {
  type Database,
  type DocumentRecord,
  type Reading,
  reading,
  type SnapshotRecord,
  type StepRecord,
  strictly,
} from './database.ts';

/** Every layout of a person, kept in her browser. */
export interface Shelf {
  /** What stands on the shelf or lies in the bin, by title. */
  documents(): Promise<readonly DocumentRecord[]>;
  /** Puts a layout on the shelf. */
  add(file: SavedLayout): Promise<DocumentRecord>;
  /** A layout as it was saved last, with all that was done to it; `null`: there is none of that id. */
  open(id: string): Promise<OpenDocument | null>;
  /**
   * Saves one step that was done to the layout at a revision, and what came of it. Where it has been saved from somewhere else since, nothing
   * is overwritten: the step is kept in a second version, which stands on the shelf beside the first.
   */
  save(at: At, step: Step, after: Track): Promise<Saved>;
  /** Puts a layout into the bin, or with `null` back on the shelf. */
  bin(id: string, when: number | null): Promise<void>;
  /** Takes out of the bin for good what was put there before that moment. */
  empty(before: number): Promise<void>;
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

/** The shelf in a database; `newId` makes an id that was never there before. */
export function shelfIn(database: Database, newId: () => string): Shelf {
  return {
    async documents() {
      const all = await database.getAll('documents');
      return all.sort((a, b) => (a.title === b.title ? compare(a.id, b.id) : compare(a.title, b.title)));
    },

    async add(file) {
      const document: DocumentRecord = {
        id: newId(),
        revision: 0,
        title: titleOf(file),
        besides: null,
        binned: null,
      };
      const transaction = strictly(database);
      await transaction.objectStore('documents').add(document);
      await transaction
        .objectStore('snapshots')
        .add({ document: document.id, revision: 0, file, done: [], undone: [] });
      await transaction.done;
      return document;
    },

    async open(id) {
      const transaction = reading(database);
      const document = await transaction.objectStore('documents').get(id);
      if (document === undefined) return null;
      const { snapshot, steps } = await recordsOf(transaction, id, document.revision);
      await transaction.done;
      return {
        document,
        history: replayed(
          snapshot,
          steps.map(({ step }) => step),
        ),
      };
    },

    async save({ id, revision }, step, { file, done, undone }) {
      const transaction = strictly(database);
      const documents = transaction.objectStore('documents');
      const now = await documents.get(id);
      // A transaction that reads and writes runs alone, so nothing comes between this look and the writing.
      assert(now !== undefined && revision <= now.revision, 'A step is saved to a layout on the shelf', {
        id,
        revision,
      });
      const isStale = revision < now.revision;
      const changed = { revision: revision + 1, title: titleOf(file) };
      const document: DocumentRecord = isStale
        ? { id: newId(), ...changed, besides: id, binned: null }
        : { ...now, ...changed };
      const at = { document: document.id, revision: document.revision };
      await documents.put(document);
      await transaction.objectStore('steps').add({ ...at, step });
      // A second version begins with all that was done before it.
      if (isStale || at.revision % stepsBetweenSnapshots === 0)
        await transaction.objectStore('snapshots').add({ ...at, file, done, undone });
      await transaction.done;
      return { at: { id: document.id, revision: at.revision }, beside: isStale };
    },

    async bin(id, when) {
      const transaction = strictly(database);
      const document = await transaction.objectStore('documents').get(id);
      if (document !== undefined)
        await transaction.objectStore('documents').put({ ...document, binned: when });
      await transaction.done;
    },

    async empty(before) {
      const transaction = strictly(database);
      for (const { id, binned } of await transaction.objectStore('documents').getAll()) {
        if (binned === null || binned >= before) continue;
        await transaction.objectStore('documents').delete(id);
        await transaction.objectStore('steps').delete(upTo(id, Number.MAX_SAFE_INTEGER));
        await transaction.objectStore('snapshots').delete(upTo(id, Number.MAX_SAFE_INTEGER));
      }
      await transaction.done;
    },
  };
}

/** The last snapshot up to a revision and the steps from there. */
async function recordsOf(
  transaction: Reading,
  id: string,
  revision: number,
): Promise<{ readonly snapshot: SnapshotRecord; readonly steps: readonly StepRecord[] }> {
  const cursor = await transaction.objectStore('snapshots').openCursor(upTo(id, revision), 'prev');
  assert(cursor !== null, 'A layout on the shelf has a snapshot', { id });
  const snapshot = cursor.value;
  if (snapshot.revision === revision) return { snapshot, steps: [] };
  const range = IDBKeyRange.bound([id, snapshot.revision], [id, revision], true);
  const steps = await transaction.objectStore('steps').getAll(range);
  return { snapshot, steps };
}

function upTo(id: string, revision: number): IDBKeyRange {
  return IDBKeyRange.bound([id, 0], [id, revision]);
}

function titleOf({ title }: SavedLayout): string {
  return typeof title === 'string' ? title : '';
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
