import {
  black,
  circle,
  type Frame,
  fineStroke,
  type Mark,
  outlineStroke,
  polygon,
  type Typeface,
  white,
} from '../drawing/index.ts';
import { sideOfBase } from '../finished/index.ts';
import { paperOfCard } from '../layout/index.ts';
import { type Axis, pointsOf } from '../measure/index.ts';
import { fillOf } from './face.ts';
import { letterFor } from './matter.ts';
import { cutPile, drawnLayer, highestPt, nameOfPaper, type PileRequest, thickening } from './pileLayers.ts';
import { shortened } from './shortened.ts';

/** What a pile is drawn from, to be taken up part by part. */
export interface PileDrawingRequest extends PileRequest {
  readonly typeface: Typeface;
  /** Of section and tags together. */
  readonly widthPt: number;
  /** How high the section may be drawn, and how many times as thick as it is. */
  readonly most: { readonly heightPt: number; readonly times: number };
  /** The column of tags at the right: its width, from tag to tag, and the size of its type. */
  readonly tags: { readonly widthPt: number; readonly leadingPt: number; readonly sizePt: number };
}

/** A pile edge-on with a tag for each part, everything apart. */
export interface PileDrawing {
  readonly widthPt: number;
  readonly heightPt: number;
  /** The axis of the card that runs from left to right in it, the card's left or top at the left. */
  readonly along: Axis;
  /** How many times thicker than it is everything is drawn. */
  readonly thickened: number;
  /** Whether any thickness is estimated. */
  readonly estimated: boolean;
  /** What the cut meets, bottom first. */
  readonly layers: readonly PileLayer[];
  /** The base and every part of the face, bottom of the pile first, whether the cut meets it or not. */
  readonly tags: readonly PileTag[];
}

/** A piece in the section. */
export interface PileLayer {
  /** The id of its part, or `base`. */
  readonly part: string;
  /** From 0, of the pieces of the part on a card. */
  readonly piece: number;
  /** Of its paper, without the foam under it. */
  readonly frame: Frame;
  readonly marks: readonly Mark[];
}

/** By what a part is taken up. */
export interface PileTag {
  /** The id of the part, or `base`. */
  readonly part: string;
  readonly letter: string;
  /** What people call the part; `base` for the base. */
  readonly name: string;
  /** What people call the paper it is cut from on this card; `null`: bought. */
  readonly paper: string | null;
  /** Whether the cut meets a piece of it. */
  readonly isCut: boolean;
  /** All of the tag, as high as it is from tag to tag. */
  readonly frame: Frame;
  /** The thread to the layer; none where the cut misses it. */
  readonly thread: readonly Mark[];
  /** A little tag of its paper. */
  readonly swatch: readonly Mark[];
  /** Letter, name and paper; without the paper, or shortened, where there is no room. */
  readonly words: readonly Mark[];
}

/**
 * What lies on a face edge-on, cut through where the cut meets most pieces, with a column of tags at its right.
 *
 * True to scale along the cut; thickness is drawn as many times as `thickened` says. The lower of section and column
 * stands in the middle of the other.
 */
