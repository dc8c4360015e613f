import type { Arrangement, Face, Layout } from '../layout/index.ts';
import {
  type Box,
  bottomOf,
  type Length,
  lengthOfTicks,
  millimetres,
  minus,
  rightOf,
  sum,
  zero,
} from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import {
  areaOf,
  boundsOf,
  boxRegion,
  difference,
  intersection,
  isEmpty,
  islandsOf,
  narrowed,
  type Point,
  type Region,
  union,
} from '../shape/index.ts';
import { facesFromFront, type Ply, pliesOf } from './plies.ts';

/** How thick a closed card is, place by place. */
export interface Section {
  /** The card with all that hangs over its edges, in the axes of its front. */
  readonly extent: Box;
  readonly thickest: Stack;
  /** Of the card itself, without what hangs over it. */
  readonly thinnest: Stack;
  /** Every thickness that there is, the greatest first, with the area that is so thick in square ticks. */
  readonly levels: readonly { readonly thickness: Length; readonly area: number }[];
  readonly evenness: Evenness;
  /** How far it is round the card in each direction. */
  readonly round: Round;
}

/** A card cut through at one place. */
export interface Stack {
  readonly thickness: Length;
  /** A place in the middle of where it is so, in the axes of the front. */
  readonly at: Point;
  /** What lies there, from the back up. */
  readonly layers: readonly Layer[];
  /** How much of the thickness is estimated. */
  readonly estimated: Length;
}

/** One layer of a card that is cut through. */
export interface Layer {
  /** `air`: what lies above is carried by foam that is beside this place. */
  readonly what: Ply['what'] | 'foam' | 'spots' | 'air';
  /** The id of the part that it is, holds or carries, or `base`. */
  readonly part: string;
  /** From 0, of the pieces of the part, or of the panels of the base. */
  readonly piece: number;
  readonly face: Face;
  readonly thickness: Length;
  readonly estimated: boolean;
}

/** Whether a card is about as thick everywhere. */
export interface Evenness {
  /** From the thinnest to the thickest place. */
  readonly step: Length;
  /** How much of the card is thicker than half-way between the two, from 0 to 1. */
  readonly share: number;
  readonly isUneven: boolean;
}

/**
 * Half the way round a card, across it (`width`) and up and down (`height`): what the flat width of an envelope has to
 * be at least, since its front and back together go round the card.
 */
export interface Round {
  readonly width: Length;
  readonly height: Length;
}

/**
 * A step by which a letter is thick in some places only. No post says a figure; foam of 1/16 in passes it and four
 * or five layers of cardstock do not.
 */
const unevenStep: Length = millimetres(1.5);
/** Where nearly all of a card is thick, its thin rim does not make it uneven (common practice, no source). */
const evenShare = 0.75;

/**
 * The section through card number `card` (from 0), closed: all that it is made of laid on one another, exactly over the
 * plane. Curved edges are as fine as their regions.
 *
 * The front, the inside and the back are taken to lie close to one another at every place, as in an envelope. Time grows
 * with the number of pieces times the number of different thicknesses.
 */
export function sectionOf(layout: Layout, arrangement: Arrangement, card: number): Section {
  const plies = pliesOf(layout, arrangement, card);
  const ground: Box = { left: zero, top: zero, ...arrangement.card };
  const cells = cellsOf(plies, boxRegion(ground));
  const within = cells
    .map(({ height, region }) => ({ height, region: intersection(region, boxRegion(ground)) }))
    .filter(({ region }) => isPlace(region));
  const places = cells.filter(({ height, region }) => height > 0 && isPlace(region));
  const thickest = places.reduce((best, cell) => (cell.height > best.height ? cell : best));
  const thinnest = within.reduce((best, cell) => (cell.height < best.height ? cell : best));
  const extent = boundsOf(union(places.map(({ region }) => region)));
  assert(extent !== null, 'A card has an extent');
  return {
    extent,
    thickest: stackAt(plies, thickest),
    thinnest: stackAt(plies, thinnest),
    levels: levelsOf(places),
    evenness: evennessOf(within, { thickest: thickest.height, thinnest: thinnest.height }),
    round: { width: roundOf(places, 'left', 'width'), height: roundOf(places, 'top', 'height') },
  };
}

/** Where a card is equally thick. */
interface Cell {
  readonly height: Length;
  readonly region: Region;
}

/** Of a place, what is further from its edges than rounding can have moved them, 5 µm. */
function heartOf(region: Region): Region {
  return narrowed(region, lengthOfTicks(8));
}

/** Slivers that rounding leaves between curved edges are no place that anything lies at. */
function isPlace(region: Region): boolean {
  // The largest disc in a region has at least its area over its perimeter for a radius, which is soon known.
  return areaOf(region) > 12 * perimeterOf(region) || !isEmpty(heartOf(region));
}

function perimeterOf({ rings }: Region): number {
  return rings.reduce(
    (total, ring) =>
      total +
      ring.reduce((length, from, index) => {
        const to = ring[(index + 1) % ring.length]!;
        return length + Math.hypot(to.x - from.x, to.y - from.y);
      }, 0),
    0,
  );
}

