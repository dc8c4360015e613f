import type { Layout, LayoutSum } from '../layout/index.ts';
import { lengthOfTicks, showLength, showLengthWithUnit } from '../measure/index.ts';
import { listed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/**
 * A sum of borders, sizes and gaps written out, with what stands in it:
 * `On Mat, top to bottom: 1/8 + 3 + 1/4 + 1 3/4 + 1/8 = 5 1/4 in (Upper panel and Lower panel).`
 */
export function sumSentence(sum: LayoutSum, layout: Layout, showing: Showing): string {
  const { units, glyphs } = showing;
  const minus = glyphs === 'printed' ? '−' : '-';
  const terms = sum.terms.map(({ length }, index) => {
    if (index === 0) return showLength(length, units, glyphs);
    return length < 0
      ? `${minus} ${showLength(lengthOfTicks(-length), units, glyphs)}`
      : `+ ${showLength(length, units, glyphs)}`;
  });
  const parts = sum.terms.flatMap((term) => (term.kind === 'size' ? [partName(layout, term.part)] : []));
  const way = sum.axis === 'width' ? 'left to right' : 'top to bottom';
  return `On ${bedName(layout, sum.on)}, ${way}: ${terms.join(' ')} = ${showLengthWithUnit(sum.total, units, glyphs)} (${listed(parts)}).`;
}

function bedName(layout: Layout, on: string): string {
  const faces: Readonly<Record<string, string>> = {
    base: 'the front',
    inside: 'the inside',
    back: 'the back',
  };
  return faces[on] ?? partName(layout, on);
}
