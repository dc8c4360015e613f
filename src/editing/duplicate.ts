import { isList, type JsonObject, valueAt } from '../files/index.ts';
import type { ArrangedPart, Place, Span } from '../layout/index.ts';
import {
  type Axis,
  type Box,
  bottomOf,
  type Edge,
  type Length,
  lengthOfTicks,
  rightOf,
  zero,
} from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type Edit, partAdded } from './edit.ts';
import { freshId, freshName } from './freshId.ts';
import type { InHand } from './inHand.ts';
import { placeWritten } from './placeText.ts';
import { type Shift, spanMoved } from './placing.ts';
import { typingOf } from './typing.ts';
import { usualBorder } from './usualBorder.ts';

/**
 * A second part like this one, above it in the pile and beside it on what it lies on: a border away on the first side
 * where it goes on without lying on another part, or else where it goes on at all; where there is no such side it lies
 * on the first one, a border further across and down.
 *
 * One piece is laid to the first as its neighbour, so that it follows; several are laid at distances of their own. A
 * size that comes from the room or an inset is written out where it would not come out the same.
 */
export function partDuplicated(inHand: InHand, index: number): Edit {
  const { file, layout, arrangement } = inHand;
  const arranged = arrangement.parts[index];
  const typed = valueAt(file, ['parts', index]) as JsonObject | undefined;
  assert(arranged !== undefined && typed !== undefined, 'A part that is doubled is there', { index });
  const { part } = arranged;
  const gap = usualBorder(layout);
  const side = sideFor(inHand, arranged, gap);
  const shift = shiftTo(arranged, side, gap);

  const places = part.places.map((place, piece): Place => {
    if (arranged.pieces[piece]!.borders === null) return place;
    if (side !== null && part.places.length === 1) return besideIt(part.id, place, side, gap);
    const spanAlong = (axis: Axis): Span => {
      const moved = spanMoved(arranged, piece, axis, axis === 'width' ? shift.across : shift.down);
      // What filled its room has a size instead of a second end.
      const filled = part.extent.by === 'size' && part.extent[axis] === null && moved.start !== null;
      return filled && shift.across !== zero && shift.down !== zero ? { ...moved, end: null } : moved;
    };
    return { across: spanAlong('width'), down: spanAlong('height') };
  });
  const typing = typingOf(layout);
  const written = places.map((place, piece) => {
    const list = isList(typed.place) ? typed.place[piece] : typed.place;
    return placeWritten((list ?? {}) as JsonObject, part.places[piece]!, place, typing);
  });
  const [first] = written;
  const one = written.every((place) => JSON.stringify(place) === JSON.stringify(first));
  const { name, room, ...rest } = typed;
  const copy: JsonObject = {
    ...rest,
    id: freshId(layout, part.id),
    ...(typeof name === 'string' ? { name: freshName(layout, name) } : {}),
    ...extentWritten(arranged, typed, shift, typing),
    place: one && !isList(typed.place) ? first! : written,
    // Room that names a distance may have none to name any more.
    ...(room === 'none' ? { room } : {}),
  };
  const { inset, ...noInset } = copy;
  return partAdded(index + 1, inset !== undefined && ('size' in copy || 'diameter' in copy) ? noInset : copy);
}

const sides = ['right', 'left', 'bottom', 'top'] as const satisfies readonly Edge[];

/** The side of the part on which there is room for its like; `null`: there is none. */
function sideFor({ arrangement }: InHand, arranged: ArrangedPart, gap: Length): Edge | null {
  const boxes = arranged.pieces.flatMap(({ box }) => (box === null ? [] : [box]));
  const [under] = arranged.pieces.map((piece) => piece.under);
  if (under === undefined || under === null || boxes.length < arranged.pieces.length) return null;
  const others = arrangement.parts.flatMap(({ part, pieces }) =>
    part.on === arranged.part.on ? pieces.flatMap(({ box }) => (box === null ? [] : [box])) : [],
  );
  const goesOn = sides.filter((side) => {
    const shift = shiftTo(arranged, side, gap);
    return boxes.every((box) => isWithin(under, shifted(box, shift)));
  });
  const free = goesOn.filter((side) => {
    const shift = shiftTo(arranged, side, gap);
    return !boxes.some((box) => others.some((other) => meet(shifted(box, shift), other)));
  });
  return free[0] ?? goesOn[0] ?? null;
}

function shiftTo({ pieces }: ArrangedPart, side: Edge | null, gap: Length): Shift {
  const boxes = pieces.flatMap(({ box }) => (box === null ? [] : [box]));
  if (side === null || boxes.length === 0) return { across: gap, down: gap };
  const wide = Math.max(...boxes.map(rightOf)) - Math.min(...boxes.map(({ left }) => left));
  const high = Math.max(...boxes.map(bottomOf)) - Math.min(...boxes.map(({ top }) => top));
  const across = lengthOfTicks(wide + gap);
  const down = lengthOfTicks(high + gap);
  return {
    right: { across, down: zero },
    left: { across: lengthOfTicks(-across), down: zero },
    bottom: { across: zero, down },
    top: { across: zero, down: lengthOfTicks(-down) },
  }[side];
}

function besideIt(part: string, { across, down }: Place, side: Edge, gap: Length): Place {
  const beside = { from: 'part', part, gap } as const;
  return {
    right: { across: { start: beside, end: null }, down },
    left: { across: { start: null, end: beside }, down },
    bottom: { across, down: { start: beside, end: null } },
    top: { across, down: { start: null, end: beside } },
  }[side];
}

/** The size written out where it follows from what changes. */
function extentWritten(
  { part, cut, seen }: ArrangedPart,
  typed: JsonObject,
  shift: Shift,
  typing: ReturnType<typeof typingOf>,
): JsonObject {
  if (cut === null || seen === null) return {};
  switch (part.extent.by) {
    case 'diameter':
      return {};
    case 'inset':
      return part.shape.kind === 'circle'
        ? { diameter: typing(seen.width, typed.inset) }
        : { size: [typing(cut.width, typed.inset), typing(cut.height, typed.inset)] };
    case 'size': {
      const [width, height] = typed.size as readonly string[];
      const side = (text: string, by: Length, length: Length) =>
        text === 'fill' && by !== zero ? typing(length) : text;
      return { size: [side(width!, shift.across, cut.width), side(height!, shift.down, cut.height)] };
    }
  }
}

function shifted(box: Box, { across, down }: Shift): Box {
  return { ...box, left: lengthOfTicks(box.left + across), top: lengthOfTicks(box.top + down) };
}

function isWithin(outer: Box, inner: Box): boolean {
  return (
    outer.left <= inner.left &&
    outer.top <= inner.top &&
    rightOf(inner) <= rightOf(outer) &&
    bottomOf(inner) <= bottomOf(outer)
  );
}

function meet(one: Box, other: Box): boolean {
  return (
    one.left < rightOf(other) &&
    other.left < rightOf(one) &&
    one.top < bottomOf(other) &&
    other.top < bottomOf(one)
  );
}
