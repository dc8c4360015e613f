import type { Page, Typeface } from '../drawing/index.ts';
import type { Arrangement, Layout } from '../layout/index.ts';
import { pointsOf, type Units } from '../measure/index.ts';
import { faceMarks } from './face.ts';
import { frontFigure } from './frontFigure.ts';
import type { Manner } from './matter.ts';

/**
 * The finished front of card number `card` (from 0) at its true size, in the papers that card gets.
 *
 * The page is the closed front exactly, so what hangs over is not on it. With `dimensions` it grows to hold the
 * dimension lines and whatever hangs over. `manner` says how paper is drawn.
 */
export function frontDrawing(
  layout: Layout,
  arrangement: Arrangement,
  card: number,
  dimensions: { readonly units: Units; readonly typeface: Typeface } | null,
  manner: Manner = 'printed',
): Page {
  if (dimensions === null) {
    return {
      widthPt: pointsOf(arrangement.card.width),
      heightPt: pointsOf(arrangement.card.height),
      marks: faceMarks({ layout, arrangement, card, face: 'base', scale: 1, manner }),
    };
  }
  const { units, typeface } = dimensions;
  const showing = { units, glyphs: 'printed' } as const;
  return frontFigure({ layout, arrangement, showing, typeface }, { card, scale: 1, lettered: false, manner });
}
