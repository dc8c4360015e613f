import {
  type Block,
  fineStroke,
  type Mark,
  outlineStroke,
  type PageFormat,
  rectangle,
  setFigure,
  textWidthPt,
} from '../drawing/index.ts';
import { pointsOf } from '../measure/index.ts';
import { drawnPieces } from './face.ts';
import { leaders } from './frontFigure.ts';
import type { Matter } from './matter.ts';
import { trueSizeHead } from './trueSizeHead.ts';

/**
 * The front in outline at its true size, to lay parts on, with the two bars that tell whether the page was printed
 * true; nothing where it does not fit the page.
 */
export function trueSizePage(matter: Matter, format: PageFormat): readonly Block[] {
  const { arrangement, widthPt } = matter;
  const cardPt = { wide: pointsOf(arrangement.card.width), high: pointsOf(arrangement.card.height) };
  const drawn = drawnPieces({ arrangement, face: 'base', scale: 1 });
  const frame = {
    left: Math.min(0, ...drawn.map((piece) => piece.frame.xPt)),
    top: Math.min(0, ...drawn.map((piece) => piece.frame.yPt)),
    right: Math.max(cardPt.wide, ...drawn.map((piece) => piece.frame.xPt + piece.frame.widthPt)),
    bottom: Math.max(cardPt.high, ...drawn.map((piece) => piece.frame.yPt + piece.frame.heightPt)),
  };
  const wide = frame.right - frame.left;
  const high = frame.bottom - frame.top;
  const roomHigh = format.heightPt - format.marginPt.top - format.marginPt.bottom - headRoomPt;
  if (drawn.length === 0 || wide > textWidthPt(format) || high > roomHigh) return [];

  const outline: Mark = {
    kind: 'path',
    path: rectangle({ xPt: 0, yPt: 0, widthPt: cardPt.wide, heightPt: cardPt.high }),
    stroke: outlineStroke,
  };
  const marks: Mark[] = [
    outline,
    ...drawn.map(({ path }): Mark => ({ kind: 'path', path, stroke: fineStroke })),
    ...(wide + leaderRoomPt <= widthPt ? leaders(matter, drawn, frame.right) : []),
  ];
  return [
    ...trueSizeHead(matter, {
      heading: 'The front at true size',
      use: 'Lay a cut part on its outline to see that it is right, or hold the page behind a thin base at a window to place it.',
    }),
    setFigure({
      marks: [
        {
          kind: 'group',
          marks,
          move: { xPt: Math.max(0, (widthPt - wide - leaderRoomPt) / 2) - frame.left, yPt: -frame.top },
        },
      ],
      heightPt: high + 2,
      says: 'The outline of the front and of every part on it, at true size.',
      beforePt: 10,
    }),
  ];
}

/** What stands over the drawing. */
const headRoomPt = 150;
const leaderRoomPt = 50;
