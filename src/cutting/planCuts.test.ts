import { describe, expect, test } from 'vitest';
import { type CutLimits, type CuttingTask, planCuts, unlimited } from './index.ts';
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

describe('against an integer programme over every pattern of small sheets', () => {
  test('many pieces, mixed priced and limited sheets', () => {
    for (let seed = 1; seed <= 120; seed++) {
      const int = chance(1000 + seed);
      const step = int(0, 3) === 0 ? int(2, 3) : null;
      const longest = int(0, 3) === 0 ? int(5, 9) : null;
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
      const task = { items, sheets, limits: { step, longest } };
      const answer = planCuts(task, solver);
      const shown = `seed ${1000 + seed}: ${JSON.stringify(task)}`;
      expect(faultsOf(task, answer), shown).toEqual([]);
      const truth = leastByProgramme(task);
      if (answer.kind === 'short') {
        expect(truth, shown).toBeNull();
        expect(answer.proved, shown).toBe(true);
      } else {
        expect({ cost: answer.cost, bound: answer.bound }, shown).toEqual({ cost: truth, bound: truth });
      }
    }
  });
});

/** Sets of cards as they are made, in eighths of an inch or in millimetres. */
function practicalTask(seed: number): CuttingTask {
  const int = chance(seed);
  const inches = int(0, 1) === 0;
  const usual: [number, number][] = inches
    ? [
        [68, 88],
        [96, 96],
      ]
    : [
        [210, 297],
        [305, 305],
      ];
  const [low, high] = inches ? [6, 44] : [15, 148];
  const cards = int(5, 40);
  const items = Array.from({ length: int(1, 4) }, () => ({
    width: int(low, high),
    height: int(low, high),
    need: cards * int(1, 2),
    turns: int(0, 2) > 0,
  }));
  const [width, height] = usual[int(0, 1)]!;
  const scraps = Array.from({ length: int(0, 2) }, () => ({
    width: int(high, 2 * high),
    height: int(high, 2 * high),
    count: int(1, 2),
    cost: 0,
  }));
  const whole = { width, height, count: int(0, 3) === 0 ? 3 * cards : null, cost: width * height };
  const limits = { step: inches || int(0, 3) > 0 ? null : 5, longest: int(0, 3) > 0 ? null : 3 * high };
  return { items, sheets: [...scraps, whole], limits };
}

describe('what a changed task changes', () => {
  const seeds = Array.from({ length: 40 }, (_, index) => 5000 + index);
  const result = (task: CuttingTask) => {
    const answer = planCuts(task, solver);
    expect(faultsOf(task, answer)).toEqual([]);
    return answer.kind === 'plan'
      ? { cost: answer.cost, bound: answer.bound, sheets: answer.sheetsBound }
      : { proved: answer.proved };
  };

  test.each(seeds)('seed %i: order, axes, unit, one sheet more, asking twice', (seed) => {
    const task = practicalTask(seed);
    const before = result(task);
    expect(planCuts(task, solver)).toEqual(planCuts(task, solver));

    const reordered = { ...task, items: task.items.toReversed(), sheets: task.sheets.toReversed() };
    expect(result(reordered)).toEqual(before);

    const swapped = <Sized extends { width: number; height: number }>(sized: Sized) => ({
      ...sized,
      width: sized.height,
      height: sized.width,
    });
    const transposed = { ...task, items: task.items.map(swapped), sheets: task.sheets.map(swapped) };
    const proved = 'cost' in before ? before.cost === before.bound : before.proved;
    if (proved) expect(result(transposed)).toEqual(before);

    const scaled = <Sized extends { width: number; height: number }>(sized: Sized) => ({
      ...sized,
      width: 7 * sized.width,
      height: 7 * sized.height,
    });
    const { step, longest } = task.limits;
    const larger = {
      items: task.items.map(scaled),
      sheets: task.sheets.map(scaled),
      limits: { step: step === null ? null : 7 * step, longest: longest === null ? null : 7 * longest },
    };
    if (proved) expect(result(larger)).toEqual(before);

    const more = result({
      ...task,
      sheets: [...task.sheets, { width: 100, height: 100, count: 1, cost: 5000 }],
    });
    if ('cost' in before && proved) {
      expect('cost' in more ? more.bound : Number.POSITIVE_INFINITY).toBeLessThanOrEqual(before.cost);
    }
    if ('cost' in more && 'cost' in before && more.cost === more.bound) {
      expect(more.cost).toBeLessThanOrEqual(before.cost);
    }
  });
});

