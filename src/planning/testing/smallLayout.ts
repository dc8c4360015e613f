import { chance } from '../../cutting/testing/chance.ts';
import { readLayoutFile } from '../../files/index.ts';
import type { Arrangement, Layout } from '../../layout/index.ts';

/** A layout as its file has it: whatever a test changes, it changes there. */
export type SketchFile = {
  cardwright: 1;
  units: 'in';
  cards: number;
  base: { size: [string, string]; fold: string; paper: string | null };
  papers: Record<string, { up: string; sheets: { size: [string, string]; count: number | null }[] }>;
  parts: Record<string, unknown>[];
};

/** One 64th of an inch, in ticks: every length of a sketch is a whole number of them. */
export const sixtyFourth = 635;

/** A length in 64ths as the file has it. */
export function typed(sixtyFourths: number): string {
  return `${sixtyFourths}/64 in`;
}

/** The layout in a file; throws where it is none. */
export function layoutIn(file: SketchFile): Layout {
  const read = readLayoutFile(JSON.stringify(file));
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read.layout;
}

/** The file with the texts at some paths (`parts[1].size[0]`) changed. */
export function fileWith(file: SketchFile, texts: ReadonlyMap<string, string>): SketchFile {
  const changed = structuredClone(file);
  for (const [path, text] of texts) {
    const fields = path.split(/[.[\]]+/).filter((field) => field !== '');
    let at: Record<string, unknown> = changed;
    for (const field of fields.slice(0, -1)) at = at[field] as Record<string, unknown>;
    const last = fields.at(-1)!;
    if (typeof at[last] !== 'string') throw new Error(`No length stands at ${path}`);
    at[last] = text;
  }
  return changed;
}

/** A length of a sketch that might move: its path and what it is, in 64ths. */
export interface Drawn {
  readonly path: string;
  readonly kind: 'size' | 'inset' | 'border' | 'gap';
  readonly part: number;
  readonly length: number;
}

/** Every length of the parts of a sketch that is drawn as one and is positive. */
export function lengthsIn(file: SketchFile): readonly Drawn[] {
  const count = (text: unknown) =>
    typeof text === 'string' && text.endsWith('/64 in') ? Number.parseInt(text, 10) : 0;
  return file.parts.flatMap((part, index): Drawn[] => {
    const size = (part.size ?? []) as string[];
    const place = (part.place ?? {}) as Record<string, string>;
    const at = (field: string, kind: Drawn['kind'], text: unknown): Drawn[] =>
      count(text) > 0 ? [{ path: `parts[${index}].${field}`, kind, part: index, length: count(text) }] : [];
    return [
      ...size.flatMap((text, axis) => at(`size[${axis}]`, 'size', text)),
      ...at('inset', 'inset', part.inset),
      ...at('diameter', 'size', part.diameter),
      ...['left', 'right', 'top', 'bottom'].flatMap((edge) => at(`place.${edge}`, 'border', place[edge])),
      ...at('place.gap', 'gap', place.gap),
    ];
  });
}

/** A card of one to three parts on or beside one another, all even, and one or two papers; the same for the same seed. */
export function smallSketch(seed: number): SketchFile {
  const int = chance(seed);
  const some = (odds: number) => int(1, odds) === 1;
  const sheets = [
    ['6 in', '6 in'],
    ['8 1/2 in', '11 in'],
    ['12 in', '12 in'],
    ['5 15/16 in', '7 in'],
    ['11 15/16 in', '11 15/16 in'],
  ] as const;
  const paper = () => ({
    up: some(2) ? 'one-way' : 'any',
    sheets: Array.from({ length: some(4) ? 2 : 1 }, () => {
      const size = sheets[int(0, sheets.length - 1)]!;
      return { size: [size[0], size[1]] as [string, string], count: some(8) ? null : int(1, 2) };
    }),
  });
  const papers = { bark: paper(), meadow: paper() };
  const from = () => (some(8) ? null : some(2) ? 'bark' : 'meadow');
  // In sixteenths.
  const [width, height] = [int(40, 68), int(44, 88)];
  const t = (sixteenths: number) => typed(4 * sixteenths);
  const border = int(1, 4);
  const gap = int(1, 4);
  const [within, down] = [width - 2 * border, height - 2 * border];
  const first = int(12, within - gap - 12);
  const upper = int(12, down - gap - 12);
  const piles: (() => Record<string, unknown>[])[] = [
    () => [
      { id: 'mat', inset: t(border), paper: from() },
      { id: 'panel', on: 'mat', size: [t(within - 2 * gap), t(down - 2 * gap)], paper: from() },
    ],
    () => [
      { id: 'mat', size: [t(within), t(down)], paper: from() },
      { id: 'panel', on: 'mat', inset: t(gap), paper: from() },
    ],
    () => [
      { id: 'upper', size: [t(within), t(upper)], place: { top: t(border) }, paper: from() },
      {
        id: 'lower',
        size: [t(within), t(down - gap - upper)],
        place: { below: 'upper', gap: t(gap) },
        paper: from(),
      },
    ],
    () => [
      { id: 'side', size: [t(first), t(down)], place: { left: t(border) }, paper: from() },
      {
        id: 'rest',
        size: ['fill', 'fill'],
        place: { rightOf: 'side', gap: t(gap), right: t(border), top: t(border), bottom: t(border) },
        paper: from(),
      },
    ],
    () => [
      { id: 'left', size: [t(first), t(down)], place: { left: t(border) }, paper: from() },
      { id: 'right', size: [t(within - gap - first), t(down)], place: { right: t(border) }, paper: from() },
      { id: 'tag', size: [t(int(12, 24)), t(int(8, 16))], adhere: 'raised', paper: from() },
    ],
    () => [
      { id: 'mat', inset: t(border), paper: from() },
      {
        id: 'disc',
        on: 'mat',
        shape: 'circle',
        diameter: t(int(12, Math.min(within, down) - 4)),
        paper: from(),
      },
    ],
    () => [{ id: 'panel', size: [t(within), t(down)], paper: from() }],
  ];
  return {
    cardwright: 1,
    units: 'in',
    cards: int(2, 9),
    base: { size: [t(width), t(height)], fold: 'left', paper: null },
    papers,
    parts: piles[int(0, piles.length - 1)]!(),
  };
}

