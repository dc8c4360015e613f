import type { Edge } from '../measure/index.ts';
import { black, fineStroke } from './ink.ts';
import type { GroupMark, Mark, Point, Stroke } from './mark.ts';
import type { Typeface } from './typeface.ts';

/** A crop tick: where on the edge it stands, which edge, and the number outside it. */
export interface CropTickRequest {
  /** The place on the edge that is meant. */
  readonly at: Point;
  readonly edge: Edge;
  /** Stands outside the tick; none when absent. */
  readonly label?: { readonly text: string; readonly typeface: Typeface; readonly sizePt?: number };
  readonly stroke?: Stroke;
  /** 10 when absent. */
  readonly lengthPt?: number;
}

/** A short line outside an edge that points at a place on it, a little off so that it is never part of the shape. */
export function cropTick(request: CropTickRequest): GroupMark {
  const { at, edge, label } = request;
  const out = outwards[edge];
  const length = request.lengthPt ?? 10;
  const off = (distance: number): Point => ({
    xPt: at.xPt + out.x * distance,
    yPt: at.yPt + out.y * distance,
  });
  const marks: Mark[] = [
    { kind: 'line', from: off(gapPt), to: off(gapPt + length), stroke: request.stroke ?? fineStroke },
  ];
  if (label !== undefined) {
    const sizePt = label.sizePt ?? 8;
    const high = label.typeface.capHeight * sizePt;
    const end = off(gapPt + length + labelGapPt);
    const drop = { top: 0, bottom: high, left: high / 2, right: high / 2 }[edge];
    marks.push({
      kind: 'text',
      at: { xPt: end.xPt, yPt: end.yPt + drop },
      text: label.text,
      sizePt,
      weight: 'regular',
      colour: black,
      anchor: ({ top: 'middle', bottom: 'middle', left: 'end', right: 'start' } as const)[edge],
    });
  }
  return { kind: 'group', marks };
}

const gapPt = 2;
const labelGapPt = 2.5;
const outwards: Readonly<Record<Edge, { readonly x: number; readonly y: number }>> = {
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  top: { x: 0, y: -1 },
  bottom: { x: 0, y: 1 },
};
