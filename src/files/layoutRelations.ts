import { foldKinds, opensEitherWay, takesAllowance } from '../making/index.ts';
import { type Axis, type Edge, times, type Units } from '../measure/index.ts';
import { excerpt } from './excerpt.ts';
import { choiceOf, isId, lengthIn } from './field.ts';
import { type FileProblem, fileProblem } from './fileProblem.ts';
import { isList, isObject, type Json, type JsonObject } from './json.ts';
import { faces, foldedKinds, neighbourFields, shapeFields, shapeKinds } from './layoutShape.ts';
import { type Path, pathText } from './path.ts';
import { roomProblems } from './room.ts';

/**
 * What is wrong between the fields of a layout file: ids, what they name, and fields that must go together.
 *
 * The file need not be in shape: what is not of its kind is passed over here, since `shapeProblems` names it.
 * So one reading tells everything.
 */
export function layoutRelations(file: JsonObject): FileProblem[] {
  const units = file.units === 'mm' ? 'mm' : 'in';
  const papers = isObject(file.papers) ? file.papers : null;
  const pile = pileOf(file.parts);
  return [
    ...paperReferences(file.base, ['base'], papers),
    ...(isObject(file.base)
      ? [
          ...roomProblems(file.base, ['base'], units),
          ...boughtProblems(file.base, ['base']),
          ...foldProblems(file.base),
        ]
      : []),
    ...Object.entries(papers ?? {}).flatMap(([id, paper]) => [
      ...weightProblems(paper, ['papers', id]),
      ...priceProblems(paper, ['papers', id]),
      ...marginProblems(paper, ['papers', id], units),
    ]),
    ...pile.members.flatMap((member) => [
      ...idProblems(member, pile),
      ...paperReferences(member.part, member.path, papers),
      ...onProblems(member, pile),
      ...extentProblems(member, pile),
      ...shapeProblemsOf(member),
      ...tearProblems(member, units),
      ...adhereProblems(member),
      ...boughtProblems(member.part, member.path),
      ...fromProblems(member),
      ...placeProblems(member, pile),
      ...amountProblems(member, file.cards),
      ...roomProblems(member.part, member.path, units),
    ]),
    ...(isList(file.parts) ? orderProblems(file.order, pile) : []),
    ...makingProblems(file.making),
    ...extrasProblems(file.extras, papers),
  ];
}

/** The most pieces of one part that a set may have: more than anyone will cut, and few enough to be planned. */
const mostPieces = 1_000_000;

function amountProblems({ path, count }: Member, cards: Json | undefined): FileProblem[] {
  // A number of cards that is out of its own range is named by itself.
  if (typeof cards !== 'number' || cards > 100_000 || cards * count <= mostPieces) return [];
  return [fileProblem('piecesTooMany', [...path, 'count'], {}, { cards, count, high: mostPieces })];
}

function weightProblems(paper: Json, path: Path): FileProblem[] {
  return isObject(paper) && 'gsm' in paper && 'lb' in paper
    ? [fileProblem('weightTwice', [...path, 'lb'], { other: pathText([...path, 'gsm']) })]
    : [];
}

// --- The pile, as far as it can be made out ---

interface Member {
  readonly part: JsonObject;
  readonly path: Path;
  readonly index: number;
  readonly id: string | null;
  /** The face it lies on in the end; `null` where what it lies on is not known. */
  readonly face: string | null;
  /** Pieces on each card. */
  readonly count: number;
}

interface Pile {
  readonly members: readonly Member[];
  /** The first part of each id. */
  readonly byId: ReadonlyMap<string, Member>;
}

function pileOf(parts: Json | undefined): Pile {
  const members: Member[] = [];
  const byId = new Map<string, Member>();
  if (!isList(parts)) return { members, byId };
  for (const [index, part] of parts.entries()) {
    if (!isObject(part)) continue;
    const on = part.on ?? 'base';
    const id = textIn(part, 'id');
    const face = typeof on !== 'string' ? null : isFace(on) ? on : (byId.get(on)?.face ?? null);
    const count = typeof part.count === 'number' ? part.count : 1;
    const member = { part, path: ['parts', index], index, id, face, count };
    members.push(member);
    if (id !== null && !byId.has(id)) byId.set(id, member);
  }
  return { members, byId };
}

