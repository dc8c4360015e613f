import type { FoldKind, Opens } from '../../making/index.ts';
import {
  type Edge,
  inches,
  type Length,
  millimetres,
  type Size,
  sum,
  times,
  type Units,
  zero,
} from '../../measure/index.ts';
import type { Paper, SheetStock, Up } from '../../stash/index.ts';
import type { Adhere, Anchor, Extent, Layout, Part, Place, Turn } from '../layout.ts';

/** Layouts in a few words for tests; what is not said is what the layout file takes for granted. */
export interface Sketch {
  readonly units?: Units;
  readonly cards?: number;
  readonly base: readonly [width: Length, height: Length];
  readonly fold?: FoldKind;
  readonly opens?: Opens;
  readonly allowance?: Length;
  readonly basePapers?: readonly string[];
  readonly baseTurn?: Turn;
  readonly papers?: readonly Paper[];
  readonly parts?: readonly Part[];
  readonly envelope?: Layout['envelope'];
  readonly post?: Layout['post'];
  readonly adhesives?: Layout['adhesives'];
  readonly order?: readonly string[];
  readonly extras?: Layout['extras'];
}

/** The layout of a sketch. */
export function layoutOf(sketch: Sketch): Layout {
  return {
    title: 'Test set',
    units: sketch.units ?? 'in',
    cards: sketch.cards ?? 1,
    base: {
      size: { width: sketch.base[0], height: sketch.base[1] },
      fold: sketch.fold ?? 'left',
      opens: sketch.opens ?? 'sideways',
      allowance: sketch.allowance ?? null,
      papers: sketch.basePapers ?? [],
      side: 'front',
      turn: sketch.baseTurn ?? null,
      spare: 0,
      thickness: null,
      grams: null,
    },
    papers: new Map((sketch.papers ?? []).map((paper) => [paper.id, paper])),
    parts: sketch.parts ?? [],
    envelope: sketch.envelope ?? null,
    post: sketch.post ?? null,
    ...(sketch.adhesives === undefined ? {} : { adhesives: sketch.adhesives }),
    ...(sketch.order === undefined ? {} : { order: sketch.order }),
    ...(sketch.extras === undefined ? {} : { extras: sketch.extras }),
    typed: new Map(),
  };
}

/** Where a piece lies: a bare length is a distance from the edge of what it lies on. */
export type PlaceSketch = Readonly<Partial<Record<Edge, Length | Anchor>>>;

export interface PartSketch {
  readonly on?: string;
  /** The cut size, `null` on an axis to fill; or one of `inset`, `diameter`. */
  readonly size?: readonly [width: Length | null, height: Length | null];
  readonly inset?: Length;
  readonly diameter?: Length;
  /** A word where its kind says all. */
  readonly shape?: Part['shape'] | 'rectangle' | 'circle' | 'oval';
  readonly place?: PlaceSketch | readonly PlaceSketch[];
  /** Pieces, all at the one place; a list of places has its own count. */
  readonly count?: number;
  readonly torn?: Readonly<Partial<Record<Edge, Length>>>;
  readonly tear?: Part['tear'];
  readonly tuck?: Readonly<Partial<Record<Edge, Length>>>;
  readonly margin?: Length;
  readonly dieCut?: boolean;
  readonly stamped?: boolean;
  readonly papers?: readonly string[];
  readonly side?: 'front' | 'back';
  readonly turn?: Turn;
  readonly spare?: number;
  readonly lies?: Part['lies'];
  readonly adhere?: Adhere;
  readonly foam?: Length;
  readonly thickness?: Length;
  readonly grams?: number;
  readonly from?: 'leftovers';
}

const noEdge = { left: zero, right: zero, top: zero, bottom: zero };

/** A part of the pile. */
export function part(id: string, sketch: PartSketch): Part {
  const listed = (value: PartSketch['place']): value is readonly PlaceSketch[] => Array.isArray(value);
  const places = listed(sketch.place)
    ? sketch.place.map(placeOf)
    : Array.from({ length: sketch.count ?? 1 }, () => placeOf((sketch.place ?? {}) as PlaceSketch));
  return {
    id,
    name: id,
    on: sketch.on ?? 'base',
    shape: shapeOf(sketch),
    extent: extentOf(sketch),
    torn: { ...noEdge, ...sketch.torn },
    tear: sketch.tear ?? null,
    tuck: { ...noEdge, ...sketch.tuck },
    margin: sketch.margin ?? zero,
    dieCut: sketch.dieCut ?? false,
    stamped: sketch.stamped ?? false,
    places,
    papers: sketch.papers ?? [],
    side: sketch.side ?? 'front',
    turn: sketch.turn ?? null,
    spare: sketch.spare ?? 0,
    lies: sketch.lies ?? 'upright',
    adhere: sketch.adhere ?? 'flat',
    foam: sketch.foam ?? null,
    ...(sketch.from === undefined ? {} : { from: sketch.from }),
    thickness: sketch.thickness ?? null,
    grams: sketch.grams ?? null,
  };
}

/** The anchor `gap` away from a neighbour's nearer edge. */
export function awayFrom(neighbour: string, gap: Length): Anchor {
  return { from: 'part', part: neighbour, gap };
}

/** A paper without a direction, with the sheets named. */
export function paper(
  id: string,
  sheets: readonly (Partial<SheetStock> & { readonly size: Size })[],
  up: Up = 'any',
): Paper {
  return {
    id,
    name: id,
    kind: null,
    gsm: null,
    thickness: null,
    colour: null,
    core: null,
    seeThrough: false,
    up,
    back: null,
    sheets: sheets.map((sheet) => ({
      count: null,
      price: null,
      grain: null,
      scrap: false,
      margin: { left: zero, right: zero, top: zero, bottom: zero },
      ...sheet,
    })),
  };
}

/** A length as the trade writes it: `inch('3 1/4')`, `inch('1/8')`, `inch('-1/2')`. */
export function inch(text: string): Length {
  const terms = text.replace('-', '').split(' ');
  const length = sum(
    ...terms.map((term) => {
      const [count, parts] = term.split('/').map(Number);
      return inches(count!, parts ?? 1);
    }),
  );
  return times(length, text.startsWith('-') ? -1 : 1);
}

/** Millimetres, as `millimetres` of measure; short because tests say it so often. */
export const mm = millimetres;

function shapeOf({ shape, diameter }: PartSketch): Part['shape'] {
  if (typeof shape === 'object') return shape;
  return { kind: shape ?? (diameter === undefined ? 'rectangle' : 'circle') };
}

function extentOf(sketch: PartSketch): Extent {
  if (sketch.inset !== undefined) return { by: 'inset', inset: sketch.inset };
  if (sketch.diameter !== undefined) return { by: 'diameter', diameter: sketch.diameter };
  const [width, height] = sketch.size ?? [null, null];
  return { by: 'size', width, height };
}

function placeOf(place: PlaceSketch): Place {
  const anchor = (value: Length | Anchor | undefined): Anchor | null =>
    value === undefined ? null : typeof value === 'number' ? { from: 'edge', distance: value } : value;
  return {
    across: { start: anchor(place.left), end: anchor(place.right) },
    down: { start: anchor(place.top), end: anchor(place.bottom) },
  };
}
