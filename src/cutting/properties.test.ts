import { describe, expect, test } from 'vitest';
import { type CuttingAnswer, type CuttingTask, planCuts, unlimited } from './index.ts';
import { chance } from './testing/chance.ts';
import { faultsOf } from './testing/checkTree.ts';
import { randomSet } from './testing/randomSet.ts';
import { solver } from './testing/solver.ts';

function outcome(task: CuttingTask) {
  const answer = planCuts(task, solver);
  expect(faultsOf(task, answer)).toEqual([]);
  return answer;
}

function proved(answer: CuttingAnswer): boolean {
  return answer.kind === 'plan' ? answer.cost === answer.bound : answer.proved;
}

const seeds = Array.from({ length: 40 }, (_, i) => 100 + i);

describe('the answer follows the task', () => {
  test.each(seeds)('seed %i', (seed) => {
    const task = randomSet(seed);
    const answer = outcome(task);
    expect(outcome(task), 'asked again').toEqual(answer);

    const reordered = outcome({ ...task, items: task.items.toReversed(), sheets: task.sheets.toReversed() });
    expect(costAndBound(reordered), 'listed in another order').toEqual(costAndBound(answer));

    const larger = outcome({
      items: task.items.map((item) => ({ ...item, width: item.width * 635, height: item.height * 635 })),
      sheets: task.sheets.map((s) => ({
        ...s,
        width: s.width * 635,
        height: s.height * 635,
        cost: s.cost * 3,
      })),
      limits: {
        step: task.limits.step === null ? null : task.limits.step * 635,
        longest: task.limits.longest === null ? null : task.limits.longest * 635,
        reach: task.limits.reach === null ? null : task.limits.reach * 635,
      },
    });
    const tripled = answer.kind === 'plan' ? { cost: answer.cost * 3, bound: answer.bound * 3 } : {};
    expect(costAndBound(larger), 'in smaller units').toEqual({ ...costAndBound(answer), ...tripled });

    const mirrored = outcome({
      ...task,
      items: task.items.map((item) => ({ ...item, width: item.height, height: item.width })),
      sheets: task.sheets.map((s) => ({ ...s, width: s.height, height: s.width })),
    });
    if (proved(answer) && proved(mirrored)) {
      expect(costAndBound(mirrored), 'width and height exchanged').toEqual(costAndBound(answer));
    }

    // One piece more of something never costs less.
    const more = outcome({
      ...task,
      items: task.items.map((item, i) => ({ ...item, need: item.need + (i === 0 ? 1 : 0) })),
    });
    if (answer.kind === 'plan' && more.kind === 'plan')
      expect(more.cost).toBeGreaterThanOrEqual(answer.bound);
    else if (answer.kind === 'short' && answer.proved) expect(more.kind).toBe('short');
  });

  test('equal items listed apart are planned as one, and each gets what it needs', () => {
    const sheets = [{ width: 10, height: 10, count: null, cost: 1 }];
    const one: CuttingTask = {
      items: [{ width: 5, height: 4, need: 7, turns: true }],
      sheets,
      limits: unlimited,
    };
    const apart: CuttingTask = {
      ...one,
      items: [
        { width: 5, height: 4, need: 3, turns: true },
        { width: 4, height: 5, need: 4, turns: true },
      ],
    };
    expect(costAndBound(outcome(apart))).toEqual(costAndBound(outcome(one)));
  });
});

test('five kinds from limited sheets and scraps, where the linear answer takes more sheets than there are', () => {
  const task: CuttingTask = {
    items: [
      { width: 95, height: 138, need: 278, turns: true },
      { width: 105, height: 25, need: 140, turns: false },
      { width: 40, height: 14, need: 279, turns: false },
      { width: 105, height: 36, need: 139, turns: true },
      { width: 49, height: 124, need: 140, turns: false },
    ],
    sheets: [
      { width: 297, height: 420, count: null, cost: 124_740 },
      { width: 305, height: 305, count: 12, cost: 93_025 },
      { width: 148, height: 210, count: 10, cost: 31_080 },
      { width: 83, height: 170, count: 1, cost: 0 },
      { width: 169, height: 147, count: 1, cost: 0 },
      { width: 152, height: 154, count: 1, cost: 0 },
    ],
    limits: unlimited,
  };
  const answer = outcome(task);
  expect(answer.kind).toBe('plan');
  if (answer.kind === 'plan') expect(answer.cost / answer.bound).toBeLessThan(1.01);
});

describe('tasks beyond what can be settled still get a true plan and a true bound', () => {
  const cases: [string, CuttingTask][] = [
    [
      '40 kinds of 100 000 pieces from sheets of a milliard units',
      {
        items: Array.from({ length: 40 }, (_, i) => {
          const int = chance(i);
          return { width: int(1e7, 3e8), height: int(1e7, 3e8), need: 100_000, turns: i % 2 === 0 };
        }),
        sheets: [{ width: 1e9, height: 1e9, count: null, cost: 1e12 }],
        limits: unlimited,
      },
    ],
    [
      'slivers',
      {
        items: [
          { width: 1, height: 1e9, need: 5, turns: true },
          { width: 3, height: 7, need: 1000, turns: true },
        ],
        sheets: [{ width: 1e9, height: 1e9, count: 3, cost: 5 }],
        limits: unlimited,
      },
    ],
    [
      'marks of a 64th of an inch in 12 kinds',
      {
        items: Array.from({ length: 12 }, (_, i) => {
          const int = chance(i);
          return { width: int(40, 200) * 635, height: int(40, 200) * 635, need: 40, turns: true };
        }),
        sheets: [{ width: 487_380, height: 487_680, count: null, cost: 1 }],
        limits: { step: 635, longest: 487_680, reach: null },
      },
    ],
  ];
  test.each(cases)(
    '%s',
    (_, task) => {
      const answer = outcome(task);
      expect(answer.kind).toBe('plan');
      if (answer.kind !== 'plan') return;
      const area = task.items.reduce((sum, item) => sum + item.width * item.height * item.need, 0);
      const sheet = task.sheets[0]!;
      const byArea = Math.ceil((area / (sheet.width * sheet.height)) * (1 - 1e-9)) * sheet.cost;
      expect(answer.bound).toBeGreaterThanOrEqual(byArea * 0.95);
      expect(answer.cost).toBeGreaterThanOrEqual(byArea);
      expect(answer.cost).toBeLessThanOrEqual(2 * answer.bound);
      // Half a minute on a quiet machine.
    },
    180_000,
  );
});

function costAndBound(answer: CuttingAnswer) {
  return answer.kind === 'plan' ? { cost: answer.cost, bound: answer.bound } : { proved: answer.proved };
}
