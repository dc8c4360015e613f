import {
  black,
  fineStroke,
  hatchFor,
  type Mark,
  outlineStroke,
  type Page,
  rectangle,
  type Typeface,
  white,
} from '../drawing/index.ts';
import { type TimeRows, timeTicks } from '../words/index.ts';

/**
 * The time of a set, drawn: a row for each task or station, its work as a hatched bar, drying that something waits for as
 * a thin line, and the hours as ticks over it.
 */
export function timeChart(
  { rows, finish }: TimeRows,
  {
    widthPt,
    sizePt,
    typeface,
  }: { readonly widthPt: number; readonly sizePt: number; readonly typeface: Typeface },
): Page {
  const wordPt = (text: string) => typeface.widthPt(text, sizePt, 'regular');
  const namedPt = Math.min(widthPt * 0.42, Math.max(0, ...rows.map(({ says }) => wordPt(says))));
  const leftPt = namedPt + sizePt;
  const last = Math.max(1, finish, ...rows.map(({ dries }) => dries?.to ?? 0));
  const at = (seconds: number) => leftPt + (seconds / last) * (widthPt - leftPt - 2);
  const rowPt = sizePt * 1.7;
  const headPt = sizePt * 1.9;
  const heightPt = headPt + rows.length * rowPt + sizePt * 0.4;
  const text = (says: string, xPt: number, yPt: number, anchor: 'start' | 'middle'): Mark => ({
    kind: 'text',
    at: { xPt, yPt },
    text: says,
    sizePt,
    weight: 'regular',
    colour: black,
    anchor,
  });
  const line = (fromX: number, fromY: number, toX: number, toY: number, stroke = fineStroke): Mark => ({
    kind: 'line',
    from: { xPt: fromX, yPt: fromY },
    to: { xPt: toX, yPt: toY },
    stroke,
  });

  const marks: Mark[] = [line(leftPt, headPt, widthPt, headPt, outlineStroke)];
  let freePt = leftPt - sizePt;
  for (const { at: seconds, says } of timeTicks(last, Math.floor((widthPt - leftPt) / (5 * sizePt)))) {
    const xPt = at(seconds);
    marks.push(line(xPt, headPt - sizePt * 0.45, xPt, headPt));
    const halfPt = wordPt(says) / 2;
    // Words keep clear of one another and of the edge; a tick may stand without one.
    if (xPt - halfPt < freePt || xPt + halfPt > widthPt) continue;
    marks.push(text(says, xPt, headPt - sizePt * 0.7, 'middle'));
    freePt = xPt + halfPt + sizePt * 0.6;
  }
  rows.forEach(({ says, from, to, dries }, index) => {
    const topPt = headPt + index * rowPt + rowPt * 0.2;
    const highPt = rowPt * 0.6;
    const middlePt = topPt + highPt / 2;
    marks.push(text(fitted(says, namedPt, wordPt), 0, middlePt + sizePt * 0.33, 'start'));
    if (dries !== null) {
      marks.push(line(at(dries.from), middlePt, at(dries.to), middlePt));
      marks.push(line(at(dries.to), middlePt - highPt / 4, at(dries.to), middlePt + highPt / 4));
    }
    const bar = {
      xPt: at(from),
      yPt: topPt,
      widthPt: Math.max(0.8, at(to) - at(from)),
      heightPt: highPt,
    };
    marks.push({
      kind: 'path',
      path: rectangle(bar),
      fill: { hatch: { ...hatchFor(0), ground: white, spacingPt: 3 } },
      stroke: outlineStroke,
    });
  });
  return { widthPt, heightPt, marks };
}

/** The words as far as there is room for them. */
function fitted(says: string, roomPt: number, wordPt: (text: string) => number): string {
  if (wordPt(says) <= roomPt + 0.01) return says;
  let kept = says;
  while (kept.length > 1 && wordPt(`${kept}…`) > roomPt) kept = kept.slice(0, -1);
  return `${kept.trimEnd()}…`;
}
