import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Frame, frameOf, hatchFor, type Mark, ringsOf } from '../drawing/index.ts';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import {
  inches,
  inchesOf,
  type Length,
  lengthOfTicks,
  minus,
  pointsOf,
  sum,
  times,
  zero,
} from '../measure/index.ts';
import { type PicturedStep, type PictureManner, pictureScale, stepPicture } from './stepPicture.ts';
import { cornersOf, drawnMarks } from './testing/walk.ts';

const manner: PictureManner = {
  typeface: plainTypeface,
  scale: 0.15,
  hatch: hatchFor(2),
  directed: true,
  measuringEdge: 'left',
  length: (length) => `${inchesOf(length)} in`,
  size: ({ width, height }) => `${inchesOf(width)} × ${inchesOf(height)} in`,
};

/** Two strips of 5 in off the height of a 12 in square. */
const step: PicturedStep = {
  size: { width: inches(12), height: inches(12) },
  axis: 'height',
  from: 'top',
  dial: null,
  otherSide: false,
  set: inches(5),
  repeat: 2,
  rest: inches(2),
  restLeft: true,
  letters: [null, null],
  restLetter: null,
  passes: 2,
  workpieces: 1,
  noun: 'sheet',
};

/** Frames of what wears a hatch and of what is left, from the left, and the hatch's turns. */
function paperIn(marks: readonly Mark[]): { frames: readonly Frame[]; turns: readonly number[] } {
  const drawn = drawnMarks(marks).flatMap(({ mark }) => {
    if (mark.kind !== 'path' || mark.stroke === undefined || mark.path.at(-1)?.to !== 'close') return [];
    const turn = mark.fill !== undefined && 'hatch' in mark.fill ? mark.fill.hatch.turnDegrees : null;
    return [{ frame: frameOf(ringsOf(mark.path).flat()), turn }];
  });
  return {
    frames: drawn.map(({ frame }) => frame).sort((a, b) => a.xPt - b.xPt),
    turns: drawn.flatMap(({ turn }) => (turn === null ? [] : [turn])),
  };
}

