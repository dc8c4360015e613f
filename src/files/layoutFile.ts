import stringify from 'json-stringify-pretty-compact';
import {
  type AdhesiveSaid,
  type Anchor,
  type Bought,
  type Dealt,
  type Envelope,
  type Extent,
  type Extra,
  type Layout,
  type MakingSaid,
  type Part,
  type Place,
  type Room,
  type RoomName,
  type Rooms,
  roomNames,
  type Shape,
  type Span,
  type Tear,
} from '../layout/index.ts';
import { type AdhesiveUse, adhesivesFor, adhesiveUses, grammageOf } from '../making/index.ts';
import { type Edge, type Length, readLength, type Size, type Units, zero } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { type BannerEnd, readPath } from '../shape/index.ts';
import type { Colour, Paper, Price, SheetStock } from '../stash/index.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { readFileText, tellable } from './fileText.ts';
import { withoutForeignFields } from './foreignField.ts';
import { withHint } from './hint.ts';
import { isList, isObject, type JsonObject } from './json.ts';
import { layoutRelations } from './layoutRelations.ts';
import { type LayoutShape, layoutShape, limits } from './layoutShape.ts';
import { type Path, pathText } from './path.ts';
import { shapeProblems } from './shapeProblems.ts';

/** The version of the layout file that this program writes, and the newest it reads. */
export const layoutVersion = 1;

/**
 * A layout file as it was read, to be written again: every field as it was typed, in its order, with the `x-`
 * fields of other tools. (Names that are whole numbers, as the id of a paper may be, come first in their object.)
 */
export type SavedLayout = JsonObject;

/**
 * The layout in the text of a `*.card.json` file, or everything that is wrong with the file, in its order.
 *
 * The layout keeps every promise of its type: each length is in range, each id names what it may name. Whether the
 * sizes work out is for the layout itself to say. Time grows with the length of the text and no faster.
 */
export function readLayoutFile(
  text: string,
): { layout: Layout; file: SavedLayout } | { problems: FileProblem[] } {
  const read = readFileText(text, 'cardwright', layoutVersion);
  return 'problems' in read ? read : readSavedLayout(read.file, read.repeated);
}

/**
 * The layout in a file that is no text any more, as `readLayoutFile` finds it; `repeated` are problems that were
 * found on the way to it.
 */
export function readSavedLayout(
  file: SavedLayout,
  repeated: readonly FileProblem[] = [],
): { layout: Layout; file: SavedLayout } | { problems: FileProblem[] } {
  // Far too large lists are not looked into.
  const tooMany = limitProblems(file);
  if (tooMany.length > 0) return { problems: tooMany };

  const own = withoutForeignFields(file);
  const shape = layoutShape(own.units === 'mm' ? 'mm' : 'in').safeParse(own);
  const problems = [
    ...repeated,
    ...(shape.success ? [] : shapeProblems(shape.error, own)),
    ...layoutRelations(own),
  ];
  if (problems.length > 0)
    return { problems: tellable(problems, file).map((problem) => withHint(problem, own)) };
  assert(shape.success, 'A file without problems is in shape');
  return { layout: layoutOf(shape.data), file };
}

/**
 * The text of a layout file, two spaces a step, what fits on a line of 100 characters on one line, with a line end at
 * its end; the same text for the same file.
 */
export function writeLayoutFile(file: SavedLayout): string {
  return `${stringify(file, { indent: 2, maxLength: 100 })}
`;
}

/** Lists that hold more than is ever looked at. */
function limitProblems(file: JsonObject): FileProblem[] {
  const papers = isObject(file.papers) ? Object.entries(file.papers) : [];
  const parts = isList(file.parts) ? file.parts : [];
  const extras = isList(file.extras) ? file.extras : [];
  return [
    ...tooMany(['extras'], extras.length, limits.extras),
    ...tooMany(['papers'], papers.length, limits.papers),
    ...papers
      .slice(0, limits.papers)
      .flatMap(([id, paper]) =>
        isObject(paper) && isList(paper.sheets)
          ? tooMany(['papers', id, 'sheets'], paper.sheets.length, limits.sheets)
          : [],
      ),
    ...tooMany(['parts'], parts.length, limits.parts),
    ...parts.slice(0, limits.parts).flatMap((part, index) => {
      if (!isObject(part)) return [];
      const { paper, place } = part;
      return [
        ...(isList(place) ? tooMany(['parts', index, 'place'], place.length, limits.pieces) : []),
        ...(isList(paper) ? tooMany(['parts', index, 'paper'], paper.length, limits.papersDealt) : []),
      ];
    }),
  ];
}

