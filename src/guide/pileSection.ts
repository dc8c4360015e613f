import { black, fineStroke, type Mark, type Row, type Typeface } from '../drawing/index.ts';
import type { Arrangement, Layout } from '../layout/index.ts';
import { type Axis, pointsOf } from '../measure/index.ts';
import { letterFor } from './matter.ts';
import {
  cutPile,
  type DrawnLayer,
  drawnLayer,
  highestPt,
  type Layer,
  nameOfPaper,
  thickening,
} from './pileLayers.ts';
import { shortened } from './shortened.ts';

/** A section and what its caption has to say. */
export interface PileSection extends Row {
  /** The axis of the card that runs from left to right in it. */
  readonly along: Axis;
  readonly widthPt: number;
  /** How many times thicker than it is everything is drawn. */
  readonly thickened: number;
  /** Whether any thickness is estimated. */
  readonly estimated: boolean;
  /** Letters of the parts of the front that the cut misses. */
  readonly missed: readonly string[];
}

/**
 * The front edge-on, cut through where the cut meets most parts: the base at the bottom, every part on what lies
 * under it, each tagged with its letter and its paper.
 *
 * True to scale along the cut; thickness is drawn as many times as `thickened` says.
 */
export function pileSection(
  {
    layout,
    arrangement,
    typeface,
  }: { readonly layout: Layout; readonly arrangement: Arrangement; readonly typeface: Typeface },
  widthPt: number,
): PileSection {
  const cut = cutPile({ layout, arrangement, card: 0, face: 'base' });
  const { along, met, missed } = cut;
  const cardPt = pointsOf(arrangement.card[along]);
  const scale = Math.min(0.75, (widthPt - tagRoomPt) / cardPt);
  const highest = highestPt(met);
  const thickened = thickening(highest, { times: 8, heightPt: 110 });
  const foot = 12 + Math.max(highest * thickened, met.length * tagLeadingPt);
  const drawn = met.map((layer) => ({
    ...layer,
    ...drawnLayer(layer, { along, scale, thickened, foot }),
    tag: nameOfPaper(layout, layer.paper),
  }));
  return {
    heightPt: foot + 4,
    marks: [
      ...drawn.flatMap(({ marks }) => marks),
      ...tags(drawn, { foot, cardPt: cardPt * scale, typeface }),
    ],
    along,
    widthPt: cardPt * scale + tagRoomPt,
    thickened,
    estimated: [...met, ...cut.unmet].some((layer) => layer.estimated),
    missed: missed.map((part) => letterFor(layout, part)),
  };
}

const tagRoomPt = 150;
const tagLeadingPt = 12;
const tagPt = 8.5;

/** Letter and paper of every layer in a column to the right, lowest layer lowest, a fine line to each. */
function tags(
  layers: readonly (Layer & DrawnLayer & { readonly tag: string })[],
  at: { readonly foot: number; readonly cardPt: number; readonly typeface: Typeface },
): readonly Mark[] {
  const inOrder = [...layers].sort((a, b) => a.top - b.top);
  let lowest = at.foot + tagLeadingPt - 4;
  return inOrder.flatMap(({ letter, tag, frame }): readonly Mark[] => {
    const middle = frame.yPt + frame.heightPt / 2;
    const yPt = Math.min(middle, lowest - tagLeadingPt);
    lowest = yPt;
    const xPt = at.cardPt + 26;
    const label = (text: string, from: number, weight: 'regular' | 'semibold'): Mark => ({
      kind: 'text',
      at: { xPt: from, yPt: yPt + tagPt * 0.34 },
      text,
      sizePt: tagPt,
      weight,
      colour: black,
      anchor: 'start',
    });
    return [
      {
        kind: 'line',
        from: { xPt: frame.xPt + frame.widthPt, yPt: middle },
        to: { xPt: at.cardPt + 10, yPt: middle },
        stroke: fineStroke,
      },
      {
        kind: 'line',
        from: { xPt: at.cardPt + 10, yPt: middle },
        to: { xPt: xPt - 3, yPt },
        stroke: fineStroke,
      },
      label(letter, xPt, 'semibold'),
      label(shortened(tag, tagRoomPt - 46, { sizePt: tagPt, typeface: at.typeface }), xPt + 16, 'regular'),
    ];
  });
}
