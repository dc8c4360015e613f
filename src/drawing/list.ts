import { type Block, groupOf, type Row } from './block.ts';
import type { Mark } from './mark.ts';
import { baselinePt, setParagraph, type Words, wordsWidthPt } from './paragraph.ts';
import type { TextStyle } from './textStyle.ts';
import type { Typeface } from './typeface.ts';

export interface ListRequest {
  readonly items: readonly Words[];
  /** What stands before each item: its number and a full stop, or the same sign for all. */
  readonly labels: 'numbers' | { readonly sign: string };
  /** The number of the first item; 1 when absent. */
  readonly first?: number;
  readonly widthPt: number;
  readonly style: TextStyle;
  readonly typeface: Typeface;
  /** Between items; a quarter of the leading when absent. */
  readonly gapPt?: number;
  readonly beforePt?: number;
  readonly afterPt?: number;
}

/** A list, its labels hanging in a column of their own, numbers set flush right. */
export function setList(request: ListRequest): Block {
  const { items, style, typeface, widthPt } = request;
  const first = request.first ?? 1;
  const labels = items.map((_, index) =>
    request.labels === 'numbers' ? `${first + index}.` : request.labels.sign,
  );
  const widest = Math.max(0, ...labels.map((label) => wordsWidthPt(label, style, typeface)));
  const hang = widest + style.sizePt * 0.6;
  const gap = request.gapPt ?? style.leadingPt / 4;
  return {
    role: 'list',
    content: items.map((words, index): Block => {
      const body = setParagraph({ words, widthPt: widthPt - hang, style, typeface, role: null });
      const label: Mark = {
        kind: 'text',
        at: { xPt: widest, yPt: baselinePt(style) },
        text: labels[index]!,
        sizePt: style.sizePt,
        weight: style.weight,
        colour: style.colour,
        anchor: 'end',
      };
      const rows = body.content.map((row, line): Row => {
        const moved: Mark = { kind: 'group', marks: row.marks, move: { xPt: hang, yPt: 0 } };
        return {
          heightPt: row.heightPt,
          marks: line === 0 ? [groupOf({ role: 'label', content: [] }, [label]), moved] : [moved],
        };
      });
      return { role: 'listItem', content: rows, beforePt: gap };
    }),
    ...(request.beforePt === undefined ? {} : { beforePt: request.beforePt }),
    ...(request.afterPt === undefined ? {} : { afterPt: request.afterPt }),
  };
}
