import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { KitTrack, Step, Track } from '../../../src/editing/index.ts';
import type { Json } from '../../../src/files/index.ts';
import type { BenchRecord } from './benchLog.ts';

/** What is kept in the browser. The shapes are for good: a new one is a new version, with a way there from the old. */
export interface Kept extends DBSchema {
  /** One for each layout on the shelf. */
  documents: { key: string; value: DocumentRecord };
  /** Every step that was done to a layout, in the order of its revisions; never changed once written. */
  steps: { key: [document: string, revision: number]; value: StepRecord };
  /** The whole of a layout at a revision, so that opening it need not begin with its first step. */
  snapshots: { key: [document: string, revision: number]; value: SnapshotRecord };
  /** What holds for this screen and this person, whatever the layout; by name. */
  preferences: { key: string; value: Json };
  /** What happened at the bench of each layout, in its order; never changed once written. */
  bench: { key: [document: string, number: number]; value: BenchRecord };
  /** One for each kit on the shelf, with all that was done to it. */
  kits: { key: string; value: KitRecord };
}

/** A kit is small and seldom changed: it is kept whole, with a number that goes up each time. */
export interface KitRecord extends KitTrack {
  readonly id: string;
  readonly revision: number;
  /** What it is called on the shelf. */
  readonly title: string;
  /** When it was put into the bin, in milliseconds since 1970; `null`: it stands on the shelf. */
  readonly binned: number | null;
}

export interface DocumentRecord {
  readonly id: string;
  /** How many steps there are; each step makes a revision. */
  readonly revision: number;
  /** What it is called on the shelf. */
  readonly title: string;
  /** The layout that this is a second version of, saved from somewhere else meanwhile; `null`: of none. */
  readonly besides: string | null;
  /** When it was put into the bin, in milliseconds since 1970; `null`: it stands on the shelf. */
  readonly binned: number | null;
  /** When it was last written to a file outside the browser, as far as we know; `null`: never. */
  readonly copied: Copied | null;
}

export interface Copied {
  /** The revision that the file holds. */
  readonly revision: number;
  /** In milliseconds since 1970. */
  readonly when: number;
}

export interface StepRecord {
  readonly document: string;
  readonly revision: number;
  readonly step: Step;
  /** Under which name it was given to be saved, so that it is never saved twice; steps of version 1 have none. */
  readonly entry?: string;
}

export interface SnapshotRecord extends Track {
  readonly document: string;
  readonly revision: number;
}

const storeNames = ['documents', 'steps', 'snapshots', 'preferences', 'bench', 'kits'] as const;
export type StoreName = (typeof storeNames)[number];
type StoreNames = StoreName[];

type Database = IDBPDatabase<Kept>;
export type Reading = IDBPTransaction<Kept, StoreNames, 'readonly'>;
export type Writing = IDBPTransaction<Kept, StoreNames, 'readwrite'>;

/** The way to a database that may be lost at any moment, and is looked for anew when it is next needed. */
export interface Connection {
  /** What `work` gives that reads everything as it is at one moment. */
  read<Result>(work: (transaction: Reading) => Promise<Result>): Promise<Result>;
  /** What `work` gives that reads and writes alone. All of it is on the disk when this is over, or nothing at all. */
  write<Result>(work: (transaction: Writing) => Promise<Result>): Promise<Result>;
}

/** The version of the database: 2 has preferences, and knows when a layout was copied to a file; 3 has the bench; 4 the kits. */
const version = 4;

/**
 * The database of that name, made where there is none, and brought up from an earlier version; `before` is done each
 * time before it is opened.
 */
export function databaseNamed(
  name: string,
  before: () => Promise<void> = () => Promise.resolve(),
): Connection {
  let opening: Promise<Database> | null = null;

  function open(): Promise<Database> {
    if (opening !== null) return opening;
    const mine = before().then(() =>
      openDB<Kept>(name, version, {
        upgrade: upgraded,
        // A page that wants to bring it to a later version, or to delete it, has to wait for nobody.
        blocking: lose,
        terminated: lose,
      }),
    );
    function lose() {
      if (opening === mine) opening = null;
      mine.then(
        (database) => database.close(),
        () => {},
      );
    }
    opening = mine;
    mine.catch(lose);
    return mine;
  }

  async function within<Mode extends 'readonly' | 'readwrite', Result>(
    mode: Mode,
    work: (transaction: IDBPTransaction<Kept, StoreNames, Mode>) => Promise<Result>,
  ): Promise<Result> {
    const transaction = await begun(mode);
    // What goes wrong is told below, once.
    transaction.done.catch(() => {});
    try {
      const result = await work(transaction);
      await transaction.done;
      return result;
    } catch (problem) {
      // The reason it was ended for says more than the request that ended with it.
      const reason = transaction.error ?? problem;
      ended(transaction);
      await lost();
      throw reason;
    }
  }

  /** A connection may have been closed since it was opened, without a word: then it is opened once more. */
  async function begun<Mode extends 'readonly' | 'readwrite'>(mode: Mode) {
    const start = async () =>
      (await open()).transaction([...storeNames], mode, { durability: 'strict' }) as IDBPTransaction<
        Kept,
        StoreNames,
        Mode
      >;
    try {
      return await start();
    } catch {
      await lost();
      return start();
    }
  }

  /** After anything went wrong, the next try begins with a fresh connection. */
  async function lost(): Promise<void> {
    const before = opening;
    opening = null;
    try {
      (await before)?.close();
    } catch {
      // It was never open.
    }
  }

  return { read: (work) => within('readonly', work), write: (work) => within('readwrite', work) };
}

function upgraded(
  database: Database,
  from: number,
  _to: number | null,
  transaction: IDBPTransaction<Kept, StoreNames, 'versionchange'>,
): void {
  if (from < 1) {
    database.createObjectStore('documents', { keyPath: 'id' });
    database.createObjectStore('steps', { keyPath: ['document', 'revision'] });
    database.createObjectStore('snapshots', { keyPath: ['document', 'revision'] });
  }
  if (from < 2) {
    database.createObjectStore('preferences');
    // It is part of the transaction that brings the database up, and fails or holds with it.
    copiedNever(transaction).catch(() => {});
  }
  if (from < 3) database.createObjectStore('bench', { keyPath: ['document', 'number'] });
  if (from < 4) database.createObjectStore('kits', { keyPath: 'id' });
  transaction.done.catch(() => {});
}

async function copiedNever(transaction: IDBPTransaction<Kept, StoreNames, 'versionchange'>): Promise<void> {
  const documents = transaction.objectStore('documents');
  for (const document of await documents.getAll()) await documents.put({ ...document, copied: null });
}

/** Ends a transaction that is not over yet. */
function ended(transaction: { abort(): void }): void {
  try {
    transaction.abort();
  } catch {
    // It was over already.
  }
}
