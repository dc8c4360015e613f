import { describe, expect, test } from 'vitest';
import { frameOf, type Mark, rubric } from '../drawing/index.ts';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { assemblyOf, holdingOf } from '../finished/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, mm, part } from '../layout/testing/build.ts';
import { type AssemblyPlate, assemblyPlates } from './assemblyPlate.ts';
import { hostileSet, tideSet } from './testing/sets.ts';
import { cornersOf, type Drawn, drawnMarks, wordsIn } from './testing/walk.ts';

const room = { widthPt: 480, heightPt: 160 };

function plates(layout: Layout): readonly AssemblyPlate[] {
  const arrangement = arrange(layout);
  return assemblyPlates({
    layout,
    arrangement,
    card: 0,
    assembly: assemblyOf(layout, arrangement),
    holding: holdingOf(layout, arrangement),
    room,
  });
}

/** A square card whose mat has two panels, a band round it, and a bow on foam: built off the card, then laid down. */
const wrapped = layoutOf({
  units: 'mm',
  base: [mm(135), mm(135)],
  parts: [
    part('mat', { inset: mm(3) }),
    part('upper', { on: 'mat', size: [mm(123), mm(88)], place: { top: mm(3) } }),
    part('lower', { on: 'mat', size: [mm(123), mm(32)], place: { bottom: mm(3) } }),
    part('band', {
      on: 'mat',
      size: [mm(159), mm(20)],
      place: { top: mm(84), left: mm(0) },
      tuck: { left: mm(15), right: mm(15) },
    }),
    part('bow', { on: 'band', size: [mm(60), mm(20)], adhere: 'raised' }),
  ],
});

/** The two figures of a plate by their halves. */
function halves({ marks, widthPt }: AssemblyPlate) {
  const drawn = drawnMarks(marks);
  const middle = (one: Drawn) => {
    const { xPt, widthPt: wide } = frameOf(cornersOf(one, plainTypeface));
    return xPt + wide / 2;
  };
  return {
    left: drawn.filter((one) => middle(one) < widthPt / 2),
    right: drawn.filter((one) => middle(one) > widthPt / 2),
  };
}

const isAccent = ({ mark }: Drawn) => mark.kind === 'path' && mark.stroke?.colour === rubric;
const isPaper = ({ mark }: Drawn) => mark.kind === 'path' && mark.fill !== undefined;
const frameIn = (one: Drawn) => frameOf(cornersOf(one, plainTypeface));

describe('assemblyPlates', () => {
  test('has a plate for every step, in its order, with the letters of the pile', () => {
    expect(plates(wrapped).map(({ step, captions }) => [step.part, ...captions])).toEqual([
      ['upper', 'C turned over', 'C on B'],
      ['lower', 'D turned over', 'D on B'],
      ['band', 'B turned over', 'E round B'],
      ['bow', 'F turned over', 'F on E'],
      ['mat', 'B turned over', 'B on A'],
    ]);
  });

  test('draws what is there by then and nothing else, and the new part alone in the accent', () => {
    // Counted by hand: what is built off the card has no card under it.
    expect(plates(wrapped).map((plate) => halves(plate).right.filter(isPaper).length)).toEqual([
      2, 3, 4, 5, 6,
    ]);
    for (const layout of [wrapped, tideSet(), hostileSet()])
      for (const plate of plates(layout)) {
        const pieces = layout.parts.find(({ id }) => id === plate.step.part)!.places.length;
        expect(halves(plate).right.filter(isAccent)).toHaveLength(pieces);
      }
  });

  test('keeps within its room, words and all', () => {
    for (const layout of [wrapped, tideSet(), hostileSet()])
      for (const plate of plates(layout)) {
        expect(plate.heightPt).toBeLessThanOrEqual(room.heightPt + 1e-9);
        for (const one of drawnMarks(plate.marks)) {
          const { xPt, yPt, widthPt, heightPt } = frameIn(one);
          expect(xPt).toBeGreaterThan(-1);
          expect(yPt).toBeGreaterThan(-1);
          expect(xPt + widthPt).toBeLessThan(room.widthPt + 1);
          expect(yPt + heightPt).toBeLessThan(plate.heightPt + 1);
        }
        const named = wordsIn(plate.marks);
        for (const caption of plate.captions) expect(named).toContain(caption);
      }
  });

  test('turns the work over: what is nearer the left edge from the front is nearer the right one from behind', () => {
    // A banner with its left end notched, on foam, its hidden part to the left of a window; the foam is mirrored with it.
    const layout = layoutOf({
      units: 'mm',
      base: [mm(148), mm(105)],
      parts: [
        part('tag', {
          size: [mm(100), mm(30)],
          place: { left: mm(10) },
          shape: { kind: 'banner', ends: { left: 'notched' }, depth: mm(20) },
          adhere: 'raised',
        }),
      ],
    });
    const [plate] = plates(layout);
    const { left, right } = halves(plate!);
    const steps = (one: Drawn) => {
      const { xPt, widthPt } = frameIn(one);
      return cornersOf(one, plainTypeface).map((corner) => (corner.xPt - xPt) / widthPt);
    };
    const front = steps(right.find(isAccent)!);
    const back = steps(left.find(isAccent)!);
    const rounded = (places: readonly number[]) => places.map((at) => Number(at.toFixed(9))).sort();
    expect(rounded(back.map((at) => 1 - at))).toEqual(rounded(front));
    expect(back.some((at) => Math.abs(at - 0.8) < 1e-9)).toBe(true);

    // Foam in the library's own axes, mirrored by hand.
    const arrangement = arrange(layout);
    const [held] = holdingOf(layout, arrangement).parts[0]!.pieces;
    const outline = frameIn(left.find(isAccent)!);
    const foam = left.filter((one) => isPaper(one) && !isAccent(one)).map(frameIn);
    const scale = outline.widthPt / mm(100);
    expect(foam).toHaveLength(held!.laid.length);
    held!.laid.forEach(({ box }, index) => {
      expect(foam[index]!.xPt - outline.xPt).toBeCloseTo((mm(100) - box.left - box.width) * scale, 6);
      expect(foam[index]!.yPt - outline.yPt).toBeCloseTo(box.top * scale, 6);
    });
  });

  test('shows the ends of a band behind what it goes round, taped, and later what goes down over them', () => {
    const [, , band, , mat] = plates(wrapped).map((plate) => halves(plate).left);
    const back = frameIn(band!.find((one) => isPaper(one) && !isAccent(one))!);
    const ends = band!.filter((one) => isAccent(one)).map(frameIn);
    expect(ends).toHaveLength(2);
    for (const { widthPt } of ends) expect(widthPt / back.widthPt).toBeCloseTo(15 / 129, 6);
    const dashed = ({ mark }: { readonly mark: Mark }) =>
      mark.kind === 'path' && mark.stroke?.dashPt !== undefined;
    expect(band!.filter(dashed)).toHaveLength(2);
    expect(mat!.filter(dashed)).toHaveLength(0);
    expect(mat!.filter((one) => isPaper(one) && !isAccent(one))).toHaveLength(2);
  });
});
