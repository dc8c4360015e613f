import { describe, expect, test } from 'vitest';
import { type CutTree, type CuttingTask, planCuts } from '../cutting/index.ts';
import { chance } from '../cutting/testing/chance.ts';
import { solver } from '../cutting/testing/solver.ts';
import { inches, type Length, lengthOfTicks, type Size, zero } from '../measure/index.ts';
import { canSquare, squaringCuts } from './squaring.ts';
import { stepsFor } from './steps.ts';
import { replayed } from './testing/replayed.ts';
import { trimmerWith } from './testing/trimmers.ts';
import { cutLimitsOf } from './trimmer.ts';

const noMargins = { left: zero, right: zero, top: zero, bottom: zero };
const fourInches = trimmerWith({ marks: inches(1), reach: inches(4) });

describe('worked by hand, with rulers of 4 in', () => {
  test('two panels of 3 in are measured off a strip of 12 in, and the one of 6 in remains', () => {
    const tree = row('width', [piece(3, 9, 0), piece(6, 9, 1), piece(3, 9, 0)]);
    const { steps, finished } = stepsFor([sheet(tree)], fourInches);
    expect(steps).toEqual([
      {
        step: 1,
        take: ['meadow-1'],
        axis: 'width',
        set: inches(3),
        repeat: 2,
        gives: [['meadow-1a', 'meadow-1b']],
        rest: ['meadow-1c'],
      },
    ]);
    expect(finished.get('meadow-1c')).toBe(1);
  });

  test('what is over beside a piece of 7 in is measured off: 5 in as 4 and 1, 6 in as 3 and 3', () => {
    const settings = (over: number) => {
      const { steps, finished, leftovers } = stepsFor(
        [sheet(row('width', [piece(7, 9, 0), { kind: 'rest', ...size(over, 9) }]))],
        fourInches,
      );
      expect([...finished.values()]).toEqual([0]);
      expect(leftovers).toHaveLength(2);
      return steps.map(({ set, repeat }) => [set / inches(1), repeat]);
    };
    expect(settings(5)).toEqual([
      [4, 1],
      [1, 1],
    ]);
    expect(settings(6)).toEqual([[3, 2]]);
  });

  test('a rest of 6 in remains whole where the pieces beside it can be measured', () => {
    const tree = row('width', [piece(3, 9, 0), { kind: 'rest', ...size(6, 9) }, piece(3, 9, 0)]);
    const { steps, leftovers } = stepsFor([sheet(tree)], fourInches);
    expect(steps.map(({ set, repeat }) => [set / inches(1), repeat])).toEqual([[3, 2]]);
    expect(leftovers.map((left) => left.size)).toEqual([size(6, 9)]);
  });

  test('two parts beyond the reach are no cut of this trimmer', () => {
    const tree = row('width', [piece(6, 9, 0), piece(5, 9, 1)]);
    expect(() => stepsFor([sheet(tree)], fourInches)).toThrow('beyond the reach');
  });

  test('a margin is measured where what stays is beyond the reach, and left where it is beyond it too', () => {
    const left = (margin: Length) => ({ ...noMargins, left: margin });
    const cuts = squaringCuts(size(12, 9), left(inches(1)), fourInches, null);
    expect(cuts?.map(({ measured, set }) => [measured, set])).toEqual([['margin', inches(1)]]);
    expect(canSquare(size(12, 9), left(inches(5)), fourInches)).toBe(false);
  });

  test('a ruler that is off is told at every step, and counts for the reach', () => {
    const off = { ...fourInches, correction: inches(1, 32) };
    const tree = row('width', [piece(3, 9, 0), piece(6, 9, 1), piece(3, 9, 0)]);
    expect(stepsFor([sheet(tree)], off).steps.map(({ set, dial }) => [set, dial])).toEqual([
      [inches(3), inches(95, 32)],
    ]);
    const other = { ...off, reach: { measuringSide: inches(2), otherSide: inches(4) } };
    const [step] = stepsFor([sheet(tree)], other).steps;
    expect(step).toMatchObject({ set: inches(3), otherSide: true });
    expect(step).not.toHaveProperty('dial');
  });
});

test('the steps of planned sheets measure nothing beyond the reach or off the marks', () => {
  let several = 0;
  for (let seed = 1; seed <= 250; seed += 1) {
    const int = chance(seed);
    const trimmer = trimmerWith({
      ...(int(0, 1) === 0 ? { marks: int(2, 3) } : {}),
      ...(int(0, 1) === 0 ? { longest: int(8, 16) } : {}),
      reach: int(2, 7),
      ...(int(0, 2) === 0 ? { otherReach: int(1, 9) } : {}),
      correction: int(-1, 1),
    });
    const limits = cutLimitsOf(trimmer);
    const task: CuttingTask = {
      items: Array.from({ length: int(1, 4) }, () => ({
        width: int(1, 12),
        height: int(1, 12),
        need: int(1, 5),
        turns: int(0, 1) === 1,
      })),
      sheets: [{ width: int(8, 16), height: int(8, 16), count: null, cost: 1 }],
      limits,
    };
    const answer = planCuts(task, solver);
    const patterns = answer.kind === 'plan' ? answer.patterns : answer.best;
    const sheets = patterns.flatMap(({ tree, times }, pattern) =>
      Array.from({ length: times }, (_, copy) => sheet(tree, `p-${pattern}-${copy}x`)),
    );
    const { steps, effort } = stepsFor(sheets, trimmer);
    const shown = `seed ${seed}: ${JSON.stringify({ task, reach: trimmer.reach })}`;
    const count = replayed(steps, sheets);
    expect(count.passes, shown).toBe(effort.passes);
    for (const { set, dial, otherSide } of steps) {
      if (trimmer.marks !== null) expect(set % trimmer.marks, shown).toBe(0);
      const { measuringSide, otherSide: across } = trimmer.reach;
      if (otherSide) expect(set, shown).toBeLessThanOrEqual(across ?? 0);
      else expect(dial ?? set, shown).toBeLessThanOrEqual(measuringSide ?? 0);
      if (!otherSide) expect(dial ?? set, shown).toBe(set - trimmer.correction);
    }
    if (steps.length > 1) several += 1;
  }
  expect(several).toBeGreaterThan(60);
});

function sheet(tree: CutTree, id = 'meadow-1') {
  const whole = { width: lengthOfTicks(tree.width), height: lengthOfTicks(tree.height) };
  return { id, size: whole, squaring: noMargins, tree };
}

function size(width: number, height: number): Size {
  return { width: inches(width), height: inches(height) };
}

function piece(width: number, height: number, item: number): CutTree {
  return { kind: 'piece', ...size(width, height), item, turned: false };
}

/** Parts side by side along an axis. */
function row(axis: 'width' | 'height', parts: readonly CutTree[]): CutTree {
  const along = parts.reduce((sum, part) => sum + part[axis], 0);
  const { width, height } = parts[0]!;
  return { kind: 'cut', width, height, axis, parts, [axis]: along };
}
