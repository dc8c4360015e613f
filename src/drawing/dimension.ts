import type { Edge } from '../measure/index.ts';
import { black, fineStroke, pointsOfMillimetres } from './ink.ts';
import type { GroupMark, Mark, Point } from './mark.ts';
import { polygon } from './outline.ts';
import type { Typeface } from './typeface.ts';

/** What a dimension line measures and how its number stands. */
export interface DimensionRequest {
  /** The two points measured, on the object; only their distance along the line counts. */
  readonly from: Point;
  readonly to: Point;
  /** The side of the object on which the line stands: it runs across for top and bottom, else up and down. */
  readonly side: Edge;
  /** Where the outline of the object lies on that side (y for top and bottom, else x); else the outer of the points. */
  readonly edgePt?: number;
  /** 0 is the row nearest the object; the shortest dimension belongs there. */
  readonly row?: number;
  readonly label: string;
  readonly typeface: Typeface;
  /** 9 when absent. */
  readonly sizePt?: number;
  /** The number stands in a break of the line, or over it; `broken` when absent. */
  readonly number?: 'broken' | 'over';
  /** Slender arrowheads, or a bar across each end; `arrows` when absent. */
  readonly ends?: 'arrows' | 'bars';
  /** Numbers of lines that run up and down: read from the right side of the sheet, or upright (when absent). */
  readonly turned?: boolean;
}

/**
 * A dimension: two extension lines, the line between them and its number.
 *
 * Distances after teaching notes that follow ASME Y14.5: the first line 3/8 in (10 mm) off the object, the next
 * ones 1/4 in (6 mm) apart, extension lines from 1/16 in (1.5 mm) off the outline to 1/8 in past the line,
 * arrowheads three times as long as wide. Where the two ends lie too near, arrowheads stand outside and point
 * inwards; where the number does not fit either, it stands beyond `to`.
 */
export function dimensionLine(request: DimensionRequest): GroupMark {
  const { label, typeface, side } = request;
  const sizePt = request.sizePt ?? 9;
  const number = request.number ?? 'broken';
  const across = side === 'top' || side === 'bottom';
  const outwards = side === 'top' || side === 'left' ? -1 : 1;
  // All is worked out along the line (a) and away from the object (c), then put back on the page.
  const place = (a: number, c: number): Point => (across ? { xPt: a, yPt: c } : { xPt: c, yPt: a });
  const alongOf = (point: Point): number => (across ? point.xPt : point.yPt);
  const awayOf = (point: Point): number => (across ? point.yPt : point.xPt);
  const [start, end] = [alongOf(request.from), alongOf(request.to)].sort((a, b) => a - b) as [number, number];
  const outer = [awayOf(request.from), awayOf(request.to)].sort((a, b) => (a - b) * outwards).at(-1)!;
  const edge = request.edgePt ?? outer;
  const line = edge + outwards * dimensionDistancePt(request.row ?? 0);
  const length = end - start;

  const marks: Mark[] = [];
  const stroke = (a1: number, c1: number, a2: number, c2: number): void => {
    marks.push({ kind: 'line', from: place(a1, c1), to: place(a2, c2), stroke: fineStroke });
  };

  // Extension lines, with a small gap so that they are not taken for an edge.
  for (const a of start === end ? [start] : [start, end]) {
    stroke(a, edge + outwards * extensionGapPt, a, line + outwards * extensionPastPt);
  }

  // The number's room along the line.
  const turned = !across && request.turned === true;
  const labelWidth = typeface.widthPt(label, sizePt, 'regular');
  const labelHeight = typeface.capHeight * sizePt;
  const labelAlong = across || turned ? labelWidth : labelHeight;
  const headPt = request.ends === 'bars' ? 0 : arrowLengthPt;
  const headsInside = length >= 2 * headPt + (number === 'broken' ? labelAlong + 2 * labelPadPt : 2);
  const labelInside = length >= labelAlong + 2 * (headsInside ? headPt + labelPadPt : 1);

  // The line, broken for a number that stands in it.
  const middle = (start + end) / 2;
  const half = labelAlong / 2 + labelPadPt;
  if (headsInside) {
    if (labelInside && number === 'broken') {
      stroke(start, line, middle - half, line);
      stroke(middle + half, line, end, line);
    } else {
      stroke(start, line, end, line);
    }
  } else {
    stroke(start - outsideTailPt, line, start, line);
    stroke(end, line, end + outsideTailPt, line);
  }

  // Arrowheads, or bars turned a little like the strokes of a pen.
  for (const [a, direction] of [
    [start, headsInside ? 1 : -1],
    [end, headsInside ? -1 : 1],
  ] as const) {
    if (request.ends === 'bars') stroke(a - barHalfPt, line + barHalfPt, a + barHalfPt, line - barHalfPt);
    else marks.push(arrowhead(place, a, line, direction));
  }

  // The number.
  const outside = end + (headsInside ? 0 : outsideTailPt) + labelPadPt + labelAlong / 2;
  const lift = labelInside && number === 'over' ? labelHeight / 2 + overGapPt : 0;
  const centre = labelInside ? middle : outside;
  marks.push(
    centredText(across, turned, { label, sizePt, labelWidth, labelHeight, lift }, place(centre, line)),
  );
  return { kind: 'group', marks };
}

/** How far from the object the dimension line of this row stands: 3/8 in (10 mm), then 1/4 in (6 mm) more for each. */
export function dimensionDistancePt(row: number): number {
  return pointsOfMillimetres(10 + 6 * row);
}

const extensionGapPt = pointsOfMillimetres(1.5);
/** The notes give 1/8 in; 2 mm keeps neighbouring rows clear on a small page. */
const extensionPastPt = pointsOfMillimetres(2);
/** 2 mm, three times as long as wide; the notes give 1/8 in for drawings larger than a card. */
const arrowLengthPt = pointsOfMillimetres(2);
const arrowWidthPt = arrowLengthPt / 3;
const outsideTailPt = 2 * arrowLengthPt;
const barHalfPt = 2.2;
const labelPadPt = 2.5;
const overGapPt = 2;

function arrowhead(
  place: (a: number, c: number) => Point,
  tip: number,
  line: number,
  direction: 1 | -1,
): Mark {
  const back = tip + direction * arrowLengthPt;
  return {
    kind: 'path',
    path: polygon([
      place(tip, line),
      place(back, line - arrowWidthPt / 2),
      place(back, line + arrowWidthPt / 2),
    ]),
    fill: { colour: black },
  };
}

/** The number centred on `centre`, or lifted off the line: upwards, or to the left of a line that runs up and down. */
function centredText(
  across: boolean,
  turned: boolean,
  text: {
    readonly label: string;
    readonly sizePt: number;
    readonly labelWidth: number;
    readonly labelHeight: number;
    readonly lift: number;
  },
  centre: Point,
): Mark {
  const { label, sizePt, labelWidth, labelHeight, lift } = text;
  const shared = { kind: 'text', text: label, sizePt, weight: 'regular', colour: black } as const;
  const drop = labelHeight / 2;
  if (turned) {
    const at = { xPt: centre.xPt - lift + drop, yPt: centre.yPt };
    return { ...shared, at, anchor: 'middle', turnDegrees: -90 };
  }
  if (across) {
    return { ...shared, at: { xPt: centre.xPt, yPt: centre.yPt - lift + drop }, anchor: 'middle' };
  }
  const left = lift === 0 ? 0 : labelWidth / 2 + overGapPt;
  return { ...shared, at: { xPt: centre.xPt - left, yPt: centre.yPt + drop }, anchor: 'middle' };
}
