import {
  arrange,
  bagsOf,
  type Kit,
  type KitInstead,
  type SumChange,
  sumChanges,
  withLengths,
} from '../layout/index.ts';
import type { Length, Size } from '../measure/index.ts';
import {
  changesOf,
  givesAll,
  type LengthChange,
  type PaperShortage,
  piecesPerSheet,
  type SetToPlan,
  type Shortage,
  smallestMoves,
  standInsFor,
  wantedOf,
} from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import { type KitSet, kitSet } from './kitSet.ts';

/** Something that would give what a paper of a kit is short of; each has been tried and is true. */
export type KitOffer =
  /** Another shared paper stands in on the last of the cards, beside all that is cut from it anyway. */
  | {
      readonly kind: 'standIn';
      readonly paper: string;
      readonly by: string;
      readonly instead: readonly KitInstead[];
    }
  /** Other sizes in whole marks, borders as even as they were. */
  | KitSizes
  /** So many more sheets of one stock. */
  | {
      readonly kind: 'sheets';
      readonly paper: string;
      readonly stock: number;
      readonly count: number;
      readonly proved: boolean;
    }
  /** Several of these at once, one for each paper that is short, with which every bag is filled. */
  | { readonly kind: 'together'; readonly offers: readonly KitOffer[] }
  /** So many bags in all, and no more. */
  | { readonly kind: 'fewer'; readonly bags: number; readonly proved: boolean };

export interface KitSizes {
  readonly kind: 'sizes';
  readonly paper: string;
  /** Id of the layout. */
  readonly layout: string;
  readonly changes: readonly LengthChange[];
  /** What becomes of every border, gap and seen size of the card. */
  readonly effect: readonly SumChange[];
  /** Of each piece of the short paper that becomes another: its part in the layout, its size, and how many come out. */
  readonly pieces: readonly KitSizesPiece[];
  /** Whether a smaller change would do, and this one only comes to rounder sizes. */
  readonly rounder: boolean;
}

export interface KitSizesPiece {
  readonly part: string;
  readonly size: Size;
  /** From one sheet of the stock that most are cut from, nothing else being cut from it, and from all of them. */
  readonly perSheet: number;
  readonly inAll: number | null;
}

/**
 * What would give what is wanting, for each paper that is short: stand-ins first, those that nothing else is cut from
 * before others; then other sizes, the smallest change first; then more sheets. Last what does it all at once, and the
 * most bags that can be filled as it is.
 */
export function offersFor(kit: Kit, set: KitSet & SetToPlan, shortage: Shortage): readonly KitOffer[] {
  const single = shortage.papers.flatMap((short) => [
    ...standInOffers(kit, set, shortage, short),
    ...sizeOffers(kit, set, short),
    ...short.moreSheets.map(
      ({ stock, count, proved }): KitOffer => ({
        kind: 'sheets',
        paper: short.paper,
        stock,
        count,
        proved,
      }),
    ),
  ]);
  const together = togetherOf(kit, set, shortage, single);
  const { cards: bags, proved } = shortage.nearest;
  return [
    ...single,
    ...(together === null ? [] : [together]),
    ...(bags === 0 ? [] : [{ kind: 'fewer', bags, proved } as const]),
  ];
}

/** The kit when an offer is taken. */
export function withOffer(kit: Kit, offer: KitOffer): Kit {
  switch (offer.kind) {
    case 'standIn':
      return { ...kit, instead: [...kit.instead, ...offer.instead] };
    case 'sizes':
      return redrawn(kit, offer.layout, new Map(offer.changes.map(({ path, to }) => [path, to])));
    case 'sheets': {
      const stocked = (papers: Kit['papers']) => {
        const paper = papers.get(offer.paper);
        if (paper === undefined) return papers;
        const sheets = paper.sheets.map((stock, index) =>
          index === offer.stock && stock.count !== null
            ? { ...stock, count: stock.count + offer.count }
            : stock,
        );
        return new Map([...papers, [offer.paper, { ...paper, sheets }]]);
      };
      return {
        ...kit,
        papers: stocked(kit.papers),
        layouts: kit.layouts.map((one) => ({
          ...one,
          layout: { ...one.layout, papers: stocked(one.layout.papers) },
        })),
      };
    }
    case 'together':
      return offer.offers.reduce(withOffer, kit);
    case 'fewer':
      return withBags(kit, offer.bags);
  }
}

/** The kit with no more bags than that: spare ones go first, then the teacher's, then seats. */
export function withBags(kit: Kit, bags: number): Kit {
  let over = Math.max(0, bagsOf(kit) - bags);
  const less = (count: number, least: number) => {
    const gone = Math.min(over, count - least);
    over -= gone;
    return count - gone;
  };
  const spare = less(kit.spare, 0);
  const teacher = less(kit.teacher, 0);
  const seats = less(kit.seats, 1);
  const fewer = { ...kit, seats, teacher, spare };
  const cards = bagsOf(fewer);
  return {
    ...fewer,
    layouts: kit.layouts.map((one) => ({ ...one, layout: { ...one.layout, cards: cards * one.each } })),
  };
}

/** The kit with other lengths in one of its layouts, by their paths in the file of that. */
function redrawn(kit: Kit, id: string, lengths: ReadonlyMap<string, Length>): Kit {
  return {
    ...kit,
    layouts: kit.layouts.map((one) =>
      one.id === id ? { ...one, layout: withLengths(one.layout, lengths) } : one,
    ),
  };
}

/** Whether every paper that is named gives all that the kit wants of it. */
function gives(kit: Kit, set: SetToPlan, papers: readonly string[]): boolean {
  const merged = kitSet(kit, set.trimmer);
  if (merged === null) return false;
  const wanted = wantedOf(merged);
  return papers.every((id) => {
    const paper = merged.layout.papers.get(id);
    assert(paper !== undefined, 'A paper that is asked of is a paper of the kit', { id });
    return (
      givesAll(
        paper,
        wanted.filter((piece) => piece.paper === id),
        set,
      ) === 'yes'
    );
  });
}

