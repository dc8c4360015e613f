import { describe, expect, test } from 'vitest';
import {
  type Booklet,
  type Frame,
  frameOf,
  type Hatch,
  type Mark,
  type Point,
  ringsOf,
} from '../drawing/index.ts';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import type { Layout } from '../layout/index.ts';
import { inches, millimetres } from '../measure/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { type GuideRequest, guideOf } from './guide.ts';
import type { Hand } from './handed.ts';
import { fieldSet, planned, restfulTrimmer, tideSet } from './testing/sets.ts';
import { drawnMarks, wordsIn } from './testing/walk.ts';

/** Worked with the left hand, measures on the right; its ruler is off and short, so that it measures on both sides. */
const offTrimmer: Trimmer = {
  ...restfulTrimmer,
  reach: { measuringSide: inches(4), otherSide: inches(12) },
  correction: inches(1, 32),
};

const fieldTrimmer: Trimmer = { ...restfulTrimmer, marks: millimetres(1), longest: null, narrowest: null };

const cases: readonly (readonly [string, () => Layout, Trimmer | null])[] = [
  ['a trimmer on the right', tideSet, restfulTrimmer],
  ['a ruler that is off and short', tideSet, offTrimmer],
  ['no trimmer', tideSet, null],
  ['sheets that are squared first', fieldSet, fieldTrimmer],
  ['sheets that are squared first, and no trimmer', fieldSet, null],
];

describe.each(cases)('a guide for the other hand, with %s', (_, layout, trimmer) => {
  const manner = { sheetFormat: 'a4', units: 'in', typeface: plainTypeface } as const;
  const forHand = async (hand: Hand | null) =>
    guideOf({ ...(await planned(layout(), trimmer)), ...manner, hand } satisfies GuideRequest);

  test('has its cuts where a mirror shows those of the first, and the print as it was', async () => {
    const [left, right] = [picturesIn(await forHand('left')), picturesIn(await forHand('right'))];
    expect(left.length).toBeGreaterThan(3);
    expect(right.map(({ step }) => step)).toEqual(left.map(({ step }) => step));
    // Pictures of a guide stand in one column, so all are mirrored about one line.
    const [one, other] = [left[0]!, right[0]!];
    const mirror = Math.min(...one.frames.map(({ xPt }) => xPt)) + rightEnd(other.frames);
    let onItsSide = 0;
    for (const [index, picture] of left.entries()) {
      const mirrored = right[index]!;
      const about = `step ${picture.step}`;
      const sorted = mirrored.frames.toReversed();
      expect(sorted, about).toHaveLength(picture.frames.length);
      for (const [at, frame] of picture.frames.entries()) {
        expect(mirror - sorted[at]!.xPt - sorted[at]!.widthPt, about).toBeCloseTo(frame.xPt, 6);
        expect(sorted[at]!.widthPt, about).toBeCloseTo(frame.widthPt, 6);
        expect(sorted[at]!.heightPt, about).toBeCloseTo(frame.heightPt, 6);
      }
      const cuts = mirrored.cuts.map((xPt) => mirror - xPt).sort((a, b) => a - b);
      expect(cuts, about).toHaveLength(picture.cuts.length);
      for (const [at, xPt] of cuts.entries()) expect(xPt, about).toBeCloseTo(picture.cuts[at]!, 6);
      // A mirrored hatch would lean the other way; one of the same paper, at most turned half round, does not.
      for (const [at, hatch] of picture.hatches.entries()) {
        const { turnDegrees, ...worn } = mirrored.hatches[at]!;
        const { turnDegrees: before, ...wornBefore } = hatch;
        expect(worn, about).toEqual(wornBefore);
        expect(Math.abs(turnDegrees - before) % 180, about).toBe(0);
        if (Math.abs(turnDegrees - before) % 360 !== 0) onItsSide += 1;
      }
    }
    // What lies on its side has its top at the measuring edge, wherever that is.
    expect(onItsSide).toBeGreaterThan(0);
  });

  test('says every setting as before, and left for right where the work is laid', async () => {
    const [left, right] = [picturesIn(await forHand('left')), picturesIn(await forHand('right'))];
    const sides = /(?<=to the |blade, the |on the )(?:left|right)/g;
    const swapped = (says: string) => says.replaceAll(sides, (side) => (side === 'left' ? 'right' : 'left'));
    expect(right.map(({ says }) => says)).toEqual(left.map(({ says }) => swapped(says)));
    const unsided = (pages: Booklet) => picturesIn(pages).map(({ says }) => says.match(/[\d/¼½¾⅛⅜⅝⅞⁄]+/gu));
    expect(unsided(await forHand('right'))).toEqual(unsided(await forHand(null)));
  });

  test('says where the measuring edge is and which hand works the blade', async () => {
    for (const [hand, edge] of [
      ['left', 'right'],
      ['right', 'left'],
    ] as const) {
      const words = wordsOf(await forHand(hand));
      expect(words).toContain(`measures on the ${edge}, worked with the ${hand} hand.`);
      expect(words).toContain(`The heavy rule on the ${edge} is the measuring edge`);
      expect(words).toContain(`Your ${hand} hand works the blade; the ${edge} holds the work`);
      expect(words.includes('no print is mirrored')).toBe(hand !== trimmer?.hand);
    }
  });

  test('is the guide that the trimmer’s own hand has always had', async () => {
    if (trimmer !== null) expect(await forHand(trimmer.hand)).toEqual(await forHand(null));
    else expect(wordsOf(await forHand(null))).toContain('left and right change places');
  });

  test('is the guide of a plan that holds for the mirrored trimmer, planned and replayed anew', async () => {
    if (trimmer === null) return;
    // Spelt out: the other hand and the other edge, and all else as it was.
    const mirrored: Trimmer = { ...trimmer, hand: 'right', measuringEdge: 'left' };
    const [there, here] = [await planned(layout(), mirrored), await planned(layout(), trimmer)];
    expect(there.plan).toEqual(here.plan);
    const own = guideOf({ ...there, ...manner });
    // Other words stand before them, so they may stand higher or lower.
    const onAnyLine = (pages: Booklet) =>
      picturesIn(pages).map(({ frames, ...each }) => ({
        ...each,
        frames: frames.map(({ yPt: _, ...frame }) => frame),
      }));
    expect(onAnyLine(own)).toEqual(onAnyLine(await forHand('right')));
  });
});

