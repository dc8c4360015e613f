import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrange, type Part } from '../layout/index.ts';
import { layoutOf, mm, part } from '../layout/testing/build.ts';
import { type LaidJoin, tearJoins } from './index.ts';
import { type Depths, depthsOf, seenDown } from './testing/tornStack.ts';

/** Strips and panels on a front of 100 x 100 mm whose edges never lie on one line. */
const randomParts: fc.Arbitrary<readonly Part[]> = fc
  .array(
    fc.record({
      left: fc.integer({ min: 0, max: 8 }),
      width: fc.integer({ min: 1, max: 9 }),
      top: fc.integer({ min: 0, max: 16 }),
      height: fc.integer({ min: 1, max: 9 }),
      torn: fc.record({ top: fc.nat(9), bottom: fc.nat(9) }),
      isTorn: fc.record({ top: fc.boolean(), bottom: fc.boolean() }),
    }),
    { minLength: 2, maxLength: 4 },
  )
  .map((sketches) =>
    sketches.map(({ left, width, top, height, torn, isTorn }, index) => {
      const off = index + 0.25;
      const [upper, lower] = [isTorn.top ? torn.top : 0, isTorn.bottom ? torn.bottom : 0];
      const seen = 5 * height + 0.125 * (index + 1);
      return part(`p${index}`, {
        size: [mm(10 * width + 0.5 * index), mm(seen + upper + lower)],
        torn: { top: mm(upper), bottom: mm(lower) },
        place: { left: mm(5 * left + off), top: mm(5 * top + off) },
      });
    }),
  );

const margin = ({ bare, tears }: LaidJoin, depths: Depths) =>
  tears.reduce(
    (all, { of, sign }) => all + sign * depths.get(`${of.part} ${of.piece} ${of.edge}`)!,
    bare as number,
  );

describe('random piles with torn edges', () => {
  // The painter cuts the card along lines and knows nothing of joins; fast-check prints the seed and the pile.
  it('show what they should exactly as long as no join fails', () => {
    let [same, changed] = [0, 0];
    fc.assert(
      fc.property(
        randomParts,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (parts, shares) => {
          const layout = layoutOf({ units: 'mm', base: [mm(100), mm(100)], parts });
          const arrangement = arrange(layout);
          // An edge that hangs over the card is no join on the card.
          fc.pre(
            arrangement.parts.every(({ pieces }) => Math.min(...Object.values(pieces[0]!.borders!)) > 0),
          );
          const joins = tearJoins(layout, arrangement);
          let next = 0;
          const depths = depthsOf(arrangement, () => shares[next++]!);
          const nominal = depthsOf(arrangement, () => 0.5);
          for (const [name] of nominal) {
            const [id, , edge] = name.split(' ') as [string, string, 'top' | 'bottom'];
            (nominal as Map<string, number>).set(name, parts.find((each) => each.id === id)!.torn[edge]);
          }
          const places = arrangement.parts
            .flatMap(({ pieces }) => pieces.flatMap(({ box }) => [box!.left, box!.left + box!.width]))
            .concat(0 as never, mm(100))
            .filter((x) => x >= 0 && x <= mm(100))
            .sort((a, b) => a - b);
          const lines = [...new Set(places)];
          const isChanged = lines.slice(0, -1).some((from, index) => {
            const x = (from + lines[index + 1]!) / 2;
            return seenDown(arrangement, x, depths).join() !== seenDown(arrangement, x, nominal).join();
          });
          const margins = joins.map((join) => margin(join, depths));
          fc.pre(margins.every((each) => Math.abs(each) > 40));
          if (isChanged) changed += 1;
          else same += 1;
          expect(margins.some((each) => each < 0)).toBe(isChanged);
        },
      ),
      { numRuns: 2_000 },
    );
    expect(Math.min(same, changed)).toBeGreaterThan(200);
  });
});
