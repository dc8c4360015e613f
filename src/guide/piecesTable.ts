import { type Block, setParagraph, setTable, type Words } from '../drawing/index.ts';
import { openedSize } from '../making/index.ts';
import type { Piece } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import { capital, dealtWords, partName, standing } from '../words/index.ts';
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
    setTable({
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
        String(piece.need),
        paperOf(layout, piece.paper).name,
        liesWords(matter, piece),
      ]),
      widthPt,
      full: true,
      style: styles.table,
      typeface,
      beforePt: 6,
    }),
    ...dealtNotes(matter).map((words) =>
      setParagraph({ words, widthPt, style: styles.body, typeface, beforePt: 5 }),
    ),
  ];
}

/** Cut and seen size as the finished card stands; a base is seen closed, so that has no seen size of its own. */
function sizesOf({ layout, arrangement }: Matter, { part }: Piece) {
  if (part === 'base') return { cut: openedSize(layout.base.size, layout.base.fold), seen: null };
  const arranged = arrangement.parts.find((candidate) => candidate.part.id === part);
  assert(arranged?.cut != null, 'A part that is cut has a size', { part });
  return { cut: arranged.cut, seen: arranged.seen };
}

function liesWords({ layout }: Matter, { part, paper: id, turn, spare }: Piece): string {
  const paper = paperOf(layout, id);
  const dealt = part === 'base' ? layout.base : layout.parts.find((candidate) => candidate.id === part);
  const back = dealt?.side === 'back' ? paper.back : null;
  const up = back === null ? paper.up : back.up;
  const sideways = layout.parts.find((candidate) => candidate.id === part)?.lies === 'sideways';
  return [
    sideways ? 'sideways on the card' : turn === 'free' ? standing('any') : standing(up),
    ...(back === null ? [] : [`its other side, ${back.name}`]),
    ...(spare === 0 ? [] : [`${spare} spare`]),
  ].join('; ');
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
