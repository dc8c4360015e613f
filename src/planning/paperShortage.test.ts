import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { leastByTrying } from '../cutting/testing/everyCut.ts';
import { paper } from '../layout/testing/build.ts';
import { inches, lengthOfTicks, type Size, zero } from '../measure/index.ts';
import type { Paper } from '../stash/index.ts';
import { trimmerWith } from '../trimming/testing/trimmers.ts';
import { paperTask } from './cuttingTask.ts';
import { paperShortage } from './paperShortage.ts';
import type { Piece } from './piece.ts';
import type { PaperShortage } from './shortage.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

const size = (width: number, height: number): Size => ({ width: inches(width), height: inches(height) });

function piece(id: string, of: Size, need: number, turn: Piece['turn'] = 'free'): Piece {
  return { id, part: id, paper: 'oat', size: of, need, spare: 0, turn };
}

function shortOf(from: Paper, pieces: readonly Piece[], trimmer = trimmerWith({})): PaperShortage {
  return paperShortage({ paper: from, pieces, proved: true, given: null }, { trimmer, solver });
}

describe('what would help', () => {
  it('is a quarter turn where the print stands in the way, also of a single piece', () => {
    const oat = paper('oat', [{ size: size(8, 11), count: 1 }], 'one-way');
    const short = shortOf(oat, [piece('strip', size(10, 2), 3, 'locked')]);
    expect([...short.never]).toEqual([['strip', 'direction']]);
    expect(short).toMatchObject({ limits: ['direction'], moreSheets: [], missingProved: true });
    const few = shortOf(oat, [piece('panel', size(5, 4), 4, 'locked')]);
    expect(few).toMatchObject({ limits: ['direction'], moreSheets: [{ stock: 0, count: 1, proved: true }] });
    expect(few.never.size).toBe(0);
  });

  it('is a sheet without margins, also for a single piece', () => {
    const margin = { left: inches(1), right: zero, top: zero, bottom: zero };
    const oat = paper('oat', [{ size: size(8, 8), count: 1, margin }]);
    expect(shortOf(oat, [piece('panel', size(4, 4), 4)])).toMatchObject({ limits: ['margins'] });
    const whole = shortOf(oat, [piece('whole', size(8, 8), 1)]);
    expect([...whole.never]).toEqual([['whole', 'margins']]);
  });

  it('is another trimmer: for its longest cut, its marks, its narrowest strip, and margins it cannot cut off', () => {
    const oat = paper('oat', [{ size: size(8, 8), count: 1 }]);
    const why = (trimmer: ReturnType<typeof trimmerWith>, from = oat) => {
      const short = shortOf(from, [piece('panel', size(3, 3), 4)], trimmer);
      return { never: [...short.never.values()], limits: short.limits, moreSheets: short.moreSheets };
    };
    const never = { never: ['trimmer'], limits: ['trimmer'], moreSheets: [] };
    expect(why(trimmerWith({ longest: inches(2) }))).toEqual(never);
    expect(why(trimmerWith({ marks: inches(7, 2) }))).toEqual(never);
    expect(why(trimmerWith({ narrowest: inches(4) }))).toEqual({ ...never, never: ['too-narrow'] });
    const margin = { left: inches(1), right: zero, top: zero, bottom: zero };
    const ragged = paper('oat', [{ size: size(8, 8), count: 1, margin }]);
    expect(why(trimmerWith({ longest: inches(7) }), ragged)).toMatchObject({ never: ['trimmer'] });
  });

  it('is a first sheet where there is none', () => {
    const oat = paper('oat', [{ size: size(8, 8), count: 0 }]);
    const short = shortOf(oat, [piece('panel', size(4, 4), 9)]);
    expect(short).toMatchObject({ limits: [], missingProved: true });
    const several = shortOf(oat, [piece('panel', size(4, 4), 9), piece('strip', size(1, 4), 9)]);
    expect(several).toMatchObject({
      missing: new Map([
        ['panel', 9],
        ['strip', 9],
      ]),
      missingProved: true,
    });
    expect(short.moreSheets).toEqual([{ stock: 0, count: 3, proved: true }]);
    expect(shortOf(paper('oat', []), [piece('panel', size(4, 4), 9)])).toMatchObject({
      limits: [],
      moreSheets: [],
      missing: new Map([['panel', 9]]),
    });
  });

  it('is found exactly for hundreds of sheets', () => {
    const oat = paper('oat', [{ size: size(8, 8), count: 2 }]);
    const short = shortOf(oat, [piece('panel', size(3, 3), 4_000)]);
    expect(short.missing).toEqual(new Map([['panel', 3_992]]));
    expect(short.moreSheets).toEqual([{ stock: 0, count: 998, proved: true }]);
  });

  it('is more of the one size that gives what is wanting', () => {
    const oat = paper('oat', [
      { size: size(4, 4), count: 1 },
      { size: size(12, 12), count: 0 },
      { size: size(2, 2), count: 9 },
      { size: size(4, 8), count: 1, scrap: true },
    ]);
    const short = shortOf(oat, [piece('large', size(10, 10), 2), piece('small', size(4, 4), 3)]);
    expect(short.missing).toEqual(new Map([['large', 2]]));
    expect(short.moreSheets).toEqual([{ stock: 1, count: 2, proved: true }]);
  });
});

