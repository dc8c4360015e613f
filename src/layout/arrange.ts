import {
  type Axis,
  type Box,
  bordersOf,
  type Edge,
  type Length,
  minus,
  type Size,
  sum,
  zero,
} from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { beyondAlong } from './beyond.ts';
import { foldedStripOf, isFolded } from './foldedShape.ts';
import { notFolded } from './foldProblems.ts';
import type { Anchor, Face, Layout, Part, Place } from './layout.ts';
import { type LayoutProblem, lyingOn, partProblem, placeField } from './layoutProblem.ts';
import {
  endOf,
  excess,
  faceStretch,
  insetOn,
  laid,
  roomBetween,
  type Stretch,
  type Term,
} from './stretch.ts';

/** Where everything lies on one card of the set and how large it is, worked out from a layout. */
export interface Arrangement {
  /** The closed front, which is also the size of the inside and the back. */
  readonly card: Size;
  /** The pile, bottom first: `parts[i]` is the layout's `parts[i]`. */
  readonly parts: readonly ArrangedPart[];
  /** What kept it from being worked out, and sums that do not add up; `checkLayout` tells the rest. */
  readonly problems: readonly LayoutProblem[];
}

/** A part with its sizes and the pieces of it on one card. */
export interface ArrangedPart {
  readonly part: Part;
  readonly face: Face;
  /** Before anything is torn off; `null` (with `seen`) when the layout leaves it unknown or not positive. */
  readonly cut: Size | null;
  readonly seen: Size | null;
  /** One for each of the part's places. */
  readonly pieces: readonly LaidPiece[];
}

/** One piece of a part where it lies on the card. */
export interface LaidPiece {
  /** Which piece of the part it lies on; `null`: it lies on the face itself. */
  readonly onPiece: number | null;
  /** The seen box of what it lies on, in the axes of its face; `null` when that is unknown. */
  readonly under: Box | null;
  /** Its own seen box, in the axes of its face; `null` when it is unknown. */
  readonly box: Box | null;
  /** What `under` shows on each side of `box`, negative where it hangs over; `null` when either is unknown. */
  readonly borders: Readonly<Record<Edge, Length>> | null;
}

/**
 * The sizes and places of all parts, from borders, gaps and alignments.
 *
 * The two axes know nothing of each other, so each is worked out alone. A part that is centred lies half a
 * tick to the left or top where the room is odd. Piece k of a part lies on piece k of what it lies on (k modulo
 * its count, where that has fewer). Laid to a neighbour of the same count, it is laid to the piece of its own
 * number, else to the outermost edge of all the neighbour's pieces. With both ends and the size given, the
 * start decides. What cannot be worked out is `null`, with a problem, and everything else stands.
 */
export function arrange(layout: Layout): Arrangement {
  const across = arrangeAlong(layout, 'width');
  const down = arrangeAlong(layout, 'height');
  const card = layout.base.size;

  const byId = new Map<string, ArrangedPart>();
  layout.parts.forEach((part, index) => {
    const onto = byId.get(part.on);
    const [alongWidth, alongHeight] = [across[index]!, down[index]!];
    byId.set(part.id, {
      part,
      face: alongWidth.face,
      cut: sizeOf(alongWidth.cut, alongHeight.cut),
      seen: sizeOf(alongWidth.seen?.length ?? null, alongHeight.seen?.length ?? null),
      pieces: part.places.map((_, piece) => {
        const onPiece = onto === undefined ? null : piece % onto.pieces.length;
        const under =
          onto === undefined || onPiece === null
            ? { left: zero, top: zero, ...card }
            : onto.pieces[onPiece]!.box;
        const box = boxOf(alongWidth.stretches[piece]!, alongHeight.stretches[piece]!);
        return { onPiece, under, box, borders: under && box && bordersOf(under, box) };
      }),
    });
  });
  const problems = layout.parts.flatMap((_, index) =>
    onceForEachNeighbour([...across[index]!.problems, ...down[index]!.problems]),
  );
  return { card, parts: [...byId.values()], problems };
}

/** A neighbour on another face is one slip of a part, on however many edges and pieces it is named. */
function onceForEachNeighbour(problems: readonly LayoutProblem[]): readonly LayoutProblem[] {
  return problems.filter(
    ({ code, names }, index) =>
      code !== 'neighbourElsewhere' ||
      index ===
        problems.findIndex((other) => other.code === code && other.names.neighbour === names.neighbour),
  );
}

/** A part along one axis. */
interface Line {
  readonly part: Part;
  readonly face: Face;
  readonly cut: Length | null;
  readonly seen: Term | null;
  /** One for each piece; `null`: unknown. */
  readonly stretches: readonly (Stretch | null)[];
  readonly problems: readonly LayoutProblem[];
}

