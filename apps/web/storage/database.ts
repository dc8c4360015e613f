import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Step, Track } from '../../../src/editing/index.ts';

/** What is kept in the browser. The shapes are for good: a new one is a new version, with a way there from the old. */
interface Kept extends DBSchema {
  /** One for each layout on the shelf. */
  documents: { key: string; value: DocumentRecord };
  /** Every step that was done to a layout, in the order of its revisions; never changed once written. */
  steps: { key: [document: string, revision: number]; value: StepRecord };
  /** The whole of a layout at a revision, so that opening it need not begin with its first step. */
  snapshots: { key: [document: string, revision: number]; value: SnapshotRecord };
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
}

export interface StepRecord {
  readonly document: string;
  readonly revision: number;
  readonly step: Step;
}

export interface SnapshotRecord extends Track {
  readonly document: string;
  readonly revision: number;
}

export type Database = IDBPDatabase<Kept>;

const version = 1;

/** The database of that name, made where there is none. */
export function openDatabase(name: string): Promise<Database> {
  return openDB<Kept>(name, version, {
    upgrade(database) {
      database.createObjectStore('documents', { keyPath: 'id' });
      database.createObjectStore('steps', { keyPath: ['document', 'revision'] });
      database.createObjectStore('snapshots', { keyPath: ['document', 'revision'] });
    },
  });
}

/** A transaction that sees everything as it is at one moment. */
export function reading(database: Database) {
  return database.transaction(['documents', 'steps', 'snapshots']);
}

export type Reading = ReturnType<typeof reading>;

/** A transaction that is on the disk when it is over, not only on the way there. */
export function strictly(database: Database) {
  return database.transaction(['documents', 'steps', 'snapshots'], 'readwrite', { durability: 'strict' });
}
