import { black, dimensionDistancePt, fineStroke, type Mark, type Typeface } from '../drawing/index.ts';
import { type Length, minus, pointsOf } from '../measure/index.ts';

/** A chain of lengths along one side of a drawing: each from one stop to the next. */
export interface ChainRequest {
  /** Rising; true lengths from the origin of the drawing. */
  readonly stops: readonly Length[];
  readonly scale: number;
  /** Across under the drawing, or down its left side. */
  readonly side: 'bottom' | 'left';
  /** Where the outline lies on that side. */
  readonly edgePt: number;
  /** 0 is nearest the drawing. */
  readonly row: number;
  readonly typeface: Typeface;
  readonly number: (length: Length) => string;
}

/**
 * Lengths one after the other on one line, a slanted stroke at each stop.
 *
 * A number stands in a break of the line where there is room; one that has none stands outside the line, and
 * farther out where its neighbour is in the way, so that narrow borders keep their numbers apart. Distances from
 * the drawing are those of `dimensionLine`; `reachPt` is how far the marks go out from the edge.
 */
export function chainOf(request: ChainRequest): {
  readonly marks: readonly Mark[];
  readonly reachPt: number;
} {
  const { stops, scale, side, edgePt, typeface } = request;
  const outwards = side === 'bottom' ? 1 : -1;
  const place = (along: number, away: number) =>
    side === 'bottom' ? { xPt: along, yPt: away } : { xPt: away, yPt: along };
  const distance = dimensionDistancePt(request.row);
  const line = edgePt + outwards * distance;
  const marks: Mark[] = [];
  const stroke = (a1: number, c1: number, a2: number, c2: number) => {
    marks.push({ kind: 'line', from: place(a1, c1), to: place(a2, c2), stroke: fineStroke });
  };

  const at = stops.map((stop) => pointsOf(stop) * scale);
  for (const along of at) {
    stroke(along, edgePt + outwards * extensionGapPt, along, line + outwards * extensionPastPt);
    stroke(along - barHalfPt, line + barHalfPt, along + barHalfPt, line - barHalfPt);
  }

  let reachPt = distance + extensionPastPt;
  // The end, along the line, of the last number on each level outside.
  const ends: number[] = [];
  for (const [index, from] of at.slice(0, -1).entries()) {
    const to = at[index + 1] ?? from;
    const label = request.number(minus(stops[index + 1]!, stops[index]!));
    const wide = typeface.widthPt(label, sizePt, 'regular');
    const high = typeface.capHeight * sizePt;
    const along = side === 'bottom' ? wide : high;
    const middle = (from + to) / 2;
    const inside = to - from >= along + 2 * padPt + 3;
    if (inside) {
      stroke(from, line, middle - along / 2 - padPt, line);
      stroke(middle + along / 2 + padPt, line, to, line);
    } else {
      stroke(from, line, to, line);
    }
    let away = line;
    if (!inside) {
      let level = 0;
      while ((ends[level] ?? -Infinity) > middle - along / 2 - 2) level += 1;
      ends[level] = middle + along / 2;
      // Beside a line that runs down, numbers of one level stand one under the other.
      const step = side === 'bottom' ? high + 3 : wide + 4;
      const first = extensionPastPt + (side === 'bottom' ? 2.5 : 4) + (side === 'bottom' ? high : wide / 2);
      away = line + outwards * (first - (side === 'bottom' ? high / 2 : 0) + level * step);
      reachPt = Math.max(reachPt, Math.abs(away - edgePt) + (side === 'bottom' ? high / 2 : wide / 2));
    }
    const centre = place(middle, away);
    marks.push({
      kind: 'text',
      at: { xPt: centre.xPt, yPt: centre.yPt + high / 2 },
      text: label,
      sizePt,
      weight: 'regular',
      colour: black,
      anchor: 'middle',
    });
  }
  return { marks, reachPt };
}

const sizePt = 9;
const padPt = 2;
const barHalfPt = 2;
/** 1.5 mm and 2 mm. */
const extensionGapPt = 4.25;
const extensionPastPt = 5.67;
