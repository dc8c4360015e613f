import { type Block, setParagraph } from '../drawing/index.ts';
import type { Matter } from './matter.ts';

/** The heading of a section of the guide, never the last thing on its page. */
export function heading({ styles, typeface, widthPt }: Matter, words: string): Block {
  return setParagraph({
    words,
    widthPt,
    style: styles.heading,
    typeface,
    role: 'heading',
    beforePt: 24,
    withNext: true,
  });
}
