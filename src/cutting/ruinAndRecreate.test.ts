import { expect, test } from 'vitest';
import { ruinAndRecreate } from './ruinAndRecreate.ts';
import { faultsOf } from './testing/checkTree.ts';
import { leastByProgramme } from './testing/everyPattern.ts';
import { smallTask } from './testing/randomTask.ts';
import { tidied } from './treeBuilding.ts';

test('fills the sheets of a least plan, or nearly, and never fewer; the same every time', () => {
  let tried = 0;
  let full = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const random = smallTask(seed);
    const size = random.sheets[0]!;
    const task = { ...random, sheets: [{ ...size, count: null, cost: 1 }] };
    const least = leastByProgramme(task);
    if (least === null) continue;
    const needs = task.items.map(({ need }) => need);
    const weights = task.items.map(({ width, height }) => width * height);
    const filled = (sheets: number) => {
      const kinds = new Array<number>(sheets).fill(0);
      const { open } = ruinAndRecreate({ task, wanted: needs, kinds, weights, work: 100_000, seed });
      const patterns = kinds.map((sheet, index) => ({
        sheet,
        times: 1,
        tree: tidied(open.tree(index), task.limits),
      }));
      return { out: open.weightOut, missing: needs.map((_, item) => open.out(item)), patterns };
    };
    const shown = `seed ${seed}: ${JSON.stringify(task)}`;
    const { out, missing, patterns } = filled(least);
    const answer = { kind: 'short', best: patterns, missing, proved: false, certificate: null } as const;
    expect(
      faultsOf(task, answer).filter((fault) => fault !== 'short of nothing'),
      shown,
    ).toEqual([]);
    if (least > 1) expect(filled(least - 1).out, shown).toBeGreaterThan(0);
    if (seed % 10 === 0) expect(filled(least), shown).toEqual({ out, missing, patterns });
    tried++;
    if (out === 0) full++;
  }
  expect(tried).toBeGreaterThan(30);
  expect(full).toBeGreaterThanOrEqual(tried - 2);
});
