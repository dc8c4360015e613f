import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, inches, type Length, lengthOfTicks, millimetres } from '../measure/index.ts';
import {
  areaOf,
  type BannerEnd,
  bannerOutline,
  boundsOf,
  boxRegion,
  difference,
  intersection,
  islandsOf,
  ovalOutline,
  rectangleOutline,
  regionOf,
  roundedOutline,
  squareInches,
  squareMillimetres,
  union,
} from './index.ts';
import { edgeLength } from './testing/ringArea.ts';

const boxOf = (left: Length, top: Length, width: Length, height: Length): Box => ({
  left,
  top,
  width,
  height,
});
const at = (ticks: number) => lengthOfTicks(ticks);
/** What a flattened curve may lack of its true area: 4 ticks all along it. */
const chordLoss = (region: Parameters<typeof edgeLength>[0]) => 4 * edgeLength(region);
const between = (value: number, least: number, most: number) => {
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(most);
};

const card = boxOf(at(0), at(0), inches(17, 4), inches(11, 2));

describe('areas by their closed formulas', () => {
  it('a rectangle is width times height', () => {
    expect(squareInches(areaOf(boxRegion(card)))).toBe(4.25 * 5.5);
    expect(areaOf(regionOf(rectangleOutline(card)))).toBe(card.width * card.height);
    expect(
      squareMillimetres(areaOf(boxRegion(boxOf(at(0), at(0), millimetres(105), millimetres(148))))),
    ).toBe(105 * 148);
  });

  it('a frame is the outer rectangle less the inner: 2 b (w + h) - 4 b² for a border b', () => {
    const border = inches(1, 4);
    const inner = boxOf(border, border, inches(15, 4), inches(5));
    const frame = difference(boxRegion(card), boxRegion(inner));
    expect(areaOf(frame)).toBe(2 * border * (card.width + card.height) - 4 * border * border);
    expect(frame.rings).toHaveLength(2);
    expect(islandsOf(frame)).toHaveLength(1);
  });

  it('an oval is π a b, a circle π r²', () => {
    for (const [width, height] of [
      [millimetres(50), millimetres(50)],
      [inches(3), inches(2)],
      [inches(5), inches(1, 2)],
      [at(1001), at(777)],
    ] as const) {
      const region = regionOf(ovalOutline(boxOf(at(10), at(20), width, height)));
      const truth = (Math.PI / 4) * width * height;
      between(areaOf(region), truth - chordLoss(region), truth + edgeLength(region));
    }
    // How near that is for a circle of 50 mm: about 1/10 000 of it.
    const circle = regionOf(ovalOutline(boxOf(at(0), at(0), millimetres(50), millimetres(50))));
    expect(Math.abs(squareMillimetres(areaOf(circle)) / (Math.PI * 25 ** 2) - 1)).toBeLessThan(1.1e-4);
  });

  it('a rounded rectangle lacks (4 - π) r² of the rectangle', () => {
    const radius = inches(1, 4);
    const region = regionOf(roundedOutline(card, radius));
    const truth = card.width * card.height - (4 - Math.PI) * radius ** 2;
    between(areaOf(region), truth - chordLoss(region), truth);
    expect(boundsOf(region)).toEqual(card);
    expect(areaOf(regionOf(roundedOutline(card, at(0))))).toBe(card.width * card.height);
  });

  it('a segment of a circle is r²/2 (θ - sin θ), θ = 2 arccos(d/r) for a chord at d from its centre', () => {
    const radius = millimetres(40);
    const circle = regionOf(ovalOutline(boxOf(at(0), at(0), millimetres(80), millimetres(80))));
    for (const from of [0, 10, 20, 35].map(millimetres)) {
      const beyond = boxRegion(boxOf(at(radius + from), at(0), millimetres(80), millimetres(80)));
      const angle = 2 * Math.acos(from / radius);
      const truth = (radius ** 2 / 2) * (angle - Math.sin(angle));
      const segment = intersection(circle, beyond);
      between(areaOf(segment), truth - chordLoss(segment), truth + edgeLength(segment));
    }
  });

  it('two circles overlap in a lens: 2 r² arccos(d/2r) - d/2 √(4r² - d²)', () => {
    const radius = millimetres(30);
    const distance = millimetres(35);
    const one = regionOf(ovalOutline(boxOf(at(0), at(0), millimetres(60), millimetres(60))));
    const other = regionOf(ovalOutline(boxOf(distance, at(0), millimetres(60), millimetres(60))));
    const truth =
      2 * radius ** 2 * Math.acos(distance / (2 * radius)) -
      (distance / 2) * Math.sqrt(4 * radius ** 2 - distance ** 2);
    const lens = intersection(one, other);
    between(areaOf(lens), truth - chordLoss(lens), truth + edgeLength(lens));
  });

  it('a banner is its box less two triangles at each end', () => {
    const box = boxOf(at(0), at(0), inches(4), inches(1));
    const whole = 4;
    // Notched by half of 1 in: a triangle of 1 by 1/2. Pointed: two of 1/2 by 1/2. Slanted: one of 1 by 1/2.
    for (const end of ['notched', 'pointed', 'slanted'] satisfies BannerEnd[]) {
      expect(squareInches(areaOf(regionOf(bannerOutline(box, { right: end }, null))))).toBe(whole - 1 / 4);
      expect(squareInches(areaOf(regionOf(bannerOutline(box, { left: end, right: end }, null))))).toBe(
        whole - 2 / 4,
      );
    }
    expect(squareInches(areaOf(regionOf(bannerOutline(box, { bottom: 'notched' }, inches(1, 4)))))).toBe(
      whole - 1 / 2,
    );
    expect(regionOf(bannerOutline(box, {}, null)).rings).toEqual(boxRegion(box).rings);
    expect(regionOf(bannerOutline(box, { left: 'notched' }, at(0))).rings).toEqual(boxRegion(box).rings);
  });

  it('notches that meet leave two pieces, with what both would take taken once', () => {
    const box = boxOf(at(0), at(0), inches(1), inches(2));
    const region = regionOf(bannerOutline(box, { left: 'notched', right: 'notched' }, inches(3, 4)));
    // Two triangles of 2 by 3/4; they overlap in a rhombus 1/2 wide and 2/3 high.
    expect(squareInches(areaOf(region))).toBeCloseTo(2 - 2 * 0.75 + (0.5 * (2 / 3)) / 2, 4);
    expect(islandsOf(region)).toHaveLength(2);
  });
});