/** What the fields of a layout are called along each axis. */
const fields = {
  width: { span: 'across', start: 'left', end: 'right' },
  height: { span: 'down', start: 'top', end: 'bottom' },
} as const satisfies Record<Axis, { span: keyof Place; start: Edge; end: Edge }>;

function arrangeAlong(layout: Layout, axis: Axis): readonly Line[] {
  const card = faceStretch(layout.base.size[axis]);
  const lines: Line[] = [];
  const byId = new Map<string, Line>();
  layout.parts.forEach((part, index) => {
    const line = lineOf({ layout, axis, index, card, byId });
    lines.push(line);
    byId.set(part.id, line);
  });
  return lines;
}

/** What is known when a part's turn comes: the parts before it in the pile. */
interface SoFar {
  readonly layout: Layout;
  readonly axis: Axis;
  readonly index: number;
  readonly card: Stretch;
  readonly byId: ReadonlyMap<string, Line>;
}

function lineOf(soFar: SoFar): Line {
  const { layout, axis, index, card, byId } = soFar;
  const part = layout.parts[index]!;
  const onto = byId.get(part.on);
  const face = onto === undefined ? (part.on as Face) : onto.face;
  const beyond = unseenOf(part, axis);
  const problems: LayoutProblem[] = [];
  const report = (...about: Report) => problems.push(partProblem(layout, index, ...about));

  // What fixes the ends of each piece, as terms from the edges of what it lies on.
  const beds = part.places.map((place, piece): Bed | null => {
    const under = onto === undefined ? card : onto.stretches[piece % onto.stretches.length]!;
    if (under === null) return null;
    const { start, end } = place[fields[axis].span];
    const before = termsTo(start, 'start', { ...soFar, piece, under, face, report });
    const after = termsTo(end, 'end', { ...soFar, piece, under, face, report });
    return before === 'unknown' || after === 'unknown' ? null : { under, before, after };
  });

  // The seen length, one for all pieces.
  const given = givenLength(soFar, onto === undefined ? card.seen : onto.seen, beyond, report);
  const seen = given === 'fill' ? filledLength(soFar, beds, report) : given;
  if (seen === null) {
    return { part, face, cut: null, seen, stretches: part.places.map(() => null), problems };
  }

  // Both ends fixed and the length too: they must agree.
  beds.forEach((bed, piece) => {
    if (bed === null || bed.before === null || bed.after === null || given === 'fill') return;
    const terms = [...bed.before, seen, ...bed.after];
    const difference = excess(terms, bed.under.seen);
    if (difference === zero) return;
    const numbered = terms.map((term, place) => [`term${place + 1}`, term.length] as const);
    report(
      'sumOff',
      placeField(layout, index, piece),
      { ...Object.fromEntries(numbered), room: bed.under.seen.length, difference },
      { ...lyingOn(layout, part.on), axis },
    );
  });

  return {
    part,
    face,
    cut: isFolded(part.shape) ? part.shape.strip[axis] : sum(seen.length, beyond.length),
    seen,
    stretches: beds.map((bed) => bed && laid(bed.under, seen, bed)),
    problems,
  };
}

type Report = [
  code: LayoutProblem['code'],
  field: string,
  numbers: Readonly<Record<string, number>>,
  names?: Readonly<Record<string, string>>,
];

/** What one piece is laid on and what fixes its ends there. */
interface Bed {
  readonly under: Stretch;
  readonly before: readonly Term[] | null;
  readonly after: readonly Term[] | null;
}

/** What of the cut length is not seen. */
function unseenOf(part: Part, axis: Axis): Term {
  const { start, end } = fields[axis];
  const reads = [part.torn[start], part.torn[end], part.tuck[start], part.tuck[end], part.margin];
  return { length: beyondAlong(part, axis), reads: reads.filter((length) => length > 0).length };
}

/**
 * The terms from the same end of `under` to where an anchor fixes that end of a piece; `null`: nothing does.
 * A chain of neighbours on the same thing is followed back term by term, so that a sum can be shown in full.
 */