function isFace(text: string): boolean {
  return faces.some((face) => face === text);
}

function textIn(object: JsonObject, field: string): string | null {
  const value = object[field];
  return typeof value === 'string' ? value : null;
}

// --- Ids and what they name ---

function idProblems(member: Member, { byId }: Pile): FileProblem[] {
  const first = member.id === null ? undefined : byId.get(member.id);
  if (member.id === null || first === undefined || first === member) return [];
  return [
    fileProblem('idTwice', [...member.path, 'id'], {
      found: excerpt(member.id),
      first: pathText(first.path),
    }),
  ];
}

function paperReferences(dealt: Json | undefined, path: Path, papers: JsonObject | null): FileProblem[] {
  if (!isObject(dealt) || papers === null) return [];
  const paper = dealt.paper;
  const named: readonly (readonly [Json, Path])[] = isList(paper)
    ? paper.map((id, index) => [id, [...path, 'paper', index]])
    : [[paper ?? null, [...path, 'paper']]];
  return named.flatMap(([id, at]) => {
    if (typeof id !== 'string' || !isId(id) || Object.hasOwn(papers, id)) return [];
    const ids = Object.keys(papers);
    return [
      fileProblem('paperUnknown', at, {
        found: excerpt(id),
        ...(ids.length === 0 ? {} : { papers: namedSome(ids) }),
      }),
    ];
  });
}

/** The first ids of many. */
function namedSome(ids: readonly string[]): string {
  const shown = ids.slice(0, 8).map((id) => excerpt(id));
  return ids.length > shown.length ? `${shown.join(', ')} …` : shown.join(', ');
}

function onProblems(member: Member, pile: Pile): FileProblem[] {
  const on = textIn(member.part, 'on');
  if (on === null || !isId(on) || isFace(on)) return [];
  return referenceProblem(on, [...member.path, 'on'], member, pile, 'on');
}

/** What is wrong with `id` as the name of an earlier part; nothing when it is one. */
function referenceProblem(
  id: string,
  path: Path,
  member: Member,
  pile: Pile,
  wanted: 'on' | 'neighbour',
): FileProblem[] {
  const found = excerpt(id);
  const other = pile.byId.get(id);
  // Also of a part whose own id stands there a second time.
  if (other !== undefined && other.index < member.index) return [];
  if (id === member.id) return [fileProblem('onItself', path, { found, wanted })];
  if (other !== undefined)
    return [fileProblem('onLater', path, { found, wanted, later: pathText(other.path) })];
  return [fileProblem('onUnknown', path, { found, wanted })];
}

/** Ids of the order that name no part, or one a second time. */
function orderProblems(order: Json | undefined, { byId }: Pile): FileProblem[] {
  if (!isList(order)) return [];
  return order.flatMap((id, index) => {
    if (typeof id !== 'string' || !isId(id) || isFace(id)) return [];
    const at = ['order', index];
    if (!byId.has(id)) return [fileProblem('orderUnknown', at, { found: excerpt(id) })];
    const first = order.indexOf(id);
    return first === index
      ? []
      : [fileProblem('orderTwice', at, { found: excerpt(id), first: pathText(['order', first]) })];
  });
}

/** Stations that nobody would stand at. */
function makingProblems(making: Json | undefined): FileProblem[] {
  if (!isObject(making) || typeof making.stations !== 'number') return [];
  const helpers = making.helpers ?? 1;
  // A number of helpers that is none is named by itself.
  if (typeof helpers !== 'number' || helpers < 1 || making.stations <= helpers) return [];
  return [
    fileProblem('stationsUnmanned', ['making', 'stations'], {}, { stations: making.stations, helpers }),
  ];
}

