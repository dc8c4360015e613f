import { black, lineWidthPt, pointsOfMillimetres } from './ink.ts';
import type { GroupMark, Mark, Point } from './mark.ts';
import { polyline } from './outline.ts';

/** Words beside the two test bars, and what is said of them to someone who listens. */
export interface TestBarWords {
  readonly inch: string;
  readonly millimetres: string;
  readonly says: string;
}

/**
 * Two bars by which a print is checked with a ruler: 1 in (72 pt) exactly, and 20 mm exactly under it.
 *
 * `at` is the left end of the upper bar. Each bar is one line that ends at the outer ends of its end ticks' middle
 * lines, with ticks at every 1/4 in and every 5 mm; its words stand to the right.
 */
export function testBars(at: Point, words: TestBarWords, sizePt = 8): GroupMark {
  return {
    kind: 'group',
    role: 'figure',
    says: words.says,
    marks: [
      ...bar(at, { lengthPt: 72, ticks: 4 }, words.inch, sizePt),
      ...bar(
        { xPt: at.xPt, yPt: at.yPt + testBarsHeightPt - tickPt },
        { lengthPt: pointsOfMillimetres(20), ticks: 4 },
        words.millimetres,
        sizePt,
      ),
    ],
  };
}

/** From the upper bar's ticks to the feet of the lower bar's. */
export const testBarsHeightPt = 24;

const tickPt = 6;

function bar(
  at: Point,
  { lengthPt, ticks }: { readonly lengthPt: number; readonly ticks: number },
  words: string,
  sizePt: number,
): readonly Mark[] {
  const stroke = { colour: black, widthPt: lineWidthPt.narrow };
  const tick = (index: number): Mark => {
    const xPt = at.xPt + (lengthPt * index) / ticks;
    const half = index === 0 || index === ticks ? tickPt : tickPt / 2;
    return { kind: 'line', from: { xPt, yPt: at.yPt - half }, to: { xPt, yPt: at.yPt }, stroke };
  };
  return [
    {
      kind: 'path',
      path: polyline([at, { xPt: at.xPt + lengthPt, yPt: at.yPt }]),
      stroke: { colour: black, widthPt: lineWidthPt.wide },
    },
    ...Array.from({ length: ticks + 1 }, (_, index) => tick(index)),
    {
      kind: 'text',
      at: { xPt: at.xPt + 72 + 8, yPt: at.yPt },
      text: words,
      sizePt,
      weight: 'regular',
      colour: black,
      anchor: 'start',
    },
  ];
}
