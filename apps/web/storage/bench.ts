import type { BenchEvent, BenchRecord } from './benchLog.ts';
import type { Connection, Reading, Writing } from './database.ts';
import { upTo } from './range.ts';

/** What happened at the bench of each layout, kept in her browser. Each call is one transaction. */
export interface BenchLog {
  /** All that happened there, in its order. */
  events(document: string): Promise<readonly BenchEvent[]>;
  /**
   * Keeps one event more, where so many are kept already; and tells all events that are kept then. Where others came
   * first, from another window, it is not kept, for it may not fit them. `entry` is a name of its own for it: given
   * again, after it could not be told whether it was kept, it is kept once all the same.
   */
  add(document: string, known: number, event: BenchEvent, entry: string): Promise<Kept>;
}

interface Kept {
  readonly events: readonly BenchEvent[];
  readonly isAdded: boolean;
}

/** The bench's log in a database. */
export function benchIn(database: Connection): BenchLog {
  return {
    events: (document) =>
      database.read(async (transaction) => eventsOf(await recordsOf(transaction, document))),

    add: (document, known, event, entry) =>
      database.write(async (transaction) => {
        const records = await recordsOf(transaction, document);
        if (records.length === known) {
          const record: BenchRecord = { document, number: known + 1, event, entry };
          await transaction.objectStore('bench').add(record);
          return { events: eventsOf([...records, record]), isAdded: true };
        }
        return { events: eventsOf(records), isAdded: records[known]?.entry === entry };
      }),
  };
}

function recordsOf(transaction: Reading | Writing, document: string): Promise<readonly BenchRecord[]> {
  // Both read alike; the types of their stores have no call in common.
  return (transaction as Reading).objectStore('bench').getAll(upTo(document, Number.MAX_SAFE_INTEGER));
}

function eventsOf(records: readonly BenchRecord[]): readonly BenchEvent[] {
  return records.map(({ event }) => event);
}
