/** How a call to the database goes wrong. */
export type Fault =
  /** It throws, as on a connection that was closed. */
  | 'throws'
  /** What it belongs to ends without having done anything. */
  | 'ends'
  /** There is no room for it. */
  | 'full';

export interface Faults {
  /** How many calls there have been. */
  calls(): number;
  /** What goes wrong with the next call, `null` for nothing; asked for each. */
  next: (call: number) => Fault | null;
  /** The database works again as it does. */
  stop(): void;
}

const stores = ['get', 'add', 'put', 'delete', 'getAll', 'getAllKeys', 'openCursor'] as const;

/** From here on every call of a page to the fake database can be made to go wrong. */
export function faultsEverywhere(): Faults {
  let calls = 0;
  const undo: (() => void)[] = [];
  const faults: Faults = {
    calls: () => calls,
    next: () => null,
    stop: () => {
      for (const act of undo) act();
    },
  };

  function watch<Owner extends object>(
    owner: Owner,
    name: keyof Owner & string,
    transactionOf: (target: unknown, result: unknown) => EndedBy | null,
  ): void {
    const real = owner[name] as (...args: unknown[]) => unknown;
    const watched = function (this: unknown, ...args: unknown[]) {
      calls += 1;
      const fault = faults.next(calls);
      if (fault === 'throws') throw new DOMException('Thrown for a test', 'InvalidStateError');
      const result = real.apply(this, args);
      if (fault !== null) {
        const transaction = transactionOf(this, result);
        // Opening has no transaction of ours that could end.
        if (transaction === null) throw new DOMException('Thrown for a test', 'UnknownError');
        transaction._abort(fault === 'full' ? 'QuotaExceededError' : 'AbortError');
      }
      return result;
    };
    Object.defineProperty(owner, name, { value: watched, configurable: true, writable: true });
    undo.push(() => Object.defineProperty(owner, name, { value: real, configurable: true, writable: true }));
  }

  watch(IDBFactory.prototype, 'open', () => null);
  watch(IDBDatabase.prototype, 'transaction', (_, result) => result as EndedBy);
  for (const name of stores)
    watch(
      IDBObjectStore.prototype,
      name,
      (target) => (target as { transaction: unknown }).transaction as EndedBy,
    );
  return faults;
}

/** The way the fake database ends a transaction for a reason. */
interface EndedBy {
  _abort(reason: string): void;
}
