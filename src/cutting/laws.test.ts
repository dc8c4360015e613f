import { expect, test } from 'vitest';
import {
  type CutTree,
  type CuttingAnswer,
  type CuttingTask,
  firstPlan,
  planCuts,
  type SheetType,
} from './index.ts';
import { chance } from './testing/chance.ts';
import { faultsOf } from './testing/checkTree.ts';
import { randomSet } from './testing/randomSet.ts';
import { solver } from './testing/solver.ts';

/*
 * What must hold between the answers to two tasks of which one asks more than the other, or the same in other
 * words. Where a proof is wanting only the bound of the one and the cost of the other can be laid side by side.
 */
const seeds = Array.from({ length: 24 }, (_, index) => 300 + index);

test.each(seeds)('seed %i: more stock never costs more', (seed) => {
  const int = chance(seed);
  const task = randomSet(seed);
  const before = answered(task);
  const more: SheetType[][] = [
    task.sheets.map((sheet, at) =>
      at === 0 && sheet.count !== null ? { ...sheet, count: sheet.count + 1 } : sheet,
    ),
    [...task.sheets, { width: int(16, 100), height: int(16, 100), count: int(1, 3), cost: int(0, 12) }],
    task.sheets.map((sheet) => ({ ...sheet, cost: Math.max(0, sheet.cost - 1) })),
  ];
  for (const sheets of more) expectNoDearer(answered({ ...task, sheets }), before);
});

test.each(seeds)('seed %i: a smaller piece, or one fewer, never costs more', (seed) => {
  const task = randomSet(seed);
  const before = answered(task);
  const [first, ...others] = task.items;
  // With marks a piece of another size may be one that cannot be measured off.
  const free = { ...task, limits: { ...task.limits, step: null, reach: null } };
  const freeBefore = answered(free);
  for (const smaller of [
    { ...first!, width: first!.width - 3 },
    { ...first!, height: first!.height - 1 },
    { ...first!, turns: true },
  ]) {
    expectNoDearer(answered({ ...free, items: [smaller, ...others] }), freeBefore);
  }
  const fewer = first!.need > 1 ? [{ ...first!, need: first!.need - 1 }, ...others] : others;
  expectNoDearer(answered({ ...task, items: fewer }), before);
});

test.each(seeds)('seed %i: fewer limits never cost more', (seed) => {
  const task = randomSet(seed);
  const { limits } = task;
  const strict = answered({
    ...task,
    limits: { step: limits.step ?? 2, longest: limits.longest ?? 88, reach: limits.reach ?? 44 },
  });
  for (const freed of ['step', 'longest', 'reach'] as const) {
    const looser = {
      step: limits.step ?? 2,
      longest: limits.longest ?? 88,
      reach: limits.reach ?? 44,
      [freed]: null,
    };
    expectNoDearer(answered({ ...task, limits: looser }), strict);
  }
});

test.each(seeds)('seed %i: what nobody needs changes nothing', (seed) => {
  const task = randomSet(seed);
  const before = answered(task);
  const sides = task.items.flatMap(({ width, height }) => [width, height]);
  const useless: SheetType[] = [
    { width: Math.min(...sides) - 1, height: 200, count: 5, cost: 1 },
    { width: 200, height: 200, count: 0, cost: 1 },
  ];
  for (const sheet of useless) {
    const after = answered({ ...task, sheets: [...task.sheets, sheet] });
    expect(plan(after), JSON.stringify(sheet)).toEqual(plan(before));
  }
  // A dearer sheet of the same size is never taken while there are others.
  const [main] = task.sheets;
  if (main!.count !== null) return;
  const dearer = answered({ ...task, sheets: [...task.sheets, { ...main!, cost: main!.cost + 1 }] });
  if (dearer.kind === 'plan' && before.kind === 'plan') expect(dearer.cost).toBe(before.cost);
});

test.each(seeds)('seed %i: the turned world has the turned plan', (seed) => {
  const task = randomSet(seed);
  const turned = {
    ...task,
    items: task.items.map((item) => ({ ...item, width: item.height, height: item.width })),
    sheets: task.sheets.map((sheet) => ({ ...sheet, width: sheet.height, height: sheet.width })),
  };
  const [upright, sideways] = [answered(task), answered(turned)];
  expect(figures(sideways)).toEqual(figures(upright));
  const [first, firstSideways] = [firstPlan(task), firstPlan(turned)];
  expect(firstSideways === null ? null : figures(firstSideways)).toEqual(
    first === null ? null : figures(first),
  );
});

function answered(task: CuttingTask): CuttingAnswer {
  const answer = planCuts(task, solver);
  expect(faultsOf(task, answer), JSON.stringify(task)).toEqual([]);
  return answer;
}

function proved(answer: CuttingAnswer): boolean {
  return answer.kind === 'plan' ? answer.cost === answer.bound : answer.proved;
}

/** `easier` asks no more than `harder`. */
function expectNoDearer(easier: CuttingAnswer, harder: CuttingAnswer): void {
  if (easier.kind === 'short') {
    if (easier.proved) expect(harder.kind).toBe('short');
    return;
  }
  if (harder.kind === 'short') return;
  expect(easier.bound).toBeLessThanOrEqual(harder.cost);
  if (proved(easier)) expect(easier.cost).toBeLessThanOrEqual(harder.cost);
}

/** The answer without what it rests on. */
function plan(answer: CuttingAnswer) {
  const { certificate: _, ...rest } = answer;
  return rest;
}

/** What an answer comes to, whichever way the sheets lie. */
function figures(answer: CuttingAnswer) {
  if (answer.kind === 'short') return { missing: answer.missing, proved: answer.proved };
  const settings = new Set<number>();
  let passes = 0;
  const visit = (tree: CutTree, times: number): void => {
    if (tree.kind !== 'cut') return;
    passes += times * (tree.parts.length - 1);
    for (const part of tree.parts.slice(0, -1)) settings.add(part[tree.axis]);
    for (const part of tree.parts) visit(part, times);
  };
  for (const { tree, times } of answer.patterns) visit(tree, times);
  const { cost, bound, sheetsBound } = answer;
  return { cost, bound, sheetsBound, passes, settings: settings.size };
}
