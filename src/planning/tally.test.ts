import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { arrange } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches } from '../measure/index.ts';
import { replayed } from '../trimming/testing/replayed.ts';
import {
  planRecord,
  planSet,
  recutRecord,
  recutSet,
  type SavedPlan,
  type SetToPlan,
  type Tally,
  type TallyMark,
  tallied,
} from './index.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

const whole = (min: number, max: number) => fc.integer({ min, max }).map((count) => inches(count));
const size = (min: number, max: number) => fc.record({ width: whole(min, max), height: whole(min, max) });

const anySet = fc
  .record({
    cards: fc.integer({ min: 1, max: 6 }),
    sheets: fc.array(fc.record({ size: size(6, 9), count: fc.integer({ min: 2, max: 4 }) }), {
      minLength: 1,
      maxLength: 2,
    }),
    parts: fc.array(fc.record({ size: size(1, 4) }), { minLength: 1, maxLength: 3 }),
  })
  .map(({ cards, sheets, parts }) => {
    const layout = layoutOf({
      cards,
      base: [inches(8), inches(8)],
      fold: 'none',
      papers: [paper('ivory', sheets)],
      parts: parts.map(({ size: { width, height } }, index) =>
        part(`p${index}`, { size: [width, height], papers: ['ivory'] }),
      ),
    });
    return (): SetToPlan => ({ layout, arrangement: arrange(layout), trimmer: null, solver });
  });

function tableOf(set: SetToPlan, tally: Tally) {
  const now = tallied(set, tally);
  if ('problems' in now) throw new Error(JSON.stringify(now.problems));
  return now;
}

/** As it is kept: as text. */
const kept = <Value>(value: Value): Value => JSON.parse(JSON.stringify(value)) as Value;

describe('what was noted', () => {
  it('leaves the table that the steps leave which were cut, whatever was noted too soon in between', () => {
    fc.assert(
      fc.property(anySet, fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 6 }), (make, slips) => {
        const set = make();
        const plan = planSet(set);
        if (plan.kind !== 'plan' || plan.steps.length === 0) return;
        const end = 1 + ((slips[0]?.[0] ?? 0) % plan.steps.length);
        const steps = plan.steps.slice(0, end);
        const last = steps.at(-1)!;
        const marks: TallyMark[] = [
          ...steps.map(({ step, take }): TallyMark => ({ kind: 'cut', step, workpieces: take.length })),
          // The last one was noted too soon, a few times over.
          ...slips.map(
            ([, count]): TallyMark => ({
              kind: 'cut',
              step: last.step,
              workpieces: count % (last.take.length + 1),
            }),
          ),
          { kind: 'cut', step: last.step, workpieces: last.take.length },
        ];
        const { table, soFar } = tableOf(set, kept({ plan: planRecord(plan), marks }));
        const there = replayed(steps, plan.sheets).table;
        const lying = [...table.onTable.lying, ...table.whole].map(({ id }) => id);
        expect(lying.sort()).toEqual([...there.keys()].sort());
        expect(soFar.done.size).toBe(steps.length);
        expect(table.toDo).toHaveLength(plan.steps.length - steps.length);
      }),
      { numRuns: 60 },
    );
  });

  it('goes on from the plan that was made again, as if it had been the first', () => {
    let again = 0;
    fc.assert(
      fc.property(anySet, fc.nat(), fc.nat(), (make, stop, gone) => {
        const set = make();
        const plan = planSet(set);
        if (plan.kind !== 'plan') return;
        const steps = plan.steps.slice(0, stop % (plan.steps.length + 1));
        const cut = steps.map(
          ({ step, take }): TallyMark => ({ kind: 'cut', step, workpieces: take.length }),
        );
        const start = kept<SavedPlan>(planRecord(plan));
        const before = tableOf(set, { plan: start, marks: cut });
        const there = [...before.table.onTable.lying, ...before.table.whole].map(({ id }) => id);
        const spoiled: TallyMark = {
          kind: 'spoiled',
          spoiled: { kind: 'workpiece', id: there[gone % there.length]! },
        };
        const { table } = tableOf(set, { plan: start, marks: [...cut, spoiled] });
        const answer = recutSet(set, table);
        if (answer.kind === 'short') return;
        again += 1;
        const marks = kept<TallyMark[]>([
          ...cut,
          spoiled,
          { kind: 'planned again', plan: recutRecord(answer) },
        ]);
        const since = tableOf(set, { plan: start, marks });
        expect(since.soFar.done.size).toBe(0);
        expect(since.table.toDo.map(({ step }) => step)).toEqual(answer.plan.steps.map(({ step }) => step));
        expect(since.inHand.onTable).toEqual(answer.onTable);
        const rest = answer.plan.steps.map(
          ({ step, take }): TallyMark => ({ kind: 'cut', step, workpieces: take.length }),
        );
        const end = tableOf(set, { plan: start, marks: [...marks, ...rest] });
        expect(end.table.toDo).toEqual([]);
        expect([...end.table.finished.values()].sort()).toEqual([...answer.plan.finished.values()].sort());
      }),
      { numRuns: 60 },
    );
    expect(again).toBeGreaterThan(15);
  });
});

it('a tally of another set is told, and so is what cannot have happened', () => {
  const layoutWith = (side: number) =>
    layoutOf({
      cards: 2,
      base: [inches(8), inches(8)],
      fold: 'none',
      papers: [paper('ivory', [{ size: { width: inches(8), height: inches(8) }, count: 1 }])],
      parts: [part('panel', { size: [inches(side), inches(4)], papers: ['ivory'] })],
    });
  const setWith = (side: number): SetToPlan => {
    const layout = layoutWith(side);
    return { layout, arrangement: arrange(layout), trimmer: null, solver };
  };
  const plan = planSet(setWith(4));
  if (plan.kind !== 'plan') throw new Error('expected a plan');
  const codesOf = (side: number, marks: readonly TallyMark[]) => {
    const now = tallied(setWith(side), { plan: planRecord(plan), marks });
    return 'problems' in now ? now.problems.map(({ code }) => code) : [];
  };
  expect(codesOf(4, [])).toEqual([]);
  expect(codesOf(3, [])).toEqual(['planPieceDiffers']);
  expect(codesOf(4, [{ kind: 'cut', step: 99, workpieces: 1 }])).toEqual(['stepUnknown']);
  expect(codesOf(4, [{ kind: 'spoiled', spoiled: { kind: 'workpiece', id: 'nothing' } }])).toEqual([
    'workpieceUnknown',
  ]);
});
