import { type RoomName, roomNames } from '../layout/index.ts';
import type { Units } from '../measure/index.ts';
import { excerpt } from './excerpt.ts';
import { lengthIn } from './field.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { isList, isObject, type Json, type JsonObject } from './json.ts';
import type { Path } from './path.ts';

/**
 * What is wrong with the room that the base or a part at `path` gives its lengths, beyond its shape: a least over
 * its most, and room for a length that is not there to move.
 */
export function roomProblems(holder: JsonObject, path: Path, units: Units): FileProblem[] {
  const { room } = holder;
  if (!isObject(room)) return [];
  // What the base may give room to, its shape says.
  const lengths = path[0] === 'base' ? roomNames : movable(holder);
  return roomNames.flatMap((name) => {
    const at = [...path, 'room', name];
    const pair = room[name];
    if (pair === undefined) return [];
    return [
      ...(lengths.includes(name) ? [] : [absence(name, lengths, holder, at)]),
      ...disorder(pair, at, units),
    ];
  });
}

const sizeNames = ['width', 'height'] as const;
const extentNames = ['diameter', 'inset'] as const;
const placeNames = ['gap', 'left', 'right', 'top', 'bottom'] as const;

/** The lengths of a part that may have room: a size it always has, but for a circle, and whatever else it names. */
function movable(part: JsonObject): readonly RoomName[] {
  const named = extentNames.filter((name) => name in part);
  const circle = part.shape === 'circle';
  const places = isList(part.place) ? part.place : [part.place ?? {}];
  return [
    ...(circle ? [] : sizeNames),
    // A circle that names neither is told so by itself.
    ...(circle && named.length === 0 ? extentNames : named),
    // So is a place of another kind.
    ...placeNames.filter((name) => places.some((place) => !isObject(place) || name in place)),
  ];
}

function absence(name: RoomName, lengths: readonly RoomName[], part: JsonObject, at: Path): FileProblem {
  const circle = part.shape === 'circle' && sizeNames.some((size) => size === name);
  return fileProblem('roomWithoutLength', at, {
    of: circle ? 'circle' : 'part',
    fields: lengths.map((length) => `"${length}"`).join(', '),
  });
}

function disorder(pair: Json, at: Path, units: Units): FileProblem[] {
  if (!isList(pair) || pair.length !== 2) return [];
  const [least, most] = pair.map((text) => lengthIn(text, units));
  if (typeof least !== 'number' || typeof most !== 'number' || least <= most) return [];
  const [first, second] = pair.map((text) => excerpt(text));
  return [fileProblem('roomOrder', at, { least: first ?? '', most: second ?? '' })];
}
