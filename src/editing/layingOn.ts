import { isObject, valueAt } from '../files/index.ts';
import type { Anchor, ArrangedPart, Face, Part, Place, Span } from '../layout/index.ts';
import { type Axis, type Box, bordersOf, type Edge, halves, sum, zero } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type Change, changesTo } from './change.ts';
import { type Edit, settingOf, together } from './edit.ts';
import type { InHand } from './inHand.ts';
import { placesChanged } from './placeText.ts';
import { typingOf } from './typing.ts';

/**
 * Why a part cannot be laid there: it lies there `already`; on `itself`; what it is to lie on stands `later` in the
 * pile, is not there, or lies nobody knows where, or the part does or what is laid to it (`unknown`); a flat card has `no inside`; its inset leaves nothing of
 * what it is to lie on (`too small`).
 */
export type LayingRefusal = 'already' | 'itself' | 'later' | 'unknown' | 'no inside' | 'too small';

/**
 * Lays a part on another one, or on a face, and leaves it where it is seen: its distances become those from the edges
 * of what it then lies on, and with another face its neighbours there are given up for such distances. What is inset
 * is inset on that instead; a circle that was and comes to lie on no circle keeps its diameter.
 *
 * Law, tested on random layouts: the seen boxes of a part that is not inset stay the same, and so do those of what
 * lies on it.
 */
export function partLaidOn(
  inHand: InHand,
  index: number,
  on: string,
): { readonly edit: Edit } | { readonly refused: LayingRefusal } {
  const { file, layout, arrangement } = inHand;
  const arranged = arrangement.parts[index];
  assert(arranged !== undefined, 'A part that is laid is there', { index });
  const { part } = arranged;
  if (on === part.on) return { refused: 'already' };
  if (on === part.id) return { refused: 'itself' };
  const bed = bedOf(inHand, on);
  const at = layout.parts.findIndex(({ id }) => id === on);
  if (at > index) return { refused: 'later' };
  if (on === 'inside' && layout.base.fold === 'none') return { refused: 'no inside' };
  if (bed === null) return { refused: 'unknown' };

  // The size of what is inset follows what it lies on.
  const { extent } = part;
  const round =
    extent.by === 'inset' && part.shape.kind === 'circle' && layout.parts[at]?.shape.kind !== 'circle';
  const inset = extent.by === 'inset' && !round;
  if (inset && bed.boxes.some(({ width, height }) => Math.min(width, height) <= 2 * extent.inset)) {
    return { refused: 'too small' };
  }
  // What is known along one axis alone has no place that could be kept, but others may be laid to it there.
  if (!inset && arranged.pieces.some(({ box }) => box === null)) return { refused: 'unknown' };
  const resized: Change[] = [];
  if (round) {
    if (arranged.seen === null) return { refused: 'unknown' };
    const text = typingOf(layout)(arranged.seen.width, valueAt(file, ['parts', index, 'inset']));
    resized.push(
      ...changesTo(file, ['parts', index, 'inset'], undefined),
      ...changesTo(file, ['parts', index, 'diameter'], text),
      ...roomForInsetLost(inHand, index),
    );
  }

  const turnsFace = bed.face !== arranged.face;
  const isMoved = liesOn(inHand, index);
  const after = new Map<number, Place>(
    part.places.map((place, piece) => {
      const under = bed.boxes[piece % bed.boxes.length]!;
      return [piece, placeOn(arranged, place, piece, { under, inset, turnsFace })];
    }),
  );
  const parted = turnsFace
    ? arrangement.parts.flatMap(({ part: other }, number) =>
        number !== index && isParted(other, isMoved) ? [number] : [],
      )
    : [];
  if (parted.some((other) => arrangement.parts[other]!.pieces.some(({ box }) => box === null))) {
    return { refused: 'unknown' };
  }
  const others = parted.flatMap((other) => freed(inHand, other, isMoved));
  const lays = settingOf(file, ['parts', index, 'on'], on);
  const changes = [...resized, ...placesChanged(file, layout, index, after), ...others];
  return { edit: together(lays, { told: lays.told, changes }) };
}

const edges = {
  width: { start: 'left', end: 'right', span: 'across' },
  height: { start: 'top', end: 'bottom', span: 'down' },
} as const satisfies Record<Axis, { start: Edge; end: Edge; span: keyof Place }>;

