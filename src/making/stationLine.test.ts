import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestLine, type LineTask, lineTimes, type Station } from './stationLine.ts';
import { movedCards } from './testing/movedCards.ts';

/** Tasks in their order, of which some wait for what earlier ones put on. */
const someTasks = fc
  .array(
    fc.record({
      seconds: fc.integer({ min: 1, max: 9 }),
      sets: fc.integer({ min: 0, max: 20 }),
      waits: fc.option(fc.nat(), { freq: 2 }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((drawn) =>
    drawn.map(({ seconds, sets, waits }, at): LineTask => {
      const waitsFor = waits === null || at === 0 ? [] : [waits % at];
      return { id: `t${at}`, seconds, sets, waitsFor };
    }),
  );

const someLine = fc
  .record({
    tasks: someTasks,
    cuts: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
    helpers: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 6, maxLength: 6 }),
    cards: fc.integer({ min: 1, max: 12 }),
    room: fc.option(fc.integer({ min: 1, max: 4 })),
  })
  .map(({ tasks, cuts, helpers, cards, room }) => {
    const ends = [...tasks.keys()].filter((at) => at === tasks.length - 1 || cuts[at]).map((at) => at + 1);
    const stations = ends.map((to, at): Station => ({ from: ends[at - 1] ?? 0, to, helpers: helpers[at]! }));
    return { tasks, stations, cards, room };
  });

/** All ways to cut a line into so many stations and deal so many helpers to them. */
function everySharing(tasks: number, helpers: number, stations: number, from = 0): readonly Station[][] {
  if (stations === 1) return [[{ from, to: tasks, helpers }]];
  const all: Station[][] = [];
  for (let to = from + 1; to <= tasks - stations + 1; to += 1)
    for (let those = 1; those <= helpers - stations + 1; those += 1)
      for (const rest of everySharing(tasks, helpers - those, stations - 1, to))
        all.push([{ from, to, helpers: those }, ...rest]);
  return all;
}

describe('lineTimes', () => {
  it('says what a line does whose cards are moved second by second', () => {
    const seen = { drying: 0, held: 0 };
    fc.assert(
      fc.property(someLine, ({ tasks, stations, cards, room }) => {
        const times = lineTimes(tasks, stations, { cards, room });
        const moved = movedCards({ tasks, stations, cards, room });
        expect(times.finish).toBe(moved.finish);
        for (const { station, most } of times.lying) {
          seen.drying += most > 1 ? 1 : 0;
          expect(most).toBe(moved.lying[station]);
          if (room !== null) expect(most).toBeLessThanOrEqual(room);
        }
        if (lineTimes(tasks, stations, { cards, room: null }).finish < times.finish) seen.held += 1;
      }),
      { numRuns: 600 },
    );
    expect(seen.drying).toBeGreaterThan(30);
    expect(seen.held).toBeGreaterThan(10);
  });

  it('takes n cards through plain stations as the slowest lets them', () => {
    // The textbook time of a line that never waits but for its slowest station: its own work, then that station's again
    // for every further card. (From memory; it is also worked out by hand: 2 + 5 + 3, then 9 times 5.)
    const tasks = [2, 5, 3].map((seconds, at) => ({ id: String(at), seconds, sets: 0, waitsFor: [] }));
    const stations = [0, 1, 2].map((from) => ({ from, to: from + 1, helpers: 1 }));
    expect(lineTimes(tasks, stations, { cards: 10, room: null }).finish).toBe(55);
  });
});

describe('bestLine', () => {
  it('finds what trying every sharing finds', () => {
    fc.assert(
      fc.property(
        someTasks,
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 9 }),
        fc.option(fc.integer({ min: 1, max: 3 })),
        (tasks, helpers, wanted, cards, room) => {
          const stations = Math.min(wanted, helpers, tasks.length);
          const line = bestLine(tasks, { cards, helpers, stations, room });
          const finishes = everySharing(tasks.length, helpers, stations).map(
            (sharing) => movedCards({ tasks, stations: sharing, cards, room }).finish,
          );
          expect(line.finish).toBe(Math.min(...finishes));
          expect(movedCards({ tasks, stations: line.stations, cards, room }).finish).toBe(line.finish);
          expect(line.isProved).toBe(true);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('says a bound that no sharing beats where it was not allowed to search', () => {
    fc.assert(
      fc.property(
        someTasks,
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 1, max: 9 }),
        (tasks, helpers, cards) => {
          const stations = Math.min(2, tasks.length);
          const line = bestLine(
            tasks,
            { cards, helpers, stations, room: null },
            { mostNodes: 0, mostCards: 0 },
          );
          const finishes = everySharing(tasks.length, helpers, stations).map(
            (sharing) => movedCards({ tasks, stations: sharing, cards, room: null }).finish,
          );
          expect(line.bound).toBeLessThanOrEqual(Math.min(...finishes));
          expect(line.finish).toBeGreaterThanOrEqual(line.bound);
          expect(line.isProved).toBe(line.bound === line.finish);
        },
      ),
      { numRuns: 200 },
    );
  });
});
