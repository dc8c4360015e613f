import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inches, type Length, lengthOfTicks, millimetres, type Size } from '../measure/index.ts';
import {
  type FoldedBase,
  type FoldKind,
  foldKinds,
  frontFor,
  grainFor,
  hingesOf,
  largestAllowance,
  openedSize,
  openingAxis,
  opensEitherWay,
  panelsOf,
  scoresOf,
  showsSideOfFront,
  slitOf,
  usualAllowance,
} from './fold.ts';
import { type HandFold, handFolded } from './testing/handFolded.ts';

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
    const base = folded('left', size(closed));
    expect(openedSize(base)).toEqual(size(opened));
    expect(scoresOf(base)).toEqual([{ axis: 'width', at: inch(score), folds: 'valley' }]);
  });

  test('A2 with a top fold is 4 1/4 x 11, scored at 5 1/2', () => {
    // The same five pages: the sheet cut at 4 1/4 on its short side instead.
    const base = folded('top', size([4.25, 5.5]));
    expect(openedSize(base)).toEqual(size([4.25, 11]));
    expect(scoresOf(base)).toEqual([{ axis: 'height', at: inch(5.5), folds: 'valley' }]);
  });

  test('A6 cards from A4', () => {
    // Cut at 148 on the 297 side, two A5 pieces, each folded at 105.
    const base = folded('left', { width: millimetres(105), height: millimetres(148) });
    expect(openedSize(base)).toEqual({ width: millimetres(210), height: millimetres(148) });
    expect(scoresOf(base)[0]!.at).toBe(millimetres(105));
  });

  test('a gate of 8 1/2 in is scored at 2 1/8 and 6 3/8 (a commercial printer)', () => {
    const base = folded('gate', size([4.25, 5.5]));
    expect(openedSize(base)).toEqual(size([8.5, 5.5]));
    expect(scoresOf(base).map(({ at }) => at)).toEqual([inch(2.125), inch(6.375)]);
    expect(panelsOf(base).map(({ length }) => length)).toEqual([inch(2.125), inch(4.25), inch(2.125)]);
    expect(slitOf(base)).toEqual({ axis: 'width', at: inch(2.125) });
  });

  test('a shutter of 10 1/2 in is scored at 1 3/4, 3 1/2, 7 and 8 3/4 (hobby tutorial HT-4)', () => {
    const base = folded('shutter', size([3.5, 5.5]));
    expect(openedSize(base)).toEqual(size([10.5, 5.5]));
    expect(scoresOf(base).map(({ at }) => at)).toEqual([1.75, 3.5, 7, 8.75].map(inch));
    expect(panelsOf(base).map(({ length }) => length)).toEqual([1.75, 1.75, 3.5, 1.75, 1.75].map(inch));
  });

  // Worked by five commercial printers with the same text; the front is their widest panel.
  test.each<[FoldKind, number, readonly number[]]>([
    ['trifold', 11, [3.6875, 3.6875, 3.625]],
    ['parallel', 17, [4.28125, 4.28125, 4.21875, 4.21875]],
    ['roll', 17, [4.3125, 4.3125, 4.21875, 4.15625]],
  ])('%s of %s in', (fold, flat, panels) => {
    const base = folded(fold, size([panels[0]!, 8.5]));
    expect(panelsOf(base).map(({ length }) => length)).toEqual(panels.map(inch));
    expect(openedSize(base)).toEqual(size([flat, 8.5]));
    expect(frontFor(base, 'width', inch(flat))).toBe(inch(panels[0]!));
  });

  test('no allowance for a single or a Z fold (the same printers)', () => {
    for (const fold of ['left', 'top', 'z'] as const) {
      const lengths = panelsOf(folded(fold, size([4, 4]), { allowance: inch(0.125) })).map(
        ({ length }) => length,
      );
      expect(new Set(lengths)).toEqual(new Set([inch(4)]));
    }
  });

  test('the usual allowances lie between the printed 1/32 and 1/8 in', () => {
    for (const allowance of Object.values(usualAllowance)) {
      expect(allowance).toBeGreaterThanOrEqual(inches(1, 32));
      expect(allowance).toBeLessThanOrEqual(inches(1, 8));
    }
  });
});