/** A cell as it grows: the papers there, and how high foam holds what lies there, on each face. */
interface Growing {
  readonly papers: number;
  readonly lifts: readonly number[];
  readonly region: Region;
}

function cellsOf(plies: readonly Ply[], ground: Region): readonly Cell[] {
  let cells: readonly Growing[] = [
    {
      papers: 0,
      lifts: facesFromFront.map(() => 0),
      region: union([ground, ...plies.map(({ region }) => region)]),
    },
  ];
  for (const layer of layersOf(plies)) cells = laidOver(cells, layer);
  return cells.map(({ papers, lifts, region }) => ({
    height: lengthOfTicks(lifts.reduce((total, lift) => total + lift, papers)),
    region,
  }));
}

/** Pieces that lie apart, are as thick and are held as high: laid on at one go. */
interface Laid {
  readonly thickness: number;
  readonly lift: number;
  readonly face: Face;
  readonly region: Region;
}

function layersOf(plies: readonly Ply[]): readonly Laid[] {
  const groups: { readonly of: Ply; readonly laid: { readonly box: Box; readonly region: Region }[] }[] = [];
  for (const ply of plies) {
    const box = boundsOf(ply.region);
    if (box === null) continue;
    // The order of the pile does not matter any more: what lies where, and how high, is known.
    const group = groups.find(
      ({ of, laid }) =>
        of.part === ply.part &&
        of.face === ply.face &&
        of.what === ply.what &&
        of.lift === ply.lift &&
        laid.every((other) => areApart(other.box, box) || isEmpty(intersection(other.region, ply.region))),
    );
    if (group === undefined) groups.push({ of: ply, laid: [{ box, region: ply.region }] });
    else group.laid.push({ box, region: ply.region });
  }
  return groups.map(({ of, laid }) => ({
    thickness: of.thickness.length,
    lift: of.lift,
    face: of.face,
    region: union(laid.map(({ region }) => region)),
  }));
}

/** Whether two boxes have no more than an edge in common. */
function areApart(one: Box, other: Box): boolean {
  return (
    rightOf(one) <= other.left ||
    rightOf(other) <= one.left ||
    bottomOf(one) <= other.top ||
    bottomOf(other) <= one.top
  );
}

function laidOver(cells: readonly Growing[], layer: Laid): readonly Growing[] {
  const face = facesFromFront.indexOf(layer.face);
  const grown = new Map<string, { papers: number; lifts: readonly number[]; regions: Region[] }>();
  const put = (papers: number, lifts: readonly number[], region: Region) => {
    if (isEmpty(region)) return;
    const key = `${papers} ${lifts.join(' ')}`;
    const same = grown.get(key);
    if (same === undefined) grown.set(key, { papers, lifts, regions: [region] });
    else same.regions.push(region);
  };
  for (const { papers, lifts, region } of cells) {
    put(papers, lifts, difference(region, layer.region));
    const raised = lifts.map((lift, at) => (at === face ? Math.max(lift, layer.lift) : lift));
    put(papers + layer.thickness, raised, intersection(region, layer.region));
  }
  return [...grown.values()].map(({ papers, lifts, regions }) => ({ papers, lifts, region: union(regions) }));
}

function levelsOf(cells: readonly Cell[]): Section['levels'] {
  const areas = new Map<Length, number>();
  for (const { height, region } of cells) areas.set(height, (areas.get(height) ?? 0) + areaOf(region));
  return [...areas]
    .map(([thickness, area]) => ({ thickness, area }))
    .toSorted((one, other) => other.thickness - one.thickness);
}

function evennessOf(
  cells: readonly Cell[],
  { thickest, thinnest }: { readonly thickest: Length; readonly thinnest: Length },
): Evenness {
  const step = minus(thickest, thinnest);
  const areaWhere = (counts: (cell: Cell) => boolean) =>
    cells.filter(counts).reduce((total, { region }) => total + areaOf(region), 0);
  const share = areaWhere(({ height }) => height > thinnest + step / 2) / areaWhere(() => true);
  return { step, share, isUneven: step > unevenStep && share < evenShare };
}

/**
 * Half the length of a string drawn tight round the card's profile, to the next tick up.
 *
 * The profile is how thick the card is anywhere along each line, lying on its back; that the thickness lies on both sides
 * of the base in truth makes the way round no longer.
 */
function roundOf(cells: readonly Cell[], start: 'left' | 'top', along: 'width' | 'height'): Length {
  const corners = cells.flatMap(({ height, region }) => {
    const bounds = boundsOf(region)!;
    return [bounds[start], bounds[start] + bounds[along]].flatMap((x) => [
      { x, y: 0 },
      { x, y: height },
    ]);
  });
  const hull = hullOf(corners);
  const round = hull.reduce((total, corner, index) => {
    const next = hull[(index + 1) % hull.length]!;
    return total + Math.hypot(next.x - corner.x, next.y - corner.y);
  }, 0);
  return lengthOfTicks(Math.ceil(round / 2));
}

