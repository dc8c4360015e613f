import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { readLayoutFile, type SavedLayout } from '../../../src/files/index.ts';
import { arrange, type Layout } from '../../../src/layout/index.ts';
import {
  type Plan,
  planRecord,
  planSet,
  recutRecord,
  recutSet,
  type SetToPlan,
} from '../../../src/planning/index.ts';
import { testSolver } from '../../../src/planning/testing/solver.ts';
import { benchIn } from '../storage/bench.ts';
import type { BenchEvent } from '../storage/benchLog.ts';
import { databaseNamed } from '../storage/database.ts';
import { databaseInMemory } from '../storage/memory.ts';
import { faultsEverywhere } from '../storage/testing/faults.ts';
import { type BenchStore, benchOf } from './bench.ts';
import { benchesIn } from './benches.ts';
import { makingOf } from './benchState.ts';

interface Begun {
  readonly file: SavedLayout;
  readonly layout: Layout;
  readonly plan: Plan;
  readonly set: SetToPlan;
}

let begun: Begun;
beforeAll(async () => {
  const read = readLayoutFile(
    JSON.stringify({
      cardwright: 1,
      title: 'Lanterns',
      units: 'in',
      cards: 6,
      base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
      papers: { dusk: { sheets: [{ size: ['12', '12'], count: 2 }] } },
      parts: [
        { id: 'mat', size: ['4', '5 1/4'], paper: 'dusk' },
        { id: 'panel', on: 'mat', size: ['1 3/4', '2'], paper: 'dusk' },
      ],
    }),
  );
  if (!('file' in read)) throw new Error('the file is sound');
  const { file, layout } = read;
  const set = { layout, arrangement: arrange(layout), trimmer: null, solver: await testSolver() };
  const plan = planSet(set);
  if (plan.kind !== 'plan') throw new Error('expected a plan');
  begun = { file, layout, plan, set };
});

const beginning = (): BenchEvent => ({
  kind: 'begun',
  file: begun.file,
  trimmer: null,
  plan: planRecord(begun.plan),
});
const cut = (step: number, workpieces: number): BenchEvent => ({
  kind: 'noted',
  mark: { kind: 'cut', step, workpieces },
});
const done = (step: number): BenchEvent =>
  cut(step, begun.plan.steps.find((each) => each.step === step)!.take.length);

let names = 0;
const newId = () => {
  names += 1;
  return `entry-${names}`;
};
/** Tries again at once. */
const soon = (_: number, what: () => void) => {
  const timer = setTimeout(what, 0);
  return () => clearTimeout(timer);
};
const until = async (holds: () => boolean) => {
  for (let turn = 0; turn < 2_000 && !holds(); turn += 1)
    await new Promise((resolve) => setTimeout(resolve, 0));
  expect(holds()).toBe(true);
};
const isThere = (bench: BenchStore) => until(() => bench.getState().stage === 'there');
const isKept = (bench: BenchStore) => until(() => bench.getState().isKept);
const doneAt = (bench: BenchStore) => [...bench.getState().making!.tallied.soFar.done];

