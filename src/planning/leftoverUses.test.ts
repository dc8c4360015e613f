import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { arrange, type Extra, type Layout } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches, lengthOfTicks, type Size, zero } from '../measure/index.ts';
import { boxRegion, movedTo, type Region, turnedRegion, withMargin } from '../shape/index.ts';
import { secondEngine } from '../shape/testing/secondEngine.ts';
import type { Up } from '../stash/index.ts';
import { type LeftoverUses, leftoverUses, type Plan, planSet, type SetToPlan } from './index.ts';
import { thingOf } from './leftoverUses.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

function extra(name: string, size: readonly [number, number], more: Partial<Extra> = {}): Extra {
  return {
    name,
    shape: { kind: 'rectangle' },
    size: { width: lengthOfTicks(size[0]), height: lengthOfTicks(size[1]) },
    margin: zero,
    count: null,
    papers: [],
    turn: null,
    ...more,
  };
}

const inch = inches(1);

/** One panel of 12 x `used` in from a sheet of 12 x 12 leaves the rest whole. */
function leaving(used: number, extras: readonly Extra[], up: Up = 'any', more: Partial<Layout> = {}): Layout {
  return {
    ...layoutOf({
      cards: 1,
      base: [inches(12), inches(12)],
      fold: 'none',
      papers: [paper('plum', [{ size: { width: inches(12), height: inches(12) }, count: 1 }], up)],
      parts: [part('panel', { size: [inches(12), inches(used)], papers: ['plum'] })],
      extras,
    }),
    ...more,
  };
}

function usesOf(layout: Layout): { readonly uses: LeftoverUses; readonly plan: Plan } {
  const set: SetToPlan = { layout, arrangement: arrange(layout), trimmer: null, solver };
  const plan = planSet(set);
  if (plan.kind !== 'plan') throw new Error('expected a plan');
  return { uses: leftoverUses(set, plan), plan };
}

/** That extras and what is kept beside them lie on their leftover and on nothing else, by the second engine. */
function expectTrue({ used, kept }: LeftoverUses, layout: Layout): void {
  for (const { id, size, places, rests } of used) {
    const laid = places.map(({ extra: index, left, top, turns }): Region => {
      const { region, margin } = thingOf(layout.extras![index]!);
      const wide = turnedRegion(withMargin(region, margin), turns);
      return movedTo(wide, lengthOfTicks(left - margin), lengthOfTicks(top - margin));
    });
    const all = [...laid, ...rests.map((rest) => boxRegion(rest))];
    const bed = boxRegion({ left: zero, top: zero, ...size });
    for (const [index, one] of all.entries()) {
      expect(secondEngine.difference(one, bed) ?? 0).toBe(0);
      for (const other of all.slice(index + 1))
        expect(secondEngine.intersection(one, other) ?? 0).toBeLessThan(100);
    }
    expect(kept.filter((one) => one.id === id).map((one) => [one.size.width, one.size.height])).toEqual(
      rests.map(({ width, height }) => [width, height]),
    );
  }
}

