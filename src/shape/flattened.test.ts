import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, lengthOfTicks } from '../measure/index.ts';
import {
  areaOf,
  boundsOf,
  type Outline,
  type OutlineStep,
  outlineSteps,
  ovalOutline,
  type Point,
  pathOutline,
  readPath,
  regionOf,
  roundedOutline,
} from './index.ts';
import { anyBox, anyOutline, anyPath } from './testing/randomShape.ts';

const at = (ticks: number) => lengthOfTicks(ticks);
const square = (side: number): Box => ({ left: at(0), top: at(0), width: at(side), height: at(side) });

describe('regionOf', () => {
  it('has no chord further than 4 ticks from a circle, and its corners within √½ of it', () => {
    for (const radius of [3, 40, 1000, 80_000, 400_000]) {
      const ring = regionOf(ovalOutline(square(2 * radius))).rings[0]!;
      for (const [index, point] of ring.entries()) {
        const next = ring[(index + 1) % ring.length]!;
        expect(Math.abs(Math.hypot(point.x - radius, point.y - radius) - radius)).toBeLessThan(0.71);
        for (const part of [0.25, 0.5, 0.75]) {
          const x = point.x + part * (next.x - point.x);
          const y = point.y + part * (next.y - point.y);
          expect(Math.abs(Math.hypot(x - radius, y - radius) - radius)).toBeLessThan(4);
        }
      }
    }
  });

  it('has no point of a true curve further than 4 ticks from its chords', () => {
    const part = fc.integer({ min: 0, max: 100 });
    const side = fc.integer({ min: 500, max: 200_000 });
    fc.assert(
      fc.property(part, part, part, part, side, side, (one, other, down, deep, width, height) => {
        // The handles in order along x, so that the curve does not cross itself; the rest of the line is above it.
        const [x1, x2] = [Math.min(one, other), Math.max(one, other)];
        const reading = readPath(`M0 0C${x1} ${down} ${x2} ${deep} 100 0L100 -50L0 -50Z`);
        if (!reading.ok) throw new Error(reading.code);
        const box = { left: at(0), top: at(0), width: at(width), height: at(height) };
        const outline = pathOutline(reading.path, box);
        const region = regionOf(outline);
        expect(region.rings).toHaveLength(1);
        for (const point of onCurves(outlineSteps(outline))) {
          expect(distanceTo(region.rings[0]!, point)).toBeLessThan(4);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('has no point of a true ellipse further than 4 ticks from its chords', () => {
    const half = fc.integer({ min: 50, max: 150_000 });
    fc.assert(
      fc.property(half, half, (a, b) => {
        const region = regionOf(
          ovalOutline({ left: at(-a), top: at(-b), width: at(2 * a), height: at(2 * b) }),
        );
        for (let turn = 0; turn < 2 * Math.PI; turn += 0.0917) {
          const point = { x: a * Math.cos(turn), y: b * Math.sin(turn) };
          expect(distanceTo(region.rings[0]!, point)).toBeLessThan(4);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('meets the edges of the box that the outline fills, to a tick', () => {
    fc.assert(
      fc.property(anyBox(100_000), anyPath(), (box, text) => {
        const reading = readPath(text);
        if (!reading.ok || box.width < 1000 || box.height < 1000) return;
        const outline = pathOutline(reading.path, box);
        // What two contours share is a hole, so the bounds are those of the contours one by one.
        const bounds = outline.contours.map((contour) => boundsOf(regionOf({ contours: [contour] })));
        const found = bounds.filter((one) => one !== null);
        const left = Math.min(...found.map((one) => one.left));
        const right = Math.max(...found.map((one) => one.left + one.width));
        expect(left).toBeGreaterThanOrEqual(box.left - 1);
        expect(right).toBeLessThanOrEqual(box.left + box.width + 1);
      }),
    );
    const heart = readPath('M50 30C50 0 0 0 0 35C0 65 50 80 50 100C50 80 100 65 100 35C100 0 50 0 50 30Z');
    const box: Box = { left: at(1000), top: at(-2000), width: at(81_280), height: at(60_000) };
    expect(heart.ok && boundsOf(regionOf(pathOutline(heart.path, box)))).toEqual(box);
  });

  it('fills even-odd, whatever way contours go', () => {
    const reading = (inner: string) => readPath(`M0 0H30V30H0Z${inner}`);
    for (const inner of ['M10 10H20V20H10Z', 'M10 10V20H20V10Z']) {
      const read = reading(inner);
      if (!read.ok) throw new Error(read.code);
      const region = regionOf(pathOutline(read.path, square(30)));
      expect(areaOf(region)).toBe(900 - 100);
      expect(region.rings).toHaveLength(2);
    }
  });

  it('takes a line that crosses itself apart', () => {
    const read = readPath('M0 0L10 10H0L10 0Z');
    if (!read.ok) throw new Error(read.code);
    expect(areaOf(regionOf(pathOutline(read.path, square(100))))).toBe(2 * ((100 * 50) / 2));
  });
});

describe('outlineSteps', () => {
  it('draws quarters with curves within 0.03 % of their radius', () => {
    const radius = 100_000;
    const far = onCurves(outlineSteps(ovalOutline(square(2 * radius)))).map(({ x, y }) =>
      Math.abs(Math.hypot(x - radius, y - radius) - radius),
    );
    expect(Math.max(...far) / radius).toBeLessThan(0.0003);
    expect(Math.max(...far) / radius).toBeGreaterThan(0.0002);
  });

  it('begins and closes every contour, and ends segments where the outline does', () => {
    fc.assert(
      fc.property(anyOutline(50_000), (outline: Outline) => {
        const steps = outlineSteps(outline);
        expect(steps.filter(({ to }) => to === 'move')).toHaveLength(outline.contours.length);
        expect(steps.filter(({ to }) => to === 'close')).toHaveLength(outline.contours.length);
        const ends = steps.flatMap((step) => (step.to === 'close' ? [] : [`${step.x} ${step.y}`]));
        const expected = outline.contours.flatMap(({ from, segments }) =>
          [from, ...segments.map(({ to }) => to)].map(({ x, y }) => `${x} ${y}`),
        );
        expect(ends).toEqual(expected);
      }),
    );
  });

  it('rounds corners with quarters', () => {
    expect(outlineSteps(roundedOutline(square(100), at(10))).map(({ to }) => to)).toEqual([
      'move',
      ...Array.from({ length: 4 }, () => ['line', 'curve']).flat(),
      'close',
    ]);
  });
});

/** Points on the lines and curves that a pen draws, twenty to a curve, by the cubic's own formula. */
function onCurves(steps: readonly OutlineStep[]): { x: number; y: number }[] {
  const points: { x: number; y: number }[] = [];
  for (const step of steps) {
    if (step.to === 'close') continue;
    const from = points.at(-1);
    if (step.to === 'curve' && from !== undefined) {
      for (let part = 1; part < 20; part += 1) {
        const t = part / 20;
        const along = (a: number, b: number, c: number, d: number) =>
          (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t ** 2 * c + t ** 3 * d;
        points.push({
          x: along(from.x, step.x1, step.x2, step.x),
          y: along(from.y, step.y1, step.y2, step.y),
        });
      }
    }
    points.push({ x: step.x, y: step.y });
  }
  return points;
}

/** How far a point is from a closed ring of straight edges. */
function distanceTo(ring: readonly Point[], { x, y }: { x: number; y: number }): number {
  return Math.min(
    ...ring.map((from, index) => {
      const to = ring[(index + 1) % ring.length]!;
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const along = Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(x - from.x - along * dx, y - from.y - along * dy);
    }),
  );
}