describe('what is told at a bench', () => {
  it('is there when the page is opened again, and can be taken back, one after another', async () => {
    const log = benchIn(databaseNamed('again'));
    const bench = benchOf(log, 'lanterns', { later: soon, newId });
    await isThere(bench);
    expect(bench.getState().making).toBeNull();
    for (const event of [beginning(), done(1), done(2), { kind: 'made', line: 'score' } as const])
      bench.tell(event);
    await isKept(bench);
    const again = benchOf(log, 'lanterns', { later: soon, newId });
    await isThere(again);
    expect(doneAt(again)).toEqual([
      [1, begun.plan.steps[0]!.take.length],
      [2, begun.plan.steps[1]!.take.length],
    ]);
    expect([...again.getState().making!.made]).toEqual(['score']);
    for (let back = 0; back < 4; back += 1) again.tell({ kind: 'taken back' });
    await isKept(again);
    expect(doneAt(again)).toEqual([]);
    expect(again.getState().making!.last).toBeNull();
  });

  it('is refused where it cannot have happened at this table', async () => {
    const bench = benchOf(benchIn(databaseInMemory()), 'lanterns', { later: soon, newId });
    await isThere(bench);
    bench.tell(done(1));
    expect(bench.getState()).toMatchObject({ making: null, notNoted: [done(1)] });
    bench.tell(beginning());
    expect(bench.getState().notNoted).toEqual([]);
    bench.tell(cut(1, 99));
    expect(bench.getState().notNoted).toEqual([cut(1, 99)]);
    const spoiled: BenchEvent = {
      kind: 'noted',
      mark: { kind: 'spoiled', spoiled: { kind: 'workpiece', id: 'none' } },
    };
    bench.tell(spoiled);
    await isKept(bench);
    expect(bench.getState()).toMatchObject({ notNoted: [spoiled], isFromElsewhere: false });
    expect(doneAt(bench)).toEqual([]);
    bench.tell(done(1));
    expect(bench.getState().notNoted).toEqual([]);
  });

  it('goes on by the plan that was made again, and by the first once that is taken back', async () => {
    const log = benchIn(databaseInMemory());
    const bench = benchOf(log, 'lanterns', { later: soon, newId });
    await isThere(bench);
    for (const event of [beginning(), done(1)]) bench.tell(event);
    const { lying } = bench.getState().making!.tallied.table.onTable;
    bench.tell({
      kind: 'noted',
      mark: { kind: 'spoiled', spoiled: { kind: 'workpiece', id: lying[0]!.id } },
    });
    const { table } = bench.getState().making!.tallied;
    const answer = recutSet(begun.set, table);
    if (answer.kind !== 'recut') throw new Error('expected a way on');
    bench.tell({ kind: 'planned again', plan: recutRecord(answer), file: null });
    await isKept(bench);
    const again = benchOf(log, 'lanterns', { later: soon, newId });
    await isThere(again);
    const { tallied } = again.getState().making!;
    expect(tallied.inHand.plan.steps.map(({ step }) => step)).toEqual(
      answer.plan.steps.map(({ step }) => step),
    );
    expect(tallied.table.spoiled.size).toBe(0);
    again.tell({ kind: 'taken back' });
    expect(again.getState().making!.tallied.table.spoiled.size).toBe(1);
  });
});

describe('two windows at one bench', () => {
  const first = () => {
    const { lying } = makingOf([beginning(), done(1)])!.tallied.table.onTable;
    return lying[0]!.id;
  };
  const spoiled = (): BenchEvent => ({
    kind: 'noted',
    mark: { kind: 'spoiled', spoiled: { kind: 'workpiece', id: first() } },
  });
  const again = (): BenchEvent => {
    const { table } = makingOf([beginning(), done(1), spoiled()])!.tallied;
    const answer = recutSet(begun.set, table);
    if (answer.kind !== 'recut') throw new Error('expected a way on');
    return { kind: 'planned again', plan: recutRecord(answer), file: null };
  };

  /** What comes of it where one window has told something that the other does not know of yet. */
  async function told(
    both: readonly BenchEvent[],
    one: readonly BenchEvent[],
    other: readonly BenchEvent[],
  ): Promise<{ readonly noted: readonly BenchEvent[]; readonly notNoted: readonly BenchEvent[] }> {
    const log = benchIn(databaseInMemory());
    for (const event of both)
      await log.add('lanterns', (await log.events('lanterns')).length, event, newId());
    const late = benchOf(log, 'lanterns', { later: soon, newId });
    await isThere(late);
    for (const event of one) await log.add('lanterns', (await log.events('lanterns')).length, event, newId());
    for (const event of other) late.tell(event);
    await isKept(late);
    expect(late.getState().isFromElsewhere).toBe(true);
    const { notNoted } = late.getState();
    return { noted: (await log.events('lanterns')).slice(both.length), notNoted };
  }

  it('what still can have happened is noted after what another told first', async () => {
    const made: BenchEvent = { kind: 'made', line: 'score' };
    expect(await told([beginning()], [done(1)], [done(1), done(2), made])).toEqual({
      noted: [done(1), done(1), done(2), made],
      notNoted: [],
    });
  });

  it('what was told of something else is not noted, and stands there to be said', async () => {
    // The same set was begun in both, so what was cut of it holds.
    expect(await told([], [beginning(), done(1)], [beginning(), done(1)])).toEqual({
      noted: [beginning(), done(1), done(1)],
      notNoted: [beginning()],
    });
    expect(await told([beginning(), done(1)], [done(2)], [{ kind: 'taken back' }])).toEqual({
      noted: [done(2)],
      notNoted: [{ kind: 'taken back' }],
    });
    // Steps of one number are not the same by two plans.
    const noted = [spoiled(), again()];
    expect(await told([beginning(), done(1)], noted, [done(2)])).toEqual({ noted, notNoted: [done(2)] });
    // A plan that was made again knows nothing of what was cut meanwhile.
    const step = cut(2, 1);
    const next = makingOf([beginning(), done(1), spoiled(), again()])!.tallied.table.toDo[0]!;
    const dropped = [again(), cut(next.step, 1)];
    expect(await told([beginning(), done(1), spoiled()], [step], dropped)).toEqual({
      noted: [step],
      notNoted: dropped,
    });
  });

  it('come to stand alike as soon as one tells the news', async () => {
    const log = benchIn(databaseInMemory());
    const listeners: (() => void)[][] = [[], []];
    const [one, other] = listeners.map((own, index) =>
      benchesIn(
        log,
        { later: soon, newId },
        {
          tell: () => {
            for (const hear of listeners[1 - index]!) hear();
          },
          subscribe: (listener) => {
            own.push(listener);
            return () => {};
          },
        },
      ).at('lanterns'),
    );
    await Promise.all([one!, other!].map(isThere));
    one!.tell(beginning());
    await until(() => other!.getState().making !== null);
    expect(other!.getState()).toMatchObject({ isFromElsewhere: true, told: 1 });
    const { making } = other!.getState();
    other!.lookAgain();
    await new Promise((resolve) => setTimeout(resolve, 5));
    // What did not change stays the same value.
    expect(other!.getState().making).toBe(making);
    other!.tell(done(1));
    await until(() => one!.getState().told === 2);
    expect(doneAt(one!)).toEqual(doneAt(other!));
  });
});

