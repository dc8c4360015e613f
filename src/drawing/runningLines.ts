import type { Folio } from './flow.ts';
import { fineStroke } from './ink.ts';
import type { Mark, TextMark } from './mark.ts';
import type { PageFormat } from './page.ts';
import type { TextStyle } from './textStyle.ts';

export interface RunningLinesRequest {
  readonly format: PageFormat;
  readonly style: TextStyle;
  /** At the top left and top right of every page but the first. */
  readonly head?: { readonly left?: string; readonly right?: string };
  /** At the foot of every page, left; the folio stands right. */
  readonly foot?: string;
  readonly folio: (place: Folio) => string;
}

/** The running lines of a booklet: a head over a fine rule, a foot with the folio; decoration for someone who listens. */
export function runningLines(request: RunningLinesRequest): (place: Folio) => readonly Mark[] {
  const { format, style, head, foot } = request;
  const left = format.marginPt.left;
  const right = format.widthPt - format.marginPt.right;
  const headPt = format.marginPt.top - 18;
  const footPt = format.heightPt - format.marginPt.bottom + 26;
  const line = (text: string, xPt: number, yPt: number, anchor: TextMark['anchor']): TextMark => ({
    kind: 'text',
    at: { xPt, yPt },
    text,
    sizePt: style.sizePt,
    weight: style.weight,
    colour: style.colour,
    anchor,
  });
  return (place) => {
    const marks: Mark[] = [];
    if (head !== undefined && place.folio > 1) {
      if (head.left !== undefined) marks.push(line(head.left, left, headPt, 'start'));
      if (head.right !== undefined) marks.push(line(head.right, right, headPt, 'end'));
      const yPt = headPt + style.sizePt * 0.5;
      marks.push({ kind: 'line', from: { xPt: left, yPt }, to: { xPt: right, yPt }, stroke: fineStroke });
    }
    if (foot !== undefined) marks.push(line(foot, left, footPt, 'start'));
    marks.push(line(request.folio(place), right, footPt, 'end'));
    return marks;
  };
}
