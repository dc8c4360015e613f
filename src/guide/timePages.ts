import { type Block, setFigure, setParagraph } from '../drawing/index.ts';
import { assemblyOf, setTimeOf } from '../finished/index.ts';
import { timeMatter } from '../words/index.ts';
import { heading } from './heading.ts';
import type { Matter } from './matter.ts';
import { timeChart } from './timeChart.ts';

/** How long the set takes, in words and drawn. */
export function timePages(matter: Matter): readonly Block[] {
  const { layout, arrangement, styles, typeface, widthPt } = matter;
  const time = setTimeOf(layout, arrangement);
  const { says, rows } = timeMatter(time, assemblyOf(layout, arrangement), layout);
  const { marks, heightPt } = timeChart(rows, { widthPt, sizePt: styles.small.sizePt, typeface });
  return [
    heading(matter, 'How long it takes'),
    ...says.map((words) => setParagraph({ words, widthPt, style: styles.body, typeface, beforePt: 4 })),
    setFigure({
      marks,
      heightPt,
      says: `${rows.caption}, drawn along the hours; it says what the sentences before say.`,
      caption: {
        words: `${rows.caption}. Hatched: work; a thin line: drying that something waits for.`,
        widthPt,
        style: styles.small,
        typeface,
      },
      beforePt: 10,
    }),
  ];
}