describe('sets worked out by hand', () => {
  const plan = (task: CuttingTask) => {
    const answer = planCuts(task, solver);
    expect(faultsOf(task, answer)).toEqual([]);
    return answer;
  };

  test('ten birthday cards: cream 5, coral 3, white 3 letter sheets; twelve panels from a 12 in square', () => {
    // Quarter inches.
    const letter = (count: number) => ({ width: 34, height: 44, count, cost: 1 });
    const base = { width: 34, height: 22, need: 10, turns: true };
    const mat = { width: 16, height: 21, need: 10, turns: true };
    const smallMat = { width: 13, height: 4, need: 10, turns: true };
    const sentiment = { width: 12, height: 3, need: 10, turns: true };
    const sheets = (items: CuttingTask['items'], count: number) =>
      plan({ items, sheets: [letter(count)], limits: unlimited });
    expect(sheets([base], 6)).toMatchObject({ kind: 'plan', cost: 5, bound: 5 });
    expect(sheets([mat, smallMat], 4)).toMatchObject({ kind: 'plan', cost: 3, bound: 3 });
    expect(sheets([mat, sentiment], 3)).toMatchObject({ kind: 'plan', cost: 3, bound: 3 });
    const panels = (side: number, need: number) =>
      plan({
        items: [{ width: 60, height: 48, need, turns: false }],
        sheets: [{ width: side, height: side, count: 1, cost: 1 }],
        limits: unlimited,
      });
    // Sixteenths: nothing to spare in 12 in, and one short in 11 15/16 in.
    expect(panels(192, 12)).toMatchObject({ kind: 'plan', cost: 1 });
    expect(panels(191, 9)).toMatchObject({ kind: 'plan', cost: 1 });
    expect(panels(191, 10)).toMatchObject({ kind: 'short', proved: true, missing: [1] });
  });

  test('two sheets of gum leaves give ten cards, never eleven or twelve', () => {
    // Tenths of a millimetre.
    const cards = (need: number, turns: boolean) =>
      plan({
        items: [
          { width: 1420, height: 720, need, turns: false },
          { width: 380, height: 1420, need, turns },
        ],
        sheets: [{ width: 3048, height: 3048, count: 2, cost: 1 }],
        limits: unlimited,
      });
    expect(cards(10, false)).toMatchObject({ kind: 'plan', cost: 2, bound: 2 });
    for (const need of [11, 12]) {
      expect(cards(need, false)).toMatchObject({ kind: 'short', proved: true });
      expect(cards(need, true)).toMatchObject({ kind: 'short', proved: true });
    }
  });

  test.each([
    [15, 159],
    [22, 173],
    [23, 175],
  ])('ten paper ribbons with a tuck of %i mm come from one sheet', (_, wrap) => {
    const items = [
      [wrap, 20],
      [130, 20],
      [60, 20],
      [40, 12],
    ].map(([width, height]) => ({ width: 10 * width!, height: 10 * height!, need: 10, turns: false }));
    const sheets = [{ width: 3048, height: 3048, count: 1, cost: 1 }];
    expect(plan({ items, sheets, limits: unlimited })).toMatchObject({ kind: 'plan', cost: 1, bound: 1 });
  });

  test('wrap and loop come from one strip with a tuck of 22 mm, not with one of 23', () => {
    const strip = (wrap: number) =>
      plan({
        items: [wrap, 130].map((width) => ({ width: 10 * width, height: 200, need: 1, turns: false })),
        sheets: [{ width: 3048, height: 200, count: 1, cost: 1 }],
        limits: unlimited,
      });
    expect(strip(173)).toMatchObject({ kind: 'plan' });
    expect(strip(175)).toMatchObject({ kind: 'short', proved: true });
  });

  test('marks of 5 mm: an A4 sheet is measured to 290, and a piece of 148 mm cannot be', () => {
    const halves = (height: number) =>
      plan({
        items: [{ width: 210, height, need: 2, turns: false }],
        sheets: [{ width: 210, height: 297, count: 1, cost: 1 }],
        limits: { step: 5, longest: null },
      });
    expect(halves(145)).toMatchObject({ kind: 'plan', cost: 1 });
    expect(halves(148)).toMatchObject({ kind: 'short', proved: true });
  });
});
