import { describe, expect, test } from 'vitest';
import { bestPattern, planCuts, type SearchEffort, unlimited, usualEffort } from './index.ts';
import { faultsOf } from './testing/checkTree.ts';
import { cuttingStock, gcut, limitedPatterns } from './testing/publishedInstances.ts';
import { solver } from './testing/solver.ts';

/** Enough for the 3000 x 3000 sheet of gcut13 without thinning. */
const thorough: SearchEffort = { ...usualEffort, positions: 2500, gridSplits: 3e9 };
const many = 100_000;

function gcutItems(sizes: string, need: number, turns: boolean) {
  const numbers = sizes.trim().split(/\s+/).map(Number);
  return Array.from({ length: numbers.length / 2 }, (_, i) => {
    return { width: numbers[2 * i]!, height: numbers[2 * i + 1]!, need, turns };
  });
}

function bestByArea(name: string, need: number, turns: boolean) {
  const { side, sizes } = gcut.find((instance) => instance.name === name)!;
  const items = gcutItems(sizes, need, turns);
  const values = items.map(({ width, height }) => width * height);
  return bestPattern({ sheet: { width: side, height: side }, items, values, limits: unlimited }, thorough);
}

describe('one sheet, worth most', () => {
  test.each(gcut)('$name, any number of each', ({ name, unlimited: value }) => {
    expect(bestByArea(name, many, false)).toMatchObject({ value, bound: value });
  });
  test('gcut1 with turning (University of Sao Paulo, IME)', () => {
    expect(bestByArea('gcut1', many, true)).toMatchObject({ value: 58136, bound: 58136 });
  });
  test('gcut1, one of each (University of Sao Paulo, IME)', () => {
    expect(bestByArea('gcut1', 1, false)).toMatchObject({ value: 48368, bound: 48368 });
  });
  test.each(limitedPatterns)('$name, limited numbers', ({ width, height, items, limited }) => {
    const best = bestPattern({
      sheet: { width, height },
      items: items.map(([w, h, , need]) => ({ width: w, height: h, need, turns: false })),
      values: items.map(([, , value]) => value),
      limits: unlimited,
    });
    expect(best).toMatchObject({ value: limited, bound: limited });
    const sum = best.made.reduce((total, count, item) => total + count * items[item]![2], 0);
    expect(sum).toBe(limited);
    best.made.forEach((count, item) => {
      expect(count).toBeLessThanOrEqual(items[item]![3]);
    });
  });
  test.each([
    ['cgcut1', 249],
    ['cgcut2', 3076],
    ['cgcut3', 2240],
  ])('%s, any number of each (TU Braunschweig, PackLib)', (name, value) => {
    const { width, height, items } = limitedPatterns.find((instance) => instance.name === name)!;
    const best = bestPattern({
      sheet: { width, height },
      items: items.map(([w, h]) => ({ width: w, height: h, need: many, turns: false })),
      values: items.map((item) => item[2]),
      limits: unlimited,
    });
    expect(best).toMatchObject({ value, bound: value });
  });
});

