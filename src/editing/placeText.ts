import { isList, isObject, type Json, type JsonObject, type SavedLayout, valueAt } from '../files/index.ts';
import type { Anchor, Layout, Place, Span } from '../layout/index.ts';
import { type Edge, type Length, zero } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type Change, changesTo } from './change.ts';
import { type Typing, typingOf } from './typing.ts';

/**
 * What gives pieces of a part other places, by the numbers of the pieces; the others stay where they are.
 *
 * What is fixed as before keeps its text; an object or list that is not needed any more, or not yet, goes or comes.
 * One place for all pieces stays one as long as all have the same. On each axis both gaps to neighbours are one length.
 */
export function placesChanged(
  file: SavedLayout,
  layout: Layout,
  index: number,
  after: ReadonlyMap<number, Place>,
): readonly Change[] {
  const { places } = layout.parts[index]!;
  const path = ['parts', index, 'place'];
  const typing = typingOf(layout);
  const typed = valueAt(file, path);
  const written = (piece: number, text: Json | undefined): JsonObject => {
    const before = places[piece]!;
    return placeWritten(isObject(text) ? text : {}, before, after.get(piece) ?? before, typing);
  };
  const all = places.map((_, piece) => written(piece, isList(typed) ? typed[piece] : typed));
  const rooms = roomsLost(file, index, all);
  if (isList(typed)) {
    return [...rooms, ...[...after.keys()].flatMap((piece) => changesTo(file, [...path, piece], all[piece]))];
  }
  const [place, ...others] = all;
  assert(place !== undefined, 'A part has a place for each piece');
  if (others.some((other) => JSON.stringify(other) !== JSON.stringify(place))) {
    return [...rooms, ...changesTo(file, path, all)];
  }
  return [...rooms, ...changesTo(file, path, Object.keys(place).length === 0 ? undefined : place)];
}

/** Room that is given to a distance which no place names any more goes with it. */
function roomsLost(file: SavedLayout, index: number, places: readonly JsonObject[]): readonly Change[] {
  const path = ['parts', index, 'room'];
  const room = valueAt(file, path);
  if (!isObject(room)) return [];
  const lost = ['gap', ...ends.map(({ edge }) => edge)].filter(
    (name) => name in room && !places.some((place) => name in place),
  );
  if (lost.length === 0) return [];
  if (lost.length === Object.keys(room).length) return changesTo(file, path, undefined);
  return lost.flatMap((name) => changesTo(file, [...path, name], undefined));
}

/** The fields of a place for each end of a piece. */
const ends = [
  { edge: 'left', neighbour: 'rightOf', span: 'across', end: 'start' },
  { edge: 'right', neighbour: 'leftOf', span: 'across', end: 'end' },
  { edge: 'top', neighbour: 'below', span: 'down', end: 'start' },
  { edge: 'bottom', neighbour: 'above', span: 'down', end: 'end' },
] as const satisfies readonly {
  readonly edge: Edge;
  readonly neighbour: string;
  readonly span: keyof Place;
  readonly end: keyof Span;
}[];

export function placeWritten(old: JsonObject, before: Place, after: Place, typing: Typing): JsonObject {
  const fields = new Map(Object.entries(old));
  for (const { edge, neighbour, span, end } of ends) {
    const [was, is] = [before[span][end], after[span][end]];
    if (is?.from !== 'part') fields.delete(neighbour);
    else fields.set(neighbour, is.part);
    if (is?.from !== 'edge') fields.delete(edge);
    else if (!sameDistance(was, is)) fields.set(edge, typing(is.distance, fields.get(edge)));
  }
  const gap = gapWritten(fields.get('gap'), before, after, typing);
  if (gap === undefined) fields.delete('gap');
  else fields.set('gap', gap);
  return Object.fromEntries(fields);
}

function sameDistance(one: Anchor | null, other: Anchor): boolean {
  return one?.from === 'edge' && other.from === 'edge' && one.distance === other.distance;
}

/** One length for both axes as long as it will do, else across and down. */
function gapWritten(typed: Json | undefined, before: Place, after: Place, typing: Typing): Json | undefined {
  const was = [gapOf(before.across), gapOf(before.down)];
  const is = [gapOf(after.across), gapOf(after.down)];
  const wanted = is.filter((gap) => gap !== null);
  if (wanted.length === 0) return undefined;
  if (isList(typed)) {
    return typed.map((text, axis) => {
      const gap = is[axis] ?? null;
      return gap === null || gap === was[axis] ? text : typing(gap, text);
    });
  }
  const now = was[0] ?? was[1] ?? zero;
  if (wanted.every((gap) => gap === now)) return typed;
  if (wanted.every((gap) => gap === wanted[0])) return typing(wanted[0]!, typed);
  return is.map((gap) => (gap === now && typed !== undefined ? typed : typing(gap ?? zero, typed)));
}

/** The gap that a piece keeps to its neighbours along one axis; `null`: it is laid to none. */
function gapOf({ start, end }: Span): Length | null {
  const gaps = [start, end].flatMap((anchor) => (anchor?.from === 'part' ? [anchor.gap] : []));
  assert(
    gaps.every((gap) => gap === gaps[0]),
    'Along one axis there is one gap',
    { gaps },
  );
  return gaps[0] ?? null;
}
