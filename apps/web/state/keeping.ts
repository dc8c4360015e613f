import type { Shelf } from '../storage/shelf.ts';

/**
 * What the browser promises of what is kept in it. `promised`: it clears nothing by itself. `not promised`: it may,
 * when the device runs out of room. `cannot be asked`: so it may as well; pages over plain http cannot ask.
 */
export type Promised = 'promised' | 'not promised' | 'cannot be asked';

export interface Keeping {
  promised(): Promise<Promised>;
  /** Asks the browser for its promise, if it was never asked before. */
  askOnce(): Promise<void>;
}

/** `storage` is the browser's own, where it has one. */
export function keepingIn(
  shelf: Pick<Shelf, 'preference' | 'prefer'>,
  storage: Pick<StorageManager, 'persist' | 'persisted'> | undefined,
): Keeping {
  let isAsked = false;
  return {
    async promised() {
      try {
        if (storage === undefined) return 'cannot be asked';
        return (await storage.persisted()) ? 'promised' : 'not promised';
      } catch {
        return 'cannot be asked';
      }
    },
    async askOnce() {
      if (isAsked || storage === undefined) return;
      isAsked = true;
      try {
        if ((await shelf.preference('promiseAsked')) === true) return;
        await storage.persist();
        await shelf.prefer('promiseAsked', true);
      } catch {
        // Nothing is lost by it, and the next visit asks again.
      }
    },
  };
}