/**
 * What is no longer even in an arrangement of which it was in another, told from the boxes alone: the outermost borders
 * on a thing along an axis, those across and those down (`… : all round`), what begins or ends in line with them, and
 * any border or gap that was one and is none.
 */
export function unevenByBoxes(before: Arrangement, after: Arrangement): readonly string[] {
  const [then, now] = [traitsOf(before), traitsOf(after)];
  return [...then].filter((trait) => !now.has(trait));
}

function traitsOf({ parts }: Arrangement): ReadonlySet<string> {
  const beds = new Map<
    string,
    {
      id: string;
      raised: boolean;
      left: number;
      top: number;
      right: number;
      bottom: number;
      end: number;
      foot: number;
    }[]
  >();
  for (const { part, pieces } of parts) {
    for (const { box, under, onPiece } of pieces) {
      if (box === null || under === null) throw new Error('The sizes of a small sketch are known');
      const key = `${part.on} ${onPiece ?? 0}`;
      const bed = beds.get(key) ?? [];
      beds.set(key, bed);
      const [left, top] = [box.left - under.left, box.top - under.top];
      bed.push({
        id: part.id,
        raised: part.adhere !== 'flat',
        left,
        top,
        right: under.width - left - box.width,
        bottom: under.height - top - box.height,
        end: left + box.width,
        foot: top + box.height,
      });
    }
  }
  const traits = new Set<string>();
  const even = (one: number, other: number) => Math.abs(one - other) <= 16;
  for (const [key, bed] of beds) {
    for (const one of bed) {
      for (const other of bed) {
        const gaps = [other.left - one.end, other.top - one.foot];
        for (const [axis, gap] of gaps.entries())
          if (gap > 16) traits.add(`${key} ${one.id} ${other.id}: a gap along ${axis}`);
      }
    }
    const across: [string, number][] = [];
    const down: [string, number][] = [];
    for (const pieces of [bed.filter(({ raised }) => !raised), bed.filter(({ raised }) => raised)]) {
      if (pieces.length === 0) continue;
      const kind = pieces[0]!.raised ? 'raised' : 'flat';
      const least = (edge: 'left' | 'right' | 'top' | 'bottom') =>
        Math.min(...pieces.map((piece) => piece[edge]));
      const [left, right, top, bottom] = [least('left'), least('right'), least('top'), least('bottom')];
      if (even(left, right)) traits.add(`${key} ${kind}: left and right`);
      if (even(top, bottom)) traits.add(`${key} ${kind}: top and bottom`);
      for (const [edge, border] of Object.entries({ left, right })) across.push([`${kind} ${edge}`, border]);
      for (const [edge, border] of Object.entries({ top, bottom })) down.push([`${kind} ${edge}`, border]);
      for (const [edge, border] of Object.entries({ left, right, top, bottom }))
        if (border > 16) traits.add(`${key} ${kind}: a border ${edge}`);
      for (const piece of pieces) {
        // In line with what lies outermost.
        for (const edge of ['left', 'right', 'top', 'bottom'] as const)
          if (even(piece[edge], least(edge))) traits.add(`${key} ${piece.id}: in line ${edge}`);
      }
    }
    for (const [one, border] of across) {
      for (const [other, below] of down)
        if (border > 16 && even(border, below)) traits.add(`${key} ${one} and ${other}: all round`);
    }
  }
  return traits;
}
