import type { Connection, Kept, Reading, StoreName, Writing } from './database.ts';

/**
 * A database that is gone when the page is closed, for browsers that keep none: what is written to it can be read until
 * then. Every call waits for the one before; what goes wrong within one leaves everything as it was.
 */
export function databaseInMemory(): Connection {
  let kept = emptyStores();
  let last: Promise<unknown> = Promise.resolve();

  function inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
    const result = last.then(work);
    last = result.catch(() => {});
    return result;
  }

  return {
    read: (work) => inTurn(() => work(transactionOn(kept))),
    write: (work) =>
      inTurn(async () => {
        const own = copyOf(kept);
        const result = await work(transactionOn(own));
        kept = own;
        return result;
      }),
  };
}

type Key = string | readonly [string, number];

interface Row {
  readonly key: Key;
  readonly value: unknown;
}

type Stores = Readonly<Record<StoreName, Map<string, Row>>>;

const emptyStores = (): Stores => ({
  documents: new Map(),
  steps: new Map(),
  snapshots: new Map(),
  preferences: new Map(),
  bench: new Map(),
  kits: new Map(),
});

const copyOf = ({ documents, steps, snapshots, preferences, bench, kits }: Stores): Stores => ({
  documents: new Map(documents),
  steps: new Map(steps),
  snapshots: new Map(snapshots),
  preferences: new Map(preferences),
  bench: new Map(bench),
  kits: new Map(kits),
});

/** Under which key a store has a value; preferences are given theirs. */
const keyIn: Readonly<Record<StoreName, (value: never) => Key | undefined>> = {
  documents: ({ id }: Kept['documents']['value']) => id,
  steps: ({ document, revision }: Kept['steps']['value']) => [document, revision],
  snapshots: ({ document, revision }: Kept['snapshots']['value']) => [document, revision],
  preferences: () => undefined,
  kits: ({ id }: Kept['kits']['value']) => id,
  bench: ({ document, number }: Kept['bench']['value']) => [document, number],
};

/** Of a transaction what the shelf makes use of. */
function transactionOn<Transaction extends Reading | Writing>(stores: Stores): Transaction {
  const transaction = { objectStore: (name: StoreName) => storeOn(stores[name], keyIn[name]) };
  // The package's type has all that a transaction of the browser can do; the shelf's tests hold that this is enough.
  return transaction as unknown as Transaction;
}

function storeOn(rows: Map<string, Row>, keyOf: (value: never) => Key | undefined) {
  const put = async (value: unknown, key?: Key) => {
    const own = keyOf(value as never) ?? key;
    if (own === undefined) throw new DOMException('What is kept has a key', 'DataError');
    rows.set(JSON.stringify(own), { key: own, value: structuredClone(value) });
    return own;
  };
  const within = (range?: IDBKeyRange) =>
    [...rows.values()]
      .filter(({ key }) => range === undefined || isWithin(range, key))
      .sort((one, other) => compared(one.key, other.key));
  return {
    get: async (key: Key) => structuredClone(rows.get(JSON.stringify(key))?.value),
    getAll: async (range?: IDBKeyRange) => within(range).map(({ value }) => structuredClone(value)),
    getAllKeys: async (range?: IDBKeyRange) => within(range).map(({ key }) => key),
    /** The last of a range. */
    openCursor: async (range: IDBKeyRange) => {
      const last = within(range).at(-1);
      return last === undefined ? null : { value: structuredClone(last.value) };
    },
    put,
    add: async (value: unknown, key?: Key) => {
      const own = keyOf(value as never) ?? key;
      if (rows.has(JSON.stringify(own))) throw new DOMException('It is there already', 'ConstraintError');
      return put(value, key);
    },
    delete: async (gone: Key | IDBKeyRange) => {
      const isGone = (key: Key) =>
        typeof gone === 'object' && 'lower' in gone ? isWithin(gone, key) : compared(gone, key) === 0;
      for (const [text, { key }] of rows) if (isGone(key)) rows.delete(text);
    },
  };
}

function isWithin({ lower, upper, lowerOpen }: IDBKeyRange, key: Key): boolean {
  const fromLower = compared(key, lower as Key);
  return (lowerOpen ? fromLower > 0 : fromLower >= 0) && compared(key, upper as Key) <= 0;
}

/** Less than 0 where the first comes first: by id, then by revision. */
function compared(one: Key, other: Key): number {
  const [id, revision] = typeof one === 'string' ? [one, 0] : one;
  const [otherId, otherRevision] = typeof other === 'string' ? [other, 0] : other;
  if (id !== otherId) return id < otherId ? -1 : 1;
  return revision - otherRevision;
}
