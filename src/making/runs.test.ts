import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fastestRuns, type RunTask, type RunWork, runsInOrder } from './runs.ts';

/** Tasks for so many cards, which come before others, and which wait for what others have put on. */
const someWork = fc
  .record({
    cards: fc.integer({ min: 1, max: 4 }),
    tasks: fc.array(
      fc.record({ seconds: fc.integer({ min: 1, max: 9 }), sets: fc.integer({ min: 0, max: 25 }) }),
      { minLength: 1, maxLength: 6 },
    ),
    before: fc.array(fc.tuple(fc.nat(5), fc.nat(5)), { maxLength: 4 }),
    waits: fc.array(fc.tuple(fc.nat(5), fc.nat(5)), { maxLength: 6 }),
  })
  .map(({ cards, tasks, before, waits }) => ({
    cards,
    tasks: tasks.map(
      ({ seconds, sets }, at): RunTask => ({ id: `t${at}`, seconds, whole: seconds * cards, sets }),
    ),
    before: before.filter(([one, other]) => one < other),
    waits: waits.filter(([one, other]) => one !== other),
  }));

type SomeWork = typeof someWork extends fc.Arbitrary<infer Work> ? Work : never;

function workOf({ tasks, before, waits }: SomeWork): RunWork {
  return {
    tasks,
    rules: {
      mayFollow: (task, done) =>
        before.every(([one, other]) => other !== task || one >= tasks.length || done.includes(one)),
      waitsFor: (task, done) =>
        waits.flatMap(([after, own]) => (own === task && done.includes(after) ? [after] : [])),
      stateOf: () => '',
    },
  };
}

/** When the work is done in that order, card by card: the hands do one card, then the next, and wait where one is wet. */
function doneByHand({ cards, tasks, waits }: SomeWork, order: readonly number[]): number {
  /** When each task has been done on each card. */
  const dones = new Map<string, number>();
  let now = 0;
  for (const task of order) {
    // A run is not interrupted: its beginning is put off until it can go through.
    const wet = (card: number) =>
      waits.flatMap(([after, own]) => {
        const done = dones.get(`${after} ${card}`);
        return own === task && done !== undefined ? [done + tasks[after]!.sets] : [];
      });
    let start = now;
    const goesThrough = () =>
      Array.from({ length: cards }, (_, card) => start + card * tasks[task]!.seconds).every((moment, card) =>
        wet(card).every((dry) => dry <= moment),
      );
    while (!goesThrough()) start += 1;
    for (let card = 0; card < cards; card += 1)
      dones.set(`${task} ${card}`, start + (card + 1) * tasks[task]!.seconds);
    now = start + cards * tasks[task]!.seconds;
  }
  return now;
}

function orders(things: readonly number[]): readonly (readonly number[])[] {
  if (things.length === 0) return [[]];
  return things.flatMap((one) => orders(things.filter((each) => each !== one)).map((rest) => [one, ...rest]));
}

describe('runsInOrder', () => {
  it('is as fast as hands that are watched second by second', () => {
    let idle = 0;
    fc.assert(
      fc.property(someWork, (some) => {
        const order = [...some.tasks.keys()];
        const runs = runsInOrder(workOf(some), order);
        expect(runs.at(-1)!.end).toBe(doneByHand(some, order));
        idle += runs.some((run) => run.idle > 0) ? 1 : 0;
      }),
      { numRuns: 500 },
    );
    expect(idle).toBeGreaterThan(50);
  });
});

describe('fastestRuns', () => {
  it('is as fast as the best of all orders that are allowed', () => {
    let gained = 0;
    fc.assert(
      fc.property(someWork, (some) => {
        const work = workOf(some);
        const usual = [...some.tasks.keys()];
        const found = fastestRuns(work, usual);
        const every = orders(usual)
          .filter((order) => order.every((task, at) => work.rules.mayFollow(task, order.slice(0, at))))
          .map((order) => doneByHand(some, order));
        expect(found.finish).toBe(Math.min(...every));
        expect(found.isProved).toBe(true);
        expect(found.bound).toBe(found.finish);
        expect(
          doneByHand(
            some,
            found.runs.map(({ task }) => task),
          ),
        ).toBe(found.finish);
        gained += found.finish < doneByHand(some, usual) ? 1 : 0;
      }),
      { numRuns: 300 },
    );
    expect(gained).toBeGreaterThan(20);
  });

  it('keeps to what is usual where that leaves nothing to wait for', () => {
    const tasks = [2, 3, 4].map((seconds, at) => ({ id: String(at), seconds, whole: 10 * seconds, sets: 0 }));
    const work = workOf({ cards: 10, tasks, before: [], waits: [] });
    expect(fastestRuns(work, [2, 0, 1]).runs.map(({ task }) => task)).toEqual([2, 0, 1]);
  });

  it('says that it stopped, and a bound', () => {
    const tasks = [
      { id: 'a', seconds: 1, whole: 1, sets: 9 },
      { id: 'b', seconds: 1, whole: 1, sets: 0 },
    ];
    const work = workOf({ cards: 1, tasks, before: [], waits: [[0, 1]] });
    expect(fastestRuns(work, [0, 1], 0)).toMatchObject({ finish: 11, bound: 2, isProved: false, idle: 9 });
  });
});