/** How a hand folds each kind up, the inside up, the panel that stays lying last of all named by nobody. */
const byHand: Readonly<Record<FoldKind, readonly HandFold[]>> = {
  left: [{ crease: 0, moves: 'before', to: 'over' }],
  top: [{ crease: 0, moves: 'before', to: 'over' }],
  gate: [
    { crease: 0, moves: 'before', to: 'over' },
    { crease: 1, moves: 'past', to: 'over' },
  ],
  shutter: [
    { crease: 0, moves: 'before', to: 'under' },
    { crease: 3, moves: 'past', to: 'under' },
    { crease: 1, moves: 'before', to: 'over' },
    { crease: 2, moves: 'past', to: 'over' },
  ],
  trifold: [
    { crease: 1, moves: 'past', to: 'over' },
    { crease: 0, moves: 'before', to: 'over' },
  ],
  roll: [
    { crease: 2, moves: 'past', to: 'over' },
    { crease: 1, moves: 'past', to: 'over' },
    { crease: 0, moves: 'before', to: 'over' },
  ],
  parallel: [
    { crease: 1, moves: 'past', to: 'over' },
    { crease: 2, moves: 'past', to: 'over' },
    { crease: 0, moves: 'before', to: 'over' },
  ],
  z: [
    { crease: 0, moves: 'before', to: 'over' },
    { crease: 1, moves: 'past', to: 'under' },
  ],
  none: [],
};

describe('every fold, folded by hand', () => {
  const kinds = foldKinds.flatMap((fold) =>
    (opensEitherWay(fold) ? (['sideways', 'upwards'] as const) : (['sideways'] as const)).map(
      (opens) => [fold, opens] as const,
    ),
  );

  test.each(kinds)(
    '%s, %s: panels come to lie where they are said to, over and under one another',
    (fold, opens) => {
      fc.assert(
        fc.property(front(), front(), fc.nat({ max: 100_000 }), (width, height, allowed) => {
          const size = { width, height };
          const most = largestAllowance({ size, fold, opens });
          const base = { size, fold, opens, allowance: lengthOfTicks(Math.min(allowed, most)) };
          const panels = panelsOf(base);
          const hand = handFolded(
            panels.map(({ length }) => length),
            byHand[fold],
          );
          const ground = Math.max(
            0,
            panels.findIndex(({ is }) => is === 'inside'),
          );
          const origin = hand.panels[ground]!.from;
          const along = size[openingAxis(base) ?? 'width'];
          panels.forEach((panel, index) => {
            const own = hand.panels[index]!;
            expect(panel.length).toBeGreaterThan(0);
            expect(panel.closedAt).toBe(own.from - origin);
            expect(panel.insideUp).toBe(own.insideUp);
            // Nothing stands out of the closed card.
            expect(own.from).toBeGreaterThanOrEqual(origin);
            expect(own.to).toBeLessThanOrEqual(origin + along);
            hand.panels.forEach((other, at) => {
              if (own.from < other.to && other.from < own.to && own.order < other.order)
                expect(panel.level).toBeLessThan(panels[at]!.level);
            });
          });
          expect(scoresOf(base).map(({ folds }) => folds)).toEqual(hand.creases);
          // The front is what is seen from above, and it covers all of the card.
          const fronts = panels.filter(({ is }) => is === 'front');
          expect(fronts.reduce((total, { length }) => total + length, 0)).toBe(along);
          // Doors that are folded back show their inner side.
          for (const { insideUp } of fronts) expect(insideUp).toBe(fold === 'shutter' || fold === 'none');
        }),
      );
    },
  );

  test.each(kinds)(
    '%s, %s: the panels make up the opened base, with a score between any two',
    (fold, opens) => {
      fc.assert(
        fc.property(front(), front(), (width, height) => {
          const base = folded(fold, { width, height }, { opens });
          const axis = openingAxis(base);
          const opened = openedSize(base);
          const panels = panelsOf(base);
          expect(scoresOf(base).map(({ at }) => at)).toEqual(panels.slice(1).map(({ at }) => at));
          expect(panels.at(-1)!.at + panels.at(-1)!.length).toBe(opened[axis ?? 'width']);
          expect(panels.filter(({ is }) => is === 'inside').map(({ length }) => length)).toEqual(
            axis === null ? [] : [base.size[axis]],
          );
          expect(scoresOf(base).every((score) => score.axis === axis)).toBe(true);
          for (const one of ['width', 'height'] as const)
            if (one !== axis) expect(opened[one]).toBe(base.size[one]);
        }),
      );
    },
  );

  test.each(kinds)('%s, %s: the front that opens to so much is the largest that does', (fold, opens) => {
    fc.assert(
      fc.property(fc.integer({ min: 100_000, max: 900_000 }).map(lengthOfTicks), (opened) => {
        const axis = openingAxis({ fold, opens }) ?? 'width';
        const of = (along: number) =>
          openedSize(
            folded(fold, { width: inch(5), height: inch(5), [axis]: lengthOfTicks(along) }, { opens }),
          )[axis];
        const found = frontFor(folded(fold, size([5, 5]), { opens }), axis, opened);
        expect(of(found)).toBeLessThanOrEqual(opened);
        expect(of(found + 1)).toBeGreaterThan(opened);
      }),
    );
  });

  test.each(foldKinds.filter(opensEitherWay))('%s opening upwards is the quarter turn of itself', (fold) => {
    fc.assert(
      fc.property(front(), front(), (width, height) => {
        const sideways = folded(fold, { width, height });
        const upwards = folded(fold, { width: height, height: width }, { opens: 'upwards' });
        const opened = openedSize(sideways);
        expect(openedSize(upwards)).toEqual({ width: opened.height, height: opened.width });
        expect(panelsOf(upwards)).toEqual(panelsOf(sideways));
        expect(scoresOf(upwards)).toEqual(scoresOf(sideways).map((score) => ({ ...score, axis: 'height' })));
      }),
    );
  });

  test('a top fold is the quarter turn of a side fold', () => {
    const side = openedSize(folded('left', size([4, 6])));
    expect(openedSize(folded('top', size([6, 4])))).toEqual({ width: side.height, height: side.width });
  });

  test.each(kinds)(
    '%s, %s: the fibres run along the score lines, that is across the axis they are measured on',
    (fold, opens) => {
      const base = folded(fold, size([4.25, 5.5]), { opens });
      const lines = scoresOf(base).map(({ axis }) => (axis === 'width' ? 'height' : 'width'));
      expect([...new Set(lines)]).toEqual(grainFor(base) === null ? [] : [grainFor(base)]);
    },
  );

  test('of the two ways to make an A2 base, the 8 1/2 x 5 1/2 one folds with the grain of a long-grain sheet', () => {
    // Grain of 8 1/2 x 11 usually runs the long way (university conservation manual), here along the height.
    expect(grainFor({ fold: 'left', opens: 'sideways' })).toBe('height');
    expect(grainFor({ fold: 'top', opens: 'sideways' })).toBe('width');
  });
});

