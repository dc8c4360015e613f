import { type Length, lengthOfTicks, type Size } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { widened } from './breadth.ts';
import { intersection } from './combining.ts';
import { type Envelope, envelopeOf, separation } from './envelope.ts';
import { boundsOf, boxOf, boxRegion, type Region, regionOfRings } from './region.ts';

/** How many quarter turns to the right a shape is laid with. */
export type QuarterTurns = 0 | 1 | 2 | 3;

/** One shape to be laid on a rectangle as often as it goes. */
export interface NestRequest {
  /** Where it lies does not matter. */
  readonly region: Region;
  /** What is left all round each: from the edges of the bed, and twice that between two. */
  readonly margin: Length;
  readonly bed: Size;
  /** How it may be turned; at least one. */
  readonly turns: readonly QuarterTurns[];
  /** No more than this. */
  readonly most: number;
  /** Its box is laid at whole multiples of this from the left and upper edges, where that gives as many; `null`: anywhere. */
  readonly marks: Length | null;
}

/** Where one lies: its box, without the margin, by its left upper corner, in a bed whose origin is that corner. */
export interface NestPlace {
  readonly left: Length;
  readonly top: Length;
  readonly turns: QuarterTurns;
}

/** What was found, which need not be the most that there is. */
export interface Nested {
  readonly places: readonly NestPlace[];
  /** How far the places reach from the left upper corner of the bed, margins among it. */
  readonly reach: Size;
}

/**
 * Places of a shape on a rectangle in rows or in columns, turned by turns, next to one another as closely as their
 * outlines let them lie: straight rows, and rows moved along so that they sink into one another, all alike or turned half
 * round by turns; what is left at the end of the rows is filled in the same way. No two places overlap, margins among it.
 *
 * Rows whose neighbours lie below one another are kept apart by their envelopes, so a shape is never laid into a hole or
 * a bay of another. As many as `marks` allow, if these are as many as there would be without.
 */
export function nested(request: NestRequest): Nested {
  const { marks, ...anywhere } = request;
  const free = nestedBy(anywhere, null);
  if (marks === null || free.places.length === 0) return free;
  const marked = nestedBy(anywhere, marks);
  return marked.places.length >= free.places.length ? marked : free;
}

/** The region turned to the right about the origin by so many quarter turns. */
export function turnedRegion(region: Region, turns: QuarterTurns): Region {
  const turned = {
    0: (x: Length, y: Length) => ({ x, y }),
    1: (x: Length, y: Length) => ({ x: opposite(y), y: x }),
    2: (x: Length, y: Length) => ({ x: opposite(x), y: opposite(y) }),
    3: (x: Length, y: Length) => ({ x: y, y: opposite(x) }),
  }[turns];
  return regionOfRings(region.rings.map((ring) => ring.map(({ x, y }) => turned(x, y))));
}

/** The region moved so that its box has its left upper corner there. */
export function movedTo(region: Region, left: Length, top: Length): Region {
  const bounds = boundsOf(region);
  assert(bounds !== null, 'What is moved covers something');
  const [right, down] = [left - bounds.left, top - bounds.top];
  return regionOfRings(
    region.rings.map((ring) =>
      ring.map(({ x, y }) => ({ x: lengthOfTicks(x + right), y: lengthOfTicks(y + down) })),
    ),
  );
}

/**
 * What a shape takes up with its margin all round. Curves are chords that may lie 4 ticks inside their line, so what is
 * no rectangle is taken that much wider, but never beyond the box of the shape with its margin.
 */
export function withMargin(region: Region, margin: Length): Region {
  const bounds = boundsOf(region);
  assert(bounds !== null && margin >= 0, 'What is laid covers something', { margin });
  const box = boxRegion({
    left: lengthOfTicks(bounds.left - margin),
    top: lengthOfTicks(bounds.top - margin),
    width: lengthOfTicks(bounds.width + 2 * margin),
    height: lengthOfTicks(bounds.height + 2 * margin),
  });
  if (boxOf(region) !== null) return box;
  return intersection(widened(region, lengthOfTicks(margin + chordSlack)), box);
}

/** As in `regionOf`. */
const chordSlack = 4;

/** More places than this are not looked for on one bed. */
const mostPlaces = 2_000;

type Unmarked = Omit<NestRequest, 'marks'>;

/** A shape in one turn with its margin, as rows (`along` x) or columns need it. */
interface Turned {
  readonly turns: QuarterTurns;
  readonly width: number;
  readonly height: number;
  /** Seen from above and below. */
  readonly upright: Envelope;
  /** Seen from the sides: x and y exchanged. */
  readonly aside: Envelope;
}

