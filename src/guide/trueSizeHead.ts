import { type Block, setParagraph, testBars, testBarsHeightPt } from '../drawing/index.ts';
import type { Matter } from './matter.ts';

/**
 * What a page that is used at true size begins with: its heading on a page of its own, how it is used, and the two bars
 * that tell whether it was printed true.
 */
export function trueSizeHead(
  { styles, typeface, widthPt }: Pick<Matter, 'styles' | 'typeface' | 'widthPt'>,
  { heading, use }: { readonly heading: string; readonly use: string },
): readonly Block[] {
  return [
    {
      ...setParagraph({
        words: heading,
        widthPt,
        style: styles.heading,
        typeface,
        role: 'heading',
        withNext: true,
      }),
      newPage: true,
    },
    setParagraph({
      words: `${use} Print without any scaling, then measure the two bars: only if both are true is the drawing.`,
      widthPt,
      style: styles.body,
      typeface,
      beforePt: 4,
      withNext: true,
    }),
    {
      content: [
        {
          heightPt: testBarsHeightPt + 12,
          marks: [
            testBars(
              { xPt: 0, yPt: 8 },
              {
                inch: '1 in exactly',
                millimetres: '20 mm exactly',
                says: 'Two bars to measure: one is 1 inch long, the other 20 millimetres.',
              },
            ),
          ],
        },
      ],
      beforePt: 10,
      withNext: true,
    },
  ];
}