function tooMany(path: Path, found: number, high: number): FileProblem[] {
  return found > high ? [fileProblem('tooMany', path, {}, { found, high })] : [];
}

// --- From a file in shape to a layout ---

function layoutOf(shape: LayoutShape): Layout {
  const lengths = new Lengths(shape.units);
  return {
    title: shape.title ?? '',
    units: shape.units,
    cards: shape.cards,
    base: {
      size: lengths.size(shape.base.size, ['base', 'size']),
      fold: shape.base.fold,
      opens: shape.base.opens ?? 'sideways',
      allowance: lengths.readOr(null, shape.base.allowance, ['base', 'allowance']),
      ...dealtOf(shape.base),
      ...boughtOf(shape.base, lengths, ['base']),
      ...roomsOf(shape.base.room, lengths, ['base', 'room']),
    },
    papers: new Map(
      Object.entries(shape.papers).map(([id, paper]) => [id, paperOf(id, paper, lengths, ['papers', id])]),
    ),
    parts: shape.parts.map((part, index) => partOf(part, lengths, ['parts', index])),
    envelope: envelopeOf(shape.envelope, lengths),
    post: shape.post ?? null,
    ...(shape.adhesives === undefined ? {} : { adhesives: adhesivesOf(shape.adhesives, lengths) }),
    ...(shape.order === undefined ? {} : { order: shape.order }),
    ...(shape.making === undefined ? {} : { making: makingOf(shape.making) }),
    ...(shape.smallestScrap === undefined
      ? {}
      : { smallestScrap: lengths.read(shape.smallestScrap, ['smallestScrap']) }),
    ...(shape.extras === undefined
      ? {}
      : { extras: shape.extras.map((extra, index) => extraOf(extra, lengths, ['extras', index])) }),
    typed: lengths.typed,
  };
}

/** Reads the lengths of one file and keeps what was typed. */
class Lengths {
  readonly typed = new Map<string, string>();

  constructor(private readonly units: Units) {}

  read(text: string, path: Path): Length {
    const reading = readLength(text, this.units);
    assert(reading.ok, 'A length in a file that is in shape can be read', { text });
    this.typed.set(pathText(path), text);
    return reading.length;
  }

  /** Of an optional field. */
  readOr<Other>(other: Other, text: string | undefined, path: Path): Length | Other {
    return text === undefined ? other : this.read(text, path);
  }

  size([width, height]: readonly [string, string], path: Path): Size {
    return { width: this.read(width, [...path, 0]), height: this.read(height, [...path, 1]) };
  }

  /** By edge; zero where nothing is said. */
  edges(texts: { readonly [edge in Edge]?: string | undefined }, path: Path): Record<Edge, Length> {
    return {
      left: this.readOr(zero, texts.left, [...path, 'left']),
      right: this.readOr(zero, texts.right, [...path, 'right']),
      top: this.readOr(zero, texts.top, [...path, 'top']),
      bottom: this.readOr(zero, texts.bottom, [...path, 'bottom']),
    };
  }
}

type PaperShape = LayoutShape['papers'][string];
type PartShape = LayoutShape['parts'][number];
type PlaceShape = Exclude<PartShape['place'], undefined | readonly unknown[]>;

function dealtOf(shape: LayoutShape['base'] | PartShape): Dealt {
  const { paper } = shape;
  return {
    papers: paper === null ? [] : typeof paper === 'string' ? [paper] : paper,
    side: shape.side ?? 'front',
    turn: shape.turn ?? null,
    spare: shape.spare ?? 0,
  };
}

