import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthOfTicks } from '../measure/index.ts';
import {
  areaOf,
  type PathFault,
  type PathShape,
  pathLimits,
  pathOutline,
  pathSize,
  readPath,
  regionOf,
} from './index.ts';
import { anyPath } from './testing/randomShape.ts';

function pathOf(text: string): PathShape {
  const reading = readPath(text);
  if (!reading.ok) throw new Error(`${reading.code} at ${reading.at}`);
  return reading.path;
}

/** The area of a path drawn so that one of its units is 1000 ticks, in its own square units. */
function areaIn(text: string): number {
  const path = pathOf(text);
  const { width, height } = pathSize(path);
  const box = {
    left: lengthOfTicks(0),
    top: lengthOfTicks(0),
    width: lengthOfTicks(Math.round(width * 1000)),
    height: lengthOfTicks(Math.round(height * 1000)),
  };
  return areaOf(regionOf(pathOutline(path, box))) / 1e6;
}

describe('readPath refuses', () => {
  const long = 'L1 1'.repeat(pathLimits.characters / 4);
  const many = `M0 0${'h1v1h-1v-1'.repeat(pathLimits.segments / 4 + 1)}Z`;
  const tangle = `M0 0L${Array.from({ length: 400 }, (_, index) => (index * index * 31) % 1009).join(' ')}Z`;
  const cases: readonly [text: string, code: PathFault, at: number, found: string][] = [
    ['', 'empty', 0, ''],
    ['   ', 'empty', 0, ''],
    ['M10 10', 'empty', 0, 'M10 10'],
    ['M10 10Z', 'empty', 0, 'M10 10Z'],
    ['L1 1L2 0Z', 'start', 0, 'L1 1L2 0Z'],
    [' 5 5', 'command', 1, '5 5'],
    ['M0 0 L5 5 X7', 'command', 10, 'X7'],
    ['M0 0R5 5 7 7 9 0Z', 'command', 4, 'R5 5 7 7 9 0'],
    ['M0 0L5%5', 'command', 6, '%5'],
    ['<svg>', 'command', 0, '<svg>'],
    ['M0 0 L10', 'number', 8, ''],
    ['M0 0 L10 Z', 'number', 9, 'Z'],
    ['M0 0L5,,5Z', 'number', 7, ',5Z'],
    ['M0 0L. 5Z', 'number', 5, '. 5Z'],
    ['M0 0L5e 5 0 9Z', 'number', 7, ' 5 0 9Z'],
    ['M0 0L09 5 0 9Z', 'leadingZero', 5, '09 5 0 9Z'],
    ['M0 0A5 5 0 2 1 9 9Z', 'flag', 11, '2 1 9 9Z'],
    ['M0 0L5 5L9 0', 'open', 0, 'M0 0L5 5L9 0'],
    ['M0 0L5 5L9 0ZM1 1L5 1', 'open', 13, 'M1 1L5 1'],
    ['M0 0L5 5L9 0Z L7 7', 'open', 12, 'Z L7 7'],
    ['M0 0H9H0Z', 'flat', 0, 'M0 0H9H0Z'],
    ['M0 0L9 9Z', 'flat', 0, 'M0 0L9 9Z'],
    ['M0 0H9V9H0ZM0 0H9V9H0Z', 'flat', 0, 'M0 0H9V9H0ZM'],
    ['M0 0L1e10 5 0 9Z', 'tooLarge', 5, '1e10 5 0 9Z'],
    ['M0 0L1e999 5 0 9Z', 'tooLarge', 5, '1e999 5 0 9Z'],
    [`M0 0${long}`, 'tooLong', pathLimits.characters, ''],
    [many, 'tooMany', 0, 'M0 0h1v1h-1v'],
    [tangle, 'tangled', 0, tangle.slice(0, 12)],
  ];
  it.each(cases.map((each) => [each[0].slice(0, 30), ...each] as const))('%s', (_, text, code, at, found) => {
    const reading = readPath(text);
    expect(reading).toMatchObject({ ok: false, code, ...(code === 'tooLong' ? {} : { at, found }) });
  });

  it('whatever stands there, with a place within the text', () => {
    const piece = fc.constantFrom(...'MmLlHhVvCcSsQqTtAaZzrR019.,-+e \n%x'.split(''));
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const text = `M0 0L9 0L5 7${pieces.join('')}`;
        const reading = readPath(text);
        if (reading.ok) {
          expect(areaOf(regionOf(pathOutline(reading.path, unit)))).toBeGreaterThan(0);
          return;
        }
        expect(reading.at).toBeGreaterThanOrEqual(0);
        expect(reading.at).toBeLessThanOrEqual(text.length);
        expect(text.slice(reading.at)).toContain(reading.found);
      }),
      { numRuns: 2000 },
    );
  });
});

const unit = {
  left: lengthOfTicks(0),
  top: lengthOfTicks(0),
  width: lengthOfTicks(160_000),
  height: lengthOfTicks(160_000),
};