describe('pieces from a sheet, inches', () => {
  const tick = 40640;
  const rows: [sheet: [number, number], piece: [number, number], count: number, source: string][] = [
    [[8.5, 11], [5.5, 8.5], 2, 'many hobby tutorials'],
    [[8.5, 11], [4.25, 5.5], 4, 'hobby tutorials'],
    [[17, 22], [8.5, 11], 4, 'hobby tutorials'],
    [[8.5, 11], [2.25, 3.5], 10, 'hobby tutorial HT-3 has 8 and 9 with one direction only; 10 computed'],
    [[8.5, 11], [2.5, 3.5], 10, 'hobby tutorials HT-18, HT-20'],
    [[12, 12], [2.5, 3.5], 14, 'hobby tutorial HT-20 has 16 with stop cuts; 14 edge to edge'],
    [[12, 12], [5, 7], 3, 'hobby tutorial HT-21: three, or four with stop cuts'],
    [[12, 12], [5.5, 6.5], 3, 'hobby tutorial HT-22: three, or four with stop cuts'],
    [[22, 28], [5, 7], 17, 'hobby tutorial HT-23'],
    [[22, 28], [2.5, 3.5], 70, 'hobby tutorial HT-20'],
    [[12, 12], [6, 12], 2, 'hobby tutorial HT-5'],
    [[12, 12], [5, 10], 2, 'hobby tutorial HT-5'],
    [[12, 12], [4, 8], 4, 'hobby tutorial HT-5'],
    [[12, 12], [4, 12], 3, 'hobby tutorial HT-6'],
    [[12, 12], [4, 6], 6, 'hobby tutorial HT-7'],
    [[11, 8.5], [9.25, 7.75], 1, 'hobby tutorial HT-1: a base for a No. 10 envelope'],
    [[11, 8.5], [7, 4.875], 2, 'hobby tutorial HT-1 has the base; two from a letter sheet computed'],
    [[18, 22], [4.4, 6], 15, 'book of 1881, Project Gutenberg no. 42547, "Cutting paper"'],
    [[18, 22], [3, 11 / 3], 36, 'the same book'],
    [[18, 22], [3, 22 / 7], 42, 'the same book'],
    [[14.5, 18.5], [1.75, 5.25], 26, 'print-estimating manual has 24 in a grid; 26 computed'],
    [[25, 38], [8.5, 11], 8, 'from memory, and computed'],
    [[8.5, 11], [4, 5.25], 4, 'computed'],
    [[12, 12], [4, 5.25], 6, 'computed'],
    [[8.5, 11], [3.75, 5], 4, 'computed'],
    [[12, 12], [3.75, 5], 6, 'computed'],
    [[12, 12], [4.25, 5.5], 4, 'computed'],
    [[12, 12], [5.5, 8.5], 2, 'computed'],
    // Centimetres, in thousandths of an inch of the same number: only the ratios matter.
    [[133, 95], [6.5, 4.5], 429, 'school worksheet has 420 in a grid; 429 computed'],
    [[52, 38], [5, 5], 70, 'school quiz'],
    [[21, 29.7], [21, 14.8], 2, 'ISO 216: A5 is A4 halved and rounded down'],
    [[21, 29.7], [21, 14.9], 1, 'hobby tutorial HT-8 scores at 14.9, which two halves of A4 cannot be'],
    [[21, 29.7], [9.9, 21], 3, 'a third of A4, by ISO 216'],
    [[84.1, 118.9], [21, 29.7], 16, 'ISO 216: A0 gives sixteen of A4'],
    [[70.7, 100], [25, 35.3], 8, 'ISO 216: B1 gives eight of B4'],
  ];
  test.each(rows)('%j gives %j: %i (%s)', (sheet, piece, count) => {
    const [width, height] = sheet.map((size) => Math.round(size * tick)) as [number, number];
    // A third or a seventh of an inch is no whole number of ticks: rounded down, as the file format says.
    const [w, h] = piece.map((size) => Math.floor(size * tick + 1e-6)) as [number, number];
    const items = [{ width: w, height: h, need: many, turns: true }];
    const best = bestPattern({ sheet: { width, height }, items, values: [1], limits: unlimited });
    expect(best).toMatchObject({ value: count, bound: count });
  });
  test('an 8 in square, two 4 x 8 and one 4 in square come from 12 x 12 (forum tip)', () => {
    const items = [
      { width: 8, height: 8, need: 1, turns: true },
      { width: 4, height: 8, need: 2, turns: true },
      { width: 4, height: 4, need: 1, turns: true },
    ];
    const answer = planCuts(
      { items, sheets: [{ width: 12, height: 12, count: 1, cost: 1 }], limits: unlimited },
      solver,
    );
    expect(answer).toMatchObject({ kind: 'plan', cost: 1, bound: 1 });
  });
});

describe('one sheet into a set of pieces', () => {
  const oneSheet = (
    sheet: readonly [number, number],
    pieces: readonly (readonly [number, number, number])[],
  ) => {
    const task = {
      items: pieces.map(([width, height, need]) => ({ width, height, need, turns: false })),
      sheets: [{ width: sheet[0], height: sheet[1], count: 1, cost: 1 }],
      limits: unlimited,
    };
    const answer = planCuts(task, solver);
    expect(faultsOf(task, answer)).toEqual([]);
    return answer;
  };
  test('two of 5.5 x 8 in and a strip of 4 x 12 in from 12 x 12 (hobby tutorial HT-24)', () => {
    // Half inches.
    expect(
      oneSheet(
        [24, 24],
        [
          [11, 16, 2],
          [24, 8, 1],
        ],
      ),
    ).toMatchObject({ kind: 'plan', cost: 1 });
  });
  test('the strips of a letter sheet, and what comes of each (hobby tutorial HT-4)', () => {
    // Quarter inches; strips lie along the 8 1/2 in side.
    const pieces = [
      [10, 9, 2],
      [13, 9, 1],
      [9, 8, 2],
      [4, 8, 1],
      [12, 8, 1],
      [3, 6, 2],
      [5, 6, 4],
      [21, 6, 2],
      [14, 5, 2],
      [20, 5, 2],
      [34, 5, 1],
    ] as const;
    expect(oneSheet([34, 44], pieces)).toMatchObject({ kind: 'plan', cost: 1 });
  });
});

describe('cutting stock', () => {
  test.each(cuttingStock)('$name takes $sheets sheets', ({ side, sheets, items }) => {
    const task = {
      items: items.map(([width, height, need]) => ({ width, height, need, turns: false })),
      sheets: [{ width: side, height: side, count: null, cost: 1 }],
      limits: unlimited,
    };
    const answer = planCuts(task, solver);
    expect(faultsOf(task, answer)).toEqual([]);
    expect(answer).toMatchObject({ kind: 'plan', cost: sheets, bound: sheets, sheetsBound: sheets });
  });
});
