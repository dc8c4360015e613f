import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulatedFolds } from '../making/testing/foldSimulator.ts';
import { type Box, type Length, lengthOfTicks, zero } from '../measure/index.ts';
import { areaOf, boundsOf } from '../shape/index.ts';
import { arrange } from './arrange.ts';
import { foldedStripOf } from './foldedShape.ts';
import { dimensionsOf, withLengths } from './index.ts';
import type { FoldedShape } from './layout.ts';
import { depthRegionsIn, facetRegionsIn, regionIn } from './pieceShape.ts';
import { inch, layoutOf, mm, part } from './testing/build.ts';

const strip = (length: Length, width: Length, upright = false) =>
  upright ? { width, height: length } : { width: length, height: width };

const ribbon = (upright = false): FoldedShape => ({
  kind: 'ribbon',
  template: inch('3'),
  slant: 20,
  strip: strip(inch('7'), inch('1/2'), upright),
});

const shapes = fc.oneof(
  fc
    .record({
      width: fc.integer({ min: 1_000, max: 30_000 }),
      template: fc.integer({ min: 20_000, max: 150_000 }),
      slant: fc.integer({ min: -60, max: 60 }),
      tails: fc.integer({ min: 40_000, max: 300_000 }),
      upright: fc.boolean(),
    })
    .map(({ width, template, slant, tails, upright }): FoldedShape => {
      const length = Math.ceil(template / Math.cos((slant * Math.PI) / 180)) + 2 * tails;
      return {
        kind: 'ribbon',
        template: lengthOfTicks(template),
        slant,
        strip: strip(lengthOfTicks(length), lengthOfTicks(width), upright),
      };
    }),
  fc
    .record({ width: fc.integer({ min: 1_000, max: 30_000 }), tails: fc.integer({ min: 2, max: 90_000 }) })
    .map(
      ({ width, tails }): FoldedShape => ({
        kind: 'knot',
        strip: strip(lengthOfTicks(6 * width + tails), lengthOfTicks(width)),
      }),
    ),
);

const boxOf = (shape: FoldedShape): Box => ({
  left: lengthOfTicks(5_000),
  top: lengthOfTicks(-3_000),
  ...foldedStripOf(shape)!.size,
});

describe('a folded strip on a card', () => {
  it('fills its box, and its layers together are as large as the strip', () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const box = boxOf(shape);
        const bounds = boundsOf(regionIn(shape, box))!;
        for (const side of ['left', 'top', 'width', 'height'] as const)
          expect(Math.abs(bounds[side] - box[side])).toBeLessThanOrEqual(2);
        const whole = shape.strip.width * shape.strip.height;
        const total = (regions: readonly Parameters<typeof areaOf>[0][]) =>
          regions.reduce((sum, region) => sum + areaOf(region), 0);
        // A corner is rounded by half a tick, along so much of an edge.
        const fine = 40 * (shape.strip.width + shape.strip.height);
        expect(Math.abs(total(facetRegionsIn(shape, box).map(({ region }) => region)) - whole)).toBeLessThan(
          fine,
        );
        expect(Math.abs(total(depthRegionsIn(shape, box)) - whole)).toBeLessThan(fine);
      }),
      { numRuns: 60 },
    );
  });

  it('turns a quarter as a whole where its strip stands upright', () => {
    const [level, upright] = [foldedStripOf(ribbon())!, foldedStripOf(ribbon(true))!];
    expect(upright.size).toEqual({ width: level.size.height, height: level.size.width });
    // The left end of the lying one is up, and what was up is at the right.
    const middleOf = ({ facets }: typeof level) => facets.at(-1)!.corners;
    for (const [index, { x, y }] of middleOf(upright).entries()) {
      expect(y).toBeCloseTo(middleOf(level)[index]!.x, 6);
      expect(upright.size.width - x).toBeCloseTo(middleOf(level)[index]!.y, 6);
    }
  });

  it('has layers where a simulator that folds it step by step has them: two at most in a ribbon', () => {
    const shape = ribbon();
    expect(depthRegionsIn(shape, boxOf(shape))).toHaveLength(2);
    const folded = simulatedFolds({ width: inch('1/2'), length: inch('7') }, [
      { at: inch('7') / 2 - inch('3') / 2 / Math.cos(Math.PI / 9), degrees: 80, goes: 'over' },
      { at: inch('7') / 2 + inch('3') / 2 / Math.cos(Math.PI / 9), degrees: 80, goes: 'under' },
    ]);
    const area = (polygon: (typeof folded)[number]['polygon']) =>
      Math.abs(
        polygon.reduce((sum, [x, y], index) => {
          const next = polygon[(index + 1) % polygon.length]!;
          return sum + (x * next[1] - next[0] * y) / 2;
        }, 0),
      );
    const own = facetRegionsIn(shape, boxOf(shape)).map(({ region }) => areaOf(region));
    for (const [index, facet] of folded.entries())
      expect(own[index]! / area(facet.polygon)).toBeCloseTo(1, 4);
  });

  it('has two layers everywhere in a bow, three where its ends overlap, and four in the middle of a knot', () => {
    const bow: FoldedShape = {
      kind: 'loops',
      template: mm(30),
      loops: 2,
      overlap: mm(10),
      strip: strip(mm(130), mm(20)),
    };
    const box = { left: zero, top: zero, ...foldedStripOf(bow)!.size };
    expect(depthRegionsIn(bow, box).map(areaOf)).toEqual([60, 60, 10].map((wide) => mm(wide) * mm(20)));
    const knot: FoldedShape = { kind: 'knot', strip: strip(mm(90), mm(12)) };
    expect(depthRegionsIn(knot, boxOf(knot))).toHaveLength(4);
  });

  it('is seen as large as it is folded and cut as large as its strip, which goes with its size', () => {
    const layout = layoutOf({
      base: [inch('5'), inch('5')],
      parts: [part('ribbon', { size: [inch('7'), inch('1/2')], shape: ribbon() })],
    });
    const [arranged] = arrange(layout).parts;
    expect(arranged!.cut).toEqual({ width: inch('7'), height: inch('1/2') });
    expect(arranged!.seen).toEqual(foldedStripOf(ribbon())!.size);
    expect(dimensionsOf(layout).map(({ path }) => path)).toContain('parts[0].size[0]');
    const [longer] = arrange(withLengths(layout, new Map([['parts[0].size[0]', inch('11')]]))).parts;
    expect(longer!.cut!.width).toBe(inch('11'));
    expect(longer!.seen!.width).toBeGreaterThan(arranged!.seen!.width);
  });
});