describe('readPath reads', () => {
  it.each([
    // Triangles and rectangles by hand, in every way of writing.
    ['M0 0L10 0L0 8Z', 40],
    ['m0,0 10,0 -10,8z', 40],
    ['M0 0 10 0 0 8 0 0', 40],
    ['M0 0h10v8h-10z', 80],
    ['M0 0H10V8H0Z', 80],
    ['M.5.5h10v8h-10z', 80],
    ['M-5-5h+10v8e0h-1e1z', 80],
    ['M0 0H30V30H0ZM10 10H20V20H10Z', 800],
    ['M0 0H10V10H0Zm20 0h10v10h-10z', 200],
    // Behind a Z it goes on from the start of that contour.
    ['M0 0H10V10H0Zh10v-10h-10z', 200],
    // A parabola over the chord from 0 to 10, handle 10 high: two thirds of 10 by 5 (Archimedes).
    ['M0 0Q5 10 10 0Z', (2 / 3) * 10 * 5],
    ['M0 0Q5 10 10 0T20 0Z', 2 * (2 / 3) * 10 * 5],
    // Half a circle, a whole one of two halves, an ellipse; flags without spaces.
    ['M0 0A5 5 0 0 1 10 0Z', (Math.PI / 2) * 25],
    ['M0 5a5 5 0 1110 0 5 5 0 11-10 0z', Math.PI * 25],
    ['M0 3a5 3 0 1 0 10 0a5 3 0 1 0-10 0z', Math.PI * 15],
    // An ellipse turned by 30° keeps its area.
    ['M-5 0A5 3 0 0 1 5 0A5 3 0 0 1-5 0ZM20 0h1v1h-1z', Math.PI * 15 + 1],
    ['M-4.330127 -2.5A5 3 30 0 1 4.330127 2.5A5 3 30 0 1-4.330127 -2.5Z', Math.PI * 15],
    // An arc of no radius is a straight line; one too small is made large enough.
    ['M0 0A0 5 0 0 1 10 0V8H0Z', 80],
    ['M0 0A1 1 0 0 1 10 0Z', (Math.PI / 2) * 25],
    // Smooth curves: the handle of the one before, turned round. Each encloses 0.6 of 5 by 10 (integrated by hand).
    ['M0 0C0 5 10 5 10 0S20-5 20 0Z', 2 * 0.6 * 5 * 10],
  ])('%s', (text, area) => {
    expect(areaIn(text) / area).toBeGreaterThan(0.999);
    expect(areaIn(text) / area).toBeLessThan(1.001);
  });

  it('has the bounds of the true curve, not of its handles', () => {
    // 3/4 of the handles' height at the middle of a symmetric cubic.
    expect(pathSize(pathOf('M0 0C0 4 10 4 10 0Z'))).toEqual({ width: 10, height: 3 });
    const circle = pathSize(pathOf('M0 5a5 5 0 1110 0 5 5 0 11-10 0z'));
    expect(circle.width).toBeCloseTo(10, 9);
    expect(circle.height).toBeCloseTo(10, 9);
  });

  it('the same outline, however it is moved or enlarged', () => {
    fc.assert(
      fc.property(anyPath(), fc.integer({ min: 1, max: 50 }), (text, factor) => {
        const reading = readPath(text);
        if (!reading.ok) return;
        const larger = readPath(
          text.replaceAll(/A(\d+) (\d+) (\d+) (. .) (\d+) (\d+)|(\d+)/g, (...found) => {
            const [, rx, ry, turn, flags, x, y, plain] = found as string[];
            const times = (number: string | undefined) => Number(number) * factor;
            return plain === undefined
              ? `A${times(rx)} ${times(ry)} ${turn} ${flags} ${times(x)} ${times(y)}`
              : String(times(plain));
          }),
        );
        if (!larger.ok) throw new Error(larger.code);
        const [one, other] = [reading.path, larger.path].map((path) =>
          areaOf(regionOf(pathOutline(path, unit))),
        );
        expect(Math.abs(one! - other!) / unit.width ** 2).toBeLessThan(1e-3);
      }),
    );
  });

  it('a leaf of 20 000 segments', () => {
    const count = pathLimits.segments - 1;
    const leaf = Array.from({ length: count }, (_, index) => {
      const turn = (2 * Math.PI * index) / count;
      const far = 400 + 30 * Math.sin(turn * 60);
      return `${Math.round(far * Math.cos(turn))} ${Math.round(far * Math.sin(turn))}`;
    });
    // π (r² + a²/2) inside a line that waves by a about a circle of r; rounded to whole units of it here.
    const truth = Math.PI * (400 ** 2 + 30 ** 2 / 2);
    expect(Math.abs(areaIn(`M${leaf.join(' ')}Z`) / truth - 1)).toBeLessThan(0.003);
  });
});
