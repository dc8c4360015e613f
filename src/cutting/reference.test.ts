import { expect, test } from 'vitest';
import { type CuttingTask, planCuts } from './index.ts';
import { chance } from './testing/chance.ts';
import { faultsOf } from './testing/checkTree.ts';
import { leastByTrying } from './testing/everyCut.ts';
import { leastByProgramme } from './testing/everyPattern.ts';
import { leastByTable } from './testing/leastByTable.ts';
import { solver } from './testing/solver.ts';

/** Up to three kinds, a few hundred states of what may be wanted, from mixed sheets of any price and number. */
function randomTask(seed: number): CuttingTask {
  const int = chance(seed);
  const seldom = (low: number, high: number) => (int(0, 3) === 0 ? int(low, high) : null);
  const limits = { step: seldom(2, 3), longest: seldom(5, 10), reach: seldom(2, 6) };
  const items = Array.from({ length: int(1, 3) }, () => ({
    width: int(1, 7),
    height: int(1, 7),
    need: int(1, 9),
    turns: int(0, 1) === 1,
  }));
  const sheets = Array.from({ length: int(1, 4) }, () => {
    const count = int(0, 1) === 0 ? null : int(1, 4);
    return { width: int(4, 11), height: int(4, 11), count, cost: count === null ? int(1, 9) : int(0, 9) };
  });
  return { items, sheets, limits };
}

const runs = [100, 200, 300, 400].map((first) => [first, first + 99] as const);

test.each(runs)(
  'seeds %i to %i: least cost and fewest sheets, by a table of what is wanted',
  (first, last) => {
    for (let seed = first; seed <= last; seed++) {
      const task = randomTask(seed);
      const shown = `seed ${seed}: ${JSON.stringify(task)}`;
      const answer = planCuts(task, solver);
      expect(faultsOf(task, answer), shown).toEqual([]);
      const truth = leastByTable(task);
      if (answer.kind === 'short') {
        expect(truth, shown).toBeNull();
        expect(answer.proved, shown).toBe(true);
        continue;
      }
      const { cost, bound, sheetsBound } = answer;
      const sheets = answer.patterns.reduce((sum, { times }) => sum + times, 0);
      expect({ cost, bound, sheets, sheetsBound }, shown).toEqual({
        ...truth,
        bound: truth?.cost,
        sheetsBound: truth?.sheets,
      });
    }
  },
);

test('the second opinions agree with one another', () => {
  for (let seed = 500; seed < 560; seed++) {
    const task = randomTask(seed);
    const shown = `seed ${seed}: ${JSON.stringify(task)}`;
    const byTable = leastByTable(task);
    expect(leastByProgramme(task), shown).toBe(byTable?.cost ?? null);
    if (byTable === null || byTable.sheets <= 4) expect(leastByTrying(task, 4), shown).toEqual(byTable);
  }
});
