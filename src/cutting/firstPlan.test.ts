import { expect, test } from 'vitest';
import { firstPlan, unlimited } from './index.ts';
import { faultsOf } from './testing/checkTree.ts';
import { leastByProgramme } from './testing/everyPattern.ts';
import { smallTask } from './testing/randomTask.ts';

test('a first plan is a true plan with a true bound, the same in any order of the task', () => {
  let found = 0;
  for (let seed = 1; seed <= 200; seed++) {
    const task = smallTask(seed);
    const shown = `seed ${seed}: ${JSON.stringify(task)}`;
    const plan = firstPlan(task);
    const reordered = firstPlan({
      ...task,
      items: task.items.toReversed(),
      sheets: task.sheets.toReversed(),
    });
    expect(reordered?.cost, shown).toBe(plan?.cost);
    if (plan === null) continue;
    found++;
    expect(faultsOf(task, plan), shown).toEqual([]);
    if (seed % 10 > 0) continue;
    const least = leastByProgramme(task)!;
    expect(plan.cost, shown).toBeGreaterThanOrEqual(least);
    expect(plan.bound, shown).toBeLessThanOrEqual(least);
  }
  expect(found).toBeGreaterThan(100);
});

test('a hundred times the cards take no longer to think of', () => {
  const task = (cards: number) => ({
    items: [
      { width: 34, height: 44, need: cards, turns: true },
      { width: 30, height: 40, need: cards, turns: true },
      { width: 8, height: 40, need: 2 * cards, turns: true },
    ],
    sheets: [{ width: 68, height: 88, count: null, cost: 1 }],
    limits: unlimited,
  });
  expect(firstPlan(task(100_000))?.patterns.length).toBeLessThanOrEqual(
    firstPlan(task(1000))!.patterns.length + 3,
  );
});
