import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  type History,
  opened,
  replayed,
  type Step,
  settingOf,
  stepped,
  type Track,
} from '../../../src/editing/index.ts';
import { readLayoutFile, type SavedLayout, writeLayoutFile } from '../../../src/files/index.ts';
import { type Connection, type Copied, databaseNamed } from '../storage/database.ts';
import { type At, type Shelf, shelfIn } from '../storage/shelf.ts';
import { type Fault, type Faults, faultsEverywhere } from '../storage/testing/faults.ts';
import { type Saving, type SavingWorld, savingOf } from './saving.ts';

function begun(): History {
  const read = readLayoutFile(
    JSON.stringify({
      cardwright: 1,
      title: 'Notes',
      units: 'in',
      cards: 10,
      base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
      papers: {},
      parts: [],
    }),
  );
  if (!('file' in read)) throw new Error('the file is sound');
  return sound(opened(read.file));
}

function sound(history: ReturnType<typeof stepped>): History {
  if ('problems' in history) throw new Error(JSON.stringify(history.problems));
  return history;
}

const cards = (file: SavedLayout, count: number, joins: string | null = null): Step => ({
  kind: 'edit',
  edit: settingOf(file, ['cards'], count),
  joins,
});
const textOf = ({ file }: Track) => writeLayoutFile(file);

/** Time that passes when a test says so. */
class Clock {
  waiting: { readonly milliseconds: number; readonly what: () => void }[] = [];
  readonly later: SavingWorld['later'] = (milliseconds, what) => {
    const entry = { milliseconds, what };
    this.waiting.push(entry);
    return () => {
      this.waiting = this.waiting.filter((other) => other !== entry);
    };
  };
  pass() {
    const due = this.waiting;
    this.waiting = [];
    for (const { what } of due) what();
  }
}

let ids = 0;
const newId = () => {
  ids += 1;
  return `id-${ids}`;
};

const nextTurn = () => new Promise((resolve) => setTimeout(resolve, 0));

/** Until everything that is on its way has come back. */
async function settled(queue: Saving): Promise<void> {
  for (let turn = 0; turn < 400 && queue.state().stage === 'saving'; turn += 1) await nextTurn();
}

/** A save that ends when the test says so. */
function slowShelf() {
  const asked: { at: At; step: Step; after: Track; entry: string }[] = [];
  const answers: { resolve: () => void; reject: (reason: unknown) => void }[] = [];
  const copies: { id: string; copied: Copied }[] = [];
  const shelf: Pick<Shelf, 'save' | 'copied'> = {
    copied: async (id, copied) => void copies.push({ id, copied }),
    save: (at, step, after, entry) => {
      asked.push({ at, step, after, entry });
      return new Promise((resolve, reject) =>
        answers.push({
          resolve: () => resolve({ at: { id: at.id, revision: at.revision + 1 }, beside: false }),
          reject,
        }),
      );
    },
  };
  return {
    shelf,
    asked,
    copies,
    succeed() {
      answers.shift()!.resolve();
      return nextTurn();
    },
    fail(reason: unknown) {
      answers.shift()!.reject(reason);
      return nextTurn();
    },
  };
}

