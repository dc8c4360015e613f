import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Box, type Length, lengthOfTicks, zero } from '../measure/index.ts';
import { readPath } from '../shape/index.ts';
import { covers, type Outline, touches } from './cover.ts';
import { inch } from './testing/build.ts';

// Second opinion: points strewn over an outline, each asked whether it lies in the other one.
describe('random outlines', () => {
  test('a covered outline has no point outside, an uncovered one has', () => {
    let covered = 0;
    fc.assert(
      fc.property(outline(), outline(), (outer, inner) => {
        const outermost = rim(inner);
        if (covers(outer, inner)) {
          covered += 1;
          expect(outermost.every((point) => isIn(outer, point, 20))).toBe(true);
        } else {
          // The rim of a circle is strewn finely enough to miss no more than this.
          expect(outermost.every((point) => isIn(outer, point, -20))).toBe(false);
        }
      }),
      { numRuns: 2_000 },
    );
    expect(covered).toBeGreaterThan(50);
  });

  test('outlines that touch share a point, others do not', () => {
    let touching = 0;
    fc.assert(
      fc.property(outline(), outline(), (one, other) => {
        const shared = strewn(one).some((point) => isIn(other, point, -300));
        if (shared) expect(touches(one, other)).toBe(true);
        if (!touches(one, other)) expect(strewn(one).some((point) => isIn(other, point, -40))).toBe(false);
        else touching += 1;
        expect(touches(other, one)).toBe(touches(one, other));
      }),
      { numRuns: 2_000 },
    );
    expect(touching).toBeGreaterThan(200);
  });
});

describe('limits', () => {
  const outlineOf = (shape: Outline['shape'], left: Length, size: string): Outline => ({
    shape,
    box: { left, top: left, width: inch(size), height: inch(size) },
  });

  test('flush is covered, and so is what is unseen; a hundredth of a millimetre more is not', () => {
    const box = outlineOf({ kind: 'rectangle' }, inch('1'), '2');
    const moved = (ticks: number) => outlineOf({ kind: 'rectangle' }, lengthOfTicks(inch('1') + ticks), '2');
    expect([0, 16, -16, 17, -17].map((ticks) => covers(box, moved(ticks)))).toEqual([
      true,
      true,
      true,
      false,
      false,
    ]);
  });

  test('the square in a circle: a 3-4-5 triangle', () => {
    // Half sides 3/2 and 2 in: the corner lies 2 1/2 in from the centre, on the rim of a 5 in circle.
    const panel = (height: string): Outline => ({
      shape: { kind: 'rectangle' },
      box: { left: inch('1'), top: inch('1/2'), width: inch('3'), height: inch(height) },
    });
    const circle = outlineOf({ kind: 'circle' }, inch('0'), '5');
    expect(covers(circle, panel('4'))).toBe(true);
    expect(covers(circle, panel('4 1/64'))).toBe(false);
  });

  test('a circle and a rectangle whose corner it barely reaches, named either way round', () => {
    const square = (at: number): Box => ({
      left: lengthOfTicks(at),
      top: lengthOfTicks(at),
      width: lengthOfTicks(10_000),
      height: lengthOfTicks(10_000),
    });
    const circle: Outline = { shape: { kind: 'circle' }, box: square(0) };
    // The corner lies 19 ticks within the rim, 16 of them unseen: measured along the diagonal, as all of it is.
    const corner: Outline = { shape: { kind: 'rectangle' }, box: square(8_522) };
    expect([touches(circle, corner), touches(corner, circle)]).toEqual([true, true]);
  });

  test('what lies in the notch of a banner, or in a hole, is not touched; what lies in its point is', () => {
    const at = (left: string, top: string, size: string): Box => ({
      left: inch(left),
      top: inch(top),
      width: inch(size),
      height: inch(size),
    });
    const circle: Outline = { shape: { kind: 'circle' }, box: at('3 5/8', '3/8', '1/4') };
    const strip = { left: zero, top: zero, width: inch('4'), height: inch('1') };
    // The notch goes in by half the height: a circle of 1/4 in lies well inside it.
    const banner = (end: 'notched' | 'pointed'): Outline => ({
      shape: { kind: 'banner', ends: { right: end }, depth: null },
      box: strip,
    });
    expect([touches(banner('notched'), circle), touches(circle, banner('notched'))]).toEqual([false, false]);
    expect([touches(banner('pointed'), circle), covers(banner('pointed'), circle)]).toEqual([true, true]);

    const reading = readPath('M0 0H12V12H0Z M3 3H9V9H3Z');
    if (!reading.ok) throw new Error(reading.code);
    const frame: Outline = { shape: { kind: 'outline', path: reading.path }, box: at('0', '0', '3') };
    const small: Outline = { shape: { kind: 'rectangle' }, box: at('1', '1', '1') };
    const larger: Outline = { shape: { kind: 'rectangle' }, box: at('1/2', '1/2', '2') };
    expect([touches(frame, small), covers(frame, small)]).toEqual([false, false]);
    expect([touches(frame, larger), covers(frame, larger)]).toEqual([true, false]);
  });

  test('the rectangle of most area in an oval goes in, one a little larger does not', () => {
    // Inscribed in an ellipse: sides of √2 times its half axes.
    const oval: Outline = {
      shape: { kind: 'oval' },
      box: { left: zero, top: zero, width: inch('4'), height: inch('2') },
    };
    const centred = (grown: number): Outline => {
      const [width, height] = [4, 2].map((side) => Math.floor((side * 40_640 * grown) / Math.SQRT2));
      return {
        shape: { kind: 'rectangle' },
        box: {
          left: lengthOfTicks(Math.round((inch('4') - width!) / 2)),
          top: lengthOfTicks(Math.round((inch('2') - height!) / 2)),
          width: lengthOfTicks(width!),
          height: lengthOfTicks(height!),
        },
      };
    };
    expect([0.999, 1, 1.001].map((grown) => covers(oval, centred(grown)))).toEqual([true, true, false]);
  });

  test('circles side by side do not touch, nor does a circle a corner it passes', () => {
    const box = (left: string, top: string, size: string): Box => ({
      left: inch(left),
      top: inch(top),
      width: inch(size),
      height: inch(size),
    });
    expect(
      touches(
        { shape: { kind: 'circle' }, box: box('0', '0', '1') },
        { shape: { kind: 'circle' }, box: box('1', '0', '1') },
      ),
    ).toBe(false);
    // Boxes share a corner of 1/8 x 1/8 in, which the circle does not reach.
    expect(
      touches(
        { shape: { kind: 'circle' }, box: box('0', '0', '1') },
        { shape: { kind: 'rectangle' }, box: box('7/8', '7/8', '1') },
      ),
    ).toBe(false);
  });
});

