/** What an adhesive adds to a card, and where the figure comes from; to be changed for what a person uses. */
export interface AdhesiveWeight {
  /** Grams per cubic centimetre, for what has a thickness; `null`: it goes by area. */
  readonly density: number | null;
  /** Grams per square metre of what it holds, for what is spread thin; `null`: it goes by volume. */
  readonly spread: number | null;
  /** How much of the area of a part has it under it, from 0 to 1. */
  readonly share: number;
  readonly source: string;
}

/**
 * Weights of adhesives, all of them estimates: no published figure for how much is used on a card was found.
 *
 * Foam: closed-cell polyethylene foam is about 0.03 to 0.1 g/cm³, more with its two films of glue. Liquid glue: what is
 * left when a thin bead has dried. Spots: four of 10 mm on a part of 6 by 6 cm.
 */
export const adhesiveWeights = {
  raised: { density: 0.12, spread: null, share: 0.5, source: 'common practice, no source; from memory' },
  spots: { density: null, spread: 25, share: 1, source: 'common practice, no source; from memory' },
  flat: { density: null, spread: 10, share: 1, source: 'common practice, no source; from memory' },
} as const satisfies Record<'raised' | 'spots' | 'flat', AdhesiveWeight>;
