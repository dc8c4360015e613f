import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inches, lengthOfTicks, type Size, zero } from '../measure/index.ts';
import { describeSteps } from './description.ts';
import type { Step } from './step.ts';
import { stepsFor } from './steps.ts';
import { replayed } from './testing/replayed.ts';
import { treeArbitrary } from './testing/trees.ts';

const margins = { left: zero, right: zero, top: zero, bottom: zero };

describe('describeSteps', () => {
  const steps: readonly Step[] = [
    {
      step: 4,
      take: ['bees-1'],
      axis: 'height',
      set: inches(3),
      repeat: 4,
      gives: [['bees-1a', 'bees-1b', 'bees-1c', 'bees-1d']],
      rest: [null],
    },
    {
      step: 5,
      take: ['bees-1a', 'bees-1b'],
      axis: 'width',
      set: inches(15, 4),
      repeat: 3,
      gives: [
        ['bees-1a1', 'bees-1a2', 'bees-1a3'],
        ['bees-1b1', 'bees-1b2', 'bees-1b3'],
      ],
      rest: ['bees-1a4', 'bees-1b4'],
    },
  ];
  const sheets = new Map<string, Size>([['bees-1', { width: inches(12), height: inches(12) }]]);

  test('four rows of 3 in out of 12 in have nothing to spare', () => {
    expect(describeSteps(steps, sheets)).toEqual([
      {
        step: 4,
        size: { width: inches(12), height: inches(12) },
        workpieces: 1,
        axis: 'height',
        set: inches(3),
        repeat: 4,
        rest: zero,
        nothingToSpare: true,
        turned: [false],
        passes: 3,
      },
      {
        step: 5,
        size: { width: inches(12), height: inches(3) },
        workpieces: 2,
        axis: 'width',
        set: inches(15, 4),
        repeat: 3,
        rest: inches(3, 4),
        nothingToSpare: false,
        turned: [true, true],
        passes: 6,
      },
    ]);
  });

  test.each([
    ['a workpiece that is not there', [{ ...steps[0]!, take: ['bees-2'] }], 'not on the table'],
    ['more than there is', [{ ...steps[0]!, repeat: 5 }], 'more than there is'],
    ['unequal workpieces', [steps[0]!, { ...steps[1]!, take: ['bees-1a', 'bees-1'] }], 'of one size'],
    ['a rest of nothing', [{ ...steps[0]!, rest: ['bees-1e'] }], 'null where nothing is left'],
  ])('throws on %s', (_, wrong, says) => {
    expect(() => describeSteps(wrong, sheets)).toThrow(says);
  });

  test('says what an independent replay sees', () => {
    const shape = { depth: 4, parts: 3, marks: 1, variety: 5, tidy: false };
    const trees = fc.array(treeArbitrary({ width: 20, height: 20 }, shape), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(trees, (all) => {
        const size = { width: lengthOfTicks(20), height: lengthOfTicks(20) };
        const cut = all.map((tree, index) => ({ id: `d-${index}`, size, squaring: margins, tree }));
        const { steps: made } = stepsFor(cut, null);
        const told = describeSteps(made, new Map(cut.map((sheet) => [sheet.id, sheet.size])));
        expect(
          told.map((one) => ({
            size: [one.size.width, one.size.height],
            rest: one.rest,
            turned: one.turned.filter((turned) => turned).length,
            passes: one.passes,
          })),
        ).toEqual(replayed(made, cut).seen);
        for (const one of told) expect(one.nothingToSpare).toBe(one.set * one.repeat === one.size[one.axis]);
      }),
      { numRuns: 150 },
    );
  });
});