describe('stepPicture', () => {
  test('draws the pieces and what is left apart, together as large as the sheet', () => {
    const seed = 20260711;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 80 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 8, max: 200 }),
        fc.constantFrom('left' as const, 'right' as const),
        fc.constantFrom('width' as const, 'height' as const),
        (repeat, set, rest, across, measuringEdge, axis) => {
          const eighths = (count: number): Length => (count === 0 ? zero : inches(count, 8));
          const along = sum(times(eighths(set), repeat), eighths(rest));
          const size =
            axis === 'width'
              ? { width: along, height: eighths(across) }
              : { width: eighths(across), height: along };
          const drawn: PicturedStep = { ...step, size, axis, set: eighths(set), repeat, rest: eighths(rest) };
          const scale = pictureScale([drawn], { widthPt: 260, heightPt: 150 }, manner);
          const picture = stepPicture(drawn, { ...manner, scale, measuringEdge }, 260);
          const { frames } = paperIn(picture.marks);
          expect(frames).toHaveLength(repeat + (rest > 0 ? 1 : 0));
          const total = frames.reduce((wide, { widthPt }) => wide + widthPt, 0);
          expect(total).toBeCloseTo(pointsOf(along) * scale, 6);
          for (const [index, frame] of frames.entries()) {
            expect(frame.heightPt).toBeCloseTo(pointsOf(eighths(across)) * scale, 6);
            const next = frames[index + 1];
            if (next !== undefined) expect(next.xPt).toBeGreaterThan(frame.xPt + frame.widthPt);
          }
          for (const mark of drawnMarks(picture.marks)) {
            for (const { xPt } of cornersOf(mark, plainTypeface)) {
              expect(xPt).toBeGreaterThan(-0.01);
              expect(xPt).toBeLessThan(260.01);
            }
          }
        },
      ),
      { seed, numRuns: 300 },
    );
  });

  test('mirrors the places for a trimmer that measures on the right, and never the print', () => {
    const left = paperIn(stepPicture(step, manner, 260).marks);
    const right = paperIn(stepPicture(step, { ...manner, measuringEdge: 'right' }, 260).marks);
    const mirrored = (frames: readonly Frame[]) =>
      frames.map(({ xPt, widthPt }) => 260 - xPt - widthPt).sort((a, b) => a - b);
    for (const [index, xPt] of mirrored(right.frames).entries()) {
      expect(left.frames[index]!.xPt).toBeCloseTo(xPt, 6);
    }
    // The top of the print points to the measuring edge: a quarter to the left or to the right.
    expect(left.turns.map((turn) => turn - manner.hatch.turnDegrees)).toEqual([-90, -90]);
    expect(right.turns.map((turn) => turn - manner.hatch.turnDegrees)).toEqual([90, 90]);
  });

  test('turns the print so that the edge which is measured from lies at the measuring edge', () => {
    const turnOf = (from: PicturedStep['from'], measuringEdge: 'left' | 'right') =>
      paperIn(stepPicture({ ...step, from }, { ...manner, measuringEdge }, 260).marks).turns[0]! -
      manner.hatch.turnDegrees;
    expect(turnOf('left', 'left')).toBe(0);
    expect(turnOf('right', 'left')).toBe(180);
    expect(turnOf('bottom', 'left')).toBe(90);
    expect(turnOf('right', 'right')).toBe(0);
    expect(turnOf('bottom', 'right')).toBe(-90);
  });

  test('measures across from the measuring edge where that is told', () => {
    const across = stepPicture({ ...step, otherSide: true }, { ...manner, measuringEdge: 'right' }, 260);
    expect(across).toEqual(stepPicture(step, manner, 260));
  });

  test('tells beside the length what the ruler reads for it', () => {
    const textsOf = (dial: Length | null) =>
      drawnMarks(stepPicture({ ...step, dial }, manner, 260).marks).flatMap(({ mark }) =>
        mark.kind === 'text' ? [mark.text] : [],
      );
    expect(textsOf(inches(159, 32))).toContain('5 in (ruler 4.96875 in)');
    expect(textsOf(null)).toContain('5 in');
    expect(textsOf(zero)).toContain('5 in');
  });

  test('gives the work apart, with nothing written on it, and within its frame', () => {
    const seed = 20261126;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        fc.constantFrom('left' as const, 'right' as const),
        fc.boolean(),
        (repeat, set, rest, measuringEdge, directed) => {
          const eighths = (count: number): Length => (count === 0 ? zero : inches(count, 8));
          const height = sum(times(eighths(set), repeat), eighths(rest));
          const size = { width: inches(7), height };
          const drawn: PicturedStep = { ...step, size, set: eighths(set), repeat, rest: eighths(rest) };
          const own = { ...manner, measuringEdge, directed };
          const scale = pictureScale([drawn], { widthPt: 260, heightPt: 150 }, own);
          const { marks, work } = stepPicture(drawn, { ...own, scale }, 260);
          expect(paperIn(work.marks)).toEqual(paperIn(marks));
          const { xPt, yPt, widthPt, heightPt } = work.frame;
          for (const mark of drawnMarks(work.marks)) {
            expect(mark.mark.kind).not.toBe('text');
            for (const corner of cornersOf(mark, plainTypeface)) {
              expect(corner.xPt).toBeGreaterThan(xPt - 0.01);
              expect(corner.xPt).toBeLessThan(xPt + widthPt + 0.01);
              expect(corner.yPt).toBeGreaterThan(yPt - 0.01);
              expect(corner.yPt).toBeLessThan(yPt + heightPt + 0.01);
            }
          }
        },
      ),
      { seed, numRuns: 100 },
    );
  });

  test('keeps the numbers apart', () => {
    const narrow: PicturedStep = {
      ...step,
      set: lengthOfTicks(inches(1, 8)),
      repeat: 1,
      rest: minus(inches(1), inches(1, 8)),
      restLeft: false,
      size: { width: inches(1), height: inches(1) },
    };
    const texts = drawnMarks(stepPicture(narrow, manner, 260).marks).filter(
      ({ mark }) => mark.kind === 'text',
    );
    const boxes = texts.map((text) => frameOf(cornersOf(text, plainTypeface)));
    for (const [index, one] of boxes.entries()) {
      for (const other of boxes.slice(index + 1)) {
        const apart =
          one.xPt + one.widthPt <= other.xPt ||
          other.xPt + other.widthPt <= one.xPt ||
          one.yPt + one.heightPt <= other.yPt ||
          other.yPt + other.heightPt <= one.yPt;
        expect(apart, JSON.stringify([one, other])).toBe(true);
      }
    }
  });
});
