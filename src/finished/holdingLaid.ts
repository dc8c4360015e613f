import {
  type Axis,
  type Box,
  bottomOf,
  type Length,
  lengthOfTicks,
  millimetres,
  rightOf,
} from '../measure/index.ts';
import {
  boundsOf,
  boxRegion,
  breadthOf,
  difference,
  evenOddRegion,
  isEmpty,
  islandsOf,
  narrowed,
  type Region,
  union,
} from '../shape/index.ts';
import type { Adhesive } from './adhesive.ts';
import { halfUnseen } from './halfUnseen.ts';

/** One strip, line, spot or square of an adhesive; a spot is the circle that fills its box. */
export interface Laid {
  readonly box: Box;
  /** The direction a strip or line runs in. */
  readonly along: Axis;
}

/** What is laid under a piece, and how far the worst point of it hangs where that is over the span; `null`: it is not. */
export interface LaidUnder {
  readonly laid: readonly Laid[];
  readonly hangs: Length | null;
}

/** The narrowest that a strip is cut lengthwise: less does not hold (common practice, no source). */
export const narrowestStrip: Length = millimetres(3);

/**
 * The adhesive laid within `room` so that no point of `piece` is further than the span from the nearest of it, with as
 * few strips or spots as an even laying in rows needs; empty where not one goes in.
 *
 * Where a piece reaches out too far for that, it is laid so that no point hangs further than it must, and it is said how
 * far. A strip or line is narrower where the room is; spots and squares are not. Everything laid is within the room to
 * the tick where its edges are straight and upright, else to within two. Time grows with rows times spots of a row.
 */
export function laidUnder(piece: Region, room: Region, adhesive: Adhesive): LaidUnder {
  const ways = candidates(room, adhesive);
  if (ways.length === 0) return { laid: [], hangs: null };
  const { span, form } = adhesive;
  const isRound = form === 'spot';
  const islands = islandsOf(room);
  const slack = span / 4;
  // Quick and coarse first: what fails at one of these points fails.
  const points = pointsIn(piece, span / 3).map((point) => ({
    ...point,
    needed: Math.max(span, distanceTo(point, islands) + slack),
  }));
  const reaches = points.every(({ needed }) => needed <= span);
  for (const laid of ways) {
    if (!points.every((point) => nearest(point, laid, isRound) <= point.needed)) continue;
    if (!reaches) return { laid, hangs: farthest(piece, laid, isRound, span) };
    if (isWithin(piece, laid, span, isRound)) return { laid, hangs: null };
  }
  // Nothing is even enough: the densest is as good as it gets.
  const laid = ways.at(-1)!;
  return { laid, hangs: isWithin(piece, laid, span, isRound) ? null : farthest(piece, laid, isRound, span) };
}

/** Whether every point of the piece is within that distance of what is laid. */
export function isWithin(piece: Region, laid: readonly Laid[], distance: Length, isRound: boolean): boolean {
  const reached = laid.map(({ box }) => reachOf(box, distance, isRound));
  const left = difference(piece, union(reached));
  return isEmpty(left) || isEmpty(narrowed(left, halfUnseen));
}

/**
 * What lies within that distance of a box, or of the circle in it, its corners as chords: a little less than all, by no
 * more than half a per cent of their radius, so that nothing is ever taken to be held that is not.
 */
function reachOf(box: Box, distance: Length, isRound: boolean): Region {
  const radius = isRound ? distance + box.width / 2 : distance;
  const [half, other] = isRound ? [0, 0] : [box.width / 2, box.height / 2];
  const ring = Array.from({ length: 4 * (chords + 1) }, (_, index) => {
    const quarter = Math.floor(index / (chords + 1));
    const angle = (Math.PI / 2) * (quarter + (index % (chords + 1)) / chords);
    const [right, down] = [quarter === 0 || quarter === 3, quarter < 2];
    return {
      x: lengthOfTicks(
        Math.round(box.left + box.width / 2 + (right ? half : -half) + radius * Math.cos(angle)),
      ),
      y: lengthOfTicks(
        Math.round(box.top + box.height / 2 + (down ? other : -other) + radius * Math.sin(angle)),
      ),
    };
  });
  return evenOddRegion([ring]);
}

/** How many chords a quarter of a circle is drawn with. */
const chords = 8;

/** How far the worst point of the piece is from what is laid, to a tenth of a millimetre above. */
function farthest(piece: Region, laid: readonly Laid[], isRound: boolean, span: Length): Length {
  let least: number = span;
  let most: number = span;
  while (!isWithin(piece, laid, lengthOfTicks(most), isRound)) most *= 2;
  while (most - least > 160) {
    const middle = Math.round((least + most) / 2);
    if (isWithin(piece, laid, lengthOfTicks(middle), isRound)) most = middle;
    else least = middle;
  }
  return lengthOfTicks(most);
}

