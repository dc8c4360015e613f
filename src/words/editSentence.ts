import { roomNames } from '../layout/index.ts';
import {
  type Axis,
  type Glyphs,
  type Length,
  lengthOfTicks,
  showLengthWithUnit,
  type Units,
} from '../measure/index.ts';
import { adhesiveFieldWords } from './adhesiveWords.ts';
import { capital, listed } from './count.ts';
import { type MendTold, mendWords } from './mendWords.ts';
import { layingWords, type PartLaying } from './partLaying.ts';

/** What an edit did to a layout file, as data. */
export type EditTold =
  | {
      readonly what: 'set';
      readonly of: EditOwner;
      /** The field, as a path below what it belongs to: `size[0]`, `place.left`, `cards`. */
      readonly field: string;
      /** As they were typed, or as JSON, with the names of parts and papers for their ids; `null`: nothing. */
      readonly from: string | null;
      readonly to: string | null;
    }
  | { readonly what: 'part added' | 'part taken' | 'paper added' | 'paper taken'; readonly name: string }
  /** The sheets of a set that is cut were taken out of the stash, and its leftovers put in. */
  | { readonly what: 'restocked' }
  | { readonly what: 'part moved'; readonly name: string; readonly up: boolean }
  | {
      readonly what: 'piece moved';
      readonly name: string;
      /** To the right and downwards; negative: to the left, upwards. */
      readonly across: Length;
      readonly down: Length;
      readonly units: Units;
    }
  | {
      readonly what: 'part laid';
      readonly name: string;
      readonly axis: Axis;
      readonly laying: PartLaying;
      /** The name of the part it is laid to; `null`: none. */
      readonly beside: string | null;
    }
  | { readonly what: 'mended'; readonly of: EditOwner; readonly mend: MendTold; readonly units: Units };

/** What an edited field belongs to. */
export type EditOwner =
  | { readonly kind: 'set' | 'base' }
  | { readonly kind: 'part' | 'paper'; readonly name: string };

/**
 * What was done, in a few words, for a list of what can be undone: `Panel: width 2 1/4 in instead of 2 in.`
 *
 * Lengths stay as they were typed, in other units too; printed, with the fractions and signs of a printed page.
 */
export function editSentence(told: EditTold, glyphs: Glyphs = 'typed'): string {
  switch (told.what) {
    case 'set': {
      const owner = 'name' in told.of ? told.of.name : ownerWords[told.of.kind];
      return `${capital(owner)}: ${changeWords(told, glyphs)}.`;
    }
    case 'mended': {
      const owner = 'name' in told.of ? told.of.name : ownerWords[told.of.kind];
      return `${capital(owner)}: ${mendWords(told.mend, { units: told.units, glyphs })}.`;
    }
    case 'part added':
      return `${capital(told.name)} laid on the pile.`;
    case 'part taken':
      return `${capital(told.name)} taken off the pile.`;
    case 'part moved':
      return `${capital(told.name)} moved ${told.up ? 'up' : 'down'} the pile.`;
    case 'piece moved':
      return `${capital(told.name)} ${movedWords(told, glyphs)}.`;
    case 'part laid':
      return `${capital(told.name)} laid ${layingWords(told.laying, told.axis, told.beside ?? '')}.`;
    case 'restocked':
      return 'The sheets that were cut taken out of the stash, and what is left of them put in.';
    case 'paper added':
      return `${capital(told.name)} put into the stash.`;
    case 'paper taken':
      return `${capital(told.name)} taken out of the stash.`;
  }
}

function movedWords(
  {
    across,
    down,
    units,
  }: {
    readonly across: Length;
    readonly down: Length;
    readonly units: Units;
  },
  glyphs: Glyphs,
): string {
  const way = (by: Length, forth: string, back: string) =>
    by === 0
      ? []
      : [`${showLengthWithUnit(lengthOfTicks(Math.abs(by)), units, glyphs)} ${by > 0 ? forth : back}`];
  const ways = [...way(across, 'to the right', 'to the left'), ...way(down, 'down', 'up')];
  return ways.length === 0 ? 'laid back where it was' : `moved ${listed(ways)}`;
}

