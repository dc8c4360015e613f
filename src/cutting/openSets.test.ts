import { describe, expect, test } from 'vitest';
import { type CuttingTask, planCuts, thoroughEffort, unlimited } from './index.ts';
import { faultsOf } from './testing/checkTree.ts';
import { solver } from './testing/solver.ts';

const item = (width: number, height: number, need: number, turns: boolean) => ({
  width,
  height,
  need,
  turns,
});

/** Invented sets that the usual effort leaves open by a sheet or a unit of cost, by where they come from. */
const sets: readonly [name: string, task: CuttingTask, cost: number][] = [
  [
    'six kinds, 48 pieces on one sheet (seed 42 of the small sets, eighths of an inch)',
    {
      items: [
        item(22, 18, 4, false),
        item(16, 15, 8, false),
        item(27, 7, 8, false),
        item(7, 33, 8, true),
        item(8, 15, 16, false),
        item(6, 14, 4, true),
      ],
      sheets: [{ width: 96, height: 96, count: null, cost: 11 }],
      limits: unlimited,
    },
    22,
  ],
  [
    'six kinds from small and large sheets (seed 216, millimetres)',
    {
      items: [
        item(101, 99, 15, false),
        item(67, 101, 8, true),
        item(52, 74, 8, true),
        item(23, 130, 8, true),
        item(60, 35, 15, true),
        item(38, 138, 30, true),
      ],
      sheets: [
        { width: 152, height: 152, count: null, cost: 4 },
        { width: 297, height: 420, count: null, cost: 17 },
      ],
      limits: unlimited,
    },
    67,
  ],
  [
    'six kinds from three sizes at three costs (seed 10, eighths of an inch)',
    {
      items: [
        item(16, 43, 12, true),
        item(19, 38, 24, true),
        item(16, 22, 24, false),
        item(7, 30, 24, true),
        item(13, 13, 24, true),
        item(32, 28, 24, false),
      ],
      sheets: [
        { width: 88, height: 136, count: null, cost: 13 },
        { width: 48, height: 48, count: null, cost: 3 },
        { width: 68, height: 88, count: 5, cost: 7 },
      ],
      limits: unlimited,
    },
    75,
  ],
];

describe('sets for thorough effort', () => {
  test.each(sets)('%s', { timeout: 120_000 }, (_, task, cost) => {
    const told: { bound: number; cost: number | null }[] = [];
    const answer = planCuts(task, solver, thoroughEffort, (progress) => told.push(progress));
    expect(faultsOf(task, answer)).toEqual([]);
    expect(answer).toMatchObject({ kind: 'plan', cost, bound: cost });
    // Progress: bounds rise, costs fall, and the last one told is the answer.
    told.slice(1).forEach((now, index) => {
      const before = told[index]!;
      expect(now.bound).toBeGreaterThanOrEqual(before.bound);
      if (before.cost !== null) expect(now.cost).toBeLessThanOrEqual(before.cost);
      expect(now).not.toEqual(before);
    });
    expect(told.at(-1)).toEqual({ bound: cost, cost });
  });
});