// --- Size and shape ---

const extents = ['size', 'inset', 'diameter'] as const;

function extentProblems({ part, path }: Member, { byId }: Pile): FileProblem[] {
  const given = extents.filter((field) => field in part);
  const circle = part.shape === 'circle';
  const problems: FileProblem[] = [];
  if (given.length === 0) problems.push(fileProblem('extentMissing', path));
  if (given.length > 1)
    problems.push(
      fileProblem('extentTwice', path, { fields: given.map((field) => `"${field}"`).join(' and ') }),
    );
  if ('diameter' in part && !circle && shapeKinds.some((kind) => kind === (part.shape ?? 'rectangle')))
    problems.push(fileProblem('diameterShape', [...path, 'diameter']));
  if (!circle) return problems;
  if ('size' in part) problems.push(fileProblem('circleSize', [...path, 'size']));
  if ('inset' in part) {
    const on = part.on ?? 'base';
    const below = typeof on === 'string' ? byId.get(on)?.part : undefined;
    const known = typeof on === 'string' && (isFace(on) || below !== undefined);
    if (known && below?.shape !== 'circle')
      problems.push(fileProblem('circleInset', [...path, 'inset'], { on: excerpt(on) }));
  }
  return problems;
}

/** What belongs to other shapes, and what its shape needs and has not. */
function shapeProblemsOf({ part, path }: Member): FileProblem[] {
  const shape = part.shape ?? 'rectangle';
  if (typeof shape !== 'string' || !shapeKinds.some((kind) => kind === shape)) return [];
  const problems = Object.entries(shapeFields).flatMap(([field, of]) =>
    field in part && !of.some((kind) => kind === shape)
      ? [fileProblem('shapeField', [...path, field], { shapes: listedShapes(of) })]
      : [],
  );
  const has = (field: string) =>
    field in part && !(isObject(part[field]) && Object.keys(part[field]).length === 0);
  for (const needed of neededBy[shape] ?? []) {
    if (!has(needed)) problems.push(fileProblem('shapeFieldMissing', [...path, needed], { shape }));
  }
  if (shape === 'rectangle') return problems;
  for (const does of ['torn', 'tuck'] as const) {
    if (does in part)
      problems.push(fileProblem('edgeShape', [...path, does], { does, shape: excerpt(shape) }));
  }
  if (!foldedKinds.some((kind) => kind === shape)) return problems;
  return [...problems, ...foldedProblems({ part, path }, shape)];
}

/** `"ribbon" or "loops"` */
function listedShapes(kinds: readonly string[]): string {
  return kinds.map((kind) => `"${kind}"`).join(' or ');
}

/** What is folded is cut as a plain strip of a given size, and nothing is taken off it. */
function foldedProblems({ part, path }: Pick<Member, 'part' | 'path'>, shape: string): FileProblem[] {
  const problems: FileProblem[] = [];
  if ('inset' in part)
    problems.push(fileProblem('foldedField', [...path, 'inset'], { field: 'inset', shape: excerpt(shape) }));
  for (const field of ['margin', 'dieCut'] as const) {
    if (field in part && part[field] !== false)
      problems.push(fileProblem('foldedField', [...path, field], { field, shape: excerpt(shape) }));
  }
  const { size } = part;
  if (isList(size)) {
    const filled = size.indexOf('fill');
    if (filled >= 0)
      problems.push(fileProblem('foldedFill', [...path, 'size', filled], { shape: excerpt(shape) }));
  }
  return problems;
}

/** The fields without which a shape is none. */
const neededBy: Readonly<Record<string, readonly string[]>> = {
  rounded: ['corner'],
  banner: ['ends'],
  outline: ['outline'],
  ribbon: ['template', 'slant'],
  loops: ['template', 'loops'],
};

