import {
  type Fill,
  type Frame,
  fineStroke,
  type Mark,
  outlineStroke,
  rectangle,
  white,
} from '../drawing/index.ts';
import { adhesiveFor, sideOfBase, thicknessOfDealt } from '../finished/index.ts';
import {
  type Arrangement,
  type Dealt,
  depthRegionsIn,
  type Face,
  foldedBase,
  isFolded,
  type Layout,
  type Part,
  paperOfCard,
} from '../layout/index.ts';
import { slitOf } from '../making/index.ts';
import {
  type Axis,
  type Box,
  type Length,
  lengthOfTicks,
  pointsOf,
  sum,
  times,
  zero,
} from '../measure/index.ts';
import { fillOf } from './face.ts';
import { letterFor, type Manner, type Wearing } from './matter.ts';

/** Which pile of which card. */
export interface PileRequest {
  readonly layout: Layout;
  readonly arrangement: Arrangement;
  /** From 0; says which of several papers its parts wear. */
  readonly card: number;
  readonly face: Face;
  /** `printed` when absent. */
  readonly manner?: Manner;
}

/** One piece of the pile: foam from `from` to `to` (of no height where there is none), then paper up to `top`. */
export interface Layer {
  /** The id of its part, or `base`. */
  readonly part: string;
  /** From 0, of the pieces of the part on a card. */
  readonly piece: number;
  readonly letter: string;
  /** The paper that it is cut from on this card; `null`: bought. */
  readonly paper: string | null;
  readonly box: Box;
  readonly fill: Fill;
  readonly from: Length;
  readonly to: Length;
  readonly top: Length;
  readonly estimated: boolean;
  /** Where it is parted, along one axis; of nothing but a front with doors. */
  readonly slit?: ReturnType<typeof slitOf>;
}

/** A pile cut through, all layers from the bottom up. */
export interface CutPile {
  /** The axis of the card that runs along the cut. */
  readonly along: Axis;
  readonly met: readonly Layer[];
  readonly unmet: readonly Layer[];
  /** The parts of which the cut meets no piece. */
  readonly missed: readonly string[];
}

/** What lies on a face, cut through across or down where the cut meets most pieces; across where both do. */
export function cutPile(request: PileRequest): CutPile {
  const layers = layersOf(request);
  const cut = bestCut(layers);
  const met = layers.filter((layer) => meets(layer, cut));
  const isMet = new Set(met.map(({ part }) => part));
  return {
    along: cut.along,
    met,
    unmet: layers.filter((layer) => !met.includes(layer)),
    missed: [...new Set(layers.map(({ part }) => part))].filter((part) => !isMet.has(part)),
  };
}

/** How high the layers reach together, truly. */
export function highestPt(layers: readonly Layer[]): number {
  return Math.max(...layers.map(({ top }) => pointsOf(top)));
}

/** How many whole times as thick as it is a pile that high may be drawn, to stay within a height; once at least. */
export function thickening(
  truePt: number,
  most: { readonly times: number; readonly heightPt: number },
): number {
  return Math.max(1, Math.min(most.times, Math.floor(most.heightPt / truePt)));
}

/** A layer as it is drawn. */
export interface DrawnLayer {
  /** Of the paper, without foam under it. */
  readonly frame: Frame;
  /** Foam, then paper. */
  readonly marks: readonly Mark[];
}

/** The section of a layer, the card's start at the left, its foot at `foot`. */
export function drawnLayer(
  { box, fill, from, to, top, slit = null }: Layer,
  at: {
    readonly along: Axis;
    readonly scale: number;
    readonly thickened: number;
    readonly foot: number;
  },
): DrawnLayer {
  const up = (height: Length) => at.foot - pointsOf(height) * at.thickened;
  const xPt = pointsOf(at.along === 'width' ? box.left : box.top) * at.scale;
  const wide = pointsOf(box[at.along]) * at.scale;
  const frame = { xPt, yPt: up(top), widthPt: wide, heightPt: up(to) - up(top) };
  const paper: Mark = { kind: 'path', path: rectangle(frame), fill, stroke: outlineStroke };
  if (slit !== null && slit.axis === at.along) {
    const xPt = pointsOf(slit.at) * at.scale;
    const ends = { from: { xPt, yPt: up(top) }, to: { xPt, yPt: up(to) } };
    return { frame, marks: [paper, { kind: 'line', ...ends, stroke: outlineStroke }] };
  }
  if (to === from) return { frame, marks: [paper] };
  // Foam a little inside the edges.
  const inset = Math.min(6, wide / 5);
  const foam: Mark = {
    kind: 'path',
    path: rectangle({
      xPt: xPt + inset,
      yPt: up(to),
      widthPt: wide - 2 * inset,
      heightPt: up(from) - up(to),
    }),
    fill: { colour: white },
    stroke: { ...fineStroke, dashPt: [1.5, 1.5] },
  };
  return { frame, marks: [foam, paper] };
}

/** What people call a paper of the layout; what is bought has none. */
export function nameOfPaper(layout: Layout, paper: string | null): string {
  return paper === null ? 'bought' : (layout.papers.get(paper)?.name ?? paper);
}

function layersOf(request: PileRequest): readonly Layer[] {
  const { layout, arrangement, card, face, manner = 'printed' } = request;
  const layerOf = (
    part: string,
    piece: number,
    dealt: Dealt,
    wearing: Wearing,
    box: Box,
    heights: Pick<Layer, 'from' | 'to' | 'top' | 'estimated'>,
  ): Layer => ({
    part,
    piece,
    letter: letterFor(layout, part),
    paper: paperOfCard(dealt, card),
    box,
    fill: fillOf(layout, dealt, card, { manner, ...wearing }),
    ...heights,
  });

  const base = thicknessOfDealt(layout, layout.base, paperOfCard(layout.base, card));
  const ground: Box = { left: zero, top: zero, ...arrangement.card };
  const layers: Layer[] = [
    {
      ...layerOf('base', 0, layout.base, { side: sideOfBase(layout, face) }, ground, {
        from: zero,
        to: zero,
        top: base.length,
        estimated: base.estimated,
      }),
      slit: face === 'base' ? slitOf(foldedBase(layout)) : null,
    },
  ];
  for (const { part, face: own, pieces } of arrangement.parts) {
    if (own !== face) continue;
    const thickness = thicknessOfDealt(layout, part, paperOfCard(part, card));
    const raised = part.adhere === 'raised';
    pieces.forEach(({ box }, piece) => {
      if (box === null) return;
      const from = lengthOfTicks(
        Math.max(...layers.filter((layer) => overlap(layer.box, box)).map(({ top }) => top), 0),
      );
      const to = sum(from, raised ? (part.foam ?? adhesiveFor(layout, 'raised').thickness) : zero);
      layers.push(
        layerOf(part.id, piece, part, { side: part.side }, box, {
          from,
          to,
          top: sum(to, times(thickness.length, mostLayers(part, box))),
          estimated: thickness.estimated || (raised && part.foam === null),
        }),
      );
    });
  }
  return layers;
}

/** How often a piece lies over itself where it does most. */
function mostLayers({ shape }: Part, box: Box): number {
  return isFolded(shape) ? Math.max(1, depthRegionsIn(shape, box).length) : 1;
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
