import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hatchFor, hatchMarks, plainGround } from './hatch.ts';
import type { Hatch, PathStep, Point } from './mark.ts';
import { circle, polygon, rectangle, ringsOf } from './outline.ts';

const patterns: readonly Hatch['pattern'][] = [
  'lines',
  'crossed',
  'dots',
  'dashes',
  'waves',
  'chevrons',
  'bricks',
];

/** How far a point lies outside a ring; 0 when inside, found by the sum of the angles under which the edges are seen. */
function outside(ring: readonly Point[], point: Point): number {
  let angle = 0;
  let nearest = Infinity;
  ring.forEach((from, index) => {
    const to = ring[(index + 1) % ring.length]!;
    const [a, b] = [from, to].map(({ xPt, yPt }) => ({ x: xPt - point.xPt, y: yPt - point.yPt }));
    angle += Math.atan2(a!.x * b!.y - a!.y * b!.x, a!.x * b!.x + a!.y * b!.y);
    const [x, y] = [b!.x - a!.x, b!.y - a!.y];
    // An edge of no length is its end.
    const t = Math.min(1, Math.max(0, -(a!.x * x + a!.y * y) / (x * x + y * y || 1)));
    nearest = Math.min(nearest, Math.hypot(a!.x + t * x, a!.y + t * y));
  });
  return Math.abs(angle) > Math.PI ? 0 : nearest;
}

/** Points close together along all lines of the hatch and around each dot (a line of no length, ends round). */
function inkOf(path: readonly PathStep[], hatch: Hatch): readonly Point[] {
  return hatchMarks(path, hatch)
    .slice(1)
    .flatMap((mark) => {
      const pairs = mark.path.flatMap((step, index): (readonly [Point, Point])[] => {
        const before = mark.path[index - 1];
        if (step.to !== 'line' || before === undefined || before.to === 'close') return [];
        return [[before, step]];
      });
      return pairs.flatMap(([from, to]) =>
        Array.from({ length: 13 }, (_, step) => {
          const share = step / 12;
          // A line whose ends are not round and that has no length draws nothing.
          const reach = mark.stroke?.cap === 'round' ? mark.stroke.widthPt / 2 : 0;
          return {
            xPt: from.xPt + (to.xPt - from.xPt) * share + reach * Math.cos(2 * Math.PI * share),
            yPt: from.yPt + (to.yPt - from.yPt) * share + reach * Math.sin(2 * Math.PI * share),
          };
        }),
      );
    });
}

describe('hatchFor', () => {
  test('tells the first 42 papers apart', () => {
    const seen = Array.from({ length: 42 }, (_, index) => {
      const { pattern, turnDegrees, spacingPt } = hatchFor(index);
      return `${pattern} ${turnDegrees % 180} ${spacingPt}`;
    });
    expect(new Set(seen).size).toBe(42);
  });

  test('turns with its sheet and takes the ground of the paper', () => {
    expect(hatchFor(3, { turnDegrees: 90 }).turnDegrees).toBe(hatchFor(3).turnDegrees + 90);
    expect(hatchFor(3, { ground: '#123456' }).ground).toBe('#123456');
  });

  test('tints so lightly that black on it keeps a contrast of at least 17:1 (WCAG 2.2, relative luminance)', () => {
    for (let index = 0; index < 12; index += 1) {
      const { ground } = hatchFor(index);
      const [red, green, blue] = [1, 3, 5].map((at) => {
        const share = Number.parseInt(ground.slice(at, at + 2), 16) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      const luminance = 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
      expect((luminance + 0.05) / 0.05).toBeGreaterThan(17);
    }
  });
});

describe('hatchMarks', () => {
  test('of a plain ground is the ground alone', () => {
    expect(
      hatchMarks(rectangle({ xPt: 0, yPt: 0, widthPt: 9, heightPt: 9 }), plainGround('#ffffff')),
    ).toHaveLength(1);
  });

  test.each(patterns)('%s fill a sheet evenly', (pattern) => {
    const hatch: Hatch = { ...hatchFor(0), pattern };
    const points = inkOf(rectangle({ xPt: 13, yPt: 29, widthPt: 120, heightPt: 120 }), hatch);
    // Some ink in each of the sixteen fields of a four by four grid.
    const fields = new Set(
      points.map(({ xPt, yPt }) => `${Math.floor((xPt - 13) / 30)} ${Math.floor((yPt - 29) / 30)}`),
    );
    for (let across = 0; across < 4; across += 1) {
      for (let down = 0; down < 4; down += 1) {
        expect(fields).toContain(`${across} ${down}`);
      }
    }
    expect(points.length).toBeGreaterThan(20);
  });

  test('lies inside its shape, whatever the shape', () => {
    const corner = fc.record({
      xPt: fc.integer({ min: 0, max: 60 }),
      yPt: fc.integer({ min: 0, max: 60 }),
    });
    const shape = fc.oneof(
      // A star about a centre has no edges that cross, and hollows that a hatch must leave out.
      fc.array(fc.integer({ min: 8, max: 30 }), { minLength: 3, maxLength: 9 }).map((reaches) =>
        polygon(
          reaches.map((reach, index) => {
            const angle = (2 * Math.PI * index) / reaches.length;
            return { xPt: 40 + reach * Math.cos(angle), yPt: 40 + reach * Math.sin(angle) };
          }),
        ),
      ),
      fc
        .tuple(corner, fc.integer({ min: 3, max: 60 }), fc.integer({ min: 3, max: 60 }))
        .map(([at, widthPt, heightPt]) => rectangle({ ...at, widthPt, heightPt })),
      fc.tuple(corner, fc.integer({ min: 3, max: 30 })).map(([at, radius]) => circle(at, radius)),
    );
    fc.assert(
      fc.property(
        shape,
        fc.constantFrom(...patterns),
        fc.integer({ min: -180, max: 180 }),
        fc.integer({ min: 4, max: 12 }),
        (path, pattern, turnDegrees, spacingPt) => {
          const [ring] = ringsOf(path);
          for (const point of inkOf(path, { ...hatchFor(0), pattern, turnDegrees, spacingPt })) {
            // Coordinates are kept to thousandths of a point.
            expect(outside(ring!, point)).toBeLessThan(0.001);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('of neighbours is one print: what two halves draw is what the whole draws', () => {
    const hatch = { ...hatchFor(0), turnDegrees: 0 };
    const lengths = (widthPt: number, xPt: number) =>
      hatchMarks(rectangle({ xPt, yPt: 1, widthPt, heightPt: 40 }), hatch)
        .slice(1)
        .flatMap((mark) => ringsOf(mark.path))
        .reduce((total, [from, to]) => total + Math.hypot(to!.xPt - from!.xPt, to!.yPt - from!.yPt), 0);
    expect(lengths(30, 0) + lengths(30, 30)).toBeCloseTo(lengths(60, 0), 6);
  });
});