function paperOf(id: string, paper: PaperShape, lengths: Lengths, path: Path): Paper {
  return {
    id,
    name: paper.name ?? id,
    kind: paper.kind ?? null,
    gsm: paper.lb === undefined ? (paper.gsm ?? null) : grammageOf(paper.lb.pounds, paper.lb.of),
    ...(paper.lb === undefined ? {} : { pounds: paper.lb }),
    thickness: lengths.readOr(null, paper.thickness, [...path, 'thickness']),
    colour: colourOf(paper.colour),
    core: colourOf(paper.core),
    seeThrough: paper.seeThrough ?? paper.kind === 'vellum',
    up: paper.up ?? 'any',
    back:
      paper.back === undefined
        ? null
        : { name: paper.back.name, up: paper.back.up ?? 'any', colour: colourOf(paper.back.colour) },
    sheets: paper.sheets.map((sheet, index) => sheetOf(sheet, lengths, [...path, 'sheets', index])),
  };
}

/** In small letters, however it was typed. */
function colourOf(typed: string | undefined): Colour | null {
  return typed?.toLowerCase() ?? null;
}

function sheetOf(sheet: PaperShape['sheets'][number], lengths: Lengths, path: Path): SheetStock {
  return {
    size: lengths.size(sheet.size, [...path, 'size']),
    count: sheet.count,
    price: sheet.price === undefined ? null : priceOf(sheet.price),
    grain: sheet.grain ?? null,
    scrap: sheet.scrap ?? false,
    margin: marginOf(sheet.margin, lengths, [...path, 'margin']),
  };
}

function marginOf(
  margin: PaperShape['sheets'][number]['margin'],
  lengths: Lengths,
  path: Path,
): Record<Edge, Length> {
  if (typeof margin !== 'string') return lengths.edges(margin ?? {}, path);
  const each = lengths.read(margin, path);
  return { left: each, right: each, top: each, bottom: each };
}

/** `0.35` → 3500 ten-thousandths. */
function priceOf(text: string): Price {
  const [whole = '', decimals = ''] = text.split(/[.,]/);
  return Number(whole + decimals.padEnd(4, '0'));
}

function partOf(part: PartShape, lengths: Lengths, path: Path): Part {
  return {
    id: part.id,
    name: part.name ?? part.id,
    on: part.on ?? 'base',
    shape: shapeOf(part, lengths, path),
    extent: extentOf(part, lengths, path),
    torn: lengths.edges(part.torn ?? {}, [...path, 'torn']),
    tear: tearOf(part.tear, lengths, [...path, 'tear']),
    tuck: lengths.edges(part.tuck ?? {}, [...path, 'tuck']),
    margin: lengths.readOr(zero, part.margin, [...path, 'margin']),
    dieCut: part.dieCut ?? false,
    stamped: part.stamped ?? false,
    places: placesOf(part, lengths, [...path, 'place']),
    ...dealtOf(part),
    lies: part.lies ?? 'upright',
    adhere: part.adhere ?? 'flat',
    foam: lengths.readOr(null, part.foam, [...path, 'foam']),
    ...boughtOf(part, lengths, path),
    ...(part.minutes === undefined
      ? {}
      : { minutes: { ready: part.minutes.ready ?? null, lay: part.minutes.lay ?? null } }),
    ...roomsOf(part.room, lengths, [...path, 'room']),
    ...(part.from === undefined ? {} : { from: part.from }),
  };
}

type ExtraShape = Exclude<LayoutShape['extras'], undefined>[number];

function extraOf(extra: ExtraShape, lengths: Lengths, path: Path): Extra {
  const { diameter, size, paper } = extra;
  const across = diameter === undefined ? null : lengths.read(diameter, [...path, 'diameter']);
  assert(across !== null || size !== undefined, 'An extra in a file without problems has a size', {
    name: extra.name,
  });
  return {
    name: extra.name,
    shape: extraShapeOf(extra, lengths, path),
    size: across === null ? lengths.size(size!, [...path, 'size']) : { width: across, height: across },
    margin: lengths.readOr(zero, extra.margin, [...path, 'margin']),
    count: extra.count ?? null,
    papers: paper === undefined ? [] : typeof paper === 'string' ? [paper] : paper,
    turn: extra.turn ?? null,
  };
}

