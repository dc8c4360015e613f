import type { Layout } from '../layout/index.ts';
import { showSize } from '../measure/index.ts';
import type { NeverReason, PaperShortage, Piece, Shortage } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper } from '../stash/index.ts';
import { counted, listed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/**
 * Why the papers cannot give the set, a sentence for each thing to know: for each paper that is short which pieces,
 * by how many, what limits it and how sure that is; last the nearest that can be done.
 */
export function shortageSentences(shortage: Shortage, layout: Layout, showing: Showing): readonly string[] {
  const { pieces } = shortage;
  return [
    ...shortage.papers.flatMap((short) => paperSentences(short, { layout, pieces }, showing)),
    nearestSentence(shortage, layout.cards),
  ];
}

function paperSentences(
  { paper: id, missing, proved, never, trimmerLimits, moreSheets }: PaperShortage,
  { layout, pieces }: { readonly layout: Layout; readonly pieces: readonly Piece[] },
  showing: Showing,
): readonly string[] {
  const paper = layout.papers.get(id);
  assert(paper !== undefined, 'A paper that is short is a paper of the layout', { id });
  const pieceOf = (pieceId: string) => {
    const piece = pieces.find((candidate) => candidate.id === pieceId);
    assert(piece !== undefined, 'A piece that is wanting is a piece of the set', { pieceId });
    return piece;
  };
  const wanting = [...missing].map(([pieceId, count]) => {
    const piece = pieceOf(pieceId);
    const size = showSize(piece.size, showing.units, showing.glyphs);
    return `${count} of the ${piece.need} pieces for ${partName(layout, piece.part)} (${pieceId}, ${size})`;
  });
  const several = wanting.length > 1 || [...missing.values()].some((count) => count > 1);
  return [
    `${paper.name} is short: ${listed(wanting)} ${several ? 'are' : 'is'} wanting.`,
    ...[...never].map(([pieceId, reason]) => {
      const piece = pieceOf(pieceId);
      const size = showSize(piece.size, showing.units, showing.glyphs);
      return `${partName(layout, piece.part)} (${size}) ${neverWords[reason]}.`;
    }),
    trimmerLimits
      ? 'The limit is the trimmer: these sheets would give all the pieces to one that can be set anywhere and cuts any length.'
      : `The limit is ${stockWords(paper, showing)}.${limitOfTurning[paper.up]}`,
    proved
      ? 'No way of cutting from edge to edge gives more; that is proved.'
      : 'No way of cutting that gives more was found; that there is none is not proved.',
    ...(moreSheets === null ? [] : [`${moreWords(moreSheets, paper, showing)} would be enough.`]),
  ];
}

/** `1 more sheet of Meadow (12 x 12 in)`. */
function moreWords(
  { stock, count }: NonNullable<PaperShortage['moreSheets']>,
  paper: Paper,
  { units, glyphs }: Showing,
): string {
  const size = paper.sheets[stock]?.size;
  assert(size !== undefined, 'More sheets are offered of a size that is on hand', { stock });
  return `${count} more ${count === 1 ? 'sheet' : 'sheets'} of ${paper.name} (${showSize(size, units, glyphs)})`;
}

const neverWords = {
  'too-large': 'is larger than any sheet gives in one piece, as the piece has to lie',
  'too-narrow': 'is narrower than the trimmer can hold',
} as const satisfies Record<NeverReason, string>;

const limitOfTurning = {
  any: '',
  'one-way': ' Its print has to stand upright.',
  'two-way': ' Its print may be turned half round but not a quarter.',
} as const;

/** `the two sheets of Meadow (12 x 12 in)`. */
function stockWords(paper: Paper, showing: Showing): string {
  const stocks = paper.sheets.map(
    ({ count, scrap, size }) =>
      `${count === null ? 'sheets' : count === 0 ? `no ${scrap ? 'scraps' : 'sheets'}` : counted(count, scrap ? 'scrap' : 'sheet')} of ${showSize(size, showing.units, showing.glyphs)}`,
  );
  if (stocks.length === 0) return `${paper.name}, of which there is no sheet`;
  return `what there is of ${paper.name}: ${listed(stocks)}`;
}

function nearestSentence({ nearest, pieces }: Shortage, wanted: number): string {
  if (nearest === null) return 'These papers give not even one card.';
  const withSpares = pieces.some(({ spare }) => spare > 0) ? ' with all the spares' : '';
  const cards = counted(nearest.cards, 'card');
  if (nearest.proved)
    return `The nearest that can be done: these papers give ${cards} of ${wanted}${withSpares}, and no more.`;
  return `The nearest that was found: these papers give ${cards} of ${wanted}${withSpares}; whether they give more is not proved.`;
}