/** Where a shape lies with its margin, in ticks. */
interface Laid {
  readonly x: number;
  readonly y: number;
  readonly of: Turned;
}

function nestedBy(request: Unmarked, marks: Length | null): Nested {
  const { bed, margin } = request;
  const most = Math.min(request.most, mostPlaces);
  const own = withMargin(request.region, margin);
  const turned = kindsOf(own, request.turns);
  const snap =
    marks === null ? (at: number) => at : (at: number) => up((at + margin) / marks) * marks - margin;
  const filling = { snap, step: marks ?? 1, most };

  let best: readonly Laid[] = [];
  for (const columns of [false, true]) {
    const kinds = columns ? turned.map(exchanged) : turned;
    const [width, height] = columns ? [bed.height, bed.width] : [bed.width, bed.height];
    const found = filled(kinds, { width, height, ...filling });
    const laid = columns ? found.map(({ x, y, of }) => ({ x: y, y: x, of: exchanged(of) })) : found;
    if (better(laid, best, bed)) best = laid;
  }
  const reachOf = (along: (laid: Laid) => number) => lengthOfTicks(Math.max(0, ...best.map(along)));
  return {
    places: best.map(({ x, y, of }) => ({
      left: lengthOfTicks(x + margin),
      top: lengthOfTicks(y + margin),
      turns: of.turns,
    })),
    reach: { width: reachOf(({ x, of }) => x + of.width), height: reachOf(({ y, of }) => y + of.height) },
  };
}

/** More of them; of as many, those that leave the larger rectangle of the bed free. */
function better(one: readonly Laid[], other: readonly Laid[], bed: BedSize): boolean {
  return one.length > other.length || (one.length === other.length && taken(one, bed) < taken(other, bed));
}

/** How much of a bed is gone when what was laid is cut off from edge to edge. */
function taken(laid: readonly Laid[], { width, height }: BedSize): number {
  const across = laid.reduce((most, { x, of }) => Math.max(most, x + of.width), 0);
  const down = laid.reduce((most, { y, of }) => Math.max(most, y + of.height), 0);
  return Math.min(across * height, width * down);
}

/** Of a bed, in ticks. */
interface BedSize {
  readonly width: number;
  readonly height: number;
}

/** The turns of a shape that differ from one another. */
function kindsOf(region: Region, turns: readonly QuarterTurns[]): readonly Turned[] {
  const known = new Set<string>();
  return turns.flatMap((turn): Turned[] => {
    const own = movedTo(turnedRegion(region, turn), lengthOfTicks(0), lengthOfTicks(0));
    const corners = own.rings.flatMap((ring) => ring.map(({ x, y }) => `${x} ${y}`)).sort();
    const key = corners.join();
    if (known.has(key)) return [];
    known.add(key);
    const { width, height } = boundsOf(own)!;
    const flipped = regionOfRings(own.rings.map((ring) => ring.map(({ x, y }) => ({ x: y, y: x }))));
    return [{ turns: turn, width, height, upright: envelopeOf(own), aside: envelopeOf(flipped) }];
  });
}

function exchanged({ turns, width, height, upright, aside }: Turned): Turned {
  return { turns, width: height, height: width, upright: aside, aside: upright };
}

interface Filling extends BedSize {
  /** To the next place where a shape with its margin may begin. */
  readonly snap: (at: number) => number;
  /** How far apart these places are. */
  readonly step: number;
  readonly most: number;
}

/** The best of all ways to lay rows, with the strip that is left below them filled too. */
function filled(kinds: readonly Turned[], filling: Filling, deeper = true): readonly Laid[] {
  let best: readonly Laid[] = [];
  const strips = new Map<number, readonly Laid[]>();
  for (const way of rowWays(kinds, filling)) {
    const rows = rowsBy(way, filling);
    let laid: readonly Laid[] = rows;
    if (deeper && rows.length > 0 && rows.length < filling.most) {
      const lowest = rows.reduce((low, { y, of }) => Math.max(low, y + of.height), 0);
      // On a mark, so that what lies on marks from there does from the edge.
      const end = up(lowest / filling.step) * filling.step;
      const height = filling.height - end;
      if (!strips.has(height) && strips.size < mostStrips)
        strips.set(height, stripFilled(kinds, filling, height));
      const more = strips.get(height) ?? [];
      laid = [...rows, ...more.map(({ x, y, of }) => ({ x, y: y + end, of }))].slice(0, filling.most);
    }
    if (better(laid, best, filling)) best = laid;
  }
  return best;
}

