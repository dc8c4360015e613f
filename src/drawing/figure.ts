import type { Block } from './block.ts';
import type { Mark } from './mark.ts';
import { setParagraph, type Words } from './paragraph.ts';
import type { TextStyle } from './textStyle.ts';
import type { Typeface } from './typeface.ts';

export interface FigureRequest {
  readonly marks: readonly Mark[];
  /** Its place from the left; 0 when absent. */
  readonly xPt?: number;
  readonly heightPt: number;
  /** What it shows, for someone who listens. */
  readonly says: string;
  /** A line under it, kept with it. */
  readonly caption?: {
    readonly words: Words;
    readonly widthPt: number;
    readonly style: TextStyle;
    readonly typeface: Typeface;
  };
  readonly beforePt?: number;
  readonly afterPt?: number;
}

/** A picture, with its caption if it has one, never broken over pages. */
export function setFigure(request: FigureRequest): Block {
  const { marks, heightPt, says, caption } = request;
  const moved: Mark = { kind: 'group', marks, move: { xPt: request.xPt ?? 0, yPt: 0 } };
  const picture: Block = { role: 'figure', says, content: [{ heightPt, marks: [moved] }] };
  return {
    content: caption === undefined ? [picture] : [picture, setParagraph({ ...caption, beforePt: 4 })],
    together: true,
    ...(request.beforePt === undefined ? {} : { beforePt: request.beforePt }),
    ...(request.afterPt === undefined ? {} : { afterPt: request.afterPt }),
  };
}
