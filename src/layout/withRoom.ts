import { dimensionsOf } from './dimension.ts';
import type { Layout, Room, RoomName, Rooms } from './layout.ts';

/**
 * The lengths of a part, or of the base, that may be given room: those it was drawn with, and width and height where
 * these follow from others (room is a condition on them then). Empty where there is no such part.
 */
export function roomNamesOf(layout: Layout, part: string): readonly RoomName[] {
  const found = new Set<string>(
    dimensionsOf(layout).flatMap(({ part: id, kind, name }) =>
      id === part && kind !== 'beyond' ? [name] : [],
    ),
  );
  if (layout.parts.some(({ id, shape }) => id === part && shape.kind !== 'circle')) {
    found.add('width').add('height');
  }
  return roomNames.filter((name) => found.has(name));
}

/** All lengths that may be given room. */
export const roomNames = [
  'width',
  'height',
  'diameter',
  'inset',
  'gap',
  'left',
  'right',
  'top',
  'bottom',
] as const satisfies readonly RoomName[];

/** The layout with room for one length of a part, or of the base, beside what room it has. */
export function withRoom(layout: Layout, part: string, name: RoomName, room: Room): Layout {
  const added = (rooms: Rooms | undefined): Rooms => ({ ...(rooms === 'none' ? {} : rooms), [name]: room });
  if (part === 'base') return { ...layout, base: { ...layout.base, rooms: added(layout.base.rooms) } };
  return {
    ...layout,
    parts: layout.parts.map((one) => (one.id === part ? { ...one, rooms: added(one.rooms) } : one)),
  };
}
