import svgpath from 'svgpath';
import { millimetres, zero } from '../measure/index.ts';
import { regionOf } from './flattened.ts';
import { pathOutline } from './pathOutline.ts';
import { isEmpty } from './region.ts';
import { crossesOften } from './tangle.ts';

/** A place in the plane of a path: its own units, x to the right, y downwards. */
export interface PathPoint {
  readonly x: number;
  readonly y: number;
}

/** How a path goes on: a straight line, or a cubic Bézier curve that runs one way along x and along y. */
export type PathSegment =
  | { readonly kind: 'line'; readonly to: PathPoint }
  | {
      readonly kind: 'curve';
      readonly first: PathPoint;
      readonly second: PathPoint;
      readonly to: PathPoint;
    };

/** A path that was read: closed contours in units of its own, which get their size by the box they are put in. */
export interface PathShape {
  readonly contours: readonly { readonly from: PathPoint; readonly segments: readonly PathSegment[] }[];
  /** The smallest upright box that holds it. */
  readonly bounds: {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
  };
}

/**
 * Why path data is no outline.
 *
 * - `empty`: nothing is drawn. `start`: it does not begin with M. `command`: a letter that path data does not know.
 * - `number`: a number is missing or is none. `leadingZero`: a number like 09. `flag`: a flag of an arc that is not 0 or 1.
 * - `open`: a contour does not come back to its start. `flat`: it has no breadth or no height, or encloses nothing.
 * - `tooLong`, `tooMany`, `tooLarge`, `tangled`: more than `pathLimits` of characters, segments, size of a number, or
 *   crossings with itself.
 */
export type PathFault =
  | 'empty'
  | 'start'
  | 'command'
  | 'number'
  | 'leadingZero'
  | 'flag'
  | 'open'
  | 'flat'
  | 'tooLong'
  | 'tooMany'
  | 'tooLarge'
  | 'tangled';

export interface PathRefusal {
  readonly ok: false;
  readonly code: PathFault;
  /** The character of the text where it is, counted from 0. */
  readonly at: number;
  /** What stands there, up to 12 characters; empty at the end of the text. */
  readonly found: string;
}

export type PathReading = { readonly ok: true; readonly path: PathShape } | PathRefusal;

/**
 * What a path may have, so that no drawing makes a plan wait: a traced leaf has some hundred segments. 20 000 segments
 * are read and combined in less than a second; crossings are what takes longer (2000 lines at random cross a million
 * times). Measured on two cores of a server in 2026.
 */
export const pathLimits = { characters: 200_000, segments: 20_000, number: 1e9, crossings: 2_000 } as const;

/**
 * Reads SVG path data (Scalable Vector Graphics 2, section 9.3) as an outline.
 *
 * Every contour is closed, by Z or by ending where it began. Arcs become cubic curves, at most 0.03 % of their radius
 * away. Moves that draw nothing are passed over.
 */
export function readPath(text: string): PathReading {
  if (text.length > pathLimits.characters) return refused('tooLong', text, pathLimits.characters);
  const letter = /[^mzlhvcsqtae\d\s,.+-]/i.exec(text);
  // The reader below also knows a letter of its own for another curve, and takes it for a path's.
  if (letter !== null) return refused('command', text, letter.index);
  const number = faultyNumber(text);
  if (number !== null) return number;

  const read = svgpath(text) as ReturnType<typeof svgpath> & { readonly err: string };
  if (read.err !== '') return refusedByReader(read.err, text);
  const drawn = contoursOf(read, text);
  if (!Array.isArray(drawn)) return drawn;
  const contours = drawn.filter(({ segments }) => segments.length > 0);
  if (contours.length === 0) return refused('empty', text, 0);

  const bounds = boundsOf(contours);
  if (!(bounds.width > 0 && bounds.height > 0)) return refused('flat', text, firstOf(text));
  if (crossesOften(contours, pathLimits.crossings)) return refused('tangled', text, firstOf(text));
  const path = { contours, bounds };
  // A line there and back has bounds, but nothing inside.
  if (isEmpty(regionOf(pathOutline(path, trialBox)))) return refused('flat', text, firstOf(text));
  return { ok: true, path };
}