describe('against every cut tried out on small sheets', () => {
  const ticks = (low: number, high: number) => fc.integer({ min: low, max: high }).map(lengthOfTicks);
  const sizes = (low: number, high: number) =>
    fc.record({ width: ticks(low, high), height: ticks(low, high) });
  const cases = fc.record({
    sheets: fc.array(fc.record({ size: sizes(3, 6), count: fc.integer({ min: 0, max: 2 }) }), {
      minLength: 1,
      maxLength: 2,
    }),
    pieces: fc.array(
      fc.record({
        size: sizes(1, 5),
        need: fc.integer({ min: 1, max: 4 }),
        turn: fc.constantFrom<Piece['turn']>('free', 'locked'),
      }),
      { minLength: 1, maxLength: 2 },
    ),
  });

  it('as few are wanting as is said to be proved, and as many sheets more are needed', () => {
    let proved = 0;
    fc.assert(
      fc.property(cases, ({ sheets, pieces: sketched }) => {
        const oat = paper('oat', sheets);
        const pieces = sketched.map(({ size: of, need, turn }, index) => piece(`p${index}`, of, need, turn));
        const canCut = (from: Paper, needs: readonly number[]) => {
          const some = pieces.flatMap((one, index) =>
            needs[index]! > 0 ? [{ ...one, need: needs[index]! }] : [],
          );
          return some.length === 0 || leastByTrying(paperTask(from, some, null).task, 6) !== null;
        };
        const needs = pieces.map(({ need }) => need);
        fc.pre(!canCut(oat, needs));
        const short = paperShortage(
          { paper: oat, pieces, proved: true, given: null },
          { trimmer: null, solver },
        );

        const missing = pieces.map(({ id }) => short.missing.get(id) ?? 0);
        expect(
          canCut(
            oat,
            needs.map((need, index) => need - missing[index]!),
          ),
        ).toBe(true);
        if (short.missingProved) {
          proved += 1;
          expect(sum(missing)).toBe(leastMissing(needs, (given) => canCut(oat, given)));
        }
        const { never, moreSheets } = short;
        const all = oat.sheets.map((stock) => ({ ...stock, count: 1 }));
        for (const [index, { id }] of pieces.entries())
          expect(never.has(id)).toBe(
            !canCut(
              { ...oat, sheets: all },
              needs.map((_, other) => Number(other === index)),
            ),
          );
        for (const [stock, sheet] of oat.sheets.entries()) {
          const found = moreSheets.find((more) => more.stock === stock);
          const withMore = (more: number) => ({
            ...oat,
            sheets: oat.sheets.with(stock, { ...sheet, count: sheet.count! + more }),
          });
          const few = [1, 2].find((more) => canCut(withMore(more), needs));
          if (few !== undefined) expect(found?.count).toBe(few);
          else if (found !== undefined) expect(found.count).toBeGreaterThan(2);
        }
      }),
      { numRuns: 150 },
    );
    expect(proved).toBeGreaterThan(50);
  });

  /** The fewest pieces left out in all so that the rest can be cut, every way tried. */
  function leastMissing(needs: readonly number[], canCut: (given: readonly number[]) => boolean): number {
    const ways = needs.reduce<number[][]>(
      (begun, need) =>
        begun.flatMap((way) => Array.from({ length: need + 1 }, (_, given) => [...way, given])),
      [[]],
    );
    return Math.min(...ways.filter(canCut).map((given) => sum(needs) - sum(given)));
  }

  function sum(counts: readonly number[]): number {
    return counts.reduce((total, count) => total + count, 0);
  }
});
