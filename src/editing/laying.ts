import { isList, type Path, type SavedLayout, valueAt } from '../files/index.ts';
import type { Anchor, LaidPiece, Span } from '../layout/index.ts';
import { type Axis, type Box, type Edge, type Length, lengthOfTicks } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { PartLaying } from '../words/index.ts';
import type { Edit } from './edit.ts';
import { settingOf } from './edit.ts';
import type { InHand } from './inHand.ts';
import { placesChanged } from './placeText.ts';
import type { PieceAt } from './placing.ts';

/** How a piece is laid along one axis now. */
export function layingOf({ layout }: InHand, at: PieceAt, axis: Axis): PartLaying {
  const { start, end } = spanOf(layout.parts[at.part]!.places[at.piece]!, axis);
  if (start === null && end === null) return { how: 'middle' };
  if (start !== null && end !== null) return { how: 'between' };
  if (start !== null) return start.from === 'edge' ? { how: 'start' } : { how: 'beyond', part: start.part };
  assert(end !== null, 'One of them is there');
  return end.from === 'edge' ? { how: 'end' } : { how: 'before', part: end.part };
}

/**
 * The ways a piece can be laid along an axis: in the middle, from either edge, to either side of any part that lies
 * lower in the pile on the same thing; between two edges only where it fills the room there.
 */
export function layingsFor({ layout }: InHand, at: PieceAt, axis: Axis): readonly PartLaying[] {
  const part = layout.parts[at.part]!;
  if (part.extent.by === 'size' && part.extent[axis] === null) return [{ how: 'between' }];
  const neighbours = layout.parts.slice(0, at.part).filter(({ on }) => on === part.on);
  return [
    { how: 'middle' },
    { how: 'start' },
    { how: 'end' },
    ...neighbours.flatMap(({ id }): readonly PartLaying[] => [
      { how: 'beyond', part: id },
      { how: 'before', part: id },
    ]),
  ];
}

/**
 * Lays a piece another way along an axis, where it lies now: only what it is laid to changes, and what its distance is
 * measured from. `middle` moves it there. `null` where it is not known where it lies.
 */
export function pieceLaid(inHand: InHand, at: PieceAt, axis: Axis, laying: PartLaying): Edit | null {
  const { file, layout, arrangement } = inHand;
  const arranged = arrangement.parts[at.part]!;
  const laid = arranged.pieces[at.piece]!;
  const span = spanFor(inHand, at, axis, laying, laid);
  if (span === null) return null;
  const listed = isList(valueAt(file, ['parts', at.part, 'place']));
  const pieces = listed ? [at.piece] : [...arranged.pieces.keys()];
  const changes = placesChanged(
    file,
    layout,
    at.part,
    new Map(
      pieces.map((piece) => {
        const place = arranged.part.places[piece]!;
        return [piece, axis === 'width' ? { ...place, across: span } : { ...place, down: span }];
      }),
    ),
  );
  const beside = 'part' in laying ? layout.parts.find(({ id }) => id === laying.part) : undefined;
  return {
    told: { what: 'part laid', name: arranged.part.name, axis, laying, beside: beside?.name ?? null },
    changes,
  };
}

/**
 * The distance a piece is laid at from one of its ends, and the edit that sets it as it is typed; `null` where it is
 * not laid from that end.
 */
export function distanceAt(
  { file, layout }: InHand,
  at: PieceAt,
  edge: Edge,
): {
  readonly length: Length;
  readonly typed: string | undefined;
  readonly editOf: (text: string) => Edit;
} | null {
  const axis: Axis = edge === 'left' || edge === 'right' ? 'width' : 'height';
  const span = spanOf(layout.parts[at.part]!.places[at.piece]!, axis);
  const anchor = edge === 'left' || edge === 'top' ? span.start : span.end;
  if (anchor === null) return null;
  const listed = isList(valueAt(file, ['parts', at.part, 'place']));
  const place: Path = ['parts', at.part, 'place', ...(listed ? [at.piece] : [])];
  if (anchor.from === 'edge') {
    const path = [...place, edge];
    return {
      length: anchor.distance,
      typed: textAt(file, path),
      editOf: (text) => settingOf(file, path, text),
    };
  }
  const gap = [...place, 'gap'];
  const number = axis === 'width' ? 0 : 1;
  const own = isList(valueAt(file, gap)) ? [...gap, number] : gap;
  const other = spanOf(layout.parts[at.part]!.places[at.piece]!, axis === 'width' ? 'height' : 'width');
  const shared = own === gap && [other.start, other.end].some((each) => each?.from === 'part');
  return {
    length: anchor.gap,
    typed: textAt(file, own),
    editOf(text) {
      if (!shared) return settingOf(file, own, text);
      const both = textAt(file, gap) ?? `0 ${layout.units}`;
      return settingOf(file, gap, axis === 'width' ? [text, both] : [both, text]);
    },
  };
}

function textAt(file: SavedLayout, path: Path): string | undefined {
  const value = valueAt(file, path);
  return typeof value === 'string' ? value : undefined;
}

function spanOf({ across, down }: { readonly across: Span; readonly down: Span }, axis: Axis): Span {
  return axis === 'width' ? across : down;
}

const edges = { width: ['left', 'right'], height: ['top', 'bottom'] } as const;

function spanFor(
  { layout, arrangement }: InHand,
  at: PieceAt,
  axis: Axis,
  laying: PartLaying,
  { box, borders }: LaidPiece,
): Span | null {
  const [first, last] = edges[axis];
  switch (laying.how) {
    case 'middle':
      return { start: null, end: null };
    case 'between':
      // As it is: a size that fills says where to itself.
      return spanOf(layout.parts[at.part]!.places[at.piece]!, axis);
    case 'start':
      return borders && { start: { from: 'edge', distance: borders[first] }, end: null };
    case 'end':
      return borders && { start: null, end: { from: 'edge', distance: borders[last] } };
    case 'beyond':
    case 'before': {
      const neighbour = arrangement.parts.find(({ part }) => part.id === laying.part);
      assert(neighbour !== undefined, 'It is laid to a part of the layout');
      const alike = neighbour.pieces.length === arrangement.parts[at.part]!.pieces.length;
      const laidTo = alike ? [neighbour.pieces[at.piece]!] : neighbour.pieces;
      const nearest = laidTo.flatMap((piece) => piece.box ?? []);
      // The outermost of several is not known while one of them is not.
      if (box === null || nearest.length < laidTo.length) return null;
      const anchor = (gap: number): Anchor => ({ from: 'part', part: laying.part, gap: lengthOfTicks(gap) });
      if (laying.how === 'beyond') {
        const end = Math.max(...nearest.map((each) => startOf(each, axis) + each[axis]));
        return { start: anchor(startOf(box, axis) - end), end: null };
      }
      const start = Math.min(...nearest.map((each) => startOf(each, axis)));
      return { start: null, end: anchor(start - startOf(box, axis) - box[axis]) };
    }
  }
}

function startOf(box: Box, axis: Axis): Length {
  return axis === 'width' ? box.left : box.top;
}