/** What is said of tears where nothing is torn, and depths that are out of order. */
function tearProblems({ part, path }: Member, units: Units): FileProblem[] {
  const { tear, torn } = part;
  if (!isObject(tear)) return [];
  const at = [...path, 'tear'];
  if (torn === undefined || (isObject(torn) && Object.keys(torn).length === 0))
    return [fileProblem('tearNowhere', at)];
  const said = (['least', 'usual', 'most'] as const).flatMap((field) => {
    const length = lengthIn(tear[field], units);
    return length === null ? [] : [{ field, length }];
  });
  return said.slice(1).flatMap(({ field, length }, index) => {
    const { field: smaller, length: less } = said[index]!;
    if (less <= length) return [];
    const names = { smaller, larger: field, less: excerpt(tear[smaller]!), more: excerpt(tear[field]!) };
    return [fileProblem('tearOrder', at, names)];
  });
}

function adhereProblems({ part, path }: Member): FileProblem[] {
  if (!('foam' in part) || part.adhere === 'raised') return [];
  return [fileProblem('foamFlat', [...path, 'foam'])];
}

/** The thickness and weight of a thing that is cut from paper. */
function boughtProblems(holder: JsonObject, path: Path): FileProblem[] {
  if (holder.paper === null || holder.paper === undefined) return [];
  return ['thickness', 'grams'].flatMap((field) =>
    field in holder ? [fileProblem('boughtOnly', [...path, field])] : [],
  );
}

/** Where a thing that is bought would be cut from. */
function fromProblems({ part, path }: Member): FileProblem[] {
  return 'from' in part && part.paper === null ? [fileProblem('fromBought', [...path, 'from'])] : [];
}

/** Extras without one size, with what belongs to other shapes, or of papers that are not there. */
function extrasProblems(extras: Json | undefined, papers: JsonObject | null): FileProblem[] {
  if (!isList(extras)) return [];
  return extras.flatMap((extra, index) => {
    if (!isObject(extra)) return [];
    const path = ['extras', index];
    const problems = 'paper' in extra ? paperReferences(extra, path, papers) : [];
    const round = 'diameter' in extra;
    if (round === 'size' in extra) problems.push(fileProblem('extraSize', path, {}, { both: Number(round) }));
    const shape = extra.shape ?? (round ? 'circle' : 'rectangle');
    if (typeof shape !== 'string' || !shapeKinds.some((kind) => kind === shape)) return problems;
    if (round !== (shape === 'circle'))
      problems.push(fileProblem('extraRound', [...path, round ? 'diameter' : 'shape']));
    for (const [field, of] of [
      ['corner', 'rounded'],
      ['outline', 'outline'],
    ] as const) {
      if (field in extra && shape !== of)
        problems.push(fileProblem('shapeField', [...path, field], { shapes: listedShapes([of]) }));
      if (!(field in extra) && shape === of)
        problems.push(fileProblem('extraFieldMissing', [...path, field], { shape }));
    }
    return problems;
  });
}

/** What only other kinds of fold have. */
function foldProblems(base: JsonObject): FileProblem[] {
  const fold = foldKinds.find((kind) => kind === base.fold);
  if (fold === undefined) return [];
  return foldFields.flatMap(({ field, code, has }) => {
    if (!(field in base) || has(fold)) return [];
    const folds = choiceOf(foldKinds.filter(has));
    return [fileProblem(code, ['base', field], { fold: `"${fold}"`, folds })];
  });
}

const foldFields = [
  { field: 'opens', code: 'opensFixed', has: opensEitherWay },
  { field: 'allowance', code: 'allowanceNowhere', has: takesAllowance },
] as const;

// --- Places ---

/** The ends that each pair of fields fixes. */
const ends: readonly { readonly edge: Edge; readonly neighbour: (typeof neighbourFields)[number] }[] = [
  { edge: 'top', neighbour: 'below' },
  { edge: 'bottom', neighbour: 'above' },
  { edge: 'left', neighbour: 'rightOf' },
  { edge: 'right', neighbour: 'leftOf' },
];

