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
   * again, after it could not be told whether it was kept, it is kept once all the same. A layout that lies in the bin
   * stands on the shelf again.
   */
  add(document: string, known: number, event: BenchEvent, entry: string): Promise<Kept>;
}

interface Kept {
  readonly events: readonly BenchEvent[];
  readonly isAdded: boolean;
}

/** The bench's log in a database; `news` is called when the shelf has changed by it. */
export function benchIn(database: Connection, news: () => void = () => {}): BenchLog {
  return {
    events: (document) =>
      database.read(async (transaction) => eventsOf(await recordsOf(transaction, document))),

    async add(document, known, event, entry) {
      let isOutOfBin = false;
      const kept = await database.write(async (transaction) => {
        const records = await recordsOf(transaction, document);
        if (records.length !== known)
          return { events: eventsOf(records), isAdded: records[known]?.entry === entry };
        const record: BenchRecord = { document, number: known + 1, event, entry };
        await transaction.objectStore('bench').add(record);
        isOutOfBin = await takenFromBin(transaction, document);
        return { events: eventsOf([...records, record]), isAdded: true };
      });
      if (isOutOfBin) news();
      return kept;
    },
  };
}

function recordsOf(transaction: Reading | Writing, document: string): Promise<readonly BenchRecord[]> {
  // Both read alike; the types of their stores have no call in common.
  return (transaction as Reading).objectStore('bench').getAll(upTo(document, Number.MAX_SAFE_INTEGER));
}

/** Who makes a set wants it, and in the bin it would go for good some day. Whether it lay there. */
async function takenFromBin(transaction: Writing, id: string): Promise<boolean> {
  const document = await transaction.objectStore('documents').get(id);
  if (document === undefined || document.binned === null) return false;
  await transaction.objectStore('documents').put({ ...document, binned: null });
  return true;
}

function eventsOf(records: readonly BenchRecord[]): readonly BenchEvent[] {
  return records.map(({ event }) => event);
}