/** How many papers are offered in place of one that is short. */
const mostStandIns = 4;

function standInOffers(
  kit: Kit,
  set: KitSet & SetToPlan,
  shortage: Shortage,
  short: PaperShortage,
): readonly KitOffer[] {
  const wanted = wantedOf(set);
  const isFree = (id: string) => wanted.every(({ paper }) => paper !== id);
  const alone: Shortage = { ...shortage, papers: [short] };
  const others = standInsFor(set, alone)
    .filter(({ by }) => kit.papers.has(by) && shortage.papers.every(({ paper }) => paper !== by))
    .sort((a, b) => Number(isFree(b.by)) - Number(isFree(a.by)))
    .slice(0, mostStandIns);
  return others.flatMap(({ by, pieces }): readonly KitOffer[] => {
    const instead = [...pieces].map(([piece, count]): KitInstead => {
      const { part, layout, perCard } = pieceSource(set, piece);
      return { layout, part, paper: short.paper, by, cards: Math.ceil(count / perCard) };
    });
    const offer: KitOffer = { kind: 'standIn', paper: short.paper, by, instead };
    return gives(withOffer(kit, offer), set, [short.paper, by]) ? [offer] : [];
  });
}

function pieceSource({ sources, layout }: KitSet, piece: string) {
  const merged = piece.slice(0, piece.lastIndexOf('/'));
  const source = sources.get(merged);
  assert(source !== undefined, 'A piece of a kit is of a part of a layout', { piece });
  const perCard = layout.parts.find(({ id }) => id === merged)?.places.length ?? 1;
  return { part: source.part, layout: source.layout.id, perCard };
}

/** How many changes of sizes are offered for one layout. */
const mostSizes = 2;

function sizeOffers(kit: Kit, set: KitSet & SetToPlan, short: PaperShortage): readonly KitOffer[] {
  const isShort = [...short.missing.keys()].map((piece) => pieceSource(set, piece).layout);
  return [...new Set(isShort)].flatMap((id) => {
    const index = kit.layouts.findIndex((one) => one.id === id);
    const one = kit.layouts[index]!;
    const before = { layout: one.layout, arrangement: arrange(one.layout), trimmer: set.trimmer };
    const wantedBefore = wantedOf(set);
    const stillGive = (of: Kit) => {
      const merged = kitSet(of, set.trimmer);
      if (merged === null) return false;
      // Other papers whose pieces became other must give them, too; those that were short anyway stay so.
      const changed = wantedOf(merged).filter(({ size }, at) => {
        const was = wantedBefore[at]!.size;
        return size.width !== was.width || size.height !== was.height;
      });
      const asked = [...new Set([short.paper, ...changed.map(({ paper }) => paper)])];
      return gives(of, set, asked);
    };
    const moves = smallestMoves(before, ({ lengths }) => stillGive(redrawn(kit, id, lengths))).slice(
      0,
      mostSizes,
    );
    return moves.flatMap(({ redrawn: smallest, rounder }) =>
      [smallest, ...(rounder === null ? [] : [rounder])].map(
        (drawing, at): KitSizes => ({
          kind: 'sizes',
          paper: short.paper,
          layout: id,
          changes: changesOf(before, drawing.lengths),
          effect: sumChanges(before.arrangement, drawing.arrangement),
          pieces: piecesMade(redrawn(kit, id, drawing.lengths), set, short),
          rounder: at > 0,
        }),
      ),
    );
  });
}

function piecesMade(
  kit: Kit,
  set: KitSet & SetToPlan,
  { paper: id, missing }: PaperShortage,
): readonly KitSizesPiece[] {
  const merged = kitSet(kit, set.trimmer);
  assert(merged !== null, 'A kit that gives all its pieces has their sizes');
  const paper = merged.layout.papers.get(id)!;
  return wantedOf(merged)
    .filter((piece) => missing.has(piece.id))
    .map((piece) => {
      const each = paper.sheets.map((stock) => ({
        count: stock.count,
        made: piecesPerSheet(piece, stock, set.trimmer).count,
      }));
      const inAll = each.some(({ count }) => count === null)
        ? null
        : each.reduce((sum, { count, made }) => sum + (count ?? 0) * made, 0);
      return {
        part: pieceSource(set, piece.id).part,
        size: piece.size,
        perSheet: Math.max(0, ...each.map(({ made }) => made)),
        inAll,
      };
    });
}

/** For each paper that is short the first offer that goes with those before it; `null` where that is not all, or only one. */
function togetherOf(
  kit: Kit,
  set: KitSet & SetToPlan,
  { papers }: Shortage,
  offers: readonly KitOffer[],
): KitOffer | null {
  if (papers.length < 2) return null;
  let all = kit;
  const taken: KitOffer[] = [];
  for (const { paper } of papers) {
    const own = offers.filter((offer) => 'paper' in offer && offer.paper === paper);
    const fits = own.find((offer) => {
      const next = withOffer(all, offer);
      const touched = [...taken, offer].flatMap((one) =>
        'paper' in one ? [one.paper, ...('by' in one ? [one.by] : [])] : [],
      );
      return gives(next, set, [...new Set(touched)]);
    });
    if (fits === undefined) return null;
    taken.push(fits);
    all = withOffer(all, fits);
  }
  const merged = kitSet(all, set.trimmer);
  const used = merged === null ? [] : [...new Set(wantedOf(merged).map(({ paper }) => paper))];
  return merged !== null && gives(all, set, used) ? { kind: 'together', offers: taken } : null;
}