function placeProblems(member: Member, pile: Pile): FileProblem[] {
  const place = member.part.place;
  const path = [...member.path, 'place'];
  if (!isList(place)) return onePlaceProblems(place, path, member, pile);
  const problems = place.flatMap((one, index) => onePlaceProblems(one, [...path, index], member, pile));
  if (place.length !== member.count)
    problems.push(fileProblem('placesCount', path, {}, { found: place.length, wanted: member.count }));
  return problems;
}

function onePlaceProblems(place: Json | undefined, path: Path, member: Member, pile: Pile): FileProblem[] {
  if (!isObject(place)) return [];
  const problems: FileProblem[] = [];
  for (const { edge, neighbour } of ends) {
    if (edge in place && neighbour in place) {
      const [first, second] = Object.keys(place).filter((field) => field === edge || field === neighbour);
      problems.push(
        fileProblem('endFixedTwice', [...path, second ?? neighbour], {
          edge,
          other: pathText([...path, first ?? edge]),
        }),
      );
    }
    const id = textIn(place, neighbour);
    if (id !== null && isId(id)) problems.push(...neighbourProblems(id, [...path, neighbour], member, pile));
  }
  if ('gap' in place && !neighbourFields.some((field) => field in place))
    problems.push(
      fileProblem('gapAlone', [...path, 'gap'], {
        fields: neighbourFields.map((field) => `"${field}"`).join(', '),
      }),
    );
  return problems;
}

function neighbourProblems(id: string, path: Path, member: Member, pile: Pile): FileProblem[] {
  const wrong = referenceProblem(id, path, member, pile, 'neighbour');
  const other = pile.byId.get(id);
  if (wrong.length > 0 || other === undefined) return wrong;
  const names = { found: excerpt(id), wanted: 'neighbour' };
  if (other.face !== null && member.face !== null && other.face !== member.face)
    return [fileProblem('neighbourFace', path, { ...names, theirs: other.face, ours: member.face })];
  return [];
}

// --- Sheets ---

function priceProblems(paper: Json, path: Path): FileProblem[] {
  const sheets = isObject(paper) && isList(paper.sheets) ? paper.sheets : [];
  const bought = [...sheets.entries()].filter(
    (entry): entry is [number, JsonObject] => isObject(entry[1]) && entry[1].scrap !== true,
  );
  const priced = bought.find(([, sheet]) => 'price' in sheet);
  if (priced === undefined) return [];
  return bought
    .filter(([, sheet]) => !('price' in sheet))
    .map(([index]) =>
      fileProblem('priceMissing', [...path, 'sheets', index, 'price'], {
        other: pathText([...path, 'sheets', priced[0]]),
      }),
    );
}

function marginProblems(paper: Json, path: Path, units: Units): FileProblem[] {
  const sheets = isObject(paper) && isList(paper.sheets) ? paper.sheets : [];
  return sheets.flatMap((sheet, index) => {
    if (!isObject(sheet) || !isList(sheet.size) || !('margin' in sheet)) return [];
    const [width, height] = sheet.size;
    const axes: readonly [Axis, Json | undefined, Edge, Edge][] = [
      ['width', width, 'left', 'right'],
      ['height', height, 'top', 'bottom'],
    ];
    const at = [...path, 'sheets', index, 'margin'];
    for (const [axis, size, before, after] of axes) {
      const whole = lengthIn(size, units);
      const margin = marginAlong(sheet.margin, before, after, units);
      if (whole !== null && whole > 0 && margin !== null && margin >= whole)
        return [fileProblem('marginAll', at, { axis, size: excerpt(size ?? null) }, { margin, whole })];
    }
    return [];
  });
}

/** The two margins along one axis together, as far as they can be read. */
function marginAlong(margin: Json | undefined, before: Edge, after: Edge, units: Units): number | null {
  if (!isObject(margin)) {
    const each = lengthIn(margin, units);
    return each === null ? null : times(each, 2);
  }
  return (lengthIn(margin[before], units) ?? 0) + (lengthIn(margin[after], units) ?? 0);
}
