import { type Block, setParagraph, setTable, type Words } from '../drawing/index.ts';
import { type Dealt, foldedBase, type Layout } from '../layout/index.ts';
import { openedSize } from '../making/index.ts';
import type { Piece } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { Up } from '../stash/index.ts';
import { capital, dealtWords, partName } from '../words/index.ts';
import { letterFor, type Matter, paperOf, sizeIn } from './matter.ts';

/** The list of all pieces as a printer's table, then which card gets which paper where several are dealt. */
export function piecesTable(matter: Matter): readonly Block[] {
  const { layout, plan, styles, typeface, widthPt } = matter;
  const size = sizeIn(matter.showing);
  const rows = plan.pieces.map((piece) => ({ piece, ...sizesOf(matter, piece) }));
  const differs = rows.some(({ cut, seen }) => seen !== null && size(seen) !== size(cut));
  return [
    setParagraph({
      words: 'What to cut',
      widthPt,
      style: styles.heading,
      typeface,
      role: 'heading',
      beforePt: 26,
      withNext: true,
    }),
    {
      ...setTable({
        columns: [
          { head: '', widthPt: 22 },
          { head: 'Part' },
          { head: 'Cut' },
          ...(differs ? [{ head: 'Seen' }] : []),
          { head: 'Pieces', align: 'end' },
          { head: 'From' },
          { head: 'Print' },
        ],
        rows: rows.map(({ piece, cut, seen }): readonly Words[] => [
          [{ text: letterFor(layout, piece.part), weight: 'semibold' }],
          capital(partName(layout, piece.part)),
          size(cut),
          ...(differs ? [seen === null ? '' : size(seen)] : []),
          piece.spare === 0 ? String(piece.need) : `${piece.need}, ${piece.spare} spare`,
          sideWords(layout, piece),
          liesWords(layout, piece),
        ]),
        widthPt,
        full: true,
        style: styles.table,
        typeface,
        beforePt: 6,
      }),
      together: true,
    },
    ...dealtNotes(matter).map((words) =>
      setParagraph({ words, widthPt, style: styles.body, typeface, beforePt: 5 }),
    ),
  ];
}

/** Cut and seen size as the finished card stands; a base is seen closed, so that has no seen size of its own. */
function sizesOf({ layout, arrangement }: Matter, { part }: Piece) {
  if (part === 'base') return { cut: openedSize(foldedBase(layout)), seen: null };
  const arranged = arrangement.parts.find((candidate) => candidate.part.id === part);
  assert(arranged?.cut != null, 'A part that is cut has a size', { part });
  return { cut: arranged.cut, seen: arranged.seen };
}

/** The paper, and its other side where that is the one to be seen. */
function sideWords(layout: Layout, { part, paper: id }: Piece): string {
  const { name, back } = paperOf(layout, id);
  return back !== null && dealtOf(layout, part).side === 'back'
    ? `${name}, its other side (${back.name})`
    : name;
}

/** Which way up the print is. */
function liesWords(layout: Layout, { part, paper: id, turn }: Piece): string {
  const { up, back } = paperOf(layout, id);
  if (layout.parts.find((candidate) => candidate.id === part)?.lies === 'sideways') return 'sideways';
  if (turn === 'free') return 'any way';
  return uprightness[dealtOf(layout, part).side === 'back' && back !== null ? back.up : up];
}

const uprightness = {
  any: 'upright',
  'one-way': 'upright',
  'two-way': 'upright or half round',
} as const satisfies Record<Up, string>;

function dealtOf(layout: Layout, id: string): Dealt {
  const dealt = id === 'base' ? layout.base : layout.parts.find((part) => part.id === id);
  assert(dealt !== undefined, 'A piece is the base or a part', { id });
  return dealt;
}

/** `Panel: Meadow on cards 1, 3 and 5; Bark on cards 2, 4 and 6.` */
function dealtNotes({ layout }: Matter): readonly string[] {
  return [
    { name: 'Base', dealt: layout.base },
    ...layout.parts.map((part) => ({ name: part.name, dealt: part })),
  ]
    .map(({ name, dealt }) => ({ name, said: dealtWords(dealt, layout) }))
    .filter(({ said }) => said !== '')
    .map(({ name, said }) => `${name}: ${said}.`);
}
