import { black, hiddenStroke, type Mark, type Row, type Typeface } from '../drawing/index.ts';
import type { Arrangement, Face, Layout } from '../layout/index.ts';
import { type Axis, type Box, bottomOf, type Length, minus, pointsOf, rightOf } from '../measure/index.ts';
import { cutPile, drawnLayer, highestPt, type Layer, thickening } from './pileLayers.ts';
import { shortened } from './shortened.ts';

/** A pile drawn apart and what its caption has to say. */
export interface PileApart extends Row {
  /** The axis of the card that runs from left to right in it. */
  readonly along: Axis;
  readonly widthPt: number;
  /** How many times thicker than it is everything is drawn. */
  readonly thickened: number;
  /** Whether any thickness is estimated. */
  readonly estimated: boolean;
}

/**
 * The pile of a face edge-on, cut through where the cut meets most pieces, and drawn apart: every layer lifted off what it
 * lies on, with broken lines down to where it belongs, and at the right its letter, its name and how thick it is, the foam
 * under it by itself.
 *
 * True to scale along the cut; thickness is drawn as many times as `thickened` says.
 */
export function pileApart(
  {
    layout,
    arrangement,
    typeface,
    face = 'base',
    length,
  }: {
    readonly layout: Layout;
    readonly arrangement: Arrangement;
    readonly typeface: Typeface;
    readonly face?: Face;
    readonly length: (length: Length) => string;
  },
  widthPt: number,
): PileApart {
  const { along, met, unmet } = cutPile({ layout, arrangement, card: 0, face });
  const cardPt = pointsOf(arrangement.card[along]);
  const scale = Math.min(0.75, (widthPt - tagsPt) / cardPt);
  const thickened = thickening(highestPt(met), { times: 8, heightPt: 90 });
  const lifts = liftsOf(met);
  const high = Math.max(...met.map(({ top }, index) => pointsOf(top) * thickened + lifts[index]! * liftPt));
  const foot = high + roomPt;
  const drawn = met.map((layer, index) => ({
    layer,
    lift: lifts[index]!,
    ...drawnLayer(layer, { along, scale, thickened, foot: foot - lifts[index]! * liftPt }),
  }));
  const nameOf = (id: string) => layout.parts.find((part) => part.id === id)?.name ?? 'Base';
  let lowest = foot + tagLeadingPt;
  return {
    along,
    widthPt: cardPt * scale + tagsPt,
    thickened,
    estimated: [...met, ...unmet].some(({ estimated }) => estimated),
    heightPt: foot + 4,
    marks: [
      ...drawn.flatMap(({ layer, lift, frame }): readonly Mark[] => {
        const below = drawn.findLast(
          (other) =>
            other.lift < lift && overlap(other.layer.box, layer.box) && other.layer.top <= layer.from,
        );
        if (below === undefined) return [];
        const [from, to] = [foot - lift * liftPt - pointsOf(layer.from) * thickened, below.frame.yPt];
        return [frame.xPt, frame.xPt + frame.widthPt].map((xPt) => ({
          kind: 'line',
          from: { xPt, yPt: from },
          to: { xPt, yPt: to },
          stroke: hiddenStroke,
        }));
      }),
      ...drawn.flatMap(({ marks }) => marks),
      ...drawn
        .toSorted((a, b) => b.frame.yPt - a.frame.yPt)
        .flatMap(({ layer, frame }): readonly Mark[] => {
          const middle = frame.yPt + frame.heightPt / 2;
          const yPt = Math.min(middle, lowest - tagLeadingPt);
          lowest = yPt;
          const paper = minus(layer.top, layer.to);
          const foam = minus(layer.to, layer.from);
          const thick = foam > 0 ? `${length(paper)} on foam of ${length(foam)}` : length(paper);
          const xPt = cardPt * scale + 14;
          const text = (words: string, at: number, weight: 'regular' | 'semibold'): Mark => ({
            kind: 'text',
            at: { xPt: at, yPt: yPt + tagPt * 0.34 },
            text: words,
            sizePt: tagPt,
            weight,
            colour: black,
            anchor: 'start',
          });
          return [
            {
              kind: 'line',
              from: { xPt: frame.xPt + frame.widthPt + 2, yPt: middle },
              to: { xPt: xPt - 3, yPt },
              stroke: { ...hiddenStroke, dashPt: [0.5, 2] },
            },
            text(layer.letter, xPt, 'semibold'),
            text(
              shortened(`${nameOf(layer.part)}, ${thick}`, tagsPt - 34, { sizePt: tagPt, typeface }),
              xPt + 16,
              'regular',
            ),
          ];
        }),
    ],
  };
}

/** The column of words at the right, its type, and from one line to the next. */
const tagsPt = 210;
const tagPt = 8.5;
const tagLeadingPt = 12;
/** How far a layer is lifted off the one below. */
const liftPt = 16;
const roomPt = 8;

/** How often each layer is lifted: once more than the highest that it lies on. */
function liftsOf(layers: readonly Layer[]): readonly number[] {
  const lifts: number[] = [];
  layers.forEach((layer, index) => {
    const below = layers
      .slice(0, index)
      .flatMap((other, at) => (overlap(other.box, layer.box) && other.top <= layer.from ? [lifts[at]!] : []));
    lifts.push(below.length === 0 ? 0 : Math.max(...below) + 1);
  });
  return lifts;
}

function overlap(one: Box, other: Box): boolean {
  return (
    one.left < rightOf(other) &&
    other.left < rightOf(one) &&
    one.top < bottomOf(other) &&
    other.top < bottomOf(one)
  );
}
