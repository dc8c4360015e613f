import type { Anchor, LaidPiece, Part } from '../layout/index.ts';
import {
  type Axis,
  type Box,
  halves,
  type Length,
  lengthOfTicks,
  minus,
  roundTo,
  sum,
  zero,
} from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { InHand } from './inHand.ts';
import { movedWith, type PieceAt } from './placing.ts';
import { bordersUsed } from './usualBorder.ts';

/** Where a piece comes to lie true along one axis while it is dragged. */
export interface LayLine {
  readonly axis: Axis;
  /** Where its left or top edge then stands, from that of its face. */
  readonly start: Length;
  /** What of the piece lies true: its left or top edge, its middle, its right or bottom edge. */
  readonly of: 'start' | 'middle' | 'end';
  readonly to: LaidTo;
  /** From and to where along the axis there is something to be measured; from = to where edges are in line. */
  readonly spans: readonly Reach[];
  /** It holds only beside these stretches of the other axis; empty: anywhere. */
  readonly beside: readonly Reach[];
}

export interface Reach {
  readonly from: Length;
  readonly to: Length;
}

/** What a piece is laid to; `part` and `piece` name one of another part. */
export type LaidTo =
  /** An edge, or the middle, of what it lies on. */
  | { readonly kind: 'bed edge' | 'bed middle' }
  /** A border as the layout already has one. */
  | { readonly kind: 'border' }
  /** As far from a neighbour as the layout has another border or gap; or there are two like gaps. */
  | { readonly kind: 'gap'; readonly part: string; readonly piece: number }
  | { readonly kind: 'equal gaps'; readonly parts: readonly [string, string] }
  /** In line with an edge, or the middle, of another piece or, with `part` null, of the card. */
  | { readonly kind: 'edge' | 'middle'; readonly part: string | null; readonly piece: number }
  /** A mark of the ruler, measured from the edge of what it lies on. */
  | { readonly kind: 'mark' };

/** All lay lines of a piece that is about to be dragged. */
export interface LayLines {
  readonly lines: readonly LayLine[];
  /** A mark of the ruler lies at every whole multiple of `step` from the edges of `under`. */
  readonly marks: Marks | null;
}

interface Marks {
  readonly step: Length;
  readonly under: Box;
  /** The edge it is measured by along each axis. */
  readonly by: Readonly<Record<Axis, 'start' | 'end'>>;
}

/** A lay line that a piece is drawn to, and how far. */
export interface Laid {
  readonly line: LayLine;
  /** To the right or downwards. */
  readonly by: Length;
}

/**
 * Where a piece may be laid to while it is dragged: edges and middle of what it lies on, borders as the layout has
 * them, gaps like others, edges and middles of what else lies on its face, and the marks of a ruler.
 *
 * What moves along with it (its like, what lies on it, what is laid to it) is no line. Neighbours are what lies on the
 * same piece as it. Time grows with the square of their number; of many, gaps alike are not looked for. No line at all
 * where it is unknown where the piece lies.
 */
export function layLines(inHand: InHand, at: PieceAt, marks: Length | null): LayLines {
  const { layout, arrangement } = inHand;
  const arranged = arrangement.parts[at.part];
  const laid = arranged?.pieces[at.piece];
  assert(arranged !== undefined && laid !== undefined, 'A piece that is dragged is there', { at });
  const { box, under } = laid;
  if (box === null || under === null) return { lines: [], marks: null };

  const others = othersOf(inHand, at, arranged.face);
  const bed: Bed = {
    under,
    card: { left: zero, top: zero, ...layout.base.size },
    borders: bordersUsed(layout, arranged.part.id),
    others,
    neighbours: others.filter(
      ({ part, laid: { onPiece } }) => part.on === arranged.part.on && onPiece === laid.onPiece,
    ),
  };
  const place = arranged.part.places[at.piece]!;
  const measuredBy = (span: { readonly start: Anchor | null; readonly end: Anchor | null }) =>
    span.start === null && span.end !== null ? 'end' : 'start';
  return {
    lines: (['width', 'height'] as const).flatMap((axis) => linesAlong(axis, box, bed)),
    marks:
      marks === null
        ? null
        : { step: marks, under, by: { width: measuredBy(place.across), height: measuredBy(place.down) } },
  };
}

