import { joined, type Step, type Track } from '../../../src/editing/index.ts';
import type { At, Shelf } from '../storage/shelf.ts';

/**
 * The way of a layout's steps to the disk. What was added is here until it is there: nothing is dropped, nothing
 * changes places, whatever goes wrong in between.
 */
export interface Saving {
  /** A step that was done, and what came of it. It is on its way at once. */
  add(step: Step, after: Track): void;
  /**
   * The layout was written to a file at a time, with all that was added: kept in mind as soon as all of that is on the
   * disk.
   */
  copied(when: number): void;
  /** How it stands; the same value until it stands otherwise. */
  state(): SavingState;
  /** Calls when it stands otherwise; the answer ends that. */
  subscribe(listener: () => void): () => void;
  /** Tries again now, if something waits: the person asked for it, or sees the page again. */
  retry(): void;
}

/** How the saving of a layout stands. */
export interface SavingState {
  /** `saved`: all is on the disk. `saving`: the last steps are on their way. `failed`: the last try did not succeed. */
  readonly stage: 'saved' | 'saving' | 'failed';
  /** Under which id the layout is kept, and its last revision on the disk. */
  readonly at: At;
  /** The steps that are not on the disk yet. */
  readonly waiting: number;
  /** Why it failed; `null` unless it did. */
  readonly problem: SavingProblem | null;
  /** Where it was saved from somewhere else meanwhile: the first version, beside which this is a second now. */
  readonly beside: string | null;
}

/** Why something could not be saved. */
export type SavingProblem =
  /** The browser gives no more room. */
  | { readonly kind: 'full' }
  /** A newer version of the app has been opened, which keeps things otherwise; this page has to be loaded again. */
  | { readonly kind: 'newer' }
  /** The browser does not answer; the step may still come to be saved. */
  | { readonly kind: 'slow' }
  /** Anything else: what the browser says. */
  | { readonly kind: 'other'; readonly says: string };

export interface SavingWorld {
  /** Does something after so many milliseconds, unless it is called off by what comes back. */
  readonly later: (milliseconds: number, what: () => void) => () => void;
  /** A name that nothing had before. */
  readonly newId: () => string;
}

interface Entry {
  readonly step: Step;
  readonly after: Track;
  readonly name: string;
}

/** The first pause between two tries of a save, and the longest; each is twice the one before. */
const firstPause = 1_000;
const longestPause = 30_000;
/** A save that takes so long is told as failed, although it may still succeed. */
const slowAfter = 5_000;

/** The queue of the layout that is kept at `start` now. */
export function savingOf(
  shelf: Pick<Shelf, 'save' | 'copied'>,
  start: At,
  { later, newId }: SavingWorld,
): Saving {
  let at = start;
  let beside: string | null = null;
  /** The first is on its way, or is the next to go. */
  let entries: readonly Entry[] = [];
  let isWriting = false;
  let failures = 0;
  let problem: SavingProblem | null = null;
  let stopWaiting = () => {};
  /** When it was written to a file, and the last step that the file has, by its name. */
  let copy: { readonly when: number; readonly last: string } | null = null;
  const listeners = new Set<() => void>();
  let state = stateNow();

  function stateNow(): SavingState {
    const stage = problem !== null ? 'failed' : entries.length > 0 ? 'saving' : 'saved';
    return { stage, at, waiting: entries.length, problem, beside };
  }

  function tell() {
    state = stateNow();
    for (const listener of [...listeners]) {
      try {
        listener();
      } catch (reason) {
        // It is told as any error of the page is; the saving goes on.
        later(0, () => {
          throw reason;
        });
      }
    }
  }

  /** Writes one entry after another, until none is left or one fails. */
  async function write(): Promise<void> {
    if (isWriting) return;
    isWriting = true;
    stopWaiting();
    for (let entry = entries[0]; entry !== undefined; entry = entries[0]) {
      const isSaved = await saved(entry);
      if (!isSaved) break;
    }
    isWriting = false;
  }

  async function saved({ step, after, name }: Entry): Promise<boolean> {
    const stopClock = later(slowAfter, () => {
      problem ??= { kind: 'slow' };
      tell();
    });
    try {
      const result = await shelf.save(at, step, after, name);
      if (result.beside) beside = at.id;
      at = result.at;
      entries = entries.slice(1);
      failures = 0;
      problem = null;
      if (copy?.last === name) {
        keepInMind(copy.when);
        copy = null;
      }
      return true;
    } catch (reason) {
      problem = problemOf(reason);
      stopWaiting = later(Math.min(firstPause * 2 ** failures, longestPause), () => void write());
      failures += 1;
      return false;
    } finally {
      stopClock();
      tell();
    }
  }

  /** Of what is on the disk now. */
  function keepInMind(when: number): void {
    // Where it fails, the shelf says of a copy less than is true, which does no harm.
    shelf.copied(at.id, { revision: at.revision, when }).catch(() => {});
  }

  return {
    add(step, after) {
      // The first has been given to the disk and stays as it is: it may be there, though we were told that it is not.
      const last = entries.length > 1 ? entries.at(-1) : undefined;
      // What a file has ends with a step of its own.
      const both = last === undefined || last.name === copy?.last ? null : joined(last.step, step);
      entries =
        last === undefined || both === null
          ? [...entries, { step, after, name: newId() }]
          : [...entries.slice(0, -1), { step: both, after, name: last.name }];
      tell();
      void write();
    },
    copied(when) {
      const last = entries.at(-1);
      if (last === undefined) keepInMind(when);
      else copy = { when, last: last.name };
    },
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    retry: () => void write(),
  };
}

/** What the world said, as far as a person can do something about it. */
export function problemOf(reason: unknown): SavingProblem {
  const { name, message } = reason instanceof Error ? reason : new Error(String(reason));
  switch (name) {
    case 'QuotaExceededError':
      return { kind: 'full' };
    case 'VersionError':
      return { kind: 'newer' };
    default:
      return { kind: 'other', says: message === '' ? name : `${name}: ${message}` };
  }
}
