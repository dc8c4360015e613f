import { arrange, bagsOf, type Dealt, foldedBase, type Kit, type KitLayout } from '../layout/index.ts';
import { openedSize } from '../making/index.ts';
import type { Size } from '../measure/index.ts';

/** What is in a bag, and which bags are alike in it. */
export interface Bag {
  /** From 1: those who sit down first, then the teacher, then the spare ones. */
  readonly bags: readonly number[];
  /** By layout, in the order of the kit. */
  readonly layouts: readonly BagLayout[];
  readonly bought: readonly BagThing[];
  /** Pieces of paper in one bag. */
  readonly pieces: number;
}

/** What one bag has for one of the layouts. */
export interface BagLayout {
  readonly layout: KitLayout;
  readonly pieces: readonly BagPiece[];
  /** Bases and parts that are bought. */
  readonly bought: readonly BagThing[];
  /** 0 where the kit counts none. */
  readonly envelopes: number;
}

/** Pieces of one part from one paper. */
export interface BagPiece {
  /** `base` for bases. */
  readonly part: string;
  readonly paper: string;
  readonly count: number;
  /** Cut size, width then height as the finished card stands; `null` where it is unknown. */
  readonly size: Size | null;
}

export interface BagThing {
  /** The id of a part of the layout, or what the kit calls it. */
  readonly name: string;
  readonly count: number;
}

/**
 * The bags of a kit, those that are alike together, in the order of their first: piece by piece what is put into each.
 * Papers of a list are dealt over all the cards in the order of the bags, and what stands in for another paper comes to
 * the last of the cards that would have had that.
 */
export function bagsList(kit: Kit): readonly Bag[] {
  const count = bagsOf(kit);
  const layouts = kit.layouts.map((one) => ({ one, dealt: dealtOf(kit, one, count) }));
  const bought = kit.bought.map(({ name, each }) => ({ name, count: each }));
  const byContent = new Map<string, { bags: number[]; layouts: readonly BagLayout[] }>();
  for (let bag = 0; bag < count; bag += 1) {
    const content = layouts.map(({ one, dealt }) => contentOf(kit, one, dealt, bag));
    const key = JSON.stringify(
      content.map(({ pieces }) => pieces.map(({ part, paper, count: of }) => [part, paper, of])),
    );
    const same = byContent.get(key);
    if (same === undefined) byContent.set(key, { bags: [bag + 1], layouts: content });
    else same.bags.push(bag + 1);
  }
  return [...byContent.values()].map(({ bags, layouts: content }) => ({
    bags,
    layouts: content,
    bought,
    pieces: content.reduce((sum, { pieces }) => sum + pieces.reduce((all, { count: of }) => all + of, 0), 0),
  }));
}

/** A part that is cut, with the paper of each card of all the bags. */
interface DealtPart {
  readonly part: string;
  readonly perCard: number;
  readonly size: Size | null;
  readonly papers: readonly string[];
}

function dealtOf(kit: Kit, { id, each, layout }: KitLayout, bags: number): readonly DealtPart[] {
  const cards = bags * each;
  const papersOf = (part: string, { papers }: Dealt) => {
    const dealt = Array.from({ length: cards }, (_, card) => papers[card % papers.length]!);
    for (const one of kit.instead) {
      if (one.layout !== id || one.part !== part) continue;
      let left = one.cards;
      for (let card = cards - 1; card >= 0 && left > 0; card -= 1) {
        if (dealt[card] !== one.paper) continue;
        dealt[card] = one.by;
        left -= 1;
      }
    }
    return dealt;
  };
  const { base } = layout;
  const parts: DealtPart[] =
    base.papers.length === 0
      ? []
      : [{ part: 'base', perCard: 1, size: openedSize(foldedBase(layout)), papers: papersOf('base', base) }];
  for (const { part, cut } of arrange(layout).parts) {
    if (part.papers.length === 0) continue;
    parts.push({ part: part.id, perCard: part.places.length, size: cut, papers: papersOf(part.id, part) });
  }
  return parts;
}

function contentOf(kit: Kit, one: KitLayout, dealt: readonly DealtPart[], bag: number): BagLayout {
  const { each, layout } = one;
  const pieces = dealt.flatMap(({ part, perCard, size, papers }): readonly BagPiece[] => {
    const own = papers.slice(bag * each, (bag + 1) * each);
    return [...new Set(own)].map((paper) => ({
      part,
      paper,
      size,
      count: own.filter((other) => other === paper).length * perCard,
    }));
  });
  const bought = [
    ...(layout.base.papers.length === 0 ? [{ name: 'base', count: each }] : []),
    ...layout.parts
      .filter(({ papers }) => papers.length === 0)
      .map(({ id, places }) => ({ name: id, count: places.length * each })),
  ];
  return { layout: one, pieces, bought, envelopes: kit.envelopes ? each : 0 };
}