export function pileDrawing(request: PileDrawingRequest): PileDrawing {
  const { layout, arrangement, card, face, manner = 'printed', tags: column } = request;
  const cut = cutPile(request);
  const parts = [
    { id: 'base', name: 'base', dealt: layout.base, side: sideOfBase(layout, face) },
    ...arrangement.parts
      .filter((part) => part.face === face)
      .map(({ part }) => ({ id: part.id, name: part.name, dealt: part, side: part.side })),
  ];

  const sectionPt = Math.max(1, request.widthPt - column.widthPt - threadPt);
  const highest = highestPt(cut.met);
  const thickened = thickening(highest, request.most);
  const high = highest * thickened + 2 * edgePt;
  const columnPt = parts.length * column.leadingPt;
  const heightPt = Math.max(high, columnPt);
  const foot = (heightPt + high) / 2 - edgePt;
  const columnFoot = (heightPt + columnPt) / 2;
  const scale = (sectionPt - 2 * edgePt) / pointsOf(arrangement.card[cut.along]);

  const layers = cut.met.map((layer): PileLayer => {
    const { frame, marks } = drawnLayer(layer, { along: cut.along, scale, thickened, foot });
    const moved = { xPt: edgePt, yPt: 0 };
    return {
      part: layer.part,
      piece: layer.piece,
      frame: { ...frame, xPt: frame.xPt + edgePt },
      marks: [{ kind: 'group', marks, move: moved }],
    };
  });

  const tagged = parts.map(({ id, name, dealt, side }, index): PileTag => {
    const fill = fillOf(layout, dealt, card, { manner, side });
    const paperId = paperOfCard(dealt, card);
    const paper = paperId === null ? null : nameOfPaper(layout, paperId);
    const letter = letterFor(layout, id);
    const frame: Frame = {
      xPt: sectionPt + threadPt,
      yPt: columnFoot - (index + 1) * column.leadingPt,
      widthPt: column.widthPt,
      heightPt: column.leadingPt,
    };
    const middle = frame.yPt + frame.heightPt / 2;
    const own = layers.filter(({ part }) => part === id);
    // Of several pieces the one that ends furthest right.
    const held = own.toSorted((a, b) => rightOf(b.frame) - rightOf(a.frame))[0];
    return {
      part: id,
      letter,
      name,
      paper,
      isCut: held !== undefined,
      frame,
      thread: held === undefined ? [] : threadTo(held.frame, sectionPt, { xPt: frame.xPt + 4, yPt: middle }),
      swatch: swatchAt(frame.xPt, middle, column.sizePt, fill),
      words: wordsAt(frame.xPt + column.sizePt * 2.6, middle, {
        letter,
        name: id === 'base' ? 'Base' : name,
        paper: paper ?? 'bought',
        roomPt: column.widthPt - column.sizePt * 4.2,
        sizePt: column.sizePt,
        typeface: request.typeface,
      }),
    };
  });
  return {
    widthPt: request.widthPt,
    heightPt,
    along: cut.along,
    thickened,
    estimated: [...cut.met, ...cut.unmet].some(({ estimated }) => estimated),
    layers,
    tags: tagged,
  };
}

/** So that outlines are not cut at the edge of the drawing. */
const edgePt = 1;
/** From the section to the tags. */
const threadPt = 24;

function rightOf({ xPt, widthPt }: Frame): number {
  return xPt + widthPt;
}

/** Out of the section at the layer's height, then to the eye of the tag. */
function threadTo(layer: Frame, sectionPt: number, eye: { xPt: number; yPt: number }): readonly Mark[] {
  const middle = layer.yPt + layer.heightPt / 2;
  const out = { xPt: sectionPt + 5, yPt: middle };
  return [
    { kind: 'line', from: { xPt: rightOf(layer), yPt: middle }, to: out, stroke: fineStroke },
    { kind: 'line', from: out, to: eye, stroke: fineStroke },
  ];
}

/** A tag with its corners cut at the eye. */
function swatchAt(
  xPt: number,
  yPt: number,
  sizePt: number,
  fill: ReturnType<typeof fillOf>,
): readonly Mark[] {
  const wide = sizePt * 2;
  const half = sizePt * 0.6;
  const path = polygon([
    { xPt, yPt: yPt - half / 2 },
    { xPt: xPt + half / 2, yPt: yPt - half },
    { xPt: xPt + wide, yPt: yPt - half },
    { xPt: xPt + wide, yPt: yPt + half },
    { xPt: xPt + half / 2, yPt: yPt + half },
    { xPt, yPt: yPt + half / 2 },
  ]);
  return [
    { kind: 'path', path, fill, stroke: outlineStroke },
    {
      kind: 'path',
      path: circle({ xPt: xPt + 4, yPt }, 1.3),
      fill: { colour: white },
      stroke: fineStroke,
    },
  ];
}

function wordsAt(
  xPt: number,
  yPt: number,
  said: {
    readonly letter: string;
    readonly name: string;
    readonly paper: string;
    readonly roomPt: number;
    readonly sizePt: number;
    readonly typeface: Typeface;
  },
): readonly Mark[] {
  const { letter, name, paper, roomPt, sizePt, typeface } = said;
  // The paper is drawn in the tag besides, so it is left out before the name is shortened.
  const both = `${name}, ${paper}`;
  const words = typeface.widthPt(both, sizePt, 'regular') <= roomPt ? both : name;
  const text = (of: string, from: number, weight: 'regular' | 'semibold'): Mark => ({
    kind: 'text',
    at: { xPt: from, yPt: yPt + sizePt * 0.34 },
    text: of,
    sizePt,
    weight,
    colour: black,
    anchor: 'start',
  });
  return [
    text(letter, xPt, 'semibold'),
    text(shortened(words, roomPt, { sizePt, typeface }), xPt + sizePt * 1.6, 'regular'),
  ];
}
