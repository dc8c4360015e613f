import {
  dimensionLine,
  fineStroke,
  foldStroke,
  hiddenStroke,
  type Mark,
  outlineStroke,
  polygon,
  type Row,
  rectangle,
  type Typeface,
  white,
  wideStroke,
} from '../drawing/index.ts';
import type { FoldedMade } from '../finished/index.ts';
import { type Facet, knotFacets, ribbonFacets, ribbonMeasures } from '../making/index.ts';
import { type Length, lengthOfTicks, pointsOf } from '../measure/index.ts';

/** How a template is set. */
export interface RibbonFigureRequest {
  readonly length: (length: Length) => string;
  readonly typeface: Typeface;
  /** No wider than this. */
  readonly widestPt: number;
}

/** A drawn template; `isShortened`: the tails are longer than they are drawn. */
export interface RibbonFigure extends Row {
  readonly widthPt: number;
  readonly isShortened: boolean;
}

/**
 * What a strip is folded round, at true size: of a ribbon its middle in a heavy outline between the two creases, with the
 * tails as they lie behind it, the template and the rise measured; of loops the template; of a knot its pentagon.
 * `null` where it is wider than there is room, or the strip cannot be folded.
 */
export function ribbonFigure(made: FoldedMade, request: RibbonFigureRequest): RibbonFigure | null {
  switch (made.kind) {
    case 'ribbon':
      return ribbonTemplate(made, request);
    case 'loops':
      return loopTemplate(made, request);
    case 'knot':
      return knotTemplate(made, request);
  }
}

/**
 * The end of a ribbon's strip lying flat at true size, its first crease from mark to mark; `null` where there is no room
 * for it. The other end is the same turned half round.
 */
export function stripEnd(
  made: Extract<FoldedMade, { kind: 'ribbon' }>,
  { length, typeface, widestPt }: RibbonFigureRequest,
): RibbonFigure | null {
  const { edges } = made.measures;
  const highPt = ptOf(made.strip.width);
  const [nearerPt, furtherPt] = [pointsOf(edges.nearer), pointsOf(edges.further)];
  const widePt = Math.max(furtherPt, nearerPt) + 40;
  if (edges.nearer < 0 || widePt + 2 * sidePt > widestPt) return null;
  const rises = made.shape.slant >= 0;
  const [upperPt, lowerPt] = rises ? [furtherPt, nearerPt] : [nearerPt, furtherPt];
  const [upper, lower] = rises ? [edges.further, edges.nearer] : [edges.nearer, edges.further];
  const marks: Mark[] = [
    {
      kind: 'path',
      path: polygon([
        { xPt: widePt, yPt: 0 },
        { xPt: 0, yPt: 0 },
        { xPt: 0, yPt: highPt },
        { xPt: widePt, yPt: highPt },
      ]),
      fill: { colour: white },
    },
    ...[
      [widePt, 0, 0, 0],
      [0, 0, 0, highPt],
      [0, highPt, widePt, highPt],
    ].map(
      ([x1, y1, x2, y2]): Mark => ({
        kind: 'line',
        from: { xPt: x1!, yPt: y1! },
        to: { xPt: x2!, yPt: y2! },
        stroke: outlineStroke,
      }),
    ),
    {
      kind: 'line',
      from: { xPt: upperPt, yPt: 0 },
      to: { xPt: lowerPt, yPt: highPt },
      stroke: { ...foldStroke, widthPt: 1 },
    },
    dimensionLine({
      from: { xPt: 0, yPt: 0 },
      to: { xPt: upperPt, yPt: 0 },
      side: 'top',
      label: length(upper),
      typeface,
    }),
    dimensionLine({
      from: { xPt: 0, yPt: highPt },
      to: { xPt: lowerPt, yPt: highPt },
      side: 'bottom',
      label: length(lower),
      typeface,
    }),
  ];
  return {
    marks: [{ kind: 'group', marks, move: { xPt: sidePt, yPt: rowPt } }],
    widthPt: widePt + 2 * sidePt,
    heightPt: highPt + 2 * rowPt,
    isShortened: false,
  };
}

/** Room for a row of dimensions, and for numbers beside. */
const rowPt = 44;
const sidePt = 8;
const besidePt = 70;