describe('the saving of a layout', () => {
  it('writes one step at a time, and makes one of those of one name that wait', async () => {
    const { shelf, asked, succeed } = slowShelf();
    const clock = new Clock();
    const queue = savingOf(shelf, { id: 'a', revision: 4 }, { later: clock.later, newId });
    let history = begun();
    const make = (step: Step) => {
      history = sound(stepped(history, step));
      queue.add(step, history);
    };
    expect(queue.state()).toMatchObject({ stage: 'saved', waiting: 0 });
    for (let count = 1; count <= 5; count += 1) make(cards(history.file, count, 'drag'));
    make(cards(history.file, 9));
    expect(queue.state()).toMatchObject({ stage: 'saving', waiting: 3 });
    expect(asked).toHaveLength(1);
    await succeed();
    expect(queue.state()).toMatchObject({ stage: 'saving', waiting: 2, at: { id: 'a', revision: 5 } });
    await succeed();
    await succeed();
    expect(queue.state()).toMatchObject({ stage: 'saved', waiting: 0, at: { id: 'a', revision: 7 } });
    expect(asked.map(({ at }) => at.revision)).toEqual([4, 5, 6]);
    expect(new Set(asked.map(({ entry }) => entry)).size).toBe(3);
    expect(
      replayed(
        begun(),
        asked.map(({ step }) => step),
      ),
    ).toEqual(history);
    expect(asked.map(({ after }) => (after.file as { cards?: number }).cards)).toEqual([1, 5, 9]);
    expect(clock.waiting).toEqual([]);
  });

  it('keeps what could not be saved and tries again: later and later, at the next step, and when it is asked to', async () => {
    const { shelf, asked, succeed, fail } = slowShelf();
    const clock = new Clock();
    const queue = savingOf(shelf, { id: 'a', revision: 0 }, { later: clock.later, newId });
    let history = begun();
    const make = (count: number, joins: string | null = null) => {
      const step = cards(history.file, count, joins);
      history = sound(stepped(history, step));
      queue.add(step, history);
    };
    const pauses = () => clock.waiting.map(({ milliseconds }) => milliseconds);
    const full = new DOMException('No room', 'QuotaExceededError');
    make(1, 'drag');
    await fail(full);
    expect(queue.state()).toEqual({
      stage: 'failed',
      at: { id: 'a', revision: 0 },
      waiting: 1,
      problem: { kind: 'full' },
      beside: null,
    });
    expect(pauses()).toEqual([1_000]);
    clock.pass();
    expect(asked).toHaveLength(2);
    await fail(full);
    expect(pauses()).toEqual([2_000]);
    // It may be on the disk although we were told otherwise, so it stays as it was given.
    make(2, 'drag');
    expect(asked[2]).toEqual(asked[0]);
    expect(queue.state()).toMatchObject({ stage: 'failed', waiting: 2 });
    await fail(new Error('Gone'));
    expect(queue.state().problem).toEqual({ kind: 'other', says: 'Error: Gone' });
    for (let tries = 0; tries < 8; tries += 1) {
      clock.pass();
      await fail(new DOMException('', 'VersionError'));
    }
    expect(pauses()).toEqual([30_000]);
    expect(queue.state().problem).toEqual({ kind: 'newer' });
    queue.retry();
    queue.retry();
    await succeed();
    await succeed();
    expect(queue.state()).toMatchObject({ stage: 'saved', at: { revision: 2 } });
    expect(clock.waiting).toEqual([]);
    expect(
      replayed(
        begun(),
        asked.slice(-2).map(({ step }) => step),
      ),
    ).toEqual(history);
  });

  it('keeps in mind that it was written to a file, once all that the file has is on the disk', async () => {
    const { shelf, asked, copies, succeed, fail } = slowShelf();
    const queue = savingOf(shelf, { id: 'a', revision: 4 }, { later: new Clock().later, newId });
    let history = begun();
    const drag = (count: number) => {
      const step = cards(history.file, count, 'drag');
      history = sound(stepped(history, step));
      queue.add(step, history);
    };
    drag(1);
    drag(2);
    await fail(new Error('no'));
    queue.copied(1000);
    // What is done after it is no part of the copy, though it is of the same name.
    drag(3);
    await succeed();
    expect(copies).toEqual([]);
    await succeed();
    expect(copies).toEqual([{ id: 'a', copied: { revision: 6, when: 1000 } }]);
    await succeed();
    expect(asked.map(({ after }) => (after.file as { cards?: number }).cards)).toEqual([1, 1, 2, 3]);
    queue.copied(2000);
    expect(copies.slice(1)).toEqual([{ id: 'a', copied: { revision: 7, when: 2000 } }]);
  });

  it('says that the browser does not answer, and takes the answer all the same', async () => {
    const { shelf, succeed } = slowShelf();
    const clock = new Clock();
    const queue = savingOf(shelf, { id: 'a', revision: 0 }, { later: clock.later, newId });
    const step = cards(begun().file, 3);
    queue.add(step, sound(stepped(begun(), step)));
    clock.pass();
    expect(queue.state()).toMatchObject({ stage: 'failed', problem: { kind: 'slow' }, waiting: 1 });
    queue.retry();
    await succeed();
    expect(queue.state()).toMatchObject({ stage: 'saved', problem: null });
  });

  it('goes on though somebody who listens breaks', async () => {
    const { shelf, succeed } = slowShelf();
    const clock = new Clock();
    const queue = savingOf(shelf, { id: 'a', revision: 0 }, { later: clock.later, newId });
    queue.subscribe(() => {
      throw new Error('A listener of a test');
    });
    const step = cards(begun().file, 3);
    queue.add(step, sound(stepped(begun(), step)));
    await succeed();
    expect(queue.state().stage).toBe('saved');
    expect(() => clock.pass()).toThrow('A listener of a test');
  });
});

// --- On the database, with everything that can go wrong ---

let names = 0;
const newName = () => {
  names += 1;
  return `saving-${names}`;
};

