import { assert } from '../problem/index.ts';

/**
 * The chance that it happens on at least one of so many cards, given that for one: 1 - (1 - chance)^cards. The cards
 * are taken as independent. Right for the tiniest chances too, where 1 - chance would be 1.
 */
export function chanceInSet(chance: number, cards: number): number {
  assert(chance >= 0 && chance <= 1 && cards >= 0, 'A chance of some cards', { chance, cards });
  if (chance === 1) return cards === 0 ? 0 : 1;
  return cards === 0 ? 0 : -Math.expm1(cards * Math.log1p(-chance));
}

/** The chance for one card that makes it `risk` for the whole set: `chanceInSet` turned round. */
export function chanceForCard(risk: number, cards: number): number {
  assert(risk >= 0 && risk < 1 && cards > 0, 'A risk of some cards', { risk, cards });
  return -Math.expm1(Math.log1p(-risk) / cards);
}
