import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, lengthOfTicks } from '../measure/index.ts';
import {
  areaOf,
  bannerOutline,
  boundsOf,
  boxRegion,
  breadthOf,
  clearOf,
  covers,
  difference,
  evenOddRegion,
  intersection,
  isEmpty,
  islandsOf,
  narrowed,
  nothing,
  ovalOutline,
  type Point,
  type Region,
  regionOf,
  touches,
  union,
  widened,
} from './index.ts';
import { anyOutline } from './testing/randomShape.ts';
import { edgeLength } from './testing/ringArea.ts';

const at = (ticks: number) => lengthOfTicks(ticks);
const box = (left: number, top: number, width: number, height: number): Box => ({
  left: at(left),
  top: at(top),
  width: at(width),
  height: at(height),
});
const boxed = (...sides: Parameters<typeof box>) => boxRegion(box(...sides));
const ring = (...points: readonly (readonly [number, number])[]): Point[] =>
  points.map(([x, y]) => ({ x: at(Math.round(x)), y: at(Math.round(y)) }));
/** The same rectangle, but as a shape that is not told to be one. */
const frame = difference(boxed(0, 0, 1000, 800), boxed(100, 100, 800, 600));

describe('widened and narrowed', () => {
  it('a rectangle stays one: each side longer or shorter by twice as much', () => {
    expect(boundsOf(widened(boxed(10, 20, 100, 50), at(7)))).toEqual(box(3, 13, 114, 64));
    expect(boundsOf(narrowed(boxed(10, 20, 100, 50), at(7)))).toEqual(box(17, 27, 86, 36));
    expect(narrowed(boxed(0, 0, 100, 50), at(25))).toBe(nothing);
  });

  it('a frame grows outwards and into its hole, or thins on both sides', () => {
    expect(areaOf(widened(frame, at(50)))).toBe(1100 * 900 - 700 * 500);
    expect(areaOf(narrowed(frame, at(30)))).toBe(940 * 740 - 860 * 660);
    expect(isEmpty(narrowed(frame, at(51)))).toBe(true);
    expect(areaOf(widened(frame, at(300)))).toBe(1600 * 1400);
  });

  it('an outward corner keeps its mitre: A + P d + d² Σ tan(θ/2) over the turns θ (Steiner, for mitred corners)', () => {
    for (const sides of [3, 4, 5, 6, 8]) {
      const radius = 50_000;
      const polygon = evenOddRegion([
        ring(
          ...Array.from({ length: sides }, (_, index): [number, number] => {
            const turn = (2 * Math.PI * (index + 0.1)) / sides;
            return [radius * Math.cos(turn), radius * Math.sin(turn)];
          }),
        ),
      ]);
      const turns = sides * Math.tan(Math.PI / sides);
      for (const by of [100, 5000]) {
        const outwards = areaOf(polygon) + edgeLength(polygon) * by + turns * by ** 2;
        expect(Math.abs(areaOf(widened(polygon, at(by))) - outwards)).toBeLessThan(edgeLength(polygon) * 2);
        const inwards = areaOf(polygon) - edgeLength(polygon) * by + turns * by ** 2;
        expect(Math.abs(areaOf(narrowed(polygon, at(by))) - inwards)).toBeLessThan(edgeLength(polygon) * 2);
      }
    }
  });

  it('a circle becomes the circle of that much more or less radius', () => {
    const circle = regionOf(ovalOutline(box(0, 0, 80_000, 80_000)));
    for (const by of [1000, 10_000]) {
      const wide = widened(circle, at(by));
      expect(Math.abs(areaOf(wide) - Math.PI * (40_000 + by) ** 2)).toBeLessThan(5 * edgeLength(wide));
      const narrow = narrowed(circle, at(by));
      expect(Math.abs(areaOf(narrow) - Math.PI * (40_000 - by) ** 2)).toBeLessThan(5 * edgeLength(circle));
    }
  });

  it('wider holds the shape, the shape holds the narrower', () => {
    fc.assert(
      fc.property(anyOutline(40_000), fc.integer({ min: 1, max: 4000 }), (outline, by) => {
        const region = regionOf(outline);
        expect(covers(widened(region, at(by)), region, at(2))).toBe(true);
        expect(covers(region, narrowed(region, at(by)), at(2))).toBe(true);
      }),
      { numRuns: 150 },
    );
  });
});

describe('breadthOf', () => {
  it('is the shorter side of a rectangle, the side of a frame, the diameter of a circle', () => {
    expect(breadthOf(boxed(0, 0, 300, 40))).toBe(40);
    expect(breadthOf(nothing)).toBe(0);
    // To a tick below: what is just as broad as twice the inset is gone.
    expect(100 - breadthOf(frame)).toBeGreaterThanOrEqual(0);
    expect(100 - breadthOf(frame)).toBeLessThanOrEqual(2);
    const circle = breadthOf(regionOf(ovalOutline(box(0, 0, 50_000, 50_000))));
    expect(50_000 - circle).toBeGreaterThanOrEqual(0);
    expect(50_000 - circle).toBeLessThan(12);
  });

  it('is the width of the disc that fits in a triangle: 2 · 2A/P', () => {
    const triangle = evenOddRegion([ring([0, 0], [60_000, 0], [0, 80_000])]);
    // 3 : 4 : 5, so the disc has the radius (3 + 4 - 5)/2.
    expect(Math.abs(breadthOf(triangle) - 40_000)).toBeLessThanOrEqual(3);
  });
});

