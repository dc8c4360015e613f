import { describe, expect, it } from 'vitest';
import { type CuttingTask, kinderWays, type Pattern, planCuts, unlimited } from '../cutting/index.ts';
import { chance } from '../cutting/testing/chance.ts';
import { lengthOfTicks, zero } from '../measure/index.ts';
import { type Effort, stepsFor } from '../trimming/index.ts';
import { kindnessGoals, kindnessOrder } from './kindness.ts';
import { leastWork } from './testing/everyCutting.ts';
import { testSolver } from './testing/solver.ts';

const solver = await testSolver();

function effortOf(task: CuttingTask, patterns: readonly Pattern[]): Effort {
  const sheets = patterns.flatMap(({ sheet, times, tree }) => {
    const { width, height } = task.sheets[sheet]!;
    const size = { width: lengthOfTicks(width), height: lengthOfTicks(height) };
    const squaring = { left: zero, right: zero, top: zero, bottom: zero };
    return Array.from({ length: times }, () => ({ size, squaring, tree }));
  });
  return stepsFor(
    sheets.map((sheet, index) => ({ ...sheet, id: `sheet-${index + 1}` })),
    null,
  ).effort;
}

function kindest(task: CuttingTask): { effort: Effort; settingsBound: number; passesBound: number } | null {
  const plan = planCuts(task, solver);
  if (plan.kind === 'short') return null;
  const { ways, ...bounds } = kinderWays(task, plan, { solver, most: 'settings', useful: 1 });
  const efforts = ways.map((way) => effortOf(task, way));
  efforts.sort((a, b) => a.settings - b.settings || a.passes - b.passes || a.turns - b.turns);
  return { effort: efforts[0]!, ...bounds };
}

describe('against every order of every cut, tried out on small sheets', () => {
  it.each([
    ['one sheet', 1, 5, 100],
    ['two sheets', 2, 4, 200],
  ] as const)('%s: fewest settings, then passes, then quarter turns', (_, most, largest, count) => {
    let compared = 0;
    for (let seed = 1; seed <= count; seed++) {
      const int = chance(seed);
      const sheet = { width: int(2, largest), height: int(2, largest) };
      const items = Array.from({ length: int(1, 2) }, () => ({
        width: int(1, 3),
        height: int(1, 3),
        need: int(1, 3),
        turns: int(0, 1) === 1,
      }));
      const task: CuttingTask = { items, sheets: [{ ...sheet, count: most, cost: 1 }], limits: unlimited };
      const found = kindest(task);
      const pieces = items.reduce((sum, { need }) => sum + need, 0);
      if (found === null || pieces > 4) continue;
      const plan = planCuts(task, solver);
      const sheets = plan.kind === 'plan' ? plan.patterns.reduce((sum, { times }) => sum + times, 0) : 0;
      if (sheets !== most) continue;
      const truth = leastWork(sheet, sheets, items, found.effort);
      const shown = `seed ${seed}: ${JSON.stringify({ sheet, items, found, truth })}`;
      expect(truth, shown).not.toBeNull();
      compared++;
      expect(found.settingsBound, shown).toBeLessThanOrEqual(truth!.settings);
      if (found.settingsBound === truth!.settings) {
        expect(found.passesBound, shown).toBeLessThanOrEqual(truth!.passes);
      }
      expect(found.effort, shown).toEqual(truth);
    }
    expect(compared).toBeGreaterThan(15);
  });
});

it('asks for the same work however large the sheets are', () => {
  const scaled = (scale: number): CuttingTask => ({
    items: [
      { width: 3 * scale, height: 2 * scale, need: 7, turns: true },
      { width: scale, height: 4 * scale, need: 5, turns: false },
    ],
    sheets: [{ width: 9 * scale, height: 7 * scale, count: null, cost: 1 }],
    limits: unlimited,
  });
  for (const scale of [2 ** 24, 2 ** 24 + 1, 2 ** 30 + 1]) {
    expect(kindest(scaled(scale)), `${scale}`).toEqual(kindest(scaled(1)));
  }
});

describe('the goals', () => {
  it('follow in their order behind what is wanted first', () => {
    expect(kindnessGoals([])).toEqual(kindnessOrder);
    expect(kindnessGoals(['leftover', 'passes'])).toEqual([
      'leftover',
      'passes',
      'settings',
      'turns',
      'alike',
      'paper',
    ]);
  });
});
