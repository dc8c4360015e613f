import {
  black,
  type Fill,
  fineStroke,
  type Mark,
  outlineStroke,
  type Row,
  rectangle,
  type Typeface,
  white,
} from '../drawing/index.ts';
import type { Arrangement, Layout } from '../layout/index.ts';
import { type Axis, type Box, type Length, lengthOfTicks, pointsOf, sum, zero } from '../measure/index.ts';
import { hatchOf, letterFor } from './matter.ts';
import { thicknessOfDealt, usualFoam } from './thickness.ts';

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
  const layers = layersOf(layout, arrangement);
  const cut = bestCut(layers);
  const met = layers.filter((layer) => meets(layer, cut));
  const missed = [...new Set(layers.map(({ letter }) => letter))].filter(
    (letter) => !met.some((layer) => layer.letter === letter),
  );

  const scale = Math.min(0.75, (widthPt - tagRoomPt) / pointsOf(arrangement.card[cut.along]));
  const highest = Math.max(...met.map(({ top }) => pointsOf(top)));
  const thickened = Math.max(1, Math.min(8, Math.floor(110 / highest)));
  const foot = 12 + Math.max(highest * thickened, met.length * tagLeadingPt);
  const up = (height: Length) => foot - pointsOf(height) * thickened;
  const [start, length] = cut.along === 'width' ? (['left', 'width'] as const) : (['top', 'height'] as const);

  const marks: Mark[] = [];
  for (const { box, fill, from, to, top } of met) {
    const xPt = pointsOf(box[start]) * scale;
    const wide = pointsOf(box[length]) * scale;
    if (to > from) {
      // Foam a little inside the edges.
      const inset = Math.min(6, wide / 5);
      marks.push({
        kind: 'path',
        path: rectangle({
          xPt: xPt + inset,
          yPt: up(to),
          widthPt: wide - 2 * inset,
          heightPt: up(from) - up(to),
        }),
        fill: { colour: white },
        stroke: { ...fineStroke, dashPt: [1.5, 1.5] },
      });
    }
    marks.push({
      kind: 'path',
      path: rectangle({ xPt, yPt: up(top), widthPt: wide, heightPt: up(to) - up(top) }),
      fill,
      stroke: outlineStroke,
    });
  }
  marks.push(
    ...tags(met, {
      up,
      scale,
      start,
      length,
      foot,
      typeface,
      cardPt: pointsOf(arrangement.card[cut.along]) * scale,
    }),
  );
  return {
    heightPt: foot + 4,
    marks,
    along: cut.along,
    widthPt: pointsOf(arrangement.card[cut.along]) * scale + tagRoomPt,
    thickened,
    estimated: layers.some((layer) => layer.estimated),
    missed,
  };
}

const tagRoomPt = 150;
const tagLeadingPt = 12;
const tagPt = 8.5;

/** One piece of the pile: foam from `from` to `to` (of no height where there is none), then paper up to `top`. */
interface Layer {
  readonly letter: string;
  readonly tag: string;
  readonly box: Box;
  readonly fill: Fill;
  readonly from: Length;
  readonly to: Length;
  readonly top: Length;
  readonly estimated: boolean;
}

function layersOf(layout: Layout, { card, parts }: Arrangement): readonly Layer[] {
  const base = thicknessOfDealt(layout, layout.base);
  const front: Box = { left: zero, top: zero, ...card };
  const layers: Layer[] = [
    layerOf(layout, 'base', layout.base.papers[0], front, {
      from: zero,
      to: zero,
      top: base.length,
      estimated: base.estimated,
    }),
  ];
  for (const { part, face, pieces } of parts) {
    if (face !== 'base') continue;
    const own = thicknessOfDealt(layout, part);
    const raised = part.adhere === 'raised';
    for (const { box } of pieces) {
      if (box === null) continue;
      const from = lengthOfTicks(
        Math.max(...layers.filter((layer) => overlap(layer.box, box)).map(({ top }) => top), 0),
      );
      const to = sum(from, raised ? usualFoam : zero);
      layers.push(
        layerOf(layout, part.id, part.papers[0], box, {
          from,
          to,
          top: sum(to, own.length),
          estimated: own.estimated || raised,
        }),
      );
    }
  }
  return layers;
}

function layerOf(
  layout: Layout,
  id: string,
  paper: string | undefined,
  box: Box,
  heights: Pick<Layer, 'from' | 'to' | 'top' | 'estimated'>,
): Layer {
  const name = paper === undefined ? 'bought' : (layout.papers.get(paper)?.name ?? paper);
  return {
    letter: letterFor(layout, id),
    tag: name,
    box,
    fill: paper === undefined ? { colour: white } : { hatch: hatchOf(layout, paper) },
    ...heights,
  };
}

interface Cut {
  /** What runs along the cut. */
  readonly along: Axis;
  readonly at: number;
}

/** The straight cut through the card, across or down, that meets most pieces; across where they are equal. */
function bestCut(layers: readonly Layer[]): Cut {
  let best: Cut = { along: 'width', at: 0 };
  let most = -1;
  for (const along of ['width', 'height'] as const) {
    for (const { box } of layers) {
      const cut = { along, at: along === 'width' ? box.top + box.height / 2 : box.left + box.width / 2 };
      const met = layers.filter((layer) => meets(layer, cut)).length;
      if (met > most) [best, most] = [cut, met];
    }
  }
  return best;
}

function meets({ box }: Layer, { along, at }: Cut): boolean {
  return along === 'width'
    ? at > box.top && at < box.top + box.height
    : at > box.left && at < box.left + box.width;
}

function overlap(one: Box, other: Box): boolean {
  return (
    one.left < other.left + other.width &&
    other.left < one.left + one.width &&
    one.top < other.top + other.height &&
    other.top < one.top + one.height
  );
}

/** Letter and paper of every layer in a column to the right, lowest layer lowest, a fine line to each. */
function tags(
  layers: readonly Layer[],
  at: {
    readonly up: (height: Length) => number;
    readonly scale: number;
    readonly start: 'left' | 'top';
    readonly length: 'width' | 'height';
    readonly foot: number;
    readonly cardPt: number;
    readonly typeface: Typeface;
  },
): readonly Mark[] {
  const inOrder = [...layers].sort((a, b) => a.top - b.top);
  let lowest = at.foot + tagLeadingPt - 4;
  return inOrder.flatMap(({ letter, tag, box, to, top }): readonly Mark[] => {
    const middle = (at.up(to) + at.up(top)) / 2;
    const yPt = Math.min(middle, lowest - tagLeadingPt);
    lowest = yPt;
    const end = pointsOf(lengthOfTicks(box[at.start] + box[at.length])) * at.scale;
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
        from: { xPt: end, yPt: middle },
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
      label(shortened(tag, tagRoomPt - 46, at.typeface), xPt + 16, 'regular'),
    ];
  });
}

/** As much of the text as fits, with an ellipsis where it is cut. */
function shortened(text: string, widthPt: number, typeface: Typeface): string {
  if (typeface.widthPt(text, tagPt, 'regular') <= widthPt) return text;
  const characters = [...text];
  while (characters.length > 1 && typeface.widthPt(`${characters.join('')}…`, tagPt, 'regular') > widthPt) {
    characters.pop();
  }
  return `${characters.join('')}…`;
}
