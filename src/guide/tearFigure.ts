import {
  black,
  dimensionLine,
  fineStroke,
  hiddenStroke,
  lineWidthPt,
  type Mark,
  outlineStroke,
  type Row,
  rectangle,
  type Stroke,
  type Typeface,
  white,
  wideStroke,
} from '../drawing/index.ts';
import type { TearDepth } from '../making/index.ts';
import { type Length, pointsOf } from '../measure/index.ts';

/**
 * The end of a piece with its torn edge to the front: the cut edge below, over it the least, the usual and the most that
 * is torn off as a broken, a full and a dotted line, each measured from the cut edge outside the piece.
 */
export function tearFigure(
  tear: TearDepth,
  {
    fill,
    length,
    typeface,
  }: {
    readonly fill: Mark & { readonly kind: 'path' };
    readonly length: (length: Length) => string;
    readonly typeface: Typeface;
  },
): Row & { readonly widthPt: number; readonly scale: number } {
  const scale = Math.max(1, Math.min(4, Math.floor(mostHighPt / pointsOf(tear.most))));
  const depthPt = (depth: Length) => pointsOf(depth) * scale;
  const highPt = depthPt(tear.most) + bodyPt;
  const at = (depth: Length) => highPt - depthPt(depth);
  const lines = [
    { name: 'least', depth: tear.least, stroke: leastStroke },
    { name: 'most', depth: tear.most, stroke: mostStroke },
  ].filter(({ depth }) => depth !== tear.usual && depth > 0);
  const measured = [
    ...lines.filter(({ name }) => name === 'least'),
    { name: lines.length === 0 ? 'always' : 'usual', depth: tear.usual },
    ...lines.filter(({ name }) => name === 'most'),
  ];
  const marks: Mark[] = [
    {
      kind: 'path',
      path: rectangle({ xPt: 0, yPt: at(tear.usual), widthPt: wide, heightPt: depthPt(tear.usual) }),
      fill: { colour: white },
    },
    { ...fill, path: rectangle({ xPt: 0, yPt: 0, widthPt: wide, heightPt: at(tear.usual) }) },
    // The piece goes on upwards, so that its upper edge is left open.
    ...[0, wide].map(
      (xPt): Mark => ({
        kind: 'line',
        from: { xPt, yPt: 0 },
        to: { xPt, yPt: highPt },
        stroke: outlineStroke,
      }),
    ),
    { kind: 'line', from: { xPt: 0, yPt: highPt }, to: { xPt: wide, yPt: highPt }, stroke: outlineStroke },
    // Bare under the lines, so that they are seen in the hatch.
    ...lines.map(
      ({ depth }): Mark => ({
        kind: 'path',
        path: rectangle({ xPt: 1, yPt: at(depth) - 3, widthPt: wide - 2, heightPt: 6 }),
        fill: { colour: white },
      }),
    ),
    ...lines.map(
      ({ depth, stroke }): Mark => ({
        kind: 'line',
        from: { xPt: 0, yPt: at(depth) },
        to: { xPt: wide, yPt: at(depth) },
        stroke,
      }),
    ),
    {
      kind: 'line',
      from: { xPt: 0, yPt: at(tear.usual) },
      to: { xPt: wide, yPt: at(tear.usual) },
      stroke: wideStroke,
    },
    ...measured.map(({ depth }, index) =>
      dimensionLine({
        from: { xPt: wide, yPt: at(depth) },
        to: { xPt: wide, yPt: highPt },
        side: 'right',
        // Rows far enough apart for the numbers, which stand upright in them.
        edgePt: wide + index * rowPt,
        label: '',
        number: 'over',
        typeface,
      }),
    ),
    ...measured.map(
      ({ name, depth }, index): Mark => ({
        kind: 'text',
        at: { xPt: wide + firstRowPt + index * rowPt, yPt: highPt + 14 + index * 12 },
        text: `${name} ${length(depth)}`,
        sizePt: 9,
        weight: 'regular',
        colour: black,
        anchor: 'middle',
      }),
    ),
    {
      kind: 'text',
      at: { xPt: wide / 2, yPt: highPt + 14 },
      text: 'cut edge',
      sizePt: 9,
      weight: 'regular',
      colour: black,
      anchor: 'middle',
    },
  ];
  return {
    marks,
    heightPt: highPt + 14 + measured.length * 12,
    widthPt: wide + firstRowPt + measured.length * rowPt,
    scale,
  };
}

/** Broken for the least, dotted for the most; the usual depth is a full line. */
export const leastStroke: Stroke = { ...hiddenStroke, dashPt: [6, 3] };
export const mostStroke: Stroke = {
  ...fineStroke,
  widthPt: lineWidthPt.wide,
  dashPt: [0.01, 3],
  cap: 'round',
};

const wide = 170;
const bodyPt = 26;
const mostHighPt = 80;
/** 10 mm, where the first row of a dimension stands. */
const firstRowPt = 28.35;
const rowPt = 30;