describe('whatever goes wrong with the disk', () => {
  it('nothing seems to be there to begin with as long as it cannot be read what is', async () => {
    const kept = benchIn(databaseInMemory());
    await kept.add('lanterns', 0, beginning(), newId());
    let fails = 3;
    const bench = benchOf(
      {
        ...kept,
        events: async (document) => {
          fails -= 1;
          if (fails >= 0) throw new DOMException('Not now', 'UnknownError');
          return kept.events(document);
        },
      },
      'lanterns',
      { later: soon, newId },
    );
    await until(() => bench.getState().problem !== null);
    expect(bench.getState().stage).toBe('looking');
    await isThere(bench);
    expect(bench.getState()).toMatchObject({ problem: null, told: 1 });
    expect(bench.getState().making).not.toBeNull();
  });

  it('nothing that was told to be kept is lost, and what was told comes to be kept, in its order', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.nat(12), { minLength: 1, maxLength: 12 }), async (gaps) => {
        const log = benchIn(databaseNamed(`faults ${newId()}`));
        // It is there already: what fails while it is made is the database's own test.
        await log.events('lanterns');
        const faults = faultsEverywhere();
        try {
          const wrong = new Set(
            gaps.map((_, index) => gaps.slice(0, index + 1).reduce((sum, gap) => sum + gap + 1, 0)),
          );
          faults.next = (call) => (wrong.has(call) ? (['throws', 'ends', 'full'] as const)[call % 3]! : null);
          const bench = benchOf(log, 'lanterns', { later: soon, newId });
          await until(() => {
            if (bench.getState().stage === 'looking') bench.lookAgain();
            return bench.getState().stage === 'there';
          });
          const told = [beginning(), ...begun.plan.steps.map(({ step }) => done(step))];
          for (const event of told) bench.tell(event);
          await isKept(bench);
          faults.next = () => null;
          expect(await log.events('lanterns')).toEqual(told);
        } finally {
          faults.stop();
        }
      }),
      { numRuns: 25 },
    );
  });

  it('two windows at one bench: each note is kept once, and both come to stand alike', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.boolean(), { minLength: 2, maxLength: 12 }), async (turns) => {
        const log = benchIn(databaseNamed(`windows ${newId()}`));
        const windows = [0, 1].map(() => benchOf(log, 'lanterns', { later: soon, newId }));
        await Promise.all(windows.map(isThere));
        windows[0]!.tell(beginning());
        await isKept(windows[0]!);
        windows[1]!.lookAgain();
        await until(() => windows[1]!.getState().making !== null);
        // Each window notes the next step that it does not know to be done, now one and now the other, in a hurry.
        for (const turn of turns) {
          const bench = windows[turn ? 1 : 0]!;
          const next = bench.getState().making!.tallied.table.toDo[0];
          if (next !== undefined) bench.tell(done(next.step));
        }
        await Promise.all(windows.map(isKept));
        for (const bench of windows) bench.lookAgain();
        const events = await log.events('lanterns');
        const noted = makingOf(events)!;
        await until(() =>
          windows.every(
            (bench) =>
              JSON.stringify(doneAt(bench).sort()) === JSON.stringify([...noted.tallied.soFar.done].sort()),
          ),
        );
        const most = Math.max(turns.filter((turn) => turn).length, turns.filter((turn) => !turn).length);
        expect(noted.tallied.soFar.done.size).toBeGreaterThanOrEqual(Math.min(most, begun.plan.steps.length));
      }),
      { numRuns: 25 },
    );
  });
});
