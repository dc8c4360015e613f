import { describe, expect, test } from 'vitest';
import { type CutLimits, type CuttingTask, planCuts, unlimited, usualEffort } from './index.ts';
import { chance } from './testing/chance.ts';
import { faultsOf } from './testing/checkTree.ts';
import { leastByTrying } from './testing/everyCut.ts';
import { leastByProgramme } from './testing/everyPattern.ts';
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
    ['marks', (int) => ({ ...unlimited, step: int(2, 4) }), 150],
    ['a longest cut', (int) => ({ ...unlimited, longest: int(3, 8) }), 150],
    ['marks and a longest cut', (int) => ({ ...unlimited, step: int(2, 3), longest: int(4, 8) }), 150],
    ['a reach', (int) => ({ ...unlimited, reach: int(0, 6) }), 150],
    ['marks and a reach', (int) => ({ ...unlimited, step: int(2, 3), reach: int(1, 6) }), 200],
    [
      'marks, a longest cut and a reach',
      (int) => ({ step: int(2, 3), longest: int(4, 8), reach: int(2, 6) }),
      300,
    ],
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

test('what short sheets give instead is not worked out where only the answer is wanted', () => {
  for (let seed = 1; seed <= 100; seed++) {
    const task = randomTask(seed, () => unlimited);
    const usual = planCuts(task, solver);
    const brief = planCuts(task, solver, { ...usualEffort, partial: false });
    expect(brief.kind, `seed ${seed}`).toBe(usual.kind);
    if (brief.kind !== 'short' || usual.kind !== 'short') continue;
    expect(brief.proved, `seed ${seed}`).toBe(usual.proved);
    for (const [item, missing] of brief.missing.entries())
      expect(missing, `seed ${seed}`).toBeGreaterThanOrEqual(usual.missing[item]!);
  }
});

describe('against an integer programme over every pattern of small sheets', () => {
  test('many pieces, mixed priced and limited sheets', () => {
    for (let seed = 1; seed <= 120; seed++) {
      const int = chance(1000 + seed);
      const step = int(0, 3) === 0 ? int(2, 3) : null;
      const longest = int(0, 3) === 0 ? int(5, 9) : null;
      const reach = int(0, 3) === 0 ? int(1, 6) : null;
      const items = Array.from({ length: int(1, 4) }, () => ({
        width: int(1, 6),
        height: int(1, 6),
        need: int(1, 25),
        turns: int(0, 1) === 1,
      }));
      const sheets = Array.from({ length: int(1, 3) }, () => ({
        width: int(5, 10),
        height: int(5, 10),
        count: int(0, 1) === 0 ? null : int(1, 6),
        cost: int(1, 12),
      }));
      const task = { items, sheets, limits: { step, longest, reach } };
      const answer = planCuts(task, solver);
      const shown = `seed ${1000 + seed}: ${JSON.stringify(task)}`;
      expect(faultsOf(task, answer), shown).toEqual([]);
      const truth = leastByProgramme(task);
      if (answer.kind === 'short') {
        expect(truth, shown).toBeNull();
        expect(answer.proved, shown).toBe(true);
        continue;
      }
      expect({ cost: answer.cost, bound: answer.bound }, shown).toEqual({ cost: truth, bound: truth });

      const more = { width: int(5, 10), height: int(5, 10), count: 1, cost: int(0, 12) };
      const richer = planCuts({ ...task, sheets: [...sheets, more] }, solver);
      expect(
        richer.kind === 'plan' && richer.cost <= answer.cost,
        `${shown} and ${JSON.stringify(more)}`,
      ).toBe(true);
    }
  });
});