it('says where slants stand out: above at the sides, to the left at top and bottom', () => {
  const box = boxOf(at(0), at(0), at(100), at(40));
  const ring = (ends: Parameters<typeof bannerOutline>[1]) =>
    regionOf(bannerOutline(box, ends, at(10)))
      .rings[0]!.map(({ x, y }) => `${x} ${y}`)
      .sort();
  expect(ring({ left: 'slanted' })).toEqual(['0 0', '10 40', '100 0', '100 40'].sort());
  expect(ring({ right: 'slanted' })).toEqual(['0 0', '0 40', '100 0', '90 40'].sort());
  expect(ring({ top: 'slanted' })).toEqual(['0 0', '0 40', '100 10', '100 40'].sort());
  expect(ring({ bottom: 'slanted' })).toEqual(['0 0', '0 40', '100 0', '100 30'].sort());
  expect(ring({ left: 'pointed' })).toEqual(['0 20', '10 0', '10 40', '100 0', '100 40'].sort());
  expect(ring({ left: 'notched' })).toEqual(['0 0', '0 40', '10 20', '100 0', '100 40'].sort());
});

it('boxes are combined as intervals are, whole ticks to whole ticks', () => {
  const side = fc.integer({ min: 0, max: 12 });
  const box = fc
    .tuple(side, side, fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }))
    .map(([left, top, width, height]) => boxOf(at(left), at(top), at(width), at(height)));
  fc.assert(
    fc.property(box, box, (one, other) => {
      // Counted square by square.
      const inside = (it: Box, x: number, y: number) =>
        x >= it.left && x < it.left + it.width && y >= it.top && y < it.top + it.height;
      const counted = (kept: (one: boolean, other: boolean) => boolean) => {
        let count = 0;
        for (let x = 0; x < 20; x += 1) {
          for (let y = 0; y < 20; y += 1) if (kept(inside(one, x, y), inside(other, x, y))) count += 1;
        }
        return count;
      };
      const [first, second] = [boxRegion(one), boxRegion(other)];
      expect(areaOf(intersection(first, second))).toBe(counted((a, b) => a && b));
      expect(areaOf(union([first, second]))).toBe(counted((a, b) => a || b));
      expect(areaOf(difference(first, second))).toBe(counted((a, b) => a && !b));
    }),
    { numRuns: 500 },
  );
});