// --- Ways to lay it ---

/** Even layings in rows, the one with the fewest strips or spots first, of as many the shortest. */
function candidates(room: Region, adhesive: Adhesive): readonly (readonly Laid[])[] {
  const { form, width } = adhesive;
  if (form === 'spot') {
    // A spot lies in the room where its middle lies that far in.
    const reach = lengthOfTicks(Math.max(0, Math.floor(width / 2) - 1));
    return waysIn(narrowed(room, reach), { breadth: lengthOfTicks(2), least: 2 }, adhesive).map((laid) =>
      laid.map(({ box, along }) => ({ box: grown(box, reach), along })),
    );
  }
  if (form === 'square') return waysIn(room, { breadth: width, least: width }, adhesive);
  const least = Math.min(width, narrowestStrip);
  // Cut lengthwise only where it does not go in whole, as in a small circle.
  for (const share of [1, 0.75, 0.5, 0]) {
    const breadth = lengthOfTicks(Math.max(least, Math.floor(width * share)));
    const ways = waysIn(room, { breadth, least }, adhesive);
    if (ways.length > 0) return ways;
  }
  return [];
}

function waysIn(
  room: Region,
  { breadth, least }: { readonly breadth: Length; readonly least: number },
  { form, width, span }: Adhesive,
): readonly (readonly Laid[])[] {
  const runs = form === 'strip' || form === 'line';
  const islands = islandsOf(room).flatMap((region) => {
    const box = boundsOf(region)!;
    if (Math.min(box.width, box.height) < least) return [];
    const own = runs ? lengthOfTicks(Math.min(breadth, breadthOf(region))) : breadth;
    return own < least ? [] : [{ region, box, breadth: own }];
  });
  if (islands.length === 0) return [];
  const most = (axis: Axis) => Math.ceil(Math.max(...islands.map(({ box }) => box[axis])) / span) + 2;
  const ways: (readonly Laid[])[] = [];
  for (const along of ['width', 'height'] as const) {
    const across = along === 'width' ? 'height' : 'width';
    for (let rows = 1; rows <= most(across); rows += 1) {
      for (const isToEdge of rows === 1 ? [false] : [false, true]) {
        const lines = islands.flatMap((island) => rowsIn(island, along, rows, isToEdge, least, span));
        if (runs) {
          ways.push(lines);
          continue;
        }
        for (let count = 1; count <= most(along); count += 1) {
          ways.push(lines.flatMap((line) => spotsIn(line, count, breadth, width)));
        }
      }
    }
    // Rows of spots are the same either way but for where the room is uneven; one way is enough.
    if (!runs) break;
  }
  const length = (laid: readonly Laid[]) => laid.reduce((sum, { box, along }) => sum + box[along], 0);
  return ways
    .filter((laid) => laid.length > 0)
    .toSorted((one, other) => one.length - other.length || length(one) - length(other));
}

function grown(box: Box, by: Length): Box {
  return {
    left: lengthOfTicks(box.left - by),
    top: lengthOfTicks(box.top - by),
    width: lengthOfTicks(box.width + 2 * by),
    height: lengthOfTicks(box.height + 2 * by),
  };
}

/** Rows as broad as the adhesive, evenly over one island: from edge to edge of it, or each in the middle of its share. */
function rowsIn(
  { region, box, breadth }: { readonly region: Region; readonly box: Box; readonly breadth: Length },
  along: Axis,
  rows: number,
  isToEdge: boolean,
  least: number,
  span: Length,
): readonly Laid[] {
  const start = along === 'width' ? box.top : box.left;
  const extent = along === 'width' ? box.height : box.width;
  const free = extent - breadth;
  // A small island beside a large one needs no more rows than reach over it.
  const count = Math.min(rows, Math.ceil(extent / Math.min(span, extent)) + 1);
  const at = (row: number) =>
    isToEdge && count > 1 ? (free * row) / (count - 1) : (extent * (row + 0.5)) / count - breadth / 2;
  const places = new Set(
    Array.from({ length: count }, (_, row) => Math.round(start + Math.min(free, Math.max(0, at(row))))),
  );
  return [...places].flatMap((place) => {
    const band: Box =
      along === 'width'
        ? { ...box, top: lengthOfTicks(place), height: breadth }
        : { ...box, left: lengthOfTicks(place), width: breadth };
    return freeAlong(region, band, along)
      .filter(([from, to]) => to - from >= least)
      .map(([from, to]) => ({ box: between(band, along, from, to), along }));
  });
}

