import { describe, expect, it } from 'vitest';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { foldedMade } from '../finished/index.ts';
import type { FoldedShape } from '../layout/index.ts';
import { inch, mm, part } from '../layout/testing/build.ts';
import { showLengthWithUnit } from '../measure/index.ts';
import { ribbonFigure, stripEnd } from './ribbonFigure.ts';
import { drawnMarks } from './testing/walk.ts';

const made = (shape: FoldedShape) =>
  foldedMade(part('ribbon', { size: [shape.strip.width, shape.strip.height], shape }))!;
const request = (widestPt: number) => ({
  length: (length: Parameters<typeof showLengthWithUnit>[0]) => showLengthWithUnit(length, 'in'),
  typeface: plainTypeface,
  widestPt,
});
const ribbon = (length: string, slant = 20): FoldedShape => ({
  kind: 'ribbon',
  template: inch('3'),
  slant,
  strip: { width: inch(length), height: inch('1/2') },
});

/** How far the drawn outlines reach from left to right; arrowheads of dimensions have none. */
function reachOf(figure: NonNullable<ReturnType<typeof ribbonFigure>>): number {
  const places = drawnMarks(figure.marks).flatMap(({ mark, move }) =>
    mark.kind === 'path' && mark.stroke !== undefined
      ? mark.path.flatMap((step) => (step.to === 'close' ? [] : [step.xPt + move.xPt]))
      : [],
  );
  return Math.max(...places) - Math.min(...places);
}

describe('a folding template', () => {
  it('shows the tails as they lie, shortened where there is no room, and is left out where it does not fit itself', () => {
    const whole = ribbonFigure(made(ribbon('14')), request(660))!;
    expect(whole.isShortened).toBe(false);
    // Two tails of (14 - 3 / cos 20°) / 2 = 5.4037 in, over a template of 3 in.
    expect(reachOf(whole) / 72).toBeCloseTo(2 * 5.4037 - 3, 3);
    const shorter = ribbonFigure(made(ribbon('14')), request(400))!;
    expect(shorter.isShortened).toBe(true);
    expect(reachOf(shorter) / 72).toBeLessThan((400 - 70) / 72);
    expect(ribbonFigure(made(ribbon('14')), request(250))).toBeNull();
  });

  it('is left out where the strip cannot be folded', () => {
    expect(ribbonFigure(made(ribbon('3 1/4')), request(600))).toBeNull();
    expect(
      ribbonFigure(made({ kind: 'knot', strip: { width: mm(60), height: mm(12) } }), request(600)),
    ).toBeNull();
  });

  it('has the end of the strip with a crease that leans to the right going up where the ribbon rises', () => {
    for (const [slant, sign] of [
      [20, 1],
      [-20, -1],
    ] as const) {
      const folded = made(ribbon('7', slant));
      if (folded.kind !== 'ribbon') throw new Error(folded.kind);
      const end = stripEnd(folded, request(600))!;
      const [crease] = drawnMarks(end.marks).flatMap(({ mark }) =>
        mark.kind === 'line' && mark.stroke.dashPt !== undefined ? [mark] : [],
      );
      const [upper, lower] = [crease!.from, crease!.to];
      expect(upper.yPt).toBeLessThan(lower.yPt);
      // (1/2) tan 10° further along one edge than along the other.
      expect((upper.xPt - lower.xPt) / 72).toBeCloseTo(sign * 0.5 * Math.tan(Math.PI / 18), 3);
      expect((upper.xPt + lower.xPt) / 144).toBeCloseTo((7 - 3 / Math.cos(Math.PI / 9)) / 2, 3);
    }
  });
});
