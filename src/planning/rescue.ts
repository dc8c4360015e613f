import { wantedOf } from './cardSet.ts';
import { givesAll } from './givesAll.ts';
import { type OtherSizes, otherSizes } from './otherSizes.ts';
import { restOf, toCutFrom } from './paperOnTable.ts';
import { paperShortage } from './paperShortage.ts';
import type { Piece } from './piece.ts';
import type { SetToPlan } from './planSet.ts';
import { type Recut, recutOnce, type ShortPaperOnTable } from './recut.ts';
import { settledBy } from './settling.ts';
import type { PaperShortage } from './shortage.ts';
import type { TableNow } from './tableNow.ts';

/** Why the papers on the table do not give what is still needed, and what would help. */
export interface RecutShort {
  readonly kind: 'short';
  /** Papers that are short; their sheets are those of the table, their missing pieces those still to be made. */
  readonly papers: readonly PaperShortage[];
  /** What can be done instead, the least change first; each but the last was planned, and the last says how sure it is. */
  readonly rescues: readonly Rescue[];
}

/** One way out. A new kind is one entry here, its finder in `rescuesOf`, its sentence in `words`. */
export type Rescue =
  /** The set comes out without the spares of the papers that are short. */
  | { readonly kind: 'no spares'; readonly papers: readonly string[]; readonly recut: Recut }
  /** The set comes out with pieces of slightly other sizes, those that are finished trimmed down. */
  | ({ readonly kind: 'other sizes' } & OtherSizes)
  /** The set comes out with so many more sheets. */
  | { readonly kind: 'more sheets'; readonly sheets: readonly SheetsMore[]; readonly recut: Recut }
  /** The most cards that the table gives, without spares where they do not come out with them. */
  | {
      readonly kind: 'fewer cards';
      readonly cards: number;
      /** Whether it is proved that the table gives no more. */
      readonly proved: boolean;
      readonly spares: boolean;
      /** `null` for no cards. */
      readonly recut: Recut | null;
    };

/** More sheets of one stock of a paper. */
export interface SheetsMore {
  readonly paper: string;
  /** Index into the paper's `sheets` in the layout. */
  readonly stock: number;
  readonly count: number;
  /** Whether it is proved that fewer more of that stock are not enough. */
  readonly proved: boolean;
}

/** The set planned again from the table (`recutOnce`), or what is short and the ways out of it. */
export function recutSet(planned: SetToPlan, table: TableNow): Recut | RecutShort {
  // Of which papers the parts from leftovers are stays as it was planned.
  const set = settledBy(planned, table.inHand.plan.dealt);
  const answer = recutOnce(set, table);
  if (answer.kind === 'recut') return answer;
  const papers = answer.papers.map((short) =>
    paperShortage(
      { paper: toCutFrom(short.on), pieces: short.pieces, proved: short.proved, given: null },
      set,
    ),
  );
  return { kind: 'short', papers, rescues: rescuesOf(set, table, { short: answer.papers, papers }) };
}

function rescuesOf(
  set: SetToPlan,
  table: TableNow,
  {
    short,
    papers,
  }: { readonly short: readonly ShortPaperOnTable[]; readonly papers: readonly PaperShortage[] },
): readonly Rescue[] {
  const withoutSpares = noSpares(set, table, short);
  return [
    ...(withoutSpares === null ? [] : [withoutSpares]),
    ...otherSizes(
      set,
      table,
      papers.map(({ paper }) => paper),
    ).map((sizes) => ({ kind: 'other sizes' as const, ...sizes })),
    ...moreSheets(set, table, papers),
    fewerCards(set, table, short, withoutSpares !== null),
  ];
}

function noSpares(set: SetToPlan, table: TableNow, short: readonly ShortPaperOnTable[]): Rescue | null {
  const papers = short.map(({ on }) => on.paper.id);
  const wanted = wantedOf(set);
  const without = wanted.map((piece) => (papers.includes(piece.paper) ? withoutSpare(piece) : piece));
  if (without.every((piece, index) => piece.need === wanted[index]!.need)) return null;
  const recut = recutOnce(set, table, without);
  return recut.kind === 'recut' ? { kind: 'no spares', papers, recut } : null;
}

function withoutSpare(piece: Piece): Piece {
  return { ...piece, need: piece.need - piece.spare, spare: 0 };
}

/** Fewest sheets of one stock for each paper that is short; none where for one of them no number of sheets would do. */
function moreSheets(set: SetToPlan, table: TableNow, papers: readonly PaperShortage[]): readonly Rescue[] {
  const fewest = papers.map((short): SheetsMore | null => {
    const [least] = short.moreSheets.toSorted((a, b) => a.count - b.count || a.stock - b.stock);
    return least === undefined ? null : { paper: short.paper, ...least };
  });
  const sheets = fewest.filter((more) => more !== null);
  if (sheets.length < fewest.length) return [];
  const stash = new Map(set.layout.papers);
  for (const { paper: id, stock, count } of sheets) {
    const paper = stash.get(id)!;
    const sheet = paper.sheets[stock]!;
    stash.set(id, {
      ...paper,
      sheets: paper.sheets.with(stock, { ...sheet, count: (sheet.count ?? 0) + count }),
    });
  }
  const recut = recutOnce({ ...set, layout: { ...set.layout, papers: stash } }, table);
  return recut.kind === 'recut' ? [{ kind: 'more sheets', sheets, recut }] : [];
}

/** The largest smaller set, found by halving: fewer cards never need more of any piece. */
function fewerCards(
  set: SetToPlan,
  table: TableNow,
  short: readonly ShortPaperOnTable[],
  spares: boolean,
): Rescue {
  const smaller = (cards: number) => {
    const of = { ...set, layout: { ...set.layout, cards } };
    const wanted = wantedOf(of);
    return { set: of, wanted: spares ? wanted : wanted.map(withoutSpare) };
  };
  const verdict = (cards: number) => {
    const { wanted } = smaller(cards);
    const verdicts = short.map(({ on }) => {
      const own = wanted.filter(({ paper }) => paper === on.paper.id);
      return givesAll(toCutFrom(on), restOf(on, own, set.trimmer).pieces, set);
    });
    return verdicts.includes('no') ? 'no' : verdicts.includes('unknown') ? 'unknown' : 'yes';
  };
  let most = 0;
  let tooMany = set.layout.cards;
  let proved = spares ? short.some((paper) => paper.proved) : verdict(tooMany) === 'no';
  while (tooMany - most > 1) {
    const cards = Math.floor((most + tooMany) / 2);
    const answer = verdict(cards);
    if (answer === 'yes') most = cards;
    else {
      tooMany = cards;
      proved = answer === 'no';
    }
  }
  // The other papers give more cards than these; should one not be planned again, a card fewer will do.
  for (let cards = most; cards > 0; cards -= 1) {
    const { set: of, wanted } = smaller(cards);
    const recut = recutOnce(of, table, wanted);
    if (recut.kind === 'recut')
      return { kind: 'fewer cards', cards, proved: proved && cards === most, spares, recut };
  }
  return { kind: 'fewer cards', cards: 0, proved: proved && most === 0, spares, recut: null };
}
