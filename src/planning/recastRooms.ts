import {
  type Arrangement,
  arrange,
  type Drawn,
  type Layout,
  type Room,
  type RoomName,
  type Rooms,
} from '../layout/index.ts';
import { type Length, lengthOfTicks, roundTo } from '../measure/index.ts';
import { onMark } from './filledRow.ts';

/**
 * The ends of the rooms of a layout brought to the marks, where that changes them, by their paths in the file (`parts[1].room.width[0]`), where
 * `drawn` is the layout drawn anew: a size's room goes in proportion to what became of the size, any other to the nearest mark.
 */
export function roomsRecast(before: Drawn, drawn: Layout, marks: Length): ReadonlyMap<string, Length> {
  const now = arrange(drawn);
  const ends = new Map<string, Length>();
  const recast = (rooms: Rooms | undefined, path: string, scales: Scales) => {
    if (rooms === undefined || rooms === 'none') return;
    for (const [name, room] of Object.entries(rooms) as [RoomName, Room][]) {
      const { least, most } = recastRoom(room, scales[name] ?? null, marks);
      if (least !== room.least) ends.set(`${path}.room.${name}[0]`, least);
      if (most !== room.most) ends.set(`${path}.room.${name}[1]`, most);
    }
  };
  recast(before.layout.base.rooms, 'base', {
    width: { from: before.layout.base.size.width, to: drawn.base.size.width },
    height: { from: before.layout.base.size.height, to: drawn.base.size.height },
  });
  for (const [index, part] of before.layout.parts.entries())
    recast(part.rooms, `parts[${index}]`, partScales(before.arrangement, now, index));
  return ends;
}

interface Scale {
  readonly from: Length;
  readonly to: Length;
}

type Scales = Readonly<Partial<Record<RoomName, Scale>>>;

function partScales(before: Arrangement, now: Arrangement, index: number): Scales {
  const [from, to] = [before.parts[index]!.cut, now.parts[index]!.cut];
  if (from === null || to === null) return {};
  const width = { from: from.width, to: to.width };
  return { width, height: { from: from.height, to: to.height }, diameter: width };
}

function recastRoom({ least, most }: Room, scale: Scale | null, marks: Length): Room {
  if (scale === null) return { least: onMark(least, marks), most: onMark(most, marks) };
  const scaled = (length: Length) =>
    roundTo(lengthOfTicks(Math.round((length * scale.to) / scale.from)), marks, 'nearest');
  const low = lengthOfTicks(Math.max(scaled(least), marks));
  return { least: low, most: lengthOfTicks(Math.max(scaled(most), low)) };
}

/** The layout with these ends of its rooms. */
export function withRooms(layout: Layout, ends: ReadonlyMap<string, Length>): Layout {
  if (ends.size === 0) return layout;
  const changed = (rooms: Rooms | undefined, path: string): { readonly rooms?: Rooms } => {
    if (rooms === undefined || rooms === 'none') return {};
    const entries = (Object.entries(rooms) as [RoomName, Room][]).map(([name, { least, most }]) => [
      name,
      {
        least: ends.get(`${path}.room.${name}[0]`) ?? least,
        most: ends.get(`${path}.room.${name}[1]`) ?? most,
      },
    ]);
    return { rooms: Object.fromEntries(entries) as Rooms };
  };
  return {
    ...layout,
    base: { ...layout.base, ...changed(layout.base.rooms, 'base') },
    parts: layout.parts.map((part, index) => ({ ...part, ...changed(part.rooms, `parts[${index}]`) })),
  };
}