/**
 * What a piece that is dragged to `box` comes to be laid to along each axis, no further off than `reach`; `null`:
 * nothing is near. The nearest line is taken, of equally near ones the strongest, in the order of `LaidTo`; a mark
 * only where there is no other.
 */
export function laidTo(
  { lines, marks }: LayLines,
  box: Box,
  reach: Length,
): { readonly across: Laid | null; readonly down: Laid | null } {
  const nearest = (axis: Axis): Laid | null => {
    let best: Laid | null = null;
    for (const line of lines) {
      if (line.axis !== axis || !isBeside(line, box)) continue;
      const by = minus(line.start, startOf(box, axis));
      if (Math.abs(by) > reach) continue;
      const [now, found] = [Math.abs(by), best === null ? Infinity : Math.abs(best.by)];
      if (now < found || (now === found && strengthOf(line) < strengthOf(best!.line))) best = { line, by };
    }
    return best ?? (marks === null ? null : nearestMark(marks, box, axis, reach));
  };
  return { across: nearest('width'), down: nearest('height') };
}

// --- What lines there are ---

interface Other {
  readonly part: Part;
  readonly piece: number;
  readonly laid: LaidPiece;
  readonly box: Box;
}

interface Bed {
  readonly under: Box;
  readonly card: Box;
  /** Borders and gaps that the layout has elsewhere. */
  readonly borders: readonly Length[];
  readonly others: readonly Other[];
  readonly neighbours: readonly Other[];
}

/** The pieces on the same face that do not move with this one. */
function othersOf(inHand: InHand, at: PieceAt, face: string): readonly Other[] {
  const { parts } = inHand.arrangement;
  const alike = new Set(movedWith(inHand, at));
  const own = parts[at.part]!.part.id;
  const following = new Set([own]);
  for (const { part } of parts) {
    const laidTo = part.places.flatMap(({ across, down }) =>
      [across.start, across.end, down.start, down.end].flatMap((anchor) =>
        anchor?.from === 'part' ? [anchor.part] : [],
      ),
    );
    if ([part.on, ...laidTo].some((id) => following.has(id))) following.add(part.id);
  }
  return parts.flatMap(({ part, face: theirs, pieces }) =>
    pieces.flatMap((laid, piece): readonly Other[] => {
      const moves = part.id === own ? alike.has(piece) : following.has(part.id);
      return moves || theirs !== face || laid.box === null ? [] : [{ part, piece, laid, box: laid.box }];
    }),
  );
}