/** Width and height of a path in its own units; what its box has to keep to if it is not to be pressed out of shape. */
export function pathSize(path: PathShape): { readonly width: number; readonly height: number } {
  return { width: path.bounds.width, height: path.bounds.height };
}

/** About the size of a part, so that what would enclose nothing there is told here. */
const trialBox = { left: zero, top: zero, width: millimetres(100), height: millimetres(100) };

type Contour = PathShape['contours'][number];

function refused(code: PathFault, text: string, at: number): PathRefusal {
  return { ok: false, code, at, found: text.slice(at, at + 12).trimEnd() };
}

function firstOf(text: string): number {
  return Math.max(0, text.search(/\S/));
}

/** A point without digits, which the reader takes for a number that is none, or a number beyond all measure. */
function faultyNumber(text: string): PathRefusal | null {
  const point = /(?<!\d)\.(?!\d)/.exec(text);
  if (point !== null) return refused('number', text, point.index);
  for (const { 0: number, index } of text.matchAll(/(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi)) {
    // Flags of arcs may stand without a space before the next number, which only makes it read as larger here.
    if (Number(number) > pathLimits.number) return refused('tooLarge', text, index);
  }
  return null;
}

function refusedByReader(message: string, text: string): PathRefusal {
  const at = Number(/at pos (\d+)/.exec(message)?.[1] ?? firstOf(text));
  const code = readerFaults.find(([says]) => message.includes(says))?.[1] ?? 'number';
  return refused(code, text, Math.min(at, text.length));
}

/** What the reader's messages begin with; all others are about a number. */
const readerFaults: readonly (readonly [says: string, code: PathFault])[] = [
  ['bad command', 'command'],
  ['should start with `M`', 'start'],
  ['arc flag', 'flag'],
  ['numbers started with `0`', 'leadingZero'],
];

/** Walks the path: contours of lines and curves, each curve divided where it turns back along x or y. */
function contoursOf(read: ReturnType<typeof svgpath>, text: string): Contour[] | PathRefusal {
  const contours: { from: PathPoint; segments: PathSegment[]; closed: boolean; letter: number }[] = [];
  const letters = [...text.matchAll(/[mz]/gi)].map(({ index }) => index);
  let letter = -1;
  let count = 0;
  let at: PathPoint = { x: 0, y: 0 };
  const open = () => {
    const last = contours.at(-1)!;
    if (!last.closed) return last;
    // Drawing goes on behind a Z: from where that contour began.
    const next = { from: last.from, segments: [], closed: false, letter: letters[letter]! };
    contours.push(next);
    return next;
  };
  const draw = (to: PathPoint, curve: (() => PathSegment[]) | null) => {
    count += 1;
    const { segments } = open();
    if (curve === null) segments.push({ kind: 'line', to });
    else segments.push(...curve());
    at = to;
  };
  read
    .abs()
    .unshort()
    .unarc()
    .iterate((segment) => {
      if (count > pathLimits.segments) return;
      switch (segment[0]) {
        case 'M':
          letter += 1;
          at = { x: segment[1], y: segment[2] };
          contours.push({ from: at, segments: [], closed: false, letter: letters[letter]! });
          return;
        case 'L':
          return draw({ x: segment[1], y: segment[2] }, null);
        case 'H':
          return draw({ x: segment[1], y: at.y }, null);
        case 'V':
          return draw({ x: at.x, y: segment[1] }, null);
        case 'C': {
          const [, x1, y1, x2, y2, x, y] = segment;
          const [from, to] = [at, { x, y }];
          return draw(to, () => oneWay(from, { x: x1, y: y1 }, { x: x2, y: y2 }, to));
        }
        case 'Q': {
          const [, x1, y1, x, y] = segment;
          const [from, to] = [at, { x, y }];
          // The same curve as a cubic one: its handles two thirds of the way to the handle of the quadratic.
          const third = (end: PathPoint) => ({
            x: end.x + (2 / 3) * (x1 - end.x),
            y: end.y + (2 / 3) * (y1 - end.y),
          });
          return draw(to, () => oneWay(from, third(from), third(to), to));
        }
        default: {
          letter += 1;
          const contour = contours.at(-1)!;
          contour.closed = true;
          at = contour.from;
        }
      }
    });
  if (count > pathLimits.segments) return refused('tooMany', text, firstOf(text));
  const gap = contours.find(
    ({ from, segments, closed }) => !closed && segments.length > 0 && !meets(from, segments.at(-1)!.to),
  );
  if (gap !== undefined) return refused('open', text, gap.letter);
  return contours.map(({ from, segments }) => ({ from, segments }));
}

/** Steps that go from point to point add up what decimal fractions leave: a millionth of the place is the same place. */
function meets(one: PathPoint, other: PathPoint): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(a), Math.abs(b));
  return near(one.x, other.x) && near(one.y, other.y);
}

