import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthOfTicks, millimetres } from '../measure/index.ts';
import { canSquare, squaredSize, squaringCuts } from './squaring.ts';
import { stepsFor } from './steps.ts';
import { replayed } from './testing/replayed.ts';
import { sizeOfItem, treeArbitrary } from './testing/trees.ts';
import { trimmerWith } from './testing/trimmers.ts';

describe('canSquare', () => {
  const a4 = { width: millimetres(210), height: millimetres(297) };
  const margins = (left: number, right: number, top: number, bottom: number) => ({
    left: millimetres(left),
    right: millimetres(right),
    top: millimetres(top),
    bottom: millimetres(bottom),
  });
  const fives = trimmerWith({ marks: millimetres(5) });

  test.each([
    ['without a trimmer any margin', margins(3, 1, 4, 1), null, true],
    ['no margins', margins(0, 0, 0, 0), fives, true],
    ['210 less 5 on the marks', margins(5, 0, 0, 0), fives, true],
    ['297 less 2 on the marks', margins(0, 0, 2, 0), fives, true],
    ['neither 207 nor 3 on the marks', margins(3, 0, 0, 0), fives, false],
    ['297 less 4 off, but less 2 and then 5 or 5 and then 2 on', margins(0, 0, 5, 2), fives, true],
    ['margins as wide as the sheet', margins(105, 105, 0, 0), null, false],
  ])('%s', (_, squaring, trimmer, can) => {
    expect(canSquare(a4, squaring, trimmer)).toBe(can);
  });

  test('a cut may be too long until the other margin is off', () => {
    const trimmer = trimmerWith({ longest: millimetres(295) });
    expect(canSquare(a4, margins(5, 0, 0, 0), trimmer)).toBe(false);
    expect(canSquare(a4, margins(5, 0, 2, 0), trimmer)).toBe(true);
    expect(squaringCuts(a4, margins(5, 0, 2, 0), trimmer, 'height')!.map(({ edge }) => edge)).toEqual([
      'top',
      'left',
    ]);
  });
});

const side = fc.integer({ min: 8, max: 30 });
const margin = fc.integer({ min: 0, max: 3 });
const squarings = fc.record({ left: margin, right: margin, top: margin, bottom: margin });

test('a sheet can be squared exactly when some order of single cuts does it', () => {
  const limits = fc.record({
    marks: fc.integer({ min: 1, max: 5 }),
    longest: fc.integer({ min: 8, max: 30 }),
    reach: fc.integer({ min: 1, max: 35 }),
  });
  fc.assert(
    fc.property(side, side, squarings, limits, (width, height, amounts, limit) => {
      const size = sizeOf(width, height);
      const squaring = squaringOf(amounts);
      // Every way, cut by cut: is what stays or the margin on the marks, and the blade long enough?
      const someWay = (w: number, h: number, left: readonly (readonly [string, number])[]): boolean =>
        left.length === 0 ||
        left.some(([edge, amount]) => {
          const across = edge === 'left' || edge === 'right';
          const stays = (across ? w : h) - amount;
          const marked = [stays, amount].some((set) => set % limit.marks === 0 && set <= limit.reach);
          const reached = (across ? h : w) <= limit.longest;
          const others = left.filter(([other]) => other !== edge);
          return marked && reached && someWay(across ? stays : w, across ? h : stays, others);
        });
      const wanted = Object.entries(amounts).filter(([, amount]) => amount > 0);
      const inside = amounts.left + amounts.right < width && amounts.top + amounts.bottom < height;
      expect(canSquare(size, squaring, trimmerWith(limit))).toBe(inside && someWay(width, height, wanted));
    }),
    { numRuns: 2000 },
  );
});

test('sheets with margins give their pieces, one pass a margin, and no more turns than needed', () => {
  const sheets = fc
    .record({ width: side, height: side, amounts: squarings })
    .chain(({ width, height, amounts }) => {
      const squared = squaredSize(sizeOf(width, height), squaringOf(amounts));
      const shape = { depth: 3, parts: 3, marks: 1, variety: 4, tidy: false };
      return treeArbitrary(squared, shape).map((tree) => ({ width, height, amounts, tree }));
    });
  fc.assert(
    fc.property(fc.array(sheets, { minLength: 1, maxLength: 4 }), (all) => {
      const cut = all.map(({ width, height, amounts, tree }, index) => ({
        id: `q-${index}`,
        size: sizeOf(width, height),
        squaring: squaringOf(amounts),
        tree,
      }));
      const { steps, finished, leftovers, effort } = stepsFor(cut, null);
      const { table, passes, settings, turns } = replayed(steps, cut);
      expect(effort).toEqual({ passes, settings, turns });
      expect(table.size).toBe(finished.size + leftovers.length);
      for (const [id, item] of finished) expect(table.get(id)).toEqual(sizeOfItem(item));
      const margins = all.flatMap(({ amounts }) => Object.values(amounts).filter((amount) => amount > 0));
      const squaring = steps.filter(({ squares }) => squares !== undefined);
      expect(squaring.reduce((count, { take }) => count + take.length, 0)).toBe(margins.length);

      // The same sheets squared beforehand: each margin is a pass; a sheet is turned once more at most where
      // margins lie on both axes or across the first cut, and never otherwise.
      const bare = cut.map((sheet) => ({
        ...sheet,
        size: squaredSize(sheet.size, sheet.squaring),
        squaring: squaringOf({ left: 0, right: 0, top: 0, bottom: 0 }),
      }));
      const without = stepsFor(bare, null);
      expect(effort.passes).toBe(without.effort.passes + margins.length);
      const moreTurns = all.filter(({ amounts }, index) => {
        const axes = new Set<string>();
        if (amounts.left + amounts.right > 0) axes.add('width');
        if (amounts.top + amounts.bottom > 0) axes.add('height');
        const first = without.steps.find(({ take }) => take.includes(`q-${index}`));
        if (axes.size > 0 && first !== undefined) axes.add(first.axis);
        return axes.size > 1;
      });
      expect(effort.turns).toBe(without.effort.turns + moreTurns.length);
    }),
    { numRuns: 150 },
  );
});

function sizeOf(width: number, height: number) {
  return { width: lengthOfTicks(width), height: lengthOfTicks(height) };
}

function squaringOf(amounts: { left: number; right: number; top: number; bottom: number }) {
  return {
    left: lengthOfTicks(amounts.left),
    right: lengthOfTicks(amounts.right),
    top: lengthOfTicks(amounts.top),
    bottom: lengthOfTicks(amounts.bottom),
  };
}