/** One page on a layout, with a connection of its own. */
class Tab {
  readonly clock = new Clock();
  readonly queue: Saving;
  history: History;
  /** What was said to be saved: where it is kept, and what it came to. */
  readonly marked: { readonly at: At; readonly text: string }[] = [];

  constructor(
    readonly shelf: Shelf,
    at: At,
    history: History,
  ) {
    this.history = history;
    this.queue = savingOf(shelf, at, { later: this.clock.later, newId });
    this.queue.subscribe(() => this.mark());
    this.mark();
  }

  mark() {
    const { stage, at } = this.queue.state();
    if (stage === 'saved') this.marked.push({ at, text: textOf(this.history) });
  }

  make(step: Step) {
    this.history = sound(stepped(this.history, step));
    this.queue.add(step, this.history);
  }

  /** Tries until all is saved, as a person and the clock would. */
  async saveAll() {
    for (let tries = 0; tries < 5 && this.queue.state().stage !== 'saved'; tries += 1) {
      this.queue.retry();
      await settled(this.queue);
      await nextTurn();
    }
    expect(this.queue.state()).toMatchObject({ stage: 'saved', waiting: 0 });
  }
}

/** What a layout came to at a revision, gone through step by step from the first that is known of it. */
async function textAt(database: Connection, { id, revision }: At): Promise<string> {
  const records = await database.read(async (transaction) => ({
    snapshots: await transaction.objectStore('snapshots').getAll(),
    steps: await transaction.objectStore('steps').getAll(),
  }));
  const first = records.snapshots.find(({ document }) => document === id);
  if (first === undefined) throw new Error(`nothing is kept of ${id}`);
  const steps = records.steps.filter(
    (step) => step.document === id && step.revision > first.revision && step.revision <= revision,
  );
  expect(steps).toHaveLength(revision - first.revision);
  return textOf(
    replayed(
      { file: first.file, done: first.done, undone: first.undone },
      steps.map(({ step }) => step),
    ),
  );
}

/** All that was marked saved is there as it was, and what a page has before it is what is kept of it. */
async function nothingIsLost(name: string, tabs: readonly Tab[]) {
  const database = databaseNamed(name);
  const shelf = shelfIn(database, newId);
  for (const tab of tabs) {
    for (const { at, text } of tab.marked) expect(await textAt(database, at)).toBe(text);
  }
  const last = new Map<string, Tab>();
  for (const tab of tabs) {
    const { at } = tab.queue.state();
    const other = last.get(at.id);
    if (!other || other.queue.state().at.revision < at.revision) last.set(at.id, tab);
  }
  for (const [id, tab] of last) {
    const found = await shelf.open(id);
    expect(found?.document.revision).toBe(tab.queue.state().at.revision);
    expect(found?.history).toEqual(tab.history);
  }
  const documents = await shelf.documents();
  for (const { id } of documents) expect(await shelf.open(id)).not.toBeNull();
  return documents;
}

/** A connection whose writes are done, and told as failed, when `isUnheard` says so. */
function unheard(database: Connection, isUnheard: () => boolean): Connection {
  return {
    read: database.read,
    async write(work) {
      const result = await database.write(work);
      if (isUnheard()) throw new DOMException('Told as failed by a test', 'AbortError');
      return result;
    },
  };
}