test('which side of the paper shows, and where a front opens', () => {
  const faces = ['base', 'inside', 'back'] as const;
  const sides = (fold: FoldKind) => faces.map((face) => showsSideOfFront(fold, face));
  expect(sides('left')).toEqual([true, false, true]);
  expect(sides('gate')).toEqual([true, false, true]);
  // Doors that are folded back show their inner side, as the middle does behind them.
  expect(sides('shutter')).toEqual([true, true, false]);
  expect(sides('roll')).toEqual([true, false, true]);
  expect(sides('z')).toEqual([true, false, false]);
  expect(sides('none')[2]).toBe(false);
  expect(hingesOf('trifold')).toEqual(['start']);
  expect(hingesOf('gate')).toEqual(['start', 'end']);
  expect(hingesOf('none')).toEqual([]);
});

test('scores of the kinds that are folded both ways', () => {
  const folds = (fold: FoldKind) =>
    scoresOf(folded(fold, size([4, 4])))
      .map((score) => score.folds[0])
      .join('');
  expect(folds('gate')).toBe('vv');
  expect(folds('shutter')).toBe('mvvm');
  expect(folds('z')).toBe('vm');
  expect(folds('parallel')).toBe('vvm');
});

test('where a front does not halve in whole ticks the second door has the odd one', () => {
  const base = folded('gate', { width: lengthOfTicks(7), height: inch(5) });
  expect(panelsOf(base).map(({ length }) => length)).toEqual([3, 7, 4]);
  expect(slitOf(base)!.at).toBe(3);
});

function folded(
  fold: FoldKind,
  size: Size,
  { opens = 'sideways', allowance = usualAllowance.in }: Partial<FoldedBase> = {},
): FoldedBase {
  return { size, fold, opens, allowance };
}

function front(): fc.Arbitrary<Length> {
  return fc.integer({ min: 20_000, max: 600_000 }).map(lengthOfTicks);
}

function inch(value: number): Length {
  return inches(value * 64, 64);
}

function size([width, height]: readonly number[]): Size {
  return { width: inch(width!), height: inch(height!) };
}