/** A face or part that others may lie on: where its pieces are. `null`: not there, or unknown. */
function bedOf(
  { layout, arrangement }: InHand,
  on: string,
): { readonly face: Face; readonly boxes: readonly Box[] } | null {
  if (on === 'base' || on === 'inside' || on === 'back') {
    return { face: on, boxes: [{ left: zero, top: zero, ...layout.base.size }] };
  }
  const found = arrangement.parts.find(({ part }) => part.id === on);
  if (found === undefined) return null;
  const boxes = found.pieces.flatMap(({ box }) => (box === null ? [] : [box]));
  return boxes.length < found.pieces.length ? null : { face: found.face, boxes };
}

/** Where a piece then lies to be seen where it was. */
function placeOn(
  { part, pieces }: ArrangedPart,
  place: Place,
  piece: number,
  { under, inset, turnsFace }: { readonly under: Box; readonly inset: boolean; readonly turnsFace: boolean },
): Place {
  const { box } = pieces[piece]!;
  const borders = box === null || inset ? null : bordersOf(under, box);
  const spanAlong = (axis: Axis): Span => {
    const { start, end, span } = edges[axis];
    const now = place[span];
    const stays = (anchor: Anchor | null) =>
      anchor !== null && (anchor.from === 'part' ? !turnsFace : borders === null);
    const end_ = (anchor: Anchor | null, edge: Edge): Anchor | null => {
      if (stays(anchor)) return anchor;
      return anchor === null || borders === null ? null : { from: 'edge', distance: borders[edge] };
    };
    const ends = { start: end_(now.start, start), end: end_(now.end, end) };
    if (borders === null) return ends;
    const [before, after] = [borders[start], borders[end]];
    if (part.extent.by === 'size' && part.extent[axis] === null) {
      return {
        start: ends.start ?? (before === zero ? null : { from: 'edge', distance: before }),
        end: ends.end ?? (after === zero ? null : { from: 'edge', distance: after }),
      };
    }
    if (ends.start !== null || ends.end !== null) return ends;
    const centred = before === halves(sum(before, after)).smaller;
    return centred ? ends : { start: { from: 'edge', distance: before }, end: null };
  };
  return { across: spanAlong('width'), down: spanAlong('height') };
}

/** Whether a part is this one or lies on it. */
function liesOn({ layout }: InHand, index: number): (id: string) => boolean {
  const moved = new Set([layout.parts[index]!.id]);
  for (const { id, on } of layout.parts) if (moved.has(on)) moved.add(id);
  return (id) => moved.has(id);
}

/** Whether a part is laid to neighbours that come to lie on another face than it. */
function isParted({ id, places }: Part, isMoved: (id: string) => boolean): boolean {
  return places.some(({ across, down }) =>
    [across.start, across.end, down.start, down.end].some(
      (anchor) => anchor?.from === 'part' && isMoved(anchor.part) !== isMoved(id),
    ),
  );
}

/** Lays such a part by distances instead. */
function freed(
  { file, layout, arrangement }: InHand,
  index: number,
  isMoved: (id: string) => boolean,
): readonly Change[] {
  const { part, pieces } = arrangement.parts[index]!;
  const after = part.places.map(({ across, down }, piece): Place => {
    const { borders } = pieces[piece]!;
    const free = (anchor: Anchor | null, edge: Edge): Anchor | null => {
      if (anchor?.from !== 'part' || isMoved(anchor.part) === isMoved(part.id)) return anchor;
      return borders === null ? null : { from: 'edge', distance: borders[edge] };
    };
    return {
      across: { start: free(across.start, 'left'), end: free(across.end, 'right') },
      down: { start: free(down.start, 'top'), end: free(down.end, 'bottom') },
    };
  });
  return placesChanged(file, layout, index, new Map(after.entries()));
}

function roomForInsetLost({ file }: InHand, index: number): readonly Change[] {
  const path = ['parts', index, 'room'];
  const room = valueAt(file, path);
  if (!isObject(room) || !('inset' in room)) return [];
  return changesTo(file, Object.keys(room).length === 1 ? path : [...path, 'inset'], undefined);
}
