import { type Dealt, type Layout, paperOfCard } from '../layout/index.ts';
import type { Length } from '../measure/index.ts';
import { thicknessOfDealt } from './thickness.ts';
import { grammageOfDealt } from './weight.ts';

/** Cards of a set that are as thick and weigh as much as one another. */
export interface LikeCards {
  /** The first of them, from 0. */
  readonly card: number;
  readonly count: number;
}

/**
 * The kinds of cards there are, told apart by how thick and heavy the papers are that are dealt to them, in the order of
 * their first cards; one kind where all are alike.
 */
export function likeCards(layout: Layout): readonly LikeCards[] {
  return kindsOf(layout).map(({ card, count }) => ({ card, count }));
}

/** Those kinds of cards of which no other is in every paper at least as thick and as heavy: the post goes by these. */
export function heaviestCards(layout: Layout): readonly LikeCards[] {
  const kinds = kindsOf(layout);
  return kinds
    .filter(({ measures }, index) =>
      kinds.every(
        (other, at) => at === index || other.measures.some((measure, of) => measure < measures[of]!),
      ),
    )
    .map(({ card, count }) => ({ card, count }));
}

interface Kind extends LikeCards {
  /** Thickness and grammage of all that differs from card to card. */
  readonly measures: readonly number[];
}

function kindsOf(layout: Layout): readonly Kind[] {
  const differing = [layout.base, ...layout.parts].filter((dealt) => {
    const [first, ...others] = dealt.papers.map((_, card) => measuresOf(layout, dealt, card).join(' '));
    return others.some((other) => other !== first);
  });
  const period = differing.reduce((so, { papers }) => leastMultiple(so, papers.length), 1);
  const kinds = new Map<string, { card: number; count: number; measures: readonly number[] }>();
  for (let card = 0; card < Math.min(period, layout.cards); card += 1) {
    const measures = differing.flatMap((dealt) => measuresOf(layout, dealt, card));
    const count = Math.ceil((layout.cards - card) / period);
    const kind = kinds.get(measures.join(' '));
    if (kind === undefined) kinds.set(measures.join(' '), { card, count, measures });
    else kind.count += count;
  }
  return [...kinds.values()];
}

function measuresOf(
  layout: Layout,
  dealt: Dealt & { readonly thickness: Length | null },
  card: number,
): readonly number[] {
  const paper = paperOfCard(dealt, card);
  return [thicknessOfDealt(layout, dealt, paper).length, grammageOfDealt(layout, dealt, paper).gsm];
}

function leastMultiple(one: number, other: number): number {
  let [large, small] = [one, other];
  while (small > 0) [large, small] = [small, large % small];
  return (one / large) * other;
}