function ribbonTemplate(
  made: Extract<FoldedMade, { kind: 'ribbon' }>,
  { length, typeface, widestPt }: RibbonFigureRequest,
): RibbonFigure | null {
  const { template, slant } = made.shape;
  const width = lengthOfTicks(made.strip.width);
  const roomPt = widestPt - besidePt - sidePt;
  // As much of the tails as there is room for: so long that they stand out by no more than the creases do.
  const plain = { width, template, slant };
  const whole = { ...plain, length: lengthOfTicks(made.strip.length) };
  const tidy = lengthOfTicks(Math.min(whole.length, made.measures.least + 2 * template));
  const drawn = [whole, { ...plain, length: tidy }].find(
    (ribbon) => pointsOf(ribbonMeasures(ribbon).overall.width) <= roomPt,
  );
  const facets = drawn === undefined ? null : ribbonFacets(drawn);
  if (drawn === undefined || facets === null) return null;
  const { overall, rise } = ribbonMeasures(drawn);
  const [widePt, highPt] = [pointsOf(overall.width), pointsOf(overall.height)];
  const middle = facets.at(-1)!;
  const centre = { xPt: widePt / 2, yPt: highPt / 2 };
  const [halfT, halfRise] = [pointsOf(template) / 2, pointsOf(rise) / 2];
  const sign = slant < 0 ? -1 : 1;
  // The middles of the two creases.
  const left = { xPt: centre.xPt - halfT, yPt: centre.yPt + sign * halfRise };
  const right = { xPt: centre.xPt + halfT, yPt: centre.yPt - sign * halfRise };
  const creases = creasesOf(middle);
  const marks: Mark[] = [
    ...facets
      .slice(0, -1)
      .map((facet): Mark => ({ kind: 'path', path: pathOf(facet), stroke: hiddenStroke })),
    { kind: 'path', path: pathOf(middle), fill: { colour: white }, stroke: wideStroke },
    ...creases.map(
      ([from, to]): Mark => ({ kind: 'line', from, to, stroke: { ...foldStroke, widthPt: 1.2 } }),
    ),
    { kind: 'line', from: left, to: right, stroke: fineStroke },
    dimensionLine({
      from: left,
      to: right,
      side: 'bottom',
      edgePt: highPt,
      label: length(template),
      typeface,
    }),
    dimensionLine({
      from: left,
      to: right,
      side: 'right',
      edgePt: widePt,
      label: length(rise),
      typeface,
    }),
  ];
  return {
    marks: [{ kind: 'group', marks, move: { xPt: sidePt, yPt: 4 } }],
    widthPt: widePt + sidePt + besidePt,
    heightPt: highPt + 4 + rowPt,
    isShortened: drawn !== whole,
  };
}

/** The two short sides of the middle of a ribbon. */
function creasesOf({ corners }: Facet): readonly (readonly [At, At])[] {
  const [a, b, c, d] = corners.map(({ x, y }) => ({ xPt: ptOf(x), yPt: ptOf(y) })) as [At, At, At, At];
  return [
    [d, a],
    [b, c],
  ];
}

interface At {
  readonly xPt: number;
  readonly yPt: number;
}

function loopTemplate(
  { shape, strip }: Extract<FoldedMade, { kind: 'loops' }>,
  { length, typeface, widestPt }: RibbonFigureRequest,
): RibbonFigure | null {
  const [widePt, highPt] = [pointsOf(shape.template), ptOf(strip.width)];
  if (widePt + sidePt + besidePt > widestPt) return null;
  const marks: Mark[] = [
    {
      kind: 'path',
      path: rectangle({ xPt: 0, yPt: 0, widthPt: widePt, heightPt: highPt }),
      stroke: wideStroke,
    },
    dimensionLine({
      from: { xPt: 0, yPt: highPt },
      to: { xPt: widePt, yPt: highPt },
      side: 'bottom',
      label: length(shape.template),
      typeface,
    }),
    dimensionLine({
      from: { xPt: widePt, yPt: 0 },
      to: { xPt: widePt, yPt: highPt },
      side: 'right',
      label: length(lengthOfTicks(strip.width)),
      typeface,
    }),
  ];
  return {
    marks: [{ kind: 'group', marks, move: { xPt: sidePt, yPt: 4 } }],
    widthPt: widePt + sidePt + besidePt,
    heightPt: highPt + 4 + rowPt,
    isShortened: false,
  };
}

function knotTemplate(
  { strip }: Extract<FoldedMade, { kind: 'knot' }>,
  { widestPt }: RibbonFigureRequest,
): RibbonFigure | null {
  const facets = knotFacets(strip);
  if (facets === null) return null;
  const all = facets.flatMap(({ corners }) => corners);
  const widePt = ptOf(Math.max(...all.map(({ x }) => x)));
  const highPt = ptOf(Math.max(...all.map(({ y }) => y)));
  if (widePt + 2 * sidePt > widestPt) return null;
  return {
    marks: [
      {
        kind: 'group',
        marks: facets.map(
          (facet): Mark => ({
            kind: 'path',
            path: pathOf(facet),
            fill: { colour: white },
            stroke: outlineStroke,
          }),
        ),
        move: { xPt: sidePt, yPt: 4 },
      },
    ],
    widthPt: widePt + 2 * sidePt,
    heightPt: highPt + 8,
    isShortened: false,
  };
}

function pathOf({ corners }: Facet) {
  return polygon(corners.map(({ x, y }) => ({ xPt: ptOf(x), yPt: ptOf(y) })));
}

/** Points of ticks that need not be whole. */
function ptOf(ticks: number): number {
  return pointsOf(lengthOfTicks(1)) * ticks;
}