/** The stretches of a band that lie wholly within the region. */
function freeAlong(region: Region, band: Box, along: Axis): readonly (readonly [number, number])[] {
  const [from, to] = along === 'width' ? [band.left, rightOf(band)] : ([band.top, bottomOf(band)] as const);
  const blocked = islandsOf(difference(boxRegion(band), region))
    .map((island) => {
      const box = boundsOf(island)!;
      // Slanting edges meet the band between ticks.
      return along === 'width'
        ? ([box.left - 1, rightOf(box) + 1] as const)
        : ([box.top - 1, bottomOf(box) + 1] as const);
    })
    .toSorted(([one], [other]) => one - other);
  const free: (readonly [number, number])[] = [];
  let at: number = from;
  for (const [start, end] of blocked) {
    if (start > at) free.push([at, start]);
    at = Math.max(at, end);
  }
  if (at < to) free.push([at, to]);
  return free;
}

function between(band: Box, along: Axis, from: number, to: number): Box {
  const length = lengthOfTicks(to - from);
  return along === 'width'
    ? { ...band, left: lengthOfTicks(from), width: length }
    : { ...band, top: lengthOfTicks(from), height: length };
}

/** So many spots on a row, from end to end and a `pitch` apart at least; a single one in the middle. */
function spotsIn({ box, along }: Laid, count: number, width: Length, pitch: Length): readonly Laid[] {
  const start = along === 'width' ? box.left : box.top;
  const free = box[along] - width;
  const fitting = Math.min(count, Math.floor(free / pitch) + 1);
  return Array.from({ length: fitting }, (_, spot) => {
    const at = Math.round(start + (fitting === 1 ? free / 2 : (free * spot) / (fitting - 1)));
    return { box: between(box, along, at, at + width), along };
  });
}

// --- Distances ---

interface Spot {
  readonly x: number;
  readonly y: number;
}

function nearest({ x, y }: Spot, laid: readonly Laid[], isRound: boolean): number {
  let least = Infinity;
  for (const { box } of laid) {
    const [right, bottom] = [box.left + box.width, box.top + box.height];
    const distance = isRound
      ? Math.hypot(x - (box.left + right) / 2, y - (box.top + bottom) / 2) - box.width / 2
      : Math.hypot(Math.max(box.left - x, 0, x - right), Math.max(box.top - y, 0, y - bottom));
    if (distance < least) least = distance;
  }
  return least;
}

/** Corners of the region, and a grid of points in it. */
function pointsIn(region: Region, step: number): readonly Spot[] {
  const box = boundsOf(region)!;
  const corners = region.rings.flatMap((ring) => {
    const every = Math.max(1, Math.floor(ring.length / 60));
    return ring.filter((_, index) => index % every === 0);
  });
  const grid: Spot[] = [];
  const [across, down] = [Math.ceil(box.width / step), Math.ceil(box.height / step)];
  for (let i = 0; i < across; i += 1) {
    for (let j = 0; j < down; j += 1) {
      const point = {
        x: box.left + (box.width * (i + 0.5)) / across,
        y: box.top + (box.height * (j + 0.5)) / down,
      };
      if (isIn(point, region)) grid.push(point);
    }
  }
  return [...corners, ...grid];
}

/** Even-odd, by a ray to the right. */
function isIn({ x, y }: Spot, { rings }: Region): boolean {
  let crossings = 0;
  for (const ring of rings) {
    ring.forEach((one, index) => {
      const other = ring[(index + 1) % ring.length]!;
      if (one.y > y !== other.y > y && x < one.x + ((y - one.y) * (other.x - one.x)) / (other.y - one.y))
        crossings += 1;
    });
  }
  return crossings % 2 === 1;
}

function distanceTo(point: Spot, regions: readonly Region[]): number {
  return Math.min(
    ...regions.map((region) =>
      isIn(point, region)
        ? 0
        : Math.min(
            ...region.rings.flatMap((ring) =>
              ring.map((one, index) => distanceToLine(point, one, ring[(index + 1) % ring.length]!)),
            ),
          ),
    ),
  );
}

function distanceToLine({ x, y }: Spot, one: Spot, other: Spot): number {
  const [dx, dy] = [other.x - one.x, other.y - one.y];
  const along = Math.max(
    0,
    Math.min(1, ((x - one.x) * dx + (y - one.y) * dy) / Math.max(1, dx * dx + dy * dy)),
  );
  return Math.hypot(x - one.x - along * dx, y - one.y - along * dy);
}
