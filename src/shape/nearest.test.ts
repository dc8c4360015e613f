import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Box, lengthOfTicks } from '../measure/index.ts';
import { boxRegion, nearestBetween, nothing, ovalOutline, type Region, regionOf } from './index.ts';

const box = (left: number, top: number, width: number, height: number): Box => ({
  left: lengthOfTicks(left),
  top: lengthOfTicks(top),
  width: lengthOfTicks(width),
  height: lengthOfTicks(height),
});

describe('how near edges come', () => {
  test('boxes side by side, corner to corner (3, 4, 5), one in the other, and crossing', () => {
    const one = boxRegion(box(0, 0, 100, 100));
    expect(nearestBetween(one, boxRegion(box(130, 20, 10, 10)))).toBe(30);
    expect(nearestBetween(one, boxRegion(box(130, 140, 10, 10)))).toBe(50);
    expect(nearestBetween(one, boxRegion(box(20, 7, 30, 30)))).toBe(7);
    expect(nearestBetween(one, boxRegion(box(50, 50, 100, 100)))).toBe(0);
    expect(nearestBetween(one, nothing)).toBeNull();
  });

  test('a circle in a circle: the radii less what lies between the centres', () => {
    const outer = regionOf(ovalOutline(box(0, 0, 80_000, 80_000)));
    const inner = regionOf(ovalOutline(box(30_000, 20_000, 30_000, 30_000)));
    const between = Math.hypot(45_000 - 40_000, 35_000 - 40_000);
    expect(Math.abs(nearestBetween(outer, inner)! - (40_000 - 15_000 - between))).toBeLessThan(6);
  });

  test('is the nearest of points strewn along the edges, whichever is named first', () => {
    const number = fc.integer({ min: 0, max: 4_000 });
    const any = fc
      .tuple(
        number,
        number,
        fc.integer({ min: 50, max: 3_000 }),
        fc.integer({ min: 50, max: 3_000 }),
        fc.boolean(),
      )
      .map(([left, top, width, height, round]) => {
        const within = box(left, top, width, height);
        return round ? regionOf(ovalOutline(within)) : boxRegion(within);
      });
    fc.assert(
      fc.property(any, any, (one, other) => {
        const found = nearestBetween(one, other)!;
        expect(nearestBetween(other, one)).toBe(found);
        const strewn = Math.min(
          ...strewnOn(one).flatMap((a) => strewnOn(other).map((b) => Math.hypot(a.x - b.x, a.y - b.y))),
        );
        expect(found).toBeLessThanOrEqual(strewn);
        // No point of an edge is further than half a step from a strewn one.
        expect(strewn - found).toBeLessThanOrEqual(step + 1);
      }),
      { numRuns: 30 },
    );
  });
});

const step = 60;

function strewnOn({ rings }: Region): { readonly x: number; readonly y: number }[] {
  return rings.flatMap((ring) =>
    ring.flatMap((from, index) => {
      const to = ring[(index + 1) % ring.length]!;
      const pieces = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step));
      return Array.from({ length: pieces }, (_, piece) => ({
        x: from.x + ((to.x - from.x) * piece) / pieces,
        y: from.y + ((to.y - from.y) * piece) / pieces,
      }));
    }),
  );
}