function outline(): fc.Arbitrary<Outline> {
  const length = (max: number) => fc.integer({ min: 4, max }).map((count) => lengthOfTicks(count * 500));
  return fc
    .record({
      shape: fc.constantFrom<'rectangle' | 'circle'>('rectangle', 'circle'),
      left: length(40),
      top: length(40),
      width: length(60),
      height: length(60),
    })
    .map(
      ({ shape, left, top, width, height }): Outline => ({
        shape: { kind: shape },
        box: { left, top, width, height: shape === 'circle' ? width : height },
      }),
    );
}

type Point = readonly [x: number, y: number];

/** Whether a point lies in an outline that is larger by `more` on all sides. */
function isIn({ shape, box }: Outline, [x, y]: Point, more: number): boolean {
  const [right, bottom] = [box.left + box.width, box.top + box.height];
  return shape.kind === 'circle'
    ? Math.hypot(x - (box.left + right) / 2, y - (box.top + bottom) / 2) <= box.width / 2 + more
    : x >= box.left - more && x <= right + more && y >= box.top - more && y <= bottom + more;
}

function rim({ shape, box }: Outline): Point[] {
  const [right, bottom] = [box.left + box.width, box.top + box.height];
  if (shape.kind === 'rectangle')
    return [
      [box.left, box.top],
      [right, box.top],
      [box.left, bottom],
      [right, bottom],
    ];
  return Array.from({ length: 360 }, (_, degrees): Point => {
    const angle = (degrees * Math.PI) / 180;
    return [
      (box.left + right) / 2 + (Math.cos(angle) * box.width) / 2,
      (box.top + bottom) / 2 + (Math.sin(angle) * box.width) / 2,
    ];
  });
}

function strewn(outline: Outline): Point[] {
  const { left, top, width, height } = outline.box;
  const steps = Array.from({ length: 41 }, (_, index) => index / 40);
  return steps
    .flatMap((down) => steps.map((across): Point => [left + across * width, top + down * height]))
    .filter((point) => isIn(outline, point, 0));
}