const ownerWords = { set: 'the set', base: 'the base' } as const;

function changeWords(
  { field, from, to }: { readonly field: string; readonly from: string | null; readonly to: string | null },
  glyphs: Glyphs,
): string {
  const label = fieldWords(field) ?? field;
  if (isFlag(field)) return to === 'true' ? label : `not ${label}`;
  const [was, is] = [from, to].map((text) => (text === null ? null : valueWords(field, text, glyphs)));
  if (is === null || is === undefined)
    return was === null ? `${label} left out` : `${label} left out (it was ${was})`;
  return was === null || was === undefined ? `${label} ${is}` : `${label} ${is} instead of ${was}`;
}

function isFlag(field: string): boolean {
  return field === 'dieCut' || field === 'stamped' || field.endsWith('.scrap');
}

/** What people call a field of a layout, by its path below what it belongs to; `null`: it has no word of its own. */
export function fieldWords(field: string): string | null {
  const sheet = /^sheets\[(?<index>\d+)\](?:\.(?<rest>.+))?$/.exec(field)?.groups;
  if (sheet !== undefined) {
    const own = sheet.rest === undefined ? 'sheets' : sheetWords[sheet.rest];
    if (own === undefined) return null;
    return Number(sheet.index) === 0 ? own : `sheets no. ${Number(sheet.index) + 1}, ${own}`;
  }
  const piece = /^place\[(?<index>\d+)\](?<rest>.*)$/.exec(field)?.groups;
  if (piece !== undefined) {
    const own = words[`place${piece.rest}`];
    return own === undefined ? null : `piece ${Number(piece.index) + 1}, ${own}`;
  }
  const room = /^room\.(?<name>\w+)(?:\[(?<end>[01])\])?$/.exec(field)?.groups;
  if (room !== undefined) {
    const end = { 0: 'least ', 1: 'most ' }[room.end ?? ''] ?? '';
    const named = roomNames.find((name) => name === room.name);
    return named === undefined ? null : `${end}room for ${placeName(named)}`;
  }
  if (field.startsWith('adhesives.')) return adhesiveFieldWords(field.slice('adhesives.'.length));
  if (/^order\[\d+\]$/.test(field)) return words.order ?? null;
  const extra = /^extras\[(?<index>\d+)\](?:\.(?<rest>.+))?$/.exec(field)?.groups;
  if (extra !== undefined) {
    const own =
      extra.rest === undefined ? words.extras : words[extra.rest.replace(/^paper\[\d+\]$/, 'paper')];
    return own === undefined ? null : `wanted of the leftovers, no. ${Number(extra.index) + 1}, ${own}`;
  }
  return words[field.replace(/^paper\[\d+\]$/, 'paper')] ?? null;
}

function placeName(name: string): string {
  return name in edgeWords ? `the distance ${edgeWords[name]}` : `the ${name}`;
}

const edgeWords: Readonly<Record<string, string>> = {
  left: 'from the left',
  right: 'from the right',
  top: 'from the top',
  bottom: 'from the bottom',
};

/** A value as a sentence says it: trade words for those of the file, pairs and lists written out. */
function valueWords(field: string, text: string, glyphs: Glyphs): string {
  const known = valuesOf(field)[text];
  if (known !== undefined) return known;
  const value = jsonOf(text);
  if (value === null) return glyphs === 'printed' && isLength(field) ? printedText(text) : text;
  return listOrFields(field, value, glyphs);
}

/** Whether it is a length, or a list of some, that stands in a field. */
function isLength(field: string): boolean {
  return /(?:^|\.)(?:size|inset|diameter|torn|tear\.(?:least|usual|most|core)|tuck|corner|endDepth|template|overlap|foam|gap|room|left|right|top|bottom|thickness|allowance|margin|smallestScrap|adhesives\.\w+\.(?:width|span|roll))(?:\.\w+)?(?:\[\d+\])?$/.test(
    field,
  );
}

