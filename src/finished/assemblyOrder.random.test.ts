import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, mm, part } from '../layout/testing/build.ts';
import { assemblyOrder } from './assemblyOrder.ts';
import { assemblyRules } from './assemblyRules.ts';
import { joins, permutations } from './testing/joining.ts';

/** Piles of up to five rectangles on a coarse grid, each on the card or on any before it, some of them bands. */
function smallPile(): fc.Arbitrary<Layout> {
  const one = fc.record({
    on: fc.nat(),
    left: fc.integer({ min: -2, max: 6 }),
    top: fc.integer({ min: -2, max: 6 }),
    width: fc.integer({ min: 1, max: 8 }),
    height: fc.integer({ min: 1, max: 8 }),
    isBand: fc.integer({ min: 0, max: 2 }).map((one) => one === 0),
  });
  return fc.array(one, { minLength: 1, maxLength: 5 }).map((drawn) =>
    layoutOf({
      units: 'mm',
      base: [mm(80), mm(80)],
      parts: drawn.map(({ on, left, top, width, height, isBand }, index) =>
        part(`p${index}`, {
          on: on % (index + 1) === 0 ? 'base' : `p${(on % (index + 1)) - 1}`,
          size: [mm(10 * width + (isBand ? 10 : 0)), mm(10 * height)],
          place: { left: mm(10 * left), top: mm(10 * top) },
          ...(isBand ? { tuck: { left: mm(5), right: mm(5) } } : {}),
        }),
      ),
    }),
  );
}

test('an order keeps the rules exactly when a card put together so comes out as its pile', () => {
  const seen = { kept: 0, broken: 0, none: 0 };
  fc.assert(
    fc.property(smallPile(), (layout) => {
      const arrangement = arrange(layout);
      const rules = assemblyRules(layout, arrangement);
      const orders = permutations(layout.parts.map(({ id }) => id));
      const sound = orders.filter((order) => joins(layout, arrangement, order));
      for (const order of orders) {
        const keeps = rules.every(({ first, before }) =>
          before.some((id) => order.indexOf(id) > order.indexOf(first)),
        );
        expect(keeps).toBe(sound.includes(order));
        if (keeps) seen.kept += 1;
        else seen.broken += 1;
      }
      const found = assemblyOrder(layout, arrangement);
      if (sound.length === 0) {
        seen.none += 1;
        expect(found.refused).toHaveLength(1);
        expect(found.refused[0]).toMatchObject({ of: 'pile' });
      } else {
        expect(found.refused).toEqual([]);
        expect(joins(layout, arrangement, found.parts)).toBe(true);
      }
    }),
    { numRuns: 400 },
  );
  // The random piles have some of each.
  expect(seen.kept).toBeGreaterThan(100);
  expect(seen.broken).toBeGreaterThan(100);
  expect(seen.none).toBeGreaterThan(0);
});

test('an order that the designer names is kept where a card comes out of it, else refused', () => {
  const named = smallPile().chain((layout) =>
    fc.tuple(
      fc.constant(layout),
      fc.shuffledSubarray(
        layout.parts.map(({ id }) => id),
        { minLength: 1 },
      ),
    ),
  );
  fc.assert(
    fc.property(named, ([layout, order]) => {
      const arrangement = arrange(layout);
      const sound = permutations(layout.parts.map(({ id }) => id)).filter((each) =>
        joins(layout, arrangement, each),
      );
      fc.pre(sound.length > 0);
      const asked = (each: readonly string[]) =>
        order.every((id, index) => index === 0 || each.indexOf(order[index - 1]!) < each.indexOf(id));
      const found = assemblyOrder({ ...layout, order }, arrangement);
      expect(found.refused.length === 0).toBe(sound.some(asked));
      expect(joins(layout, arrangement, found.parts)).toBe(true);
      if (found.refused.length === 0) expect(asked(found.parts)).toBe(true);
    }),
    { numRuns: 400 },
  );
});
