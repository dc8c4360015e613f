import type { Json, Path } from '../files/index.ts';
import { valueAt } from '../files/index.ts';
import {
  type Anchor,
  type ArrangedPart,
  beyondAlong,
  isFolded,
  type Place,
  type Span,
} from '../layout/index.ts';
import { type Axis, type Edge, type Length, lengthOfTicks, sum } from '../measure/index.ts';
import type { EditOwner, MendTold } from '../words/index.ts';
import { type Change, changesTo } from './change.ts';
import type { Edit } from './edit.ts';
import type { InHand } from './inHand.ts';
import { placesChanged } from './placeText.ts';
import { pieceMoved } from './placing.ts';
import { typingOf } from './typing.ts';

/** A part that something is wrong with. */
export interface Ailing {
  readonly inHand: InHand;
  readonly index: number;
  readonly arranged: ArrangedPart;
  /** The first of its pieces that it is wrong with. */
  readonly piece: number;
}

/** What edges and fields there are along each axis. */
export const along = {
  width: { span: 'across', start: 'left', end: 'right', side: 0, other: 'height' },
  height: { span: 'down', start: 'top', end: 'bottom', side: 1, other: 'width' },
} as const satisfies Record<Axis, { span: keyof Place; start: Edge; end: Edge; side: 0 | 1; other: Axis }>;

/** The axis that an edge bounds a part along. */
export function axisOf(edge: Edge): Axis {
  return edge === 'left' || edge === 'right' ? 'width' : 'height';
}

/** An edit that mends something about a part, from its changes; `null` where there are none. */
export function mending(
  { inHand, arranged }: Ailing,
  mend: MendTold,
  changes: readonly Change[] | null,
): Edit | null {
  return changes === null
    ? null
    : mendingOf({ kind: 'part', name: arranged.part.name }, inHand, mend, changes);
}

/** An edit that mends something about whatever it belongs to. */
export function mendingOf(
  of: EditOwner,
  { layout }: InHand,
  mend: MendTold,
  changes: readonly Change[],
): Edit | null {
  return changes.length === 0 ? null : { told: { what: 'mended', of, mend, units: layout.units }, changes };
}

/** What sets a field of the part, or with `undefined` takes it away. */
export function setting({ inHand, index }: Ailing, path: Path, value: Json | undefined): readonly Change[] {
  return changesTo(inHand.file, ['parts', index, ...path], value);
}

/** What writes a length into a field of the part. */
export function lengthSet({ inHand, index }: Ailing, path: Path, length: Length): readonly Change[] {
  const at = ['parts', index, ...path];
  return changesTo(inHand.file, at, typingOf(inHand.layout)(length, valueAt(inHand.file, at)));
}

/** What gives the part another seen size along an axis; `null`: it is not given a size, or none would be left. */
export function resized(ailing: Ailing, axis: Axis, seen: Length): readonly Change[] | null {
  const { part } = ailing.arranged;
  const { side } = along[axis];
  // What is cut of a folded strip is its length, not what it measures when it is folded.
  if (seen <= 0 || isFolded(part.shape)) return null;
  switch (part.extent.by) {
    case 'size':
      return lengthSet(ailing, ['size', side], sum(seen, beyondAlong(part, axis)));
    case 'diameter':
      return lengthSet(ailing, ['diameter'], seen);
    case 'inset':
      return null;
  }
}

/** What lets the part fill its room along an axis; `null` where it is not given a size there. */
export function filling(ailing: Ailing, axis: Axis): readonly Change[] | null {
  const { extent, shape } = ailing.arranged.part;
  if (isFolded(shape)) return null;
  if (extent.by !== 'size' || extent[axis] === null) return null;
  return setting(ailing, ['size', along[axis].side], 'fill');
}

/** What fixes the pieces of the part along an axis otherwise: that one, or all where `piece` is `null`. */
export function spanned(
  { inHand, index, arranged }: Ailing,
  axis: Axis,
  piece: number | null,
  spanOf: (span: Span, piece: number) => Span,
): readonly Change[] {
  const { span } = along[axis];
  const after = arranged.part.places.map((place, one): Place => {
    // One place for all is changed for all.
    const same = JSON.stringify(place) === JSON.stringify(arranged.part.places[piece ?? one]);
    return piece === null || same ? { ...place, [span]: spanOf(place[span], one) } : place;
  });
  return placesChanged(inHand.file, inHand.layout, index, new Map(after.entries()));
}

/** What moves the ailing piece along an axis; `null`: it stays where it is. */
export function shifted({ inHand, index, piece }: Ailing, axis: Axis, by: number): readonly Change[] | null {
  const none = lengthOfTicks(0);
  const shift = lengthOfTicks(by);
  const { edit, stays } = pieceMoved(
    inHand,
    { part: index, piece },
    axis === 'width' ? { across: shift, down: none } : { across: none, down: shift },
  );
  return edit === null || stays.length > 0 ? null : edit.changes;
}

/** An anchor as far off as that. */
export function anchoredAt(anchor: Anchor, to: Length): Anchor {
  return anchor.from === 'edge' ? { ...anchor, distance: to } : { ...anchor, gap: to };
}

/** How far off an anchor is. */
export function distanceOf(anchor: Anchor): Length {
  return anchor.from === 'edge' ? anchor.distance : anchor.gap;
}