function extraShapeOf(extra: ExtraShape, lengths: Lengths, path: Path): Shape {
  const kind = extra.diameter === undefined ? (extra.shape ?? 'rectangle') : 'circle';
  if (kind === 'rounded') return { kind, corner: lengths.readOr(zero, extra.corner, [...path, 'corner']) };
  if (kind !== 'outline') return { kind };
  const reading = readPath(extra.outline ?? '');
  assert(reading.ok, 'An outline in a file that is in shape can be read', { name: extra.name });
  return { kind, path: reading.path };
}

function shapeOf(part: PartShape, lengths: Lengths, path: Path): Shape {
  const kind = part.shape ?? 'rectangle';
  switch (kind) {
    case 'rounded':
      return { kind, corner: lengths.readOr(zero, part.corner, [...path, 'corner']) };
    case 'banner':
      return {
        kind,
        ends: endsOf(part.ends),
        depth: lengths.readOr(null, part.endDepth, [...path, 'endDepth']),
      };
    case 'outline': {
      const reading = readPath(part.outline ?? '');
      assert(reading.ok, 'An outline in a file that is in shape can be read', { id: part.id });
      return { kind, path: reading.path };
    }
    case 'ribbon':
      return {
        kind,
        template: lengths.readOr(zero, part.template, [...path, 'template']),
        slant: part.slant ?? 0,
        strip: stripOf(part, lengths, path),
      };
    case 'loops':
      return {
        kind,
        template: lengths.readOr(zero, part.template, [...path, 'template']),
        loops: part.loops ?? 1,
        overlap: lengths.readOr(zero, part.overlap, [...path, 'overlap']),
        strip: stripOf(part, lengths, path),
      };
    case 'knot':
      return { kind, strip: stripOf(part, lengths, path) };
    default:
      return { kind };
  }
}

/** The strip that a folded part is cut as. */
function stripOf(part: PartShape, lengths: Lengths, path: Path): Size {
  const extent = extentOf(part, lengths, path);
  assert(
    extent.by === 'size' && extent.width !== null && extent.height !== null,
    'A folded strip in a file without problems has a size',
    { id: part.id },
  );
  return { width: extent.width, height: extent.height };
}

function endsOf(ends: PartShape['ends']): Readonly<Partial<Record<Edge, BannerEnd>>> {
  const said = Object.entries(ends ?? {}).filter(([, end]) => end !== undefined);
  return Object.fromEntries(said);
}

function tearOf(tear: PartShape['tear'], lengths: Lengths, path: Path): Tear | null {
  if (tear === undefined) return null;
  const depth = (field: keyof Tear) => lengths.readOr(null, tear[field], [...path, field]);
  return { least: depth('least'), usual: depth('usual'), most: depth('most'), core: depth('core') };
}

interface BoughtShape {
  readonly thickness?: string | undefined;
  readonly grams?: number | undefined;
}

function boughtOf({ thickness, grams }: BoughtShape, lengths: Lengths, path: Path): Bought {
  return {
    thickness: lengths.readOr(null, thickness, [...path, 'thickness']),
    grams: grams ?? null,
  };
}

function envelopeOf(envelope: LayoutShape['envelope'], lengths: Lengths): Envelope | null {
  if (envelope === undefined) return null;
  return {
    name: envelope.name ?? '',
    size: lengths.size(envelope.size, ['envelope', 'size']),
    gsm: envelope.gsm ?? null,
    ...boughtOf(envelope, lengths, ['envelope']),
  };
}

type AdhesivesShape = NonNullable<LayoutShape['adhesives']>;