interface Corner {
  readonly x: number;
  readonly y: number;
}

/** The corners of the convex hull in turn, by Andrew's monotone chain (Information Processing Letters 9, 1979). */
function hullOf(corners: readonly Corner[]): readonly Corner[] {
  const sorted = corners.toSorted((one, other) => one.x - other.x || one.y - other.y);
  const chain = (from: readonly Corner[]): Corner[] => {
    const kept: Corner[] = [];
    for (const corner of from) {
      while (kept.length > 1 && turn(kept.at(-2)!, kept.at(-1)!, corner) <= 0) kept.pop();
      kept.push(corner);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

function turn(from: Corner, over: Corner, to: Corner): number {
  return (over.x - from.x) * (to.y - from.y) - (over.y - from.y) * (to.x - from.x);
}

// --- One place ---

function stackAt(plies: readonly Ply[], { height, region }: Cell): Stack {
  const at = placeIn(region);
  const met = plies.filter((ply) => holds(ply.region, at));
  const layers = facesFromFront.toReversed().flatMap((face) => layersOn(face, met));
  const total = sum(...layers.map(({ thickness }) => thickness));
  assert(total === height, 'The layers of a place make up its thickness', { total, height });
  const estimated = layers.filter((layer) => layer.estimated).map(({ thickness }) => thickness);
  return { thickness: height, at, layers, estimated: sum(...estimated) };
}

/** Of one face and the panels of the base that it belongs to. */
function layersOn(face: Face, met: readonly Ply[]): readonly Layer[] {
  const here = met.filter((ply) => ply.face === face);
  const layers = here.flatMap((ply): readonly Layer[] => {
    const { what, part, piece, thickness, held } = ply;
    const own: Layer = {
      what,
      part,
      piece,
      face,
      thickness: thickness.length,
      estimated: thickness.estimated,
    };
    if (held === null) return [own];
    const by: Layer = {
      what: held.by,
      part,
      piece,
      face,
      thickness: held.thickness.length,
      estimated: held.thickness.estimated,
    };
    // On the back the pile hangs downwards.
    return face === 'back' ? [own, by] : [by, own];
  });
  const highest = here.reduce<Ply | null>((best, ply) => (ply.lift > (best?.lift ?? 0) ? ply : best), null);
  const holding = layers.filter(({ what }) => what === 'foam' || what === 'spots');
  const air = minus(highest?.lift ?? zero, sum(...holding.map(({ thickness }) => thickness)));
  if (highest === null || air === zero) return layers;
  return [
    ...layers,
    { what: 'air', part: highest.part, piece: highest.piece, face, thickness: air, estimated: false },
  ];
}

/** A point well within the region: the middle of the broadest stretch of its largest piece, half-way down if it may be. */
function placeIn(region: Region): Point {
  const islands = islandsOf(heartOf(aroundLargest(region)));
  const island = islands.reduce((best, one) => (areaOf(one) > areaOf(best) ? one : best));
  const bounds = boundsOf(island)!;
  let best = { y: 0, from: 0, to: 0 };
  for (const eighths of [4, 2, 6, 1, 3, 5, 7]) {
    // Half a tick off the whole ones that corners stand on.
    const y = Math.floor(bounds.top + (bounds.height * eighths) / 8) + 0.5;
    const crossings = crossingsAt(island, y);
    for (let index = 0; index + 1 < crossings.length; index += 2) {
      const [from, to] = [crossings[index]!, crossings[index + 1]!];
      if (to - from > (best.to - best.from) * 1.1) best = { y, from, to };
    }
  }
  return { x: lengthOfTicks(Math.floor((best.from + best.to) / 2)), y: lengthOfTicks(Math.floor(best.y)) };
}

/** What of the region lies in the box of its largest ring, where that is broad: all that is needed to find a place in it. */
function aroundLargest(region: Region): Region {
  const boxes = region.rings.map((ring) => {
    // A traced outline may have more corners than a call takes arguments.
    let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const { x, y } of ring) {
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
    }
    return {
      left: lengthOfTicks(left),
      top: lengthOfTicks(top),
      width: lengthOfTicks(right - left),
      height: lengthOfTicks(bottom - top),
    };
  });
  const largest = boxes.reduce((best, box) =>
    box.width * box.height > best.width * best.height ? box : best,
  );
  const part = intersection(region, boxRegion(largest));
  return isPlace(part) ? part : region;
}

/** Whether half a tick right of and below the point is in the region: no edge of upright boxes passes there. */
function holds(region: Region, { x, y }: Point): boolean {
  return crossingsAt(region, y + 0.5).filter((crossing) => crossing < x + 0.5).length % 2 === 1;
}

/** Where the edges of a region cross the level line at `y`, from left to right. */
function crossingsAt({ rings }: Region, y: number): readonly number[] {
  return rings
    .flatMap((ring) =>
      ring.flatMap((from, index) => {
        const to = ring[(index + 1) % ring.length]!;
        return from.y < y === to.y < y ? [] : [from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)];
      }),
    )
    .toSorted((one, other) => one - other);
}
