import { isObject, type Path, type SavedLayout, valueAt } from '../files/index.ts';
import type { RoomName } from '../layout/index.ts';
import { type Edit, settingOf } from './edit.ts';

/**
 * Room for one length of the base, or of the part at an index of the pile, beside what room it has: the least and the
 * most that it may be, as they are typed; `null` takes it away. Of what may not move at all, that one length may then.
 */
export function roomSet(
  file: SavedLayout,
  of: 'base' | number,
  name: RoomName,
  room: readonly [string, string] | null,
): Edit {
  const path: Path = of === 'base' ? ['base', 'room'] : ['parts', of, 'room'];
  const rooms = valueAt(file, path);
  if (isObject(rooms)) {
    const others = Object.keys(rooms).filter((other) => other !== name);
    if (room === null && others.length === 0) return settingOf(file, path, undefined);
    return settingOf(file, [...path, name], room ?? undefined);
  }
  return settingOf(file, path, room === null ? rooms : { [name]: room });
}