describe('clearOf', () => {
  it('takes off what is thinner and leaves what is not', () => {
    const handle = union([boxed(0, 0, 1000, 1000), boxed(1000, 400, 2000, 60), boxed(3000, 0, 1000, 1000)]);
    expect(islandsOf(handle)).toHaveLength(1);
    const clear = clearOf(handle, at(61 + 2));
    expect(islandsOf(clear)).toHaveLength(2);
    expect(areaOf(clear)).toBe(2 * 1000 * 1000);
    expect(areaOf(clearOf(handle, at(58)))).toBe(areaOf(handle));
    expect(isEmpty(clearOf(frame, at(104)))).toBe(true);
    expect(areaOf(clearOf(frame, at(100)))).toBe(areaOf(frame));
  });

  it('never adds, and what it keeps is as broad as was asked', () => {
    fc.assert(
      fc.property(anyOutline(40_000), fc.integer({ min: 10, max: 4000 }), (outline, by) => {
        const region = regionOf(outline);
        const clear = clearOf(region, at(by));
        expect(covers(region, clear, at(2))).toBe(true);
        for (const island of islandsOf(clear)) expect(breadthOf(island)).toBeGreaterThanOrEqual(by - 6);
      }),
      { numRuns: 60 },
    );
  });
});

describe('covers', () => {
  it('goes by the outermost point, to the tolerance', () => {
    const outer = boxed(0, 0, 100, 100);
    expect(covers(outer, boxed(0, 0, 100, 100))).toBe(true);
    expect(covers(outer, boxed(0, 0, 101, 100))).toBe(false);
    expect(covers(outer, boxed(0, 0, 101, 100), at(1))).toBe(true);
    expect(covers(frame, boxed(0, 0, 1000, 100))).toBe(true);
    expect(covers(frame, boxed(0, 0, 1000, 101))).toBe(false);
    expect(covers(nothing, nothing)).toBe(true);
    expect(covers(nothing, outer)).toBe(false);
    expect(covers(frame, nothing)).toBe(true);
  });
});

describe('touches', () => {
  it('holds for what overlaps, meets along an edge or in a corner, and not a few ticks apart', () => {
    const one = boxed(0, 0, 100, 100);
    expect(touches(one, boxed(50, 50, 100, 100))).toBe(true);
    expect(touches(one, boxed(100, 0, 10, 10))).toBe(true);
    expect(touches(one, boxed(100, 100, 10, 10))).toBe(true);
    expect(touches(one, boxed(101, 0, 10, 10))).toBe(false);
    expect(touches(frame, boxed(100, 100, 50, 50))).toBe(true);
    expect(touches(frame, boxed(104, 104, 50, 50))).toBe(false);
    expect(touches(frame, nothing)).toBe(false);
    // Corner to corner in their bounds, but wide apart.
    const disc = regionOf(ovalOutline(box(0, 0, 1000, 1000)));
    expect(touches(disc, boxed(980, 980, 500, 500))).toBe(false);
    expect(touches(disc, boxed(850, 800, 500, 500))).toBe(true);
  });
});

describe('islandsOf', () => {
  it('has each piece with its own hole, and what lies in a hole by itself', () => {
    const target = evenOddRegion([
      ring([0, 0], [90, 0], [90, 90], [0, 90]),
      ring([10, 10], [80, 10], [80, 80], [10, 80]),
      ring([20, 20], [70, 20], [70, 70], [20, 70]),
      ring([30, 30], [60, 30], [60, 60], [30, 60]),
      ring([200, 0], [210, 0], [210, 10], [200, 10]),
    ]);
    const areas = islandsOf(target)
      .map(areaOf)
      .sort((one, other) => one - other);
    expect(areas).toEqual([100, 50 * 50 - 30 * 30, 90 * 90 - 70 * 70]);
  });

  it('is none for nothing, and one for a banner', () => {
    expect(islandsOf(nothing)).toEqual([]);
    const banner = regionOf(bannerOutline(box(0, 0, 1000, 200), { left: 'notched' }, null));
    expect(islandsOf(banner)).toHaveLength(1);
  });
});

describe('the traps of the arithmetic', () => {
  it('a corner that is no whole number of ticks, or no number, is our own mistake and told so', () => {
    // Past the brand on purpose: nothing outside this part can make such a region.
    const broken = (x: number): Region =>
      ({ rings: [ring([5, 5], [20, 10], [10, 20]).with(1, { x, y: 10 } as Point)] }) as unknown as Region;
    for (const x of [0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 60]) {
      expect(() => difference(frame, broken(x))).toThrow('whole');
    }
  });

  it('rings of opposite direction do not cancel each other', () => {
    const clockwise = ring([0, 0], [10, 0], [10, 10], [0, 10]);
    const [one, other] = [evenOddRegion([clockwise]), evenOddRegion([clockwise.toReversed()])];
    expect(one.rings[0]).toHaveLength(4);
    expect(areaOf(one)).toBe(100);
    expect(areaOf(other)).toBe(100);
    expect(areaOf(union([one, other, frame]))).toBe(areaOf(frame));
    expect(areaOf(intersection(frame, other))).toBe(100);
  });
});