function linesAlong(axis: Axis, box: Box, bed: Bed): readonly LayLine[] {
  const size = box[axis];
  const { under, card, borders, others, neighbours } = bed;
  const lines: LayLine[] = [];
  const line = (
    of: LayLine['of'],
    at: number,
    to: LaidTo,
    spans: readonly (readonly [number, number])[],
    beside: readonly Box[] = [],
  ) => {
    const start = of === 'end' ? at - size : at;
    lines.push({
      axis,
      start: lengthOfTicks(start),
      of,
      to,
      spans: spans.map(([from, end]) => ({ from: lengthOfTicks(from), to: lengthOfTicks(end) })),
      beside: beside.map((one) => ({ from: startOf(one, crossing[axis]), to: endOf(one, crossing[axis]) })),
    });
  };
  const inLine = (of: 'start' | 'end', at: number, to: LaidTo) => line(of, at, to, [[at, at]]);
  const inTheMiddle = (of: Box, to: LaidTo) => {
    const start = startOf(of, axis) + halves(minus(of[axis], size)).smaller;
    line('middle', start, to, [
      [startOf(of, axis), start],
      [start + size, endOf(of, axis)],
    ]);
  };

  const [bedStart, bedEnd] = [startOf(under, axis), endOf(under, axis)];
  inLine('start', bedStart, { kind: 'bed edge' });
  inLine('end', bedEnd, { kind: 'bed edge' });
  inTheMiddle(under, { kind: 'bed middle' });
  for (const border of borders) {
    line('start', bedStart + border, { kind: 'border' }, [[bedStart, bedStart + border]]);
    line('end', bedEnd - border, { kind: 'border' }, [[bedEnd - border, bedEnd]]);
  }

  for (const { part, piece, box: other } of neighbours) {
    const to = { kind: 'gap', part: part.id, piece } as const;
    const [start, end] = [startOf(other, axis), endOf(other, axis)];
    for (const gap of borders) {
      line('start', end + gap, to, [[end, end + gap]], [other]);
      line('end', start - gap, to, [[start - gap, start]], [other]);
    }
  }
  for (const [before, after] of neighbours.length > mostCompared ? [] : pairsAlong(axis, neighbours)) {
    const to = { kind: 'equal gaps', parts: [before.part.id, after.part.id] } as const;
    const both = [before.box, after.box];
    const [end, start] = [endOf(before.box, axis), startOf(after.box, axis)];
    const gap = start - end;
    if (gap >= size) {
      const middle = end + halves(lengthOfTicks(gap - size)).smaller;
      line(
        'middle',
        middle,
        to,
        [
          [end, middle],
          [middle + size, start],
        ],
        both,
      );
    }
    if (gap === 0) continue;
    const [first, last] = [startOf(before.box, axis), endOf(after.box, axis)];
    line(
      'start',
      last + gap,
      to,
      [
        [end, start],
        [last, last + gap],
      ],
      both,
    );
    line(
      'end',
      first - gap,
      to,
      [
        [first - gap, first],
        [end, start],
      ],
      both,
    );
  }

  const around = [
    { part: null, piece: 0, box: card },
    ...others.map((other) => ({ ...other, part: other.part.id })),
  ];
  for (const { part, piece, box: other } of around) {
    const [start, end] = [startOf(other, axis), endOf(other, axis)];
    const edge = { kind: 'edge', part, piece } as const;
    for (const at of [start, end]) {
      inLine('start', at, edge);
      inLine('end', at, edge);
    }
    inTheMiddle(other, { kind: 'middle', part, piece });
  }
  return lines;
}

/** Gaps alike are looked for among so many neighbours at most: more are confetti. */
const mostCompared = 40;

/** Neighbours of which one ends before the other begins. */
function pairsAlong(axis: Axis, neighbours: readonly Other[]): readonly (readonly [Other, Other])[] {
  return neighbours.flatMap((before) =>
    neighbours
      .filter((after) => after !== before && endOf(before.box, axis) <= startOf(after.box, axis))
      .map((after) => [before, after] as const),
  );
}

// --- Which is taken ---

const strengths = {
  'bed edge': 0,
  'bed middle': 0,
  border: 1,
  gap: 2,
  'equal gaps': 2,
  edge: 3,
  middle: 3,
  mark: 4,
} as const satisfies Record<LaidTo['kind'], number>;

function strengthOf(line: LayLine): number {
  return strengths[line.to.kind];
}

function isBeside({ axis, beside }: LayLine, box: Box): boolean {
  const [start, end] = [startOf(box, crossing[axis]), endOf(box, crossing[axis])];
  return beside.every(({ from, to }) => from < end && start < to);
}

function nearestMark({ step, under, by }: Marks, box: Box, axis: Axis, reach: Length): Laid | null {
  const [from, to] = [startOf(under, axis), endOf(under, axis)];
  const measured = by[axis] === 'start' ? minus(startOf(box, axis), from) : minus(to, endOf(box, axis));
  const mark = roundTo(measured, step, 'nearest');
  const moved = by[axis] === 'start' ? minus(mark, measured) : minus(measured, mark);
  if (Math.abs(moved) > reach) return null;
  const start = sum(startOf(box, axis), moved);
  const span = by[axis] === 'start' ? { from, to: start } : { from: sum(start, box[axis]), to };
  return { line: { axis, start, of: by[axis], to: { kind: 'mark' }, spans: [span], beside: [] }, by: moved };
}

const crossing = { width: 'height', height: 'width' } as const satisfies Record<Axis, Axis>;

function startOf(box: Box, axis: Axis): Length {
  return axis === 'width' ? box.left : box.top;
}

function endOf(box: Box, axis: Axis): Length {
  return sum(startOf(box, axis), box[axis]);
}
