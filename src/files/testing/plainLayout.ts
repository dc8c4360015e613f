import type { Json } from '../json.ts';

/**
 * The text of a layout that uses most fields of the format and has nothing wrong with it, with the values at some
 * paths changed; `undefined` takes a field out. Paths are written as in problems: `parts[2].size[0]`.
 */
export function plainLayout(changes: Readonly<Record<string, Json | undefined>> = {}): string {
  return JSON.stringify(withValues(plain, changes));
}

/** A copy of a file with the values at some paths changed; `undefined` takes a field out. */
export function withValues(file: Json, changes: Readonly<Record<string, Json | undefined>>): Json {
  const copy: Json = structuredClone(file);
  for (const [path, value] of Object.entries(changes)) put(copy, keysOf(path), value);
  return copy;
}

/** `parts[2].size[0]` → `['parts', '2', 'size', '0']`; a name in brackets and quotes stands for itself. */
function keysOf(path: string): string[] {
  return [...path.matchAll(/\["(?<quoted>.*?)"\]|\[(?<index>\d+)\]|(?<name>[^.[\]]+)/g)].map(
    ({ groups }) => groups?.quoted ?? groups?.index ?? groups?.name ?? '',
  );
}

function put(file: Json, keys: readonly string[], value: Json | undefined): void {
  const last = keys.at(-1) ?? '';
  let holder = file as object;
  for (const key of keys.slice(0, -1)) holder = Reflect.get(holder, key) as object;
  if (value === undefined) Reflect.deleteProperty(holder, last);
  // Defined, not assigned: `__proto__` is to be a field like any other.
  else Object.defineProperty(holder, last, { value, enumerable: true, configurable: true, writable: true });
}

const plain = {
  cardwright: 1,
  title: 'Lantern evening',
  units: 'in',
  cards: 12,
  base: {
    size: ['4 1/4 in', '5 1/2 in'],
    fold: 'left',
    paper: 'ivory',
    room: { height: ['5 1/4 in', '5 1/2 in'] },
  },
  papers: {
    ivory: {
      name: 'Ivory cardstock',
      kind: 'cardstock',
      gsm: 270,
      thickness: '0.33 mm',
      colour: '#F4EFDF',
      up: 'any',
      sheets: [
        { size: ['8 1/2 in', '11 in'], count: null, price: '0.35', grain: 'height' },
        { size: ['6 in', '4 in'], count: 3, scrap: true },
      ],
    },
    meadow: {
      name: 'Meadow print',
      kind: 'patterned',
      gsm: 160,
      core: '#ffffff',
      up: 'one-way',
      back: { name: 'Meadow stripe', up: 'two-way', colour: '#b7c59a' },
      sheets: [{ size: ['12 in', '12 in'], count: 2, margin: { bottom: '1/2 in' } }],
    },
    bark: {
      kind: 'patterned',
      up: 'two-way',
      sheets: [{ size: ['12 in', '12 in'], count: 1, margin: '1/16 in' }],
    },
  },
  envelope: { name: 'The white ones', size: ['4 3/8 in', '5 3/4 in'], gsm: 90 },
  post: 'us',
  adhesives: {
    flat: { kind: 'liquid-glue', handle: 20, dry: 1440 },
    raised: { kind: 'foam-tape', width: '1/2 in', thickness: '1/16 in', roll: '78 in', span: '3/4 in' },
    spots: { width: '3/16 in', inset: '0', pack: 200, shows: false },
  },
  making: { helpers: 5, stations: 3, dryAtOnce: 20, minutes: { cut: 0.2, score: 0.5, close: 1 } },
  parts: [
    { id: 'mat', on: 'base', inset: '1/8 in', paper: 'ivory' },
    {
      id: 'panel',
      on: 'mat',
      size: ['2 1/4 in', '5 in'],
      place: { left: '1/8 in' },
      paper: ['meadow', 'bark'],
      torn: { right: '1/2 in' },
      tear: { least: '3/8 in', most: '5/8 in', core: '1/16 in' },
      spare: 1,
      adhere: 'flat',
      minutes: { ready: 1.5, lay: 0.75 },
      room: { width: ['2 in', '2 1/2 in'], height: ['5 in', '5 in'], left: ['-1/8 in', '1/4 in'] },
    },
    {
      id: 'strip',
      name: 'Side strip',
      on: 'mat',
      size: ['fill', '5'],
      place: { rightOf: 'panel', right: '1/8', gap: ['1/8 in', '0'] },
      paper: 'meadow',
      side: 'back',
      turn: 'free',
      lies: 'sideways',
      room: { width: ['1/2 in', '1 in'], gap: ['0', '1/8'] },
    },
    {
      id: 'moon',
      on: 'panel',
      shape: 'circle',
      diameter: '1 1/2 in',
      place: { top: '1/4 in' },
      paper: 'ivory',
      dieCut: true,
      room: { diameter: ['1 in', '2 in'] },
    },
    { id: 'moon-face', on: 'moon', shape: 'circle', inset: '1/16 in', paper: 'bark', adhere: 'raised' },
    {
      id: 'dot',
      size: ['1/4 in', '1/4 in'],
      count: 2,
      place: [
        { left: '-1/16 in', top: '0' },
        { right: '1/4 in', below: 'panel', gap: '-1/32 in' },
      ],
      paper: null,
      adhere: 'spots',
    },
    { id: 'note', on: 'inside', size: ['3 in', '4 in'], paper: 'ivory', stamped: true, room: 'none' },
  ],
} as const;
