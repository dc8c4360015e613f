import { slitOf } from '../making/index.ts';
import { bottomOf, type Edge, minus, rightOf } from '../measure/index.ts';
import type { Arrangement } from './arrange.ts';
import { foldedBase } from './foldedBase.ts';
import type { Layout } from './layout.ts';
import { type LayoutProblem, partProblem, placeField } from './layoutProblem.ts';

/**
 * Parts that lie on both doors of a front where these meet, and so hold the card shut once they are glued down.
 *
 * Only what lies on the card itself is named: what lies on another part is held by that alone. A band that goes behind at
 * both ends is drawn off before the card is opened.
 */
export function acrossSlit(layout: Layout, arrangement: Arrangement): readonly LayoutProblem[] {
  const slit = slitOf(foldedBase(layout));
  if (slit === null) return [];
  const ends: readonly [Edge, Edge] = slit.axis === 'width' ? ['left', 'right'] : ['top', 'bottom'];
  return arrangement.parts.flatMap(({ part, pieces }, index) => {
    if (part.on !== 'base' || ends.every((end) => part.tuck[end] > 0)) return [];
    const across = pieces.flatMap(({ box }, piece) => {
      if (box === null) return [];
      const [start, end] = slit.axis === 'width' ? [box.left, rightOf(box)] : [box.top, bottomOf(box)];
      const [first, second] = [minus(slit.at, start), minus(end, slit.at)];
      // By a tick alone it is only rounded there.
      return first > 1 && second > 1 ? [{ piece, first, second }] : [];
    });
    const [found] = across;
    if (found === undefined) return [];
    const { piece, first, second } = found;
    const names = { first: ends[0], second: ends[1] };
    return [
      partProblem(layout, index, 'acrossSlit', placeField(layout, index, piece), { first, second }, names),
    ];
  });
}
