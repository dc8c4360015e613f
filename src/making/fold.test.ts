import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inches, type Length, lengthOfTicks, millimetres, type Size } from '../measure/index.ts';
import { foldKinds, grainFor, openedSize, scoresOf } from './fold.ts';

describe('bases in print', () => {
  // Sheet and score as printed by hobby tutorial HT-1; sizes in inches, closed front width then height.
  test.each([
    ['A1', [3.5, 4.875], [7, 4.875], 3.5],
    ['A6', [4.5, 6.25], [9, 6.25], 4.5],
    ['A7', [5, 7], [10, 7], 5],
    // The same table prints the A8 score as "5" on its 10 1/2 in base: the halves would be 5 and 5 1/2.
    ['A8', [5.25, 7.875], [10.5, 7.875], 5.25],
    ['A9', [5.5, 8.5], [11, 8.5], 5.5],
    ['No. 10', [3.875, 9.25], [7.75, 9.25], 3.875],
    ['6x6', [6, 6], [12, 6], 6],
    ['3x3', [3, 3], [6, 3], 3],
    // Five unrelated pages: half of an 8 1/2 x 11 sheet, cut at 5 1/2 and scored at 4 1/4.
    ['A2, side fold', [4.25, 5.5], [8.5, 5.5], 4.25],
  ])('%s', (_, closed, opened, score) => {
    expect(openedSize(size(closed), 'left')).toEqual(size(opened));
    expect(scoresOf(size(closed), 'left')).toEqual([{ axis: 'width', at: inch(score) }]);
  });

  test('A2 with a top fold is 4 1/4 x 11, scored at 5 1/2', () => {
    // The same five pages: the sheet cut at 4 1/4 on its short side instead.
    expect(openedSize(size([4.25, 5.5]), 'top')).toEqual(size([4.25, 11]));
    expect(scoresOf(size([4.25, 5.5]), 'top')).toEqual([{ axis: 'height', at: inch(5.5) }]);
  });

  test('A6 cards from A4', () => {
    // Cut at 148 on the 297 side, two A5 pieces, each folded at 105.
    const closed = { width: millimetres(105), height: millimetres(148) };
    expect(openedSize(closed, 'left')).toEqual({ width: millimetres(210), height: millimetres(148) });
    expect(scoresOf(closed, 'left')).toEqual([{ axis: 'width', at: millimetres(105) }]);
  });
});

describe('every fold', () => {
  const closedFront = fc.record({ width: length(), height: length() });

  test.each(foldKinds)('%s: the panels between the scores are closed fronts and make up the base', (fold) => {
    fc.assert(
      fc.property(closedFront, (closed) => {
        const opened = openedSize(closed, fold);
        const scores = scoresOf(closed, fold);
        expect(opened.width * opened.height).toBe((scores.length + 1) * closed.width * closed.height);
        for (const { axis, at } of scores) {
          expect(at).toBeGreaterThan(0);
          expect(at).toBeLessThan(opened[axis]);
        }
        for (const axis of ['width', 'height'] as const) {
          const stops = [
            0,
            ...scores.filter((score) => score.axis === axis).map(({ at }) => at),
            opened[axis],
          ];
          const panels = stops.slice(1).map((stop, index) => stop - stops[index]!);
          expect(panels).toEqual(panels.map(() => closed[axis]));
        }
      }),
    );
  });

  test('the fold turned by a quarter is the other fold of the turned card', () => {
    fc.assert(
      fc.property(closedFront, ({ width, height }) => {
        const side = openedSize({ width, height }, 'left');
        const top = openedSize({ width: height, height: width }, 'top');
        expect(top).toEqual({ width: side.height, height: side.width });
      }),
    );
  });

  test.each(foldKinds)(
    '%s: the fibres run along the score line, that is across the axis it is measured on',
    (fold) => {
      const closed = size([4.25, 5.5]);
      const lines = scoresOf(closed, fold).map(({ axis }) => (axis === 'width' ? 'height' : 'width'));
      expect(lines.length === 0 ? [null] : lines).toEqual([grainFor(fold)]);
    },
  );

  test('of the two ways to make an A2 base, the 8 1/2 x 5 1/2 one folds with the grain of a long-grain sheet', () => {
    // Grain of 8 1/2 x 11 usually runs the long way (university conservation manual), here along the height.
    expect(grainFor('left')).toBe('height');
    expect(grainFor('top')).toBe('width');
  });
});

function length(): fc.Arbitrary<Length> {
  return fc.integer({ min: 1, max: 600_000 }).map(lengthOfTicks);
}

function inch(value: number): Length {
  return inches(value * 64, 64);
}

function size([width, height]: readonly number[]): Size {
  return { width: inch(width!), height: inch(height!) };
}
