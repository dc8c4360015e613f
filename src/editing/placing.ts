import { isList, valueAt } from '../files/index.ts';
import type { Anchor, ArrangedPart, Span } from '../layout/index.ts';
import { type Axis, type Edge, halves, type Length, minus, roundTo, sum, zero } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Edit } from './edit.ts';
import type { InHand } from './inHand.ts';
import { placesChanged } from './placeText.ts';

/** One piece of a part, by its number in the pile and among the part's places. */
export interface PieceAt {
  readonly part: number;
  readonly piece: number;
}

/** How far something is moved to the right and downwards; negative: to the left, upwards. */
export interface Shift {
  readonly across: Length;
  readonly down: Length;
}

/** What moves a piece as far as it can be moved. */
export interface Moved {
  /** `null`: nothing moves. */
  readonly edit: Edit | null;
  /** The axes along which it was to be moved and stays where it is. */
  readonly stays: readonly Stay[];
}

/**
 * Why a piece cannot be moved along an axis: it `fills` the room there, it is `inset` on what it lies on and nothing
 * else is said of where it lies, or where it lies is `unknown`.
 */
export interface Stay {
  readonly axis: Axis;
  readonly why: 'fills' | 'inset' | 'unknown';
}

/**
 * Moves a piece on its face, and keeps how it is laid.
 *
 * What its place names is changed: its distance from an edge, its gap to a neighbour, with both ends fixed the two of
 * them. What was centred is then laid from the left or the top; what is laid so comes to be centred where it lands in
 * the middle. Between two neighbours it stays laid to the left or upper one. Places of a list are changed for this
 * piece alone; one place for all pieces stays one, so that all move alike, but where pieces lie on just this one.
 * Law, tested on random layouts: its seen box moves by just that along each axis but those it `stays` on, and keeps
 * its size.
 */
export function pieceMoved(inHand: InHand, at: PieceAt, by: Shift): Moved {
  const { file, layout, arrangement } = inHand;
  const arranged = arrangement.parts[at.part];
  const place = arranged?.part.places[at.piece];
  assert(arranged !== undefined && place !== undefined, 'A piece that is moved is there', { at });

  const stays: Stay[] = [];
  const shiftAlong = (axis: Axis): Length => {
    const shift = along(by, axis);
    const why = shift === zero ? null : whyItStays(arranged, at.piece, axis);
    if (why !== null) stays.push({ axis, why });
    return why === null ? shift : zero;
  };
  const shift = { across: shiftAlong('width'), down: shiftAlong('height') };
  if (shift.across === zero && shift.down === zero) return { edit: null, stays };

  const after = new Map(
    movedWith(inHand, at).map((piece) => {
      const spanAlong = (axis: Axis) => spanMoved(arranged, piece, axis, along(shift, axis));
      return [piece, { across: spanAlong('width'), down: spanAlong('height') }];
    }),
  );
  const told = { what: 'piece moved', name: arranged.part.name, units: layout.units, ...shift } as const;
  return { edit: { told, changes: placesChanged(file, layout, at.part, after) }, stays };
}

/**
 * Moves a piece towards an edge by one mark: what its place is measured by comes to the next mark, a whole multiple of
 * `marks`. Where nothing is named, that is its distance from the left or the top.
 */
export function pieceNudged(inHand: InHand, at: PieceAt, towards: Edge, marks: Length): Moved {
  const arranged = inHand.arrangement.parts[at.part];
  const axis = towards === 'left' || towards === 'right' ? 'width' : 'height';
  const forth = towards === 'right' || towards === 'bottom';
  const laid = arranged?.pieces[at.piece];
  const place = arranged?.part.places[at.piece];
  assert(laid !== undefined && place !== undefined, 'A piece that is moved is there', { at });

  const { start, end } = along(place, axis);
  const border = laid.borders?.[edges[axis][0]];
  if (border === undefined) return { edit: null, stays: [{ axis, why: 'unknown' }] };
  const fromEnd = start === null && end !== null;
  const measured = fromEnd ? extentOf(end) : start === null ? border : extentOf(start);
  const step = nextMark(measured, marks, forth !== fromEnd);
  const by = minus(step, measured);
  const shift = fromEnd ? minus(zero, by) : by;
  return pieceMoved(
    inHand,
    at,
    axis === 'width' ? { across: shift, down: zero } : { across: zero, down: shift },
  );
}

const edges = { width: ['left', 'right'], height: ['top', 'bottom'] } as const satisfies Record<
  Axis,
  readonly [Edge, Edge]
>;

function along<Of>({ across, down }: { readonly across: Of; readonly down: Of }, axis: Axis): Of {
  return axis === 'width' ? across : down;
}

function whyItStays({ part, pieces }: ArrangedPart, piece: number, axis: Axis): Stay['why'] | null {
  if (pieces[piece]!.borders === null) return 'unknown';
  const { start, end } = along(part.places[piece]!, axis);
  switch (part.extent.by) {
    case 'size':
      return part.extent[axis] === null ? 'fills' : null;
    case 'inset':
      return start === null && end === null ? 'inset' : null;
    case 'diameter':
      return null;
  }
}

/** The pieces whose places change with this one's. */
export function movedWith({ file, arrangement }: InHand, { part, piece }: PieceAt): readonly number[] {
  const { pieces } = arrangement.parts[part]!;
  const listed = isList(valueAt(file, ['parts', part, 'place']));
  const box = JSON.stringify(pieces[piece]!.box);
  const onItsLike = pieces.some((other, index) => index !== piece && JSON.stringify(other.box) === box);
  return listed || onItsLike ? [piece] : [...pieces.keys()];
}

/** What fixes a piece along an axis when it has moved by that; as it is where nothing fixes it and it is not known where it lies. */
export function spanMoved({ part, pieces }: ArrangedPart, piece: number, axis: Axis, by: Length): Span {
  const span = along(part.places[piece]!, axis);
  const { start, end } = span;
  const { borders } = pieces[piece]!;
  const [first, last] = edges[axis];
  if (by === zero) return span;
  if (start === null) {
    if (end !== null) return { start, end: further(end, minus(zero, by)) };
    return borders === null ? span : { start: { from: 'edge', distance: sum(borders[first], by) }, end };
  }
  if (end !== null) {
    const between = start.from === 'part' && end.from === 'part';
    return { start: further(start, by), end: between ? null : further(end, minus(zero, by)) };
  }
  // The middle, as what is centred lies in it.
  const named = part.rooms !== undefined && part.rooms !== 'none' && first in part.rooms;
  const middle = borders && halves(sum(borders[first], borders[last])).smaller;
  const centred = start.from === 'edge' && borders !== null && sum(borders[first], by) === middle;
  return { start: centred && !named ? null : further(start, by), end };
}

function further(anchor: Anchor, by: Length): Anchor {
  return anchor.from === 'edge'
    ? { ...anchor, distance: sum(anchor.distance, by) }
    : { ...anchor, gap: sum(anchor.gap, by) };
}

function extentOf(anchor: Anchor): Length {
  return anchor.from === 'edge' ? anchor.distance : anchor.gap;
}

/** The next mark above a length, or below it. */
function nextMark(length: Length, marks: Length, above: boolean): Length {
  const mark = roundTo(length, marks, above ? 'up' : 'down');
  return mark === length ? sum(mark, above ? marks : minus(zero, marks)) : mark;
}
