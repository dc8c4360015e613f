import { describe, expect, test } from 'vitest';
import { type CutLimits, type CuttingTask, planCuts, unlimited } from './index.ts';
import { chance } from './testing/chance.ts';
import { faultsOf } from './testing/checkTree.ts';
import { leastByTrying } from './testing/everyCut.ts';
import { solver } from './testing/solver.ts';

function randomTask(
  seed: number,
  limits: (int: (low: number, high: number) => number) => CutLimits,
): CuttingTask {
  const int = chance(seed);
  const items = Array.from({ length: int(1, 3) }, () => ({
    width: int(1, 6),
    height: int(1, 6),
    need: int(1, 3),
    turns: int(0, 1) === 1,
  }));
  const sheets = Array.from({ length: int(1, 3) }, () => ({
    width: int(4, 9),
    height: int(4, 9),
    count: int(0, 2) === 0 ? null : int(0, 2),
    cost: int(0, 2) === 0 ? 0 : int(1, 9),
  })).map((sheet) => (sheet.cost === 0 && sheet.count === null ? { ...sheet, count: 1 } : sheet));
  return { items, sheets, limits: limits(int) };
}

describe('against every cut tried out on small sheets', () => {
  const kinds: [string, (int: (low: number, high: number) => number) => CutLimits, number][] = [
    ['no limits', () => unlimited, 150],
    ['marks', (int) => ({ step: int(2, 4), longest: null }), 150],
    ['a longest cut', (int) => ({ step: null, longest: int(3, 8) }), 150],
    ['marks and a longest cut', (int) => ({ step: int(2, 3), longest: int(4, 8) }), 150],
  ];
  test.each(kinds)('%s', (_, limits, count) => {
    for (let seed = 1; seed <= count; seed++) {
      const task = randomTask(seed, limits);
      const answer = planCuts(task, solver);
      expect(faultsOf(task, answer), `seed ${seed}`).toEqual([]);
      const most = 5;
      const truth = leastByTrying(task, most);
      const shown = `seed ${seed}: ${JSON.stringify(task)}`;
      if (answer.kind === 'short') {
        expect(answer.proved, shown).toBe(true);
        expect(truth, shown).toBeNull();
        continue;
      }
      expect(answer.bound, shown).toBe(answer.cost);
      const sheets = answer.patterns.reduce((sum, pattern) => sum + pattern.times, 0);
      expect(answer.sheetsBound, shown).toBe(sheets);
      if (truth === null) expect(sheets, shown).toBeGreaterThan(most);
      // With more sheets than were tried out a plan may cost less.
      else if (sheets > most) expect(answer.cost, shown).toBeLessThan(truth.cost);
      else expect({ cost: answer.cost, sheets }, shown).toEqual(truth);
    }
  });
});