function termsTo(
  anchor: Anchor | null,
  which: 'start' | 'end',
  at: SoFar & { piece: number; under: Stretch; face: Face; report: (...about: Report) => void },
): readonly Term[] | null | 'unknown' {
  if (anchor === null) return null;
  if (anchor.from === 'edge') return [{ length: anchor.distance, reads: 1 }];

  const { layout, index, byId, piece, under, face, report } = at;
  const part = layout.parts[index]!;
  const neighbour = byId.get(anchor.part);
  assert(neighbour !== undefined, 'A neighbour stands earlier in the pile', {
    part: part.id,
    neighbour: anchor.part,
  });
  if (neighbour.face !== face) {
    const names = { neighbour: neighbour.part.name, face, neighbourFace: neighbour.face };
    report('neighbourElsewhere', placeField(layout, index, piece), {}, names);
    return 'unknown';
  }
  const counterpart = neighbour.stretches.length === part.places.length ? piece : null;
  const outermost = outermostOf(neighbour.stretches, which, counterpart);
  if (outermost === null) return 'unknown';

  const gap: Term = { length: anchor.gap, reads: 1 };
  const { stretch } = outermost;
  const beds = byId.get(part.on)?.stretches.length ?? 1;
  if (neighbour.part.on === part.on && outermost.piece % beds === piece % beds) {
    return which === 'start' ? [...stretch.before, stretch.seen, gap] : [gap, stretch.seen, ...stretch.after];
  }
  const away =
    which === 'start' ? minus(endOf(stretch), under.start.length) : minus(endOf(under), stretch.start.length);
  const reads = stretch.start.reads + stretch.seen.reads + under.start.reads + under.seen.reads;
  return [{ length: away, reads }, gap];
}

/** The piece to lay to: the counterpart, else the one that reaches furthest; `null` when that is unknown. */
function outermostOf(
  stretches: readonly (Stretch | null)[],
  which: 'start' | 'end',
  counterpart: number | null,
): { readonly piece: number; readonly stretch: Stretch } | null {
  let best: { piece: number; stretch: Stretch } | null = null;
  for (const [piece, stretch] of stretches.entries()) {
    if (counterpart !== null && piece !== counterpart) continue;
    if (stretch === null) return null;
    const further =
      best === null ||
      (which === 'start'
        ? endOf(stretch) > endOf(best.stretch)
        : stretch.start.length < best.stretch.start.length);
    if (further) best = { piece, stretch };
  }
  return best;
}

/** The seen length that the part's own extent gives; `null`: unknown, and why has been reported. */
function givenLength(
  { layout, axis, index }: SoFar,
  under: Term | null,
  beyond: Term,
  report: (...about: Report) => void,
): Term | 'fill' | null {
  const part = layout.parts[index]!;
  if (isFolded(part.shape)) {
    const folded = foldedStripOf(part.shape);
    if (folded !== null) return { length: folded.size[axis], reads: readsOfFolded };
    // Both axes hang on the one strip: it is told once.
    if (axis === 'width') report(...notFolded(part.shape));
    return null;
  }
  switch (part.extent.by) {
    case 'diameter':
      return { length: part.extent.diameter, reads: 1 };
    case 'inset': {
      if (under === null) return null;
      const { inset } = part.extent;
      const seen = insetOn(under, inset);
      if (seen.length > 0) return seen;
      report('insetTooLarge', 'inset', { inset, room: under.length }, { ...lyingOn(layout, part.on), axis });
      return null;
    }
    case 'size': {
      const cut = part.extent[axis];
      if (cut === null) return 'fill';
      if (cut > beyond.length) return { length: minus(cut, beyond.length), reads: 1 + beyond.reads };
      const torn = sum(part.torn[fields[axis].start], part.torn[fields[axis].end]);
      if (torn === beyond.length) report('tornAway', 'torn', { cut, torn }, { axis });
      else
        report('nothingSeen', part.margin > 0 ? 'margin' : 'tuck', { cut, beyond: beyond.length }, { axis });
      return null;
    }
  }
}

/** What a folded strip measures follows from its width, its length and its template, rounded up. */
const readsOfFolded = 4;

/** The one seen length of a part whose pieces fill what is left; `null`: unknown, and why has been reported. */
function filledLength(
  { layout, axis, index }: SoFar,
  beds: readonly (Bed | null)[],
  report: (...about: Report) => void,
): Term | null {
  const rooms: Term[] = [];
  for (const [piece, bed] of beds.entries()) {
    if (bed === null) return null;
    const room = roomBetween(bed.under, bed);
    if (room.length <= 0) {
      const names = { ...lyingOn(layout, layout.parts[index]!.on), axis };
      report(
        'noRoom',
        placeField(layout, index, piece),
        { room: room.length, whole: bed.under.seen.length },
        names,
      );
      return null;
    }
    rooms.push(room);
  }
  const smallest = rooms.reduce((best, room) => (room.length < best.length ? room : best));
  const largest = rooms.reduce((best, room) => (room.length > best.length ? room : best));
  if (excess([largest], smallest) === zero) return smallest;
  report('roomsDiffer', 'place', { smallest: smallest.length, largest: largest.length }, { axis });
  return null;
}

function sizeOf(width: Length | null, height: Length | null): Size | null {
  return width === null || height === null ? null : { width, height };
}

function boxOf(across: Stretch | null, down: Stretch | null): Box | null {
  return (
    across &&
    down && {
      left: across.start.length,
      top: down.start.length,
      width: across.seen.length,
      height: down.seen.length,
    }
  );
}