/** A length as it was typed, in the characters of a printed page: `-2 1/4 in` becomes `−2 1⁄4 in`. */
function printedText(text: string): string {
  return text
    .replace(/(\d)\s*[-\s]\s*(?=\d+\/\d)/gu, '$1\u00a0')
    .replace(/(\d)\/(?=\d)/gu, '$1⁄')
    .replace(/^-/u, '−')
    .replace(/(\d) (?=\p{L}+\.?$)/u, '$1\u00a0');
}

function valuesOf(field: string): Readonly<Record<string, string>> {
  if (/^paper(?:\[|$)/.test(field)) return { null: 'none (bought)' };
  if (field.endsWith('.count')) return { null: 'as many as needed' };
  return values[field.replace(/^back\./, '')] ?? {};
}

const values: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  on: { base: 'the front', inside: 'the inside', back: 'the back' },
  fold: {
    left: 'at the side',
    top: 'at the top',
    gate: 'as a gate',
    shutter: 'as a shutter',
    trifold: 'as a trifold',
    roll: 'as a roll',
    parallel: 'in half twice',
    z: 'as a Z',
    none: 'none',
  },
  opens: { sideways: 'sideways', upwards: 'upwards' },
  post: { us: 'the United States', uk: 'the United Kingdom', ca: 'Canada', de: 'Germany', au: 'Australia' },
  units: { in: 'inches', mm: 'millimetres' },
  up: { any: 'any way up', 'one-way': 'one way up', 'two-way': 'two ways up' },
  room: { none: 'none' },
};

type Told = readonly unknown[] | Readonly<Record<string, unknown>>;

