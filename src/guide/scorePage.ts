import {
  type Block,
  dimensionLine,
  foldStroke,
  type Mark,
  rectangle,
  setFigure,
  setParagraph,
  white,
  wideStroke,
} from '../drawing/index.ts';
import { openedSize, scoresOf } from '../making/index.ts';
import { pointsOf } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { scoringWords } from '../words/index.ts';
import { hatchOf, lengthIn, type Matter } from './matter.ts';

/** How the bases are scored: the opened base drawn with its score line, in words and measured; nothing where none is. */
export function scorePage(matter: Matter): readonly Block[] {
  const { layout, plan, showing, styles, typeface, widthPt } = matter;
  const { size, fold, papers } = layout.base;
  const scores = scoresOf(size, fold);
  const paper = papers[0];
  if (paper === undefined || scores.length === 0) return [];
  const opened = openedSize(size, fold);
  const length = lengthIn(showing);

  const scale = Math.min(0.36, 300 / pointsOf(opened.width), 190 / pointsOf(opened.height));
  const widePt = pointsOf(opened.width) * scale;
  const highPt = pointsOf(opened.height) * scale;
  const marks: Mark[] = [
    {
      kind: 'path',
      path: rectangle({ xPt: 0, yPt: 0, widthPt: widePt, heightPt: highPt }),
      fill: { hatch: hatchOf(layout, paper) },
      stroke: wideStroke,
    },
  ];
  for (const { axis, at } of scores) {
    const place = pointsOf(at) * scale;
    const across = axis === 'width';
    marks.push(
      // A bare band, so that the score is seen in the hatch.
      {
        kind: 'path',
        path: rectangle(
          across
            ? { xPt: place - 4, yPt: 1, widthPt: 8, heightPt: highPt - 2 }
            : { xPt: 1, yPt: place - 4, widthPt: widePt - 2, heightPt: 8 },
        ),
        fill: { colour: white },
      },
      {
        kind: 'line',
        from: across ? { xPt: place, yPt: -8 } : { xPt: -8, yPt: place },
        to: across ? { xPt: place, yPt: highPt + 8 } : { xPt: widePt + 8, yPt: place },
        stroke: { ...foldStroke, widthPt: 1.2 },
      },
      dimensionLine({
        from: { xPt: 0, yPt: across ? highPt : 0 },
        to: across ? { xPt: place, yPt: highPt } : { xPt: 0, yPt: place },
        side: across ? 'bottom' : 'left',
        label: length(at),
        typeface,
        turned: true,
      }),
    );
  }
  const measured = dimensionLine({
    from: { xPt: widePt, yPt: 0 },
    to: { xPt: widePt, yPt: highPt },
    side: 'right',
    label: length(opened.height),
    typeface,
    turned: true,
  });
  const wide = dimensionLine({
    from: { xPt: 0, yPt: 0 },
    to: { xPt: widePt, yPt: 0 },
    side: 'top',
    label: length(opened.width),
    typeface,
  });

  const cut = plan.pieces.filter(({ part }) => part === 'base').reduce((sum, { need }) => sum + need, 0);
  const scoring = scoringWords(layout, cut, showing);
  assert(scoring !== null, 'What has scores is told how it is scored');
  return [
    setParagraph({
      words: 'Scoring the bases',
      widthPt,
      style: styles.heading,
      typeface,
      role: 'heading',
      beforePt: 26,
      withNext: true,
    }),
    setParagraph({ words: scoring.says, widthPt, style: styles.body, typeface, beforePt: 4, withNext: true }),
    setFigure({
      marks: [
        { kind: 'group', marks: [...marks, measured, wide], move: { xPt: (widthPt - widePt) / 2, yPt: 46 } },
      ],
      heightPt: 46 + highPt + (scores.some(({ axis }) => axis === 'width') ? 46 : 12),
      says: `The base lying open, with its score line: ${scoring.lines.join('; ')}.`,
      caption: {
        words: 'The base lying open; the line of long and short dashes is the score.',
        widthPt,
        style: styles.small,
        typeface,
      },
      beforePt: 6,
    }),
  ];
}