/** A cutting picture of a guide: what stands where on its page. */
interface Picture {
  readonly step: number;
  readonly says: string;
  /** Of each piece and of what remains, from the left. */
  readonly frames: readonly Frame[];
  /** Where the ticks over the work stand, from the left. */
  readonly cuts: readonly number[];
  readonly hatches: readonly Hatch[];
}

function picturesIn({ pages }: Booklet): readonly Picture[] {
  return pages.flatMap(({ marks }) => figuresIn(marks, { xPt: 0, yPt: 0 }));
}

function figuresIn(marks: readonly Mark[], move: Point): readonly Picture[] {
  return marks.flatMap((mark) => {
    if (mark.kind !== 'group') return [];
    const moved = { xPt: move.xPt + (mark.move?.xPt ?? 0), yPt: move.yPt + (mark.move?.yPt ?? 0) };
    const step = /^Picture of step (\d+)/u.exec(mark.says ?? '')?.[1];
    if (mark.role !== 'figure' || step === undefined) return figuresIn(mark.marks, moved);
    const drawn = drawnMarks(mark.marks, moved);
    const outlined = drawn.flatMap(({ mark: { ...each }, move: at }) => {
      if (each.kind !== 'path' || each.stroke === undefined || each.path.at(-1)?.to !== 'close') return [];
      const frame = frameOf(ringsOf(each.path).flat());
      const hatch = each.fill !== undefined && 'hatch' in each.fill ? each.fill.hatch : null;
      return [{ frame: { ...frame, xPt: frame.xPt + at.xPt, yPt: frame.yPt + at.yPt }, hatch }];
    });
    const frames = outlined.map(({ frame }) => frame).sort((a, b) => a.xPt - b.xPt);
    const topPt = Math.min(...frames.map(({ yPt }) => yPt));
    const cuts = drawn.flatMap(({ mark: each, move: at }) => {
      if (each.kind !== 'line' || each.from.xPt !== each.to.xPt) return [];
      return Math.max(each.from.yPt, each.to.yPt) + at.yPt < topPt ? [each.from.xPt + at.xPt] : [];
    });
    return [
      {
        step: Number(step),
        says: mark.says!,
        frames,
        cuts: cuts.sort((a, b) => a - b),
        hatches: outlined.flatMap(({ hatch }) => hatch ?? []),
      },
    ];
  });
}

function rightEnd(frames: readonly Frame[]): number {
  return Math.max(...frames.map(({ xPt, widthPt }) => xPt + widthPt));
}

function wordsOf({ pages }: Booklet): string {
  return pages.map(({ marks }) => wordsIn(marks)).join(' ');
}
