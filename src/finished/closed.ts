import type { Arrangement, Layout } from '../layout/index.ts';
import { heaviestCards, likeCards } from './likeCards.ts';
import { type Section, sectionOf } from './section.ts';
import { type Weight, weightOf } from './weight.ts';

/** A card of the set closed and ready for its envelope: the thickest of the set, and the heaviest. */
export interface Closed {
  /** Through the thickest card of the set, from 0, and that card. */
  readonly section: Section;
  readonly thickestCard: number;
  /** Of the heaviest card. */
  readonly weight: Weight;
  readonly heaviestCard: number;
  /** Of all the cards together, in grams. */
  readonly setGrams: number;
}

/** What the cards of a set are like when they are closed, where their papers differ by the thickest and the heaviest. */
export function closedCards(layout: Layout, arrangement: Arrangement): Closed {
  const cards = heaviestCards(layout).map(({ card }) => card);
  const sections = cards.map((card) => ({ card, section: sectionOf(layout, arrangement, card) }));
  const weights = cards.map((card) => ({ card, weight: weightOf(layout, arrangement, card) }));
  const thickest = sections.reduce((best, one) =>
    one.section.thickest.thickness > best.section.thickest.thickness ? one : best,
  );
  const heaviest = weights.reduce((best, one) => (one.weight.grams > best.weight.grams ? one : best));
  return {
    section: thickest.section,
    thickestCard: thickest.card,
    weight: heaviest.weight,
    heaviestCard: heaviest.card,
    setGrams: likeCards(layout).reduce(
      (total, { card, count }) => total + count * weightOf(layout, arrangement, card).grams,
      0,
    ),
  };
}