describe('saving to a database that fails', () => {
  let faults: Faults;
  beforeEach(() => {
    faults = faultsEverywhere();
  });
  afterEach(() => faults.stop());

  /** Two pages on one layout, each with a few steps, one after the other. */
  async function session(fault: Fault | 'unheard' | null, at: number) {
    const name = newName();
    faults.next = () => null;
    let writes = 0;
    const isUnheard = () => {
      writes += 1;
      return fault === 'unheard' && writes === at;
    };
    const shelf = () => shelfIn(unheard(databaseNamed(name), isUnheard), newId);
    const { id } = await shelfIn(databaseNamed(name), newId).add(begun().file);
    const tabs = [0, 1].map(() => new Tab(shelf(), { id, revision: 0 }, begun()));
    const [one, other] = tabs as [Tab, Tab];
    const before = faults.calls();
    faults.next = (call) => (fault !== 'unheard' && call - before === at ? fault : null);
    for (let count = 1; count <= 3; count += 1) one.make(cards(one.history.file, count, 'drag'));
    one.make({ kind: 'undo' });
    await settled(one.queue);
    other.make(cards(other.history.file, 20));
    other.make(cards(other.history.file, 21));
    await settled(other.queue);
    one.make({ kind: 'redo' });
    await settled(one.queue);
    const calls = faults.calls() - before;
    faults.next = () => null;
    const failed = tabs.filter(({ queue }) => queue.state().stage === 'failed').length;
    for (const tab of tabs) await tab.saveAll();
    const documents = await nothingIsLost(name, tabs);
    // One of them became a second version, and only once.
    expect(documents.map(({ besides }) => besides).sort()).toEqual([id, null].sort());
    expect(tabs.map(({ queue }) => queue.state().beside).sort()).toEqual([id, null].sort());
    return { calls, writes, failed };
  }

  it.each<Fault>(['throws', 'ends', 'full'])(
    'once, at any call of a session, loses nothing: %s',
    async (fault) => {
      const { calls } = await session(null, 0);
      expect(calls).toBeGreaterThan(20);
      let failed = 0;
      for (let at = 1; at <= calls; at += 1) failed += (await session(fault, at)).failed;
      // A connection that was lost between two saves is opened again without a word.
      expect(failed).toBeGreaterThan(calls / 2);
    },
  );

  it('to tell that it has saved saves nothing twice', async () => {
    const { writes } = await session(null, 0);
    for (let at = 1; at <= writes; at += 1) expect((await session('unheard', at)).failed).toBe(1);
  });

  it('loses nothing in two to four pages that fail at random', async () => {
    const turn = fc.record({
      tab: fc.nat({ max: 3 }),
      what: fc.constantFrom('edit', 'edit', 'drag', 'undo', 'redo', 'wait', 'retry', 'open'),
      count: fc.integer({ min: 1, max: 99 }),
      fault: fc.constantFrom<(Fault | 'unheard' | null)[]>(null, null, 'throws', 'ends', 'full', 'unheard'),
      after: fc.nat({ max: 12 }),
    });
    let failures = 0;
    let seconds = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 2, max: 4 }),
        fc.array(turn, { minLength: 5, maxLength: 30 }),
        async (count, turns) => {
          const name = newName();
          faults.next = () => null;
          let isUnheard = false;
          const shelf = () =>
            shelfIn(
              unheard(databaseNamed(name), () => {
                const was = isUnheard;
                isUnheard = false;
                return was;
              }),
              newId,
            );
          const { id } = await shelf().add(begun().file);
          const tabs = Array.from({ length: count }, () => new Tab(shelf(), { id, revision: 0 }, begun()));
          const closed: Tab[] = [];
          for (const { tab: index, what, count, fault, after } of turns) {
            const tab = tabs[index % tabs.length]!;
            const from = faults.calls();
            isUnheard = fault === 'unheard';
            faults.next = (call) => (fault !== 'unheard' && call - from === after ? fault : null);
            if (what === 'edit') tab.make(cards(tab.history.file, count));
            else if (what === 'drag') tab.make(cards(tab.history.file, count, 'drag'));
            else if (what === 'undo' || what === 'redo') tab.make({ kind: what });
            else if (what === 'retry') tab.queue.retry();
            else if (what === 'wait') await settled(tab.queue);
            else if (tab.queue.state().stage === 'saved') {
              faults.next = () => null;
              // Whoever opens it again has what was saved last, and goes on from there.
              const { at } = tab.queue.state();
              const found = await tab.shelf.open(at.id);
              closed.push(tab);
              tabs[index % tabs.length] = new Tab(
                tab.shelf,
                { id: at.id, revision: found!.document.revision },
                found!.history,
              );
            }
            if (tab.queue.state().stage === 'failed') failures += 1;
          }
          faults.next = () => null;
          isUnheard = false;
          for (const tab of tabs) await tab.saveAll();
          const documents = await nothingIsLost(name, [...closed, ...tabs]);
          seconds += documents.length - 1;
        },
      ),
      { numRuns: 40 },
    );
    expect(failures).toBeGreaterThan(10);
    expect(seconds).toBeGreaterThan(10);
  });

  it('tells when there is no room, also for a fault that stays', async () => {
    const name = newName();
    const { id } = await shelfIn(databaseNamed(name), newId).add(begun().file);
    const tab = new Tab(shelfIn(databaseNamed(name), newId), { id, revision: 0 }, begun());
    const from = faults.calls();
    faults.next = (call) => (call - from > 1 ? 'full' : null);
    for (let count = 1; count <= 3; count += 1) {
      tab.make(cards(tab.history.file, count));
      await settled(tab.queue);
      expect(tab.queue.state()).toMatchObject({ stage: 'failed', problem: { kind: 'full' }, waiting: count });
    }
    faults.next = () => null;
    await tab.saveAll();
    await nothingIsLost(name, [tab]);
  });
});
