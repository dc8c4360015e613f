import { type Mark, type Page, type Typeface, testBars, testBarsHeightPt } from '../drawing/index.ts';
import type { FoldedMade } from '../finished/index.ts';
import { inches, millimetres, roundTo, showLengthWithUnit, type Units } from '../measure/index.ts';
import { type RibbonFigure, ribbonFigure, stripEnd } from './ribbonFigure.ts';

/**
 * The template of a folded strip at its true size, with the two bars that tell whether it was printed true, and of a
 * ribbon the end of its strip with the first crease; the page is as large as it takes. `null` where the strip cannot be
 * folded.
 */
export function ribbonDrawing(
  made: FoldedMade,
  { units, typeface }: { readonly units: Units; readonly typeface: Typeface },
): Page | null {
  const step = units === 'in' ? inches(1, 64) : millimetres(0.1);
  const request = {
    length: (length: Parameters<typeof roundTo>[0]) =>
      showLengthWithUnit(roundTo(length, step, 'nearest'), units, 'printed'),
    typeface,
    widestPt: Number.POSITIVE_INFINITY,
  };
  const figure = ribbonFigure(made, request);
  if (figure === null) return null;
  const end = made.kind === 'ribbon' ? stripEnd(made, request) : null;
  const barsPt = marginPt + testBarsHeightPt + 24;
  const placed = (one: RibbonFigure, yPt: number): Mark => ({
    kind: 'group',
    marks: one.marks,
    move: { xPt: marginPt, yPt },
  });
  return {
    widthPt: Math.max(figure.widthPt, end?.widthPt ?? 0, barsWidePt) + 2 * marginPt,
    heightPt: barsPt + figure.heightPt + (end === null ? 0 : end.heightPt + apartPt) + marginPt,
    marks: [
      testBars(
        { xPt: marginPt, yPt: marginPt },
        {
          inch: '1 in exactly',
          millimetres: '20 mm exactly',
          says: 'Two bars to measure: one is 1 inch long, the other 20 millimetres.',
        },
      ),
      placed(figure, barsPt),
      ...(end === null ? [] : [placed(end, barsPt + figure.heightPt + apartPt)]),
    ],
  };
}

const marginPt = 18;
const apartPt = 18;
/** The longer bar with its words. */
const barsWidePt = 160;
