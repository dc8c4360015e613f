import { isList, isObject, type Json, type JsonObject, type SavedLayout, valueAt } from '../files/index.ts';
import { type FoldedShape, isFolded, type ShapeKind } from '../layout/index.ts';
import { slantForGap } from '../making/index.ts';
import {
  inches,
  type Length,
  lengthOfTicks,
  millimetres,
  minus,
  roundTo,
  type Size,
  sum,
  times,
} from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type Edit, settingOf, together } from './edit.ts';
import type { InHand } from './inHand.ts';
import { typingOf } from './typing.ts';

/** An outline as it was drawn: its path data, and its width and height in any units. */
export interface Drawn {
  readonly outline: string;
  readonly ratio: { readonly width: number; readonly height: number };
}

/** What a part may be made with no drawing. */
export type PlainShape = Exclude<ShapeKind, 'outline'>;

/**
 * A part of another shape, as large as it was: what belongs to other shapes goes, and so does what only a rectangle has
 * (torn edges, what goes behind). A circle is as large as its shorter side was.
 *
 * `from` is the same layout as it was before an earlier choice: the part is then made from what it was there, so that
 * trying one shape after another loses nothing.
 */
export function shapeSet({ file }: InHand, at: number, kind: PlainShape, from: InHand): Edit {
  return partEdit(file, at, kind, reshaped(from, at, kind, usualFields(from, at, kind)));
}

/** A part in the outline of a drawing, as wide as it was and as high as the drawing then is. */
export function outlineSet(inHand: InHand, at: number, { outline, ratio }: Drawn): Edit {
  const { file, layout, arrangement } = inHand;
  const { part, cut, seen } = arrangement.parts[at]!;
  const plain = reshaped(inHand, at, 'outline', { outline });
  if (cut === null || seen === null) return partEdit(file, at, 'outline', plain);
  const typing = typingOf(layout);
  const fills = part.extent.by === 'size' && part.extent.width === null;
  const round = times(part.margin, 2);
  const across = fills ? seen.width : minus(cut.width, round);
  const down = lengthOfTicks(Math.max(1, Math.round((across * ratio.height) / ratio.width)));
  const typed = isList(plain.size) ? plain.size[0] : undefined;
  const { inset: _inset, ...rest } = plain;
  return partEdit(file, at, 'outline', {
    ...looseAlong(rest, 'down'),
    size: [typed ?? typing(cut.width), typing(sum(down, round))],
  });
}

// --- Fields ---

const ofShapes = [
  'shape',
  'corner',
  'ends',
  'endDepth',
  'outline',
  'template',
  'slant',
  'loops',
  'overlap',
] as const;
const ofRectangles = ['torn', 'tear', 'tuck'] as const;
/** What is folded is cut as a plain strip. */
const notFolded = ['inset', 'margin', 'dieCut'] as const;

/** The part as the file has it, with another shape and its fields. */
function reshaped(inHand: InHand, at: number, kind: ShapeKind, own: JsonObject): JsonObject {
  const before = partIn(inHand.file, at);
  const gone: readonly string[] = [
    ...ofShapes,
    ...(kind === 'rectangle' ? [] : ofRectangles),
    ...(isFoldedKind(kind) ? notFolded : []),
  ];
  const kept = Object.fromEntries(Object.entries(before).filter(([field]) => !gone.includes(field)));
  const strip = isFoldedKind(kind) ? stripFor(inHand, at, kind) : null;
  if (strip !== null) {
    const { diameter: _diameter, ...rest } = kept;
    const loose = looseAlong(looseAlong(rest, 'across'), 'down');
    return { ...loose, size: typedSize(inHand, strip, at), shape: kind, ...own };
  }
  return { ...sized(inHand, at, kind, kept), shape: kind, ...own };
}

/** With the extent that the shape has: circles by their diameter, all else by size or inset. */
function sized({ layout, arrangement }: InHand, at: number, kind: ShapeKind, part: JsonObject): JsonObject {
  const { part: before, cut } = arrangement.parts[at]!;
  if (kind === 'circle') {
    if (before.shape.kind === 'circle' || cut === null) return part;
    const { size: _size, inset: _inset, ...rest } = part;
    const diameter = typingOf(layout)(shorterOf(cut));
    return { ...looseAlong(looseAlong(rest, 'across'), 'down'), diameter };
  }
  const { diameter, ...rest } = part;
  return diameter === undefined ? part : { ...rest, size: [diameter, diameter] };
}

/**
 * The strip that a part becomes: as long as its longer side was, and as wide as its shorter one, but no wider than can be
 * folded well (a tenth of its length, or what is usual); `null` where its size is not known.
 */
function stripFor({ layout, arrangement }: InHand, at: number, kind: FoldedShape['kind']): Size | null {
  const { part, cut } = arrangement.parts[at]!;
  if (cut === null) return null;
  const [length, shorter] = [Math.max(cut.width, cut.height), Math.min(cut.width, cut.height)];
  const isStrip = isFolded(part.shape) || shorter * 10 <= length;
  const most = roundTo(lengthOfTicks(Math.max(1, Math.floor(length / 10))), usualMark[layout.units], 'down');
  const narrow = Math.max(1, Math.min(shorter, most === 0 ? shorter : most, usualRibbon[layout.units]));
  // A strip that already is one, and a band for loops, keep their width.
  const width = lengthOfTicks(isStrip || kind === 'loops' ? shorter : narrow);
  return cut.height > cut.width
    ? { width, height: lengthOfTicks(length) }
    : { width: lengthOfTicks(length), height: width };
}