function adhesivesOf(
  shape: AdhesivesShape,
  lengths: Lengths,
): Readonly<Partial<Record<AdhesiveUse, AdhesiveSaid>>> {
  const said: Partial<Record<AdhesiveUse, AdhesiveSaid>> = {};
  for (const use of adhesiveUses) {
    const one = shape[use];
    if (one === undefined) continue;
    const length = (field: 'width' | 'thickness' | 'inset' | 'span') =>
      lengths.readOr(null, one[field], ['adhesives', use, field]);
    said[use] = {
      kind: one.kind ?? adhesivesFor[use][0],
      width: length('width'),
      thickness: length('thickness'),
      inset: length('inset'),
      span: length('span'),
      roll: 'roll' in one ? lengths.readOr(null, one.roll, ['adhesives', use, 'roll']) : null,
      pack: 'pack' in one ? (one.pack ?? null) : null,
      handle: one.handle ?? null,
      dry: one.dry ?? null,
      shows: one.shows ?? null,
    };
  }
  return said;
}

function makingOf({ helpers, stations, dryAtOnce, minutes }: NonNullable<LayoutShape['making']>): MakingSaid {
  return {
    helpers: helpers ?? null,
    stations: stations ?? null,
    dryAtOnce: dryAtOnce ?? null,
    cut: minutes?.cut ?? null,
    score: minutes?.score ?? null,
    close: minutes?.close ?? null,
  };
}

type RoomsShape = 'none' | { readonly [name in RoomName]?: readonly [string, string] | undefined };

function roomsOf(room: RoomsShape | undefined, lengths: Lengths, path: Path): { readonly rooms?: Rooms } {
  if (room === undefined) return {};
  if (room === 'none') return { rooms: 'none' };
  const rooms: Partial<Record<RoomName, Room>> = {};
  for (const name of roomNames) {
    const pair = room[name];
    if (pair === undefined) continue;
    const [least, most] = pair.map((text, end) => lengths.read(text, [...path, name, end]));
    assert(least !== undefined && most !== undefined, 'A room has two ends', { name });
    rooms[name] = { least, most };
  }
  return { rooms };
}

function extentOf(part: PartShape, lengths: Lengths, path: Path): Extent {
  if (part.inset !== undefined) return { by: 'inset', inset: lengths.read(part.inset, [...path, 'inset']) };
  if (part.diameter !== undefined)
    return { by: 'diameter', diameter: lengths.read(part.diameter, [...path, 'diameter']) };
  assert(part.size !== undefined, 'A part has a size, an inset or a diameter', { id: part.id });
  const [width, height] = part.size.map((text, axis) =>
    text === 'fill' ? null : lengths.read(text, [...path, 'size', axis]),
  );
  return { by: 'size', width: width ?? null, height: height ?? null };
}

/** One for each piece: the listed ones, or the one place for all. */
function placesOf(part: PartShape, lengths: Lengths, path: Path): Place[] {
  const { place } = part;
  if (Array.isArray(place)) return place.map((one, index) => placeOf(one, lengths, [...path, index]));
  const one = placeOf(place ?? {}, lengths, path);
  return Array.from({ length: part.count ?? 1 }, () => one);
}

function placeOf(place: PlaceShape, lengths: Lengths, path: Path): Place {
  const { gap } = place;
  const [across, down] = Array.isArray(gap)
    ? [lengths.read(gap[0], [...path, 'gap', 0]), lengths.read(gap[1], [...path, 'gap', 1])]
    : [lengths.readOr(zero, gap, [...path, 'gap']), lengths.readOr(zero, gap, [...path, 'gap'])];
  const anchor = (edge: Edge, neighbour: string | undefined, space: Length): Anchor | null => {
    const text = place[edge];
    if (text !== undefined) return { from: 'edge', distance: lengths.read(text, [...path, edge]) };
    return neighbour === undefined ? null : { from: 'part', part: neighbour, gap: space };
  };
  const span = (start: Anchor | null, end: Anchor | null): Span => ({ start, end });
  return {
    across: span(anchor('left', place.rightOf, across), anchor('right', place.leftOf, across)),
    down: span(anchor('top', place.below, down), anchor('bottom', place.above, down)),
  };
}
