import { expect, test } from 'vitest';
import { type BoundCertificate, planCuts } from './index.ts';
import { everyProduction } from './testing/everyCut.ts';
import { smallTask } from './testing/randomTask.ts';
import { solver } from './testing/solver.ts';

test('the conditions hold for everything that can be cut, and give the bound', () => {
  for (let seed = 1; seed <= 80; seed++) {
    const task = smallTask(seed);
    const shown = `seed ${seed}: ${JSON.stringify(task)}`;
    const answer = planCuts(task, solver);
    if (answer.certificate === null) continue;
    const { groups, conditions } = answer.certificate;
    groups.forEach((group, g) => {
      const sheet = task.sheets[group[0]!]!;
      for (const made of everyProduction(task.items, task.limits, sheet)) {
        for (const { prices, sheets } of conditions) {
          const worth = made.reduce((sum, count, item) => sum + count * prices[item]!, 0);
          expect(worth, shown).toBeLessThanOrEqual(sheets[g]!);
        }
      }
    });
    const bound = leastCost(answer.certificate, task);
    if (answer.kind === 'plan') expect(bound, shown).toBe(answer.bound);
    else if (answer.proved) expect(bound, shown).toBeNull();
  }
});

/** The least cost of any counts that the certificate leaves, by trying all. */
function leastCost({ groups, conditions, refuted }: BoundCertificate, task: Parameters<typeof planCuts>[0]) {
  const pieces = task.items.reduce((sum, { need }) => sum + need, 0);
  const needs = conditions.map(({ prices }) =>
    prices.reduce((sum, price, i) => sum + price * task.items[i]!.need, 0),
  );
  let best: number | null = null;
  const visit = (counts: number[], cost: number): void => {
    if (best !== null && cost >= best) return;
    const group = groups[counts.length];
    if (group === undefined) {
      const enough = conditions.every(
        ({ sheets }, c) => counts.reduce((sum, n, g) => sum + n * sheets[g]!, 0) >= needs[c]!,
      );
      if (enough && !refuted.some((no) => counts.every((n, g) => n <= no.counts[g]!))) best = cost;
      return;
    }
    const most = group.reduce((sum, sheet) => sum + (task.sheets[sheet]!.count ?? pieces), 0);
    for (let n = 0; n <= Math.min(most, pieces); n++)
      visit([...counts, n], cost + n * task.sheets[group[0]!]!.cost);
  };
  visit([], 0);
  return best;
}