/** A size as it is typed, each side as it stands in the file where it is that long. */
function typedSize({ file, layout, arrangement }: InHand, { width, height }: Size, at: number): Json {
  const typing = typingOf(layout);
  const before = partIn(file, at).size;
  const { cut } = arrangement.parts[at]!;
  const one = (length: Length, was: Length | undefined, index: number): Json => {
    const text = isList(before) ? before[index] : undefined;
    return was === length && typeof text === 'string' && text !== 'fill' ? text : typing(length);
  };
  return [one(width, cut?.width, 0), one(height, cut?.height, 1)];
}

/** What of a folded strip is as usual: a ribbon with a gap as wide as itself, two loops that take all of the strip. */
function usualFolds(inHand: InHand, at: number, kind: FoldedShape['kind']): JsonObject {
  const { layout } = inHand;
  const strip = stripFor(inHand, at, kind);
  if (strip === null || kind === 'knot') return {};
  const typing = typingOf(layout);
  const length = lengthOfTicks(Math.max(strip.width, strip.height));
  const width = shorterOf(strip);
  const mark = usualMark[layout.units];
  const whole = (ticks: number) => roundTo(lengthOfTicks(Math.max(mark, Math.floor(ticks))), mark, 'down');
  if (kind === 'loops') {
    const template = whole(length / 4);
    const overlap = lengthOfTicks(length - 4 * template);
    return overlap < 0 || overlap > template
      ? { template: typing(lengthOfTicks(Math.max(1, Math.floor(length / 4)))), loops: 2 }
      : { template: typing(template), loops: 2, overlap: typing(overlap) };
  }
  const template = whole((length * 2) / 5);
  const found = slantForGap({ width, length, template }, width);
  return { template: typing(template), slant: 'slant' in found ? Math.ceil(found.slant) : usualSlant };
}

const usualMark = { in: inches(1, 16), mm: millimetres(1) } as const;
const usualRibbon = { in: inches(1, 2), mm: millimetres(12) } as const;
const usualSlant = 20;

function isFoldedKind(kind: ShapeKind): kind is FoldedShape['kind'] {
  return kind === 'ribbon' || kind === 'loops' || kind === 'knot';
}

/** What of a shape is as usual until she says otherwise (common practice, no source). */
function usualFields(inHand: InHand, at: number, kind: PlainShape): JsonObject {
  if (isFoldedKind(kind)) return usualFolds(inHand, at, kind);
  const { layout, arrangement } = inHand;
  const { cut } = arrangement.parts[at]!;
  if (kind === 'rounded') {
    const most = cut === null ? usualCorner[layout.units] : Math.max(1, Math.floor(shorterOf(cut) / 2));
    return { corner: typingOf(layout)(lengthOfTicks(Math.min(usualCorner[layout.units], most))) };
  }
  if (kind !== 'banner') return {};
  return { ends: cut !== null && cut.height > cut.width ? { bottom: 'notched' } : { right: 'notched' } };
}

const usualCorner = { in: inches(1, 4), mm: millimetres(6) } as const;

function shorterOf({ width, height }: Size): Length {
  return lengthOfTicks(Math.min(width, height));
}

// --- Places ---

const along = {
  across: { start: ['left', 'rightOf'], end: ['right', 'leftOf'] },
  down: { start: ['top', 'below'], end: ['bottom', 'above'] },
} as const;

const neighbours = ['rightOf', 'leftOf', 'below', 'above'] as const;

/** With one end alone fixed along an axis, where both were: a size of its own and both ends would not come out. */
function looseAlong(part: JsonObject, axis: keyof typeof along): JsonObject {
  const { place } = part;
  if (isList(place)) return { ...part, place: place.map((one) => (isObject(one) ? loose(one) : one)) };
  return isObject(place) ? { ...part, place: loose(place) } : part;

  function loose(one: JsonObject): JsonObject {
    const { start, end } = along[axis];
    if (!start.some((field) => field in one)) return one;
    const gone: readonly string[] = end;
    const left = Object.fromEntries(Object.entries(one).filter(([field]) => !gone.includes(field)));
    if (neighbours.some((field) => field in left)) return left;
    const { gap: _gap, ...rest } = left;
    return rest;
  }
}

/** With room for no length that it has not any more. */
function roomFitting(part: JsonObject): JsonObject {
  const { room, ...rest } = part;
  if (!isObject(room)) return part;
  const places = (isList(part.place) ? part.place : [part.place ?? null]).filter(isObject);
  const has = (name: string) =>
    name === 'width' || name === 'height'
      ? part.shape !== 'circle'
      : name in part || places.some((place) => name in place);
  const left = Object.entries(room).filter(([name]) => has(name));
  return left.length === 0 ? rest : { ...rest, room: Object.fromEntries(left) };
}

// --- The edit ---

function partIn(file: SavedLayout, at: number): JsonObject {
  const part = valueAt(file, ['parts', at]);
  assert(isObject(part), 'A part that is given a shape is there', { at });
  return part;
}

/** What makes the part of the file what it should be, told as its new shape. */
function partEdit(file: SavedLayout, at: number, kind: ShapeKind, made: JsonObject): Edit {
  const wanted = roomFitting(made);
  const before = partIn(file, at);
  const fields = [...new Set([...Object.keys(before), ...Object.keys(wanted)])].filter(
    (field) => field !== 'shape' && JSON.stringify(before[field]) !== JSON.stringify(wanted[field]),
  );
  // What goes first makes room for what comes in order.
  const ordered = [
    ...fields.filter((field) => !(field in wanted)),
    ...fields.filter((field) => field in wanted),
  ];
  return together(
    settingOf(file, ['parts', at, 'shape'], kind),
    ...ordered.map((field) => settingOf(file, ['parts', at, field], wanted[field])),
  );
}
