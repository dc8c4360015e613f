import fc from 'fast-check';
import { readLayoutFile } from '../../../../src/files/index.ts';
import { arrange } from '../../../../src/layout/index.ts';
import { millimetres, zero } from '../../../../src/measure/index.ts';
import { planRecord, planSet, recutRecord, recutSet } from '../../../../src/planning/index.ts';
import { testSolver } from '../../../../src/planning/testing/solver.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { makingOf } from '../../state/benchState.ts';
import type { BenchEvent } from '../benchLog.ts';

const lanterns = JSON.stringify({
  cardwright: 1,
  title: 'Lanterns',
  units: 'mm',
  cards: 5,
  base: { size: ['105 mm', '148 mm'], fold: 'left', paper: null },
  papers: { dusk: { sheets: [{ size: ['210 mm', '297 mm'], count: 4 }] } },
  parts: [
    { id: 'mat', size: ['95 mm', '138 mm'], paper: 'dusk' },
    { id: 'panel', on: 'mat', size: ['40 mm', '60 mm'], paper: 'dusk' },
  ],
});

const trimmer: Trimmer = {
  name: 'Mine',
  marks: millimetres(1),
  longest: null,
  narrowest: null,
  reach: { measuringSide: millimetres(300), otherSide: null },
  correction: zero,
  measuringEdge: 'right',
  hand: 'left',
  sheetsAtOnce: 1,
  cutsPerSitting: null,
};

/** What may happen at a bench, in any order in which it can; empty, or from the beginning of a set on. */
export async function randomBench(): Promise<fc.Arbitrary<readonly BenchEvent[]>> {
  const read = readLayoutFile(lanterns);
  if (!('file' in read)) throw new Error('the file is sound');
  const { file, layout } = read;
  const solver = await testSolver();
  const begun = [null, trimmer].map((by): BenchEvent => {
    const plan = planSet({ layout, arrangement: arrange(layout), trimmer: by, solver });
    if (plan.kind !== 'plan') throw new Error('the papers are enough');
    return { kind: 'begun', file, trimmer: by, plan: planRecord(plan) };
  });

  /** Something that may be told next; `null`: nothing of that kind. */
  function next(events: readonly BenchEvent[], what: string, of: number): BenchEvent | null {
    const making = makingOf(events);
    if (making === null || what === 'begun') return begun[of % begun.length]!;
    const { toDo, onTable, finished, whole } = making.tallied.table;
    const spoiled = (thing: Extract<BenchEvent, { kind: 'noted' }>['mark'] & { kind: 'spoiled' }) =>
      ({ kind: 'noted', mark: thing }) as const;
    if (what === 'cut') {
      const step = toDo[of % Math.max(1, toDo.length)];
      if (step === undefined) return null;
      const workpieces = 1 + (of % step.take.length);
      return { kind: 'noted', mark: { kind: 'cut', step: step.step, workpieces } };
    }
    if (what === 'workpiece') {
      const ids = [...onTable.lying, ...whole].map(({ id }) => id);
      const id = ids[of % Math.max(1, ids.length)];
      return id === undefined ? null : spoiled({ kind: 'spoiled', spoiled: { kind: 'workpiece', id } });
    }
    if (what === 'pieces') {
      const piece = [...finished.values()][of % Math.max(1, finished.size)];
      return piece === undefined
        ? null
        : spoiled({ kind: 'spoiled', spoiled: { kind: 'pieces', piece, count: 1 } });
    }
    if (what === 'planned again') {
      const answer = recutSet({ ...making.set, solver }, making.tallied.table);
      return answer.kind === 'recut'
        ? { kind: 'planned again', plan: recutRecord(answer, making.tallied.moreSpares), file: null }
        : null;
    }
    if (what === 'found') {
      const found = { paper: 'dusk', size: { width: millimetres(50 + of), height: millimetres(60) } };
      return { kind: 'noted', mark: { kind: 'found', found } };
    }
    if (what !== 'made') return { kind: 'taken back' };
    // Logs that were begun before have no times.
    return { kind: 'made', line: `part ${of % 3}`, ...(of % 2 === 0 ? { at: 1_780_000_000_000 + of } : {}) };
  }

  const cut = fc.constant('cut');
  const what = fc.oneof(
    { weight: 5, arbitrary: cut },
    fc.constantFrom('begun', 'workpiece', 'pieces', 'found', 'planned again', 'made', 'taken back'),
  );
  return fc.array(fc.tuple(what, fc.nat(60)), { maxLength: 7 }).map((choices) => {
    let events: readonly BenchEvent[] = [];
    for (const [kind, of] of choices) {
      const event = next(events, kind, of);
      if (event === null) continue;
      const more = [...events, event];
      if (makingOf(more) !== null) events = more;
    }
    return events;
  });
}