/** Rows or columns in a strip of that height, itself in one piece. */
function stripFilled(kinds: readonly Turned[], filling: Filling, height: number): readonly Laid[] {
  const rows = filled(kinds, { ...filling, height }, false);
  const turned = { ...filling, width: height, height: filling.width };
  const columns = filled(kinds.map(exchanged), turned, false).map(({ x, y, of }) => ({
    x: y,
    y: x,
    of: exchanged(of),
  }));
  return better(columns, rows, { width: filling.width, height }) ? columns : rows;
}

/** Strips below the rows that are looked into. */
const mostStrips = 6;

/** Two rows that follow one another by turns. */
interface RowWay {
  readonly first: readonly Laid[];
  readonly second: readonly Laid[];
}

function rowWays(kinds: readonly Turned[], filling: Filling): readonly RowWay[] {
  return kinds.flatMap((kind) => {
    const half = kinds.find(({ turns }) => turns === (kind.turns + 2) % 4);
    const patterns = half === undefined ? [[kind]] : [[kind], [kind, half]];
    return patterns.flatMap((pattern): RowWay[] => {
      const first = rowOf(pattern, 0, filling);
      if (first.length === 0) return [];
      const pitch = first[pattern.length]?.x ?? kind.width;
      const others =
        half === undefined ? [pattern] : [pattern, pattern.map((one) => (one === kind ? half : kind))];
      // A rectangle gains nothing when it is moved along.
      const straight = pattern.every(
        ({ upright }) => upright.length === 1 && upright[0]!.high[0] === upright[0]!.high[1],
      );
      const moves = straight ? [0] : shares.map((share) => Math.round(pitch * share));
      return others.flatMap((other) => moves.map((move) => ({ first, second: rowOf(other, move, filling) })));
    });
  });
}

/** By which shares of its pitch every second row is moved along. */
const shares = [0, 1 / 2, 1 / 4, 3 / 4, 1 / 8, 3 / 8, 5 / 8, 7 / 8];

/** One row of these by turns, from there to the end of the bed; `y` is 0. */
function rowOf(
  pattern: readonly Turned[],
  from: number,
  { width, height, snap, most }: Filling,
): readonly Laid[] {
  const row: Laid[] = [];
  const side = new Map<string, number>();
  for (let index = 0; row.length < most; index += 1) {
    const of = pattern[index % pattern.length]!;
    let x = from;
    // Those further back than a few can reach beyond the next only where that one is very small.
    for (const before of row) {
      if (before.x + before.of.width <= x) continue;
      const key = `${before.of.turns} ${of.turns}`;
      if (!side.has(key)) side.set(key, up(separation(before.of.aside, of.aside, 0)));
      x = Math.max(x, before.x + side.get(key)!);
    }
    x = snap(x);
    if (x + of.width > width || of.height > height) break;
    row.push({ x, y: 0, of });
  }
  return row;
}

/** Rows by turns, each as far below those before as their outlines ask for. */
function rowsBy({ first, second }: RowWay, { height, snap, most }: Filling): readonly Laid[] {
  const rows = [first, second];
  const apart = rows.map((upper) => rows.map((lower) => up(rowSeparation(upper, lower))));
  const laid: Laid[] = [];
  const tops: number[] = [];
  for (let index = 0; laid.length < most; index += 1) {
    const row = rows[index % 2]!;
    if (row.length === 0) break;
    const top = snap(Math.max(0, ...tops.map((y, before) => y + apart[before % 2]![index % 2]!)));
    if (row.some(({ of }) => top + of.height > height)) break;
    tops.push(top);
    laid.push(...row.map(({ x, of }) => ({ x, y: top, of })));
  }
  return laid.slice(0, most);
}

function rowSeparation(upper: readonly Laid[], lower: readonly Laid[]): number {
  const known = new Map<string, number>();
  let most = -Infinity;
  for (const one of upper) {
    for (const other of lower) {
      const right = other.x - one.x;
      if (right >= one.of.width || -right >= other.of.width) continue;
      const key = `${one.of.turns} ${other.of.turns} ${right}`;
      if (!known.has(key)) known.set(key, separation(one.of.upright, other.of.upright, right));
      most = Math.max(most, known.get(key)!);
    }
  }
  return most;
}

/** To the next whole number, but for what floats add to one. */
function up(number: number): number {
  const near = Math.round(number);
  return Math.abs(number - near) < 1e-6 ? near : Math.ceil(number);
}

function opposite(length: Length): Length {
  return lengthOfTicks(0 - length);
}