describe('what is wanted of the leftovers', () => {
  it('is laid on the smallest leftover that gives it, and what remains is kept', () => {
    // Worked by hand: 12 x 2 in is left; four tags of 1 1/2 x 2 in take 6 x 2 of it, and 6 x 2 remains.
    const layout = leaving(10, [extra('tag', [1.5 * inch, 2 * inch], { count: 4 })], 'two-way');
    const { uses } = usesOf(layout);
    expect(uses.extras).toEqual([{ found: 4, wanted: 4, atMost: 8 }]);
    expect(uses.kept.map(({ size }) => size)).toEqual([{ width: inches(6), height: inches(2) }]);
    expectTrue(uses, layout);
  });

  it('takes all where it is not said how many, and says what is short where it is', () => {
    const dots = extra('dot', [inch, inch], { shape: { kind: 'circle' } });
    const all = usesOf(leaving(10, [dots])).uses;
    expect(all.extras[0]?.found).toBe(24);
    // A strip of 10 1/2 in of one leaves 1 1/2 in, on which no tag of 2 in stands upright, but 6 lie.
    const tag = extra('tag', [inch * 1.5, inch * 2], { count: 9 });
    const locked = { ...tag, turn: 'locked' as const };
    expect(usesOf(leaving(10.5, [locked], 'two-way')).uses.extras[0]).toMatchObject({ found: 0, wanted: 9 });
    expect(usesOf(leaving(10.5, [{ ...tag, turn: 'free' }], 'two-way')).uses.extras[0]).toMatchObject({
      found: 6,
      wanted: 9,
    });
  });

  it('stands as the print does', () => {
    const tag = extra('tag', [inch, inch * 2]);
    expect(usesOf(leaving(11, [tag], 'one-way')).uses.extras[0]?.found).toBe(0);
    expect(usesOf(leaving(11, [tag], 'two-way')).uses.extras[0]?.found).toBe(0);
    expect(usesOf(leaving(11, [tag], 'any')).uses.extras[0]?.found).toBe(6);
  });

  it('is of the papers it names alone', () => {
    const papers = { papers: ['moss'] };
    const layout = leaving(10, [extra('tag', [inch, inch], papers)]);
    expect(usesOf(layout).uses.extras[0]?.found).toBe(0);
  });

  it.each([
    // Counts in print (hobby tutorials HT-3 and HT-20) that plain rows do not reach.
    [8.5, 11, 2.25, 3.5, 10],
    [8.5, 11, 2.5, 3.5, 10],
    [22, 28, 2.5, 3.5, 70],
  ])('of %d x %d in gives at least as many %d x %d in as edge-to-edge cuts', (...of) => {
    const [width, height, across, down, count] = of;
    const size = (w: number, h: number): Size => ({
      width: lengthOfTicks(w * inch),
      height: lengthOfTicks(h * inch),
    });
    const layout = layoutOf({
      cards: 1,
      base: [inches(30), inches(30)],
      fold: 'none',
      papers: [paper('plum', [{ size: size(width, height + 1), count: 1 }])],
      parts: [part('panel', { size: [size(width, 1).width, inch], papers: ['plum'] })],
      extras: [extra('card', [across * inch, down * inch])],
    });
    const { uses } = usesOf(layout);
    expect(uses.extras[0]?.found).toBeGreaterThanOrEqual(count);
    expectTrue(uses, layout);
  });
});

it('what else could be had is told of shapes of the layout and of usual things, each for itself', () => {
  const layout = layoutOf({
    cards: 1,
    base: [inches(5), inches(7)],
    papers: [paper('plum', [{ size: { width: inches(12), height: inches(12) }, count: 1 }])],
    parts: [
      part('panel', { size: [inches(5), inches(7)], papers: ['plum'] }),
      part('moon', { diameter: inches(2), shape: 'circle', papers: ['plum'] }),
    ],
  });
  const { uses } = usesOf(layout);
  const moon = uses.others.find(({ part: id }) => id === 'moon');
  expect(moon?.total).toBeGreaterThanOrEqual(12);
  expect(uses.others.map(({ what }) => what)).toEqual(['shape', 'tag', 'inside strip']);
});

it('random extras never overlap one another, the edges or what is kept', () => {
  const side = fc.integer({ min: 2, max: 14 }).map((eighths) => eighths * 10_160);
  const anyExtra = fc
    .record({
      size: fc.tuple(side, side),
      kind: fc.constantFrom('rectangle', 'oval', 'rounded'),
      margin: fc.constantFrom(0, 2_540),
      count: fc.constantFrom(null, 1, 3, 7),
    })
    .map(({ size, kind, margin, count }) =>
      extra('any', size, {
        shape: kind === 'rounded' ? { kind, corner: lengthOfTicks(5_080) } : { kind: kind as 'oval' },
        margin: lengthOfTicks(margin),
        count,
      }),
    );
  fc.assert(
    fc.property(
      fc.array(anyExtra, { minLength: 1, maxLength: 3 }),
      fc.integer({ min: 8, max: 11 }),
      fc.constantFrom<Up>('any', 'one-way', 'two-way'),
      (extras, used, up) => {
        const layout = leaving(used, extras, up);
        const { uses } = usesOf(layout);
        expectTrue(uses, layout);
      },
    ),
    { numRuns: Number(process.env.CARDWRIGHT_PILES ?? 12) },
  );
});
