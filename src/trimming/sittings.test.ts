import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lengthOfTicks } from '../measure/index.ts';
import { type Sitting, sittings } from './sittings.ts';
import type { Step } from './step.ts';

test('10, 14 and 14 cuts, at most 35 a sitting: bases and mats, then panels', () => {
  const bases = [step(1, 145, 2, 5)];
  const mats = [step(2, 135, 2, 1), step(3, 135, 1, 2), step(4, 95, 2, 2), step(5, 95, 3, 2)];
  const panels = [step(6, 125, 1, 4), step(7, 85, 3, 3), step(8, 85, 1, 1)];
  const cut = sittings([bases, mats, panels], 35);
  expect(cut.map(({ passes }) => passes)).toEqual([24, 14]);
  expect(cut.map(({ portions }) => portions.map((portion) => portion.step.step))).toEqual([
    [1, 2, 3, 4, 5],
    [6, 7, 8],
  ]);
});

test('one paper is broken where the setting changes', () => {
  const steps = [step(1, 5, 3, 2), step(2, 5, 2, 1), step(3, 7, 2, 2), step(4, 7, 2, 1)];
  expect(numbers(sittings([steps], 9))).toEqual([
    [1, 2],
    [3, 4],
  ]);
});

test('a step longer than a sitting is shared between its workpieces, and a single longer workpiece is shown as it is', () => {
  const long = step(1, 5, 4, 5);
  expect(
    sittings([[long]], 10).map(({ passes, portions }) => [passes, portions[0]!.from, portions[0]!.to]),
  ).toEqual([
    [8, 0, 2],
    [8, 2, 4],
    [4, 4, 5],
  ]);
  expect(sittings([[step(1, 5, 7, 2)]], 3).map(({ passes }) => passes)).toEqual([7, 7]);
});

test('with no limit one sitting, with no steps none', () => {
  expect(numbers(sittings([[step(1, 5, 3, 1)], [step(2, 6, 4, 1)]], null))).toEqual([[1, 2]]);
  expect(sittings([[], []], 5)).toEqual([]);
  expect(sittings([], null)).toEqual([]);
});

test('no way of breaking is better, by trying them all', () => {
  const steps = fc.array(
    fc.record({
      set: fc.integer({ min: 1, max: 2 }),
      repeat: fc.integer({ min: 1, max: 5 }),
      workpieces: fc.integer({ min: 1, max: 3 }),
    }),
    { maxLength: 3 },
  );
  fc.assert(
    fc.property(fc.array(steps, { maxLength: 3 }), fc.integer({ min: 1, max: 12 }), (plan, limit) => {
      let number = 0;
      const papers = plan.map((list) =>
        list.map(({ set, repeat, workpieces: count }) => step(++number, set, repeat, count)),
      );
      const found = sittings(papers, limit);

      // Every workpiece once, in order.
      const bites = papers.flatMap((list, paper) =>
        list.flatMap((own, at) =>
          own.take.map((id, index) => ({ id, own, paper, at, index, passes: own.repeat })),
        ),
      );
      const cut = found.flatMap(({ portions }) =>
        portions.flatMap(({ step: own, from, to }) => own.take.slice(from, to)),
      );
      expect(cut).toEqual(bites.map(({ id }) => id));

      const worth = (starts: readonly number[]): readonly number[] | null => {
        let disturbance = 0;
        let squares = 0;
        for (const [order, start] of starts.entries()) {
          const own = bites.slice(start, starts[order + 1] ?? bites.length);
          const passes = own.reduce((total, bite) => total + bite.passes, 0);
          if (passes > limit && own.length > 1) return null;
          squares += passes * passes;
          if (start === 0) continue;
          const [before, after] = [bites[start - 1]!, bites[start]!];
          if (before.own === after.own) disturbance += 3;
          else if (before.paper === after.paper) disturbance += before.own.set === after.own.set ? 2 : 1;
        }
        return [starts.length, disturbance, squares];
      };
      if (bites.length === 0) {
        expect(found).toEqual([]);
        return;
      }
      let best: readonly number[] | null = null;
      for (let breaks = 0; breaks < 2 ** (bites.length - 1); breaks += 1) {
        const starts = [0];
        for (let at = 1; at < bites.length; at += 1) if (breaks & (2 ** (at - 1))) starts.push(at);
        const own = worth(starts);
        if (own !== null && (best === null || isLess(own, best))) best = own;
      }
      const starts = found.map((_, index) =>
        found.slice(0, index).reduce((total, sitting) => total + workpieces(sitting), 0),
      );
      expect(worth(starts)).toEqual(best);
    }),
    { numRuns: 150 },
  );
});

/** A step that cuts `repeat` pieces off each of some workpieces, with a rest. */
function step(number: number, set: number, repeat: number, count: number): Step {
  const take = Array.from({ length: count }, (_, index) => `${number}-${index}`);
  return {
    step: number,
    take,
    axis: 'width',
    set: lengthOfTicks(set),
    repeat,
    gives: take.map((id) => Array.from({ length: repeat }, (_, index) => `${id}.${index}`)),
    rest: take.map((id) => `${id}.rest`),
  };
}

function numbers(cut: readonly Sitting[]): readonly (readonly number[])[] {
  return cut.map(({ portions }) => portions.map((portion) => portion.step.step));
}

function workpieces({ portions }: Sitting): number {
  return portions.reduce((total, { from, to }) => total + to - from, 0);
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at >= 0 && a[at]! < b[at]!;
}