/** The list or object that a text is the JSON of; `null`: it is another text. */
function jsonOf(text: string): Told | null {
  if (!/^[[{]/.test(text)) return null;
  try {
    return JSON.parse(text) as Told;
  } catch {
    return null;
  }
}

function listOrFields(field: string, value: Told, glyphs: Glyphs): string {
  const shown = (one: unknown, at: string) =>
    valueWords(at, typeof one === 'string' ? one : JSON.stringify(one), glyphs);
  if (Array.isArray(value)) {
    if (/size$/.test(field))
      return value.map((one) => shown(one, field)).join(glyphs === 'printed' ? '\u00a0× ' : ' x ');
    if (/^room\./.test(field)) return value.map((one) => shown(one, field)).join(' to ');
    if (/gap$/.test(field))
      return value
        .map((one) => shown(one, field))
        .join(' across, ')
        .concat(' down');
    if (field === 'paper') return `${listed(value.map((one) => shown(one, field)))} in turn`;
    return value.length === 0 ? 'none' : listed(value.map((one, index) => shown(one, `${field}[${index}]`)));
  }
  const fields = Object.entries(value).map(([name, one]) => {
    const at = `${field}.${name}`;
    const label = fieldWords(at) ?? name;
    return isFlag(at) ? label : `${label} ${shown(one, at)}`;
  });
  return fields.length === 0 ? 'as usual' : fields.join(', ');
}

const words: Readonly<Record<string, string>> = {
  // Of the set.
  '["$schema"]': 'schema',
  cardwright: 'version of the file',
  title: 'title',
  units: 'units',
  cards: 'cards',
  base: 'base',
  papers: 'papers',
  parts: 'pile',
  smallestScrap: 'smallest scrap',
  envelope: 'envelope',
  'envelope.name': 'name of the envelope',
  'envelope.size': 'size of the envelope',
  'envelope.size[0]': 'width of the envelope',
  'envelope.size[1]': 'height of the envelope',
  'envelope.gsm': 'grammage of the envelope',
  'envelope.thickness': 'thickness of the envelope',
  'envelope.grams': 'weight of the envelope in grams',
  post: 'posted in',
  adhesives: 'adhesives',
  order: 'order of assembly',
  making: 'how it is made',
  'making.helpers': 'helpers',
  'making.stations': 'stations',
  'making.dryAtOnce': 'cards that there is room for to dry',
  'making.minutes': 'minutes a piece',
  'making.minutes.cut': 'minutes for cutting a piece',
  'making.minutes.score': 'minutes for scoring and folding a base',
  'making.minutes.close': 'minutes for closing a card',
  // Of the base and of parts.
  id: 'short name',
  name: 'name',
  fold: 'fold',
  opens: 'opens',
  allowance: 'allowance for what lies within',
  on: 'lies on',
  shape: 'shape',
  size: 'size',
  'size[0]': 'width',
  'size[1]': 'height',
  inset: 'inset',
  diameter: 'diameter',
  torn: 'torn',
  'torn.left': 'torn on the left',
  'torn.right': 'torn on the right',
  'torn.top': 'torn on top',
  'torn.bottom': 'torn at the bottom',
  tear: 'tears',
  'tear.least': 'tears at least',
  'tear.usual': 'tears usually',
  'tear.most': 'tears at most',
  'tear.core': 'core shows',
  tuck: 'tucked behind',
  'tuck.left': 'tucked behind on the left',
  'tuck.right': 'tucked behind on the right',
  'tuck.top': 'tucked behind on top',
  'tuck.bottom': 'tucked behind at the bottom',
  corner: 'radius of the corners',
  ends: 'ends',
  'ends.left': 'left end',
  'ends.right': 'right end',
  'ends.top': 'top end',
  'ends.bottom': 'bottom end',
  endDepth: 'depth of the ends',
  outline: 'outline',
  template: 'template',
  slant: 'slant in degrees',
  loops: 'loops',
  overlap: 'overlap of the ends',
  margin: 'margin round the shape',
  foam: 'height of the foam',
  grams: 'weight in grams',
  dieCut: 'die-cut',
  stamped: 'stamped',
  from: 'cut from',
  extras: 'wanted of the leftovers',
  place: 'place',
  'place.left': 'from the left',
  'place.right': 'from the right',
  'place.top': 'from the top',
  'place.bottom': 'from the bottom',
  'place.below': 'below',
  'place.above': 'above',
  'place.rightOf': 'to the right of',
  'place.leftOf': 'to the left of',
  'place.gap': 'gap',
  'place.gap[0]': 'gap across',
  'place.gap[1]': 'gap down',
  paper: 'paper',
  side: 'side of the paper',
  turn: 'turn',
  spare: 'spares',
  count: 'pieces on a card',
  lies: 'print lies',
  adhere: 'adhered',
  room: 'room to move',
  minutes: 'minutes a piece',
  'minutes.ready': 'minutes for making it ready',
  'minutes.lay': 'minutes for putting it on',
  // Of a paper.
  kind: 'kind',
  gsm: 'grammage',
  lb: 'weight in pounds',
  'lb.pounds': 'pounds',
  'lb.of': 'pounds of',
  thickness: 'thickness',
  colour: 'colour',
  core: 'colour of the core',
  seeThrough: 'seen through',
  up: 'print',
  back: 'other side',
  'back.name': 'name of the other side',
  'back.colour': 'colour of the other side',
  'back.up': 'print on the other side',
  sheets: 'sheets',
};

/** Of the sheets of a paper. */
const sheetWords: Readonly<Record<string, string>> = {
  size: 'sheet size',
  'size[0]': 'sheet width',
  'size[1]': 'sheet height',
  count: 'sheets on hand',
  price: 'price of a sheet',
  grain: 'grain along the',
  scrap: 'a scrap',
  margin: 'margin',
  'margin.left': 'margin on the left',
  'margin.right': 'margin on the right',
  'margin.top': 'margin on top',
  'margin.bottom': 'margin at the bottom',
};