/** A curve in pieces that each run one way along x and along y, so that its outermost points are ends of pieces. */
function oneWay(from: PathPoint, first: PathPoint, second: PathPoint, to: PathPoint): PathSegment[] {
  const turns = [
    ...turnsOf(from.x, first.x, second.x, to.x),
    ...turnsOf(from.y, first.y, second.y, to.y),
  ].sort((one, other) => one - other);
  const pieces: PathSegment[] = [];
  let rest = [from, first, second, to] as const;
  let done = 0;
  for (const turn of turns) {
    if (turn - done < 1e-9) continue;
    const [piece, other] = divided(rest, (turn - done) / (1 - done));
    pieces.push(curveOf(piece));
    rest = other;
    done = turn;
  }
  pieces.push(curveOf(rest));
  return pieces;
}

type Cubic = readonly [from: PathPoint, first: PathPoint, second: PathPoint, to: PathPoint];

function curveOf([, first, second, to]: Cubic): PathSegment {
  return { kind: 'curve', first, second, to };
}

/** Where between 0 and 1 a cubic turns back: the zeros of its derivative, a quadratic. */
function turnsOf(from: number, first: number, second: number, to: number): number[] {
  const [one, two, three] = [first - from, second - first, to - second];
  const a = one - 2 * two + three;
  const b = two - one;
  const root = b * b - a * one;
  if (root <= 0) return [];
  // The stable way to solve a t² + 2 b t + one = 0: no difference of two near numbers.
  const q = -(b + Math.sign(b || 1) * Math.sqrt(root));
  return [q / a, one / q].filter((turn) => turn > 1e-9 && turn < 1 - 1e-9);
}

/** A cubic cut in two at a place of its parameter, by de Casteljau's construction. */
function divided([from, first, second, to]: Cubic, at: number): [Cubic, Cubic] {
  const [a, b, c] = [between(from, first, at), between(first, second, at), between(second, to, at)];
  const [d, e] = [between(a, b, at), between(b, c, at)];
  const middle = between(d, e, at);
  return [
    [from, a, d, middle],
    [middle, e, c, to],
  ];
}

function between(one: PathPoint, other: PathPoint, at: number): PathPoint {
  return { x: one.x + at * (other.x - one.x), y: one.y + at * (other.y - one.y) };
}

/** Curves run one way, so the ends of segments are all that counts. */
function boundsOf(contours: readonly Contour[]): PathShape['bounds'] {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { from, segments } of contours) {
    for (const { x, y } of [from, ...segments.map(({ to }) => to)]) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
  return { left, top, width: right - left, height: bottom - top };
}
