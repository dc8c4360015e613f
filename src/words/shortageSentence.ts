import type { Layout } from '../layout/index.ts';
import { showSize } from '../measure/index.ts';
import type {
  MoreSheets,
  NeverReason,
  PaperShortage,
  Piece,
  Shortage,
  ShortageLimit,
  StandIn,
} from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper } from '../stash/index.ts';
import { capital, counted, either, listed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/**
 * Why the papers cannot give the set, a sentence for each thing to know: for each paper that is short which pieces,
 * by how many, what limits it and how sure that is; last the nearest that can be done.
 *
 * In typed glyphs, which a command line has, each piece has its id in brackets, as the plan's JSON names it; on a
 * printed page it is told by the names of its part and paper alone.
 */
export function shortageSentences(shortage: Shortage, layout: Layout, showing: Showing): readonly string[] {
  const { pieces } = shortage;
  return [
    ...shortage.papers.flatMap((short) => paperSentences(short, { layout, pieces }, showing)),
    nearestSentence(shortage, layout.cards),
  ];
}

/** With how many more sheets all the cards that were asked for would come out, a sentence for each paper that is short. */
export function moreSheetsSentences(
  { papers }: Shortage,
  layout: Layout,
  showing: Showing,
): readonly string[] {
  return papers.flatMap(({ paper: id, moreSheets }) => {
    const paper = layout.papers.get(id);
    assert(paper !== undefined, 'A paper that is short is a paper of the layout', { id });
    return moreSheets.length === 0
      ? [`More sheets of ${paper.name} would not give the ${layout.cards} cards asked for.`]
      : [`For the ${layout.cards} cards asked for: ${moreSentence(moreSheets, paper, showing)}`];
  });
}

/** Which other papers of the layout could give what is wanting, a sentence for each paper that is short. */
export function standInSentences(standIns: readonly StandIn[], layout: Layout): readonly string[] {
  const byPaper = new Map<string, StandIn[]>();
  for (const standIn of standIns)
    byPaper.set(standIn.paper, [...(byPaper.get(standIn.paper) ?? []), standIn]);
  return [...byPaper.values()].map((ways) => {
    const wanting = [...ways[0]!.pieces].map(
      ([piece, count]) => `${count} of ${partName(layout, piece.split('/')[0]!)}`,
    );
    const others = ways.map(({ by }) => layout.papers.get(by)!.name);
    return `${either(others)} could give what is wanting: ${listed(wanting)}.`;
  });
}

/** Why one paper is short, as `shortageSentences` says it. */
export function paperSentences(
  short: PaperShortage,
  {
    layout,
    pieces,
    ids = true,
  }: { readonly layout: Layout; readonly pieces: readonly Piece[]; readonly ids?: boolean },
  showing: Showing,
): readonly string[] {
  const { missing, never, moreSheets } = short;
  const paper = layout.papers.get(short.paper);
  assert(paper !== undefined, 'A paper that is short is a paper of the layout', { id: short.paper });
  const own = pieces.filter((piece) => piece.paper === paper.id);
  const sizeOf = (piece: Piece) => showSize(piece.size, showing.units, showing.glyphs);
  const idOf = (piece: Piece) => (ids && showing.glyphs === 'typed' ? `${piece.id}, ` : '');
  const wanting = own.flatMap((piece) => {
    const count = missing.get(piece.id) ?? 0;
    if (count === 0) return [];
    return [
      `${count} of the ${piece.need} pieces for ${partName(layout, piece.part)} (${idOf(piece)}${sizeOf(piece)})`,
    ];
  });
  const several = wanting.length > 1 || [...missing.values()].some((count) => count > 1);
  const given = own.flatMap(({ id, part, need }) => {
    const count = need - (missing.get(id) ?? 0);
    if (count === 0) return [];
    const all = count === need ? (need === 1 ? 'the one' : `all ${need}`) : `${count} of the ${need}`;
    return [`${all} for ${partName(layout, part)}`];
  });
  const noSheets = paper.sheets.every(({ count }) => count === 0);
  return [
    ...(noSheets ? [`There is no sheet of ${paper.name} on hand.`] : []),
    `${paper.name} is short: ${listed(wanting)} ${several ? 'are' : 'is'} wanting.`,
    ...(given.length > 0 ? [`It gives ${listed(given)}.`] : []),
    ...own.flatMap((piece) => {
      const reason = never.get(piece.id);
      return reason === undefined
        ? []
        : [`${capital(partName(layout, piece.part))} (${sizeOf(piece)}) ${neverWords[reason]}.`];
    }),
    ...(noSheets ? [] : limitSentences(short, paper, own, showing)),
    proofSentence(short),
    ...(moreSheets.length > 0 ? [moreSentence(moreSheets, paper, showing)] : []),
  ];
}

const neverWords = {
  'too-large': 'is larger than any sheet gives in one piece, as the piece has to lie',
  'too-narrow': 'is narrower than the trimmer can hold',
  trimmer: 'cannot be cut on this trimmer, not even one',
  direction: 'comes out of no sheet as its print has to lie; with a quarter turn it would',
  margins: 'comes out of no sheet less its margins; out of one that can be used to the edge it would',
} as const satisfies Record<NeverReason, string>;

function limitSentences(
  { limits, never }: PaperShortage,
  paper: Paper,
  pieces: readonly Piece[],
  showing: Showing,
): readonly string[] {
  if (limits.length > 0) return limits.map((limit) => `The limit is ${limitWords[limit]}.`);
  // Of what no sheet gives, more sheets would give no more.
  if (pieces.every(({ id }) => never.has(id))) return [];
  const turning = pieces.some(({ turn }) => turn === 'locked') ? limitOfTurning[paper.up] : '';
  return [`The limit is ${stockWords(paper, showing)}.${turning}`];
}

const limitWords = {
  trimmer: 'the trimmer: these sheets would give all the pieces to one without its limits',
  direction:
    'the direction of the print: these sheets would give all the pieces if they might be given a quarter turn',
  margins: 'the margins: these sheets would give all the pieces if they could be used to the edge',
} as const satisfies Record<ShortageLimit, string>;

const limitOfTurning = {
  any: '',
  'one-way': ' Its print has to stand upright.',
  'two-way': ' Its print may be turned half round but not a quarter.',
} as const;

function proofSentence({ proved, missingProved }: PaperShortage): string {
  if (missingProved) return 'No way of cutting from edge to edge gives more; that is proved.';
  if (proved)
    return 'No way of cutting from edge to edge gives them all; that is proved. Whether fewer need be wanting is not.';
  return 'No way of cutting that gives more was found; that there is none is not proved.';
}

/** `1 more sheet of Meadow (12 x 12 in) would be enough.` */
function moreSentence(more: readonly MoreSheets[], paper: Paper, { units, glyphs }: Showing): string {
  const ways = more.map(({ stock, count }) => {
    const sheet = paper.sheets[stock];
    assert(sheet !== undefined, 'More sheets are offered of a stock that is listed', { stock });
    const sheets = `${count}${sheet.count === 0 ? '' : ' more'} ${count === 1 ? 'sheet' : 'sheets'}`;
    return `${sheets} of ${paper.name} (${showSize(sheet.size, units, glyphs)})`;
  });
  const words = `${either(ways)} would be enough`;
  if (more.some(({ proved }) => !proved)) return `${words}; whether fewer would do is not proved.`;
  return more.some(({ count }) => count > 1) ? `${words}, and no fewer.` : `${words}.`;
}

/** `what there is of Meadow: 2 sheets of 12 x 12 in and 1 scrap of 3 x 9 in`. */
function stockWords(paper: Paper, showing: Showing): string {
  const stocks = paper.sheets.map(({ count, scrap, size }) => {
    const noun = scrap ? 'scrap' : 'sheet';
    const shown = showSize(size, showing.units, showing.glyphs);
    if (count === null) return `as many ${noun}s of ${shown} as needed`;
    return `${count === 0 ? `no ${noun}s` : counted(count, noun)} of ${shown}`;
  });
  return `what there is of ${paper.name}: ${listed(stocks)}`;
}

function nearestSentence({ nearest, pieces }: Shortage, wanted: number): string {
  const withSpares = pieces.some(({ spare }) => spare > 0) ? ' with all the spares' : '';
  if (nearest.cards === 0) {
    if (nearest.proved) return `These papers give not even one card${withSpares}.`;
    return `No way was found to make even one card${withSpares}; that there is none is not proved.`;
  }
  const cards = counted(nearest.cards, 'card');
  if (nearest.proved)
    return `The nearest that can be done: these papers give ${cards} of ${wanted}${withSpares}, and no more.`;
  return `The nearest that was found: these papers give ${cards} of ${wanted}${withSpares}; whether they give more is not proved.`;
}
