/** One of the usual cautions of the trade, with the word that heads it. */
export interface Caution {
  readonly topic: string;
  readonly says: string;
}

/** What is in a set that asks for a caution of its own. */
export interface CautionedSet {
  readonly scored: boolean;
  /** Anything glued, in whatever way. */
  readonly glued: boolean;
  /** Parts that are bought, not cut: buttons, gems and the like may be among them. */
  readonly bought: boolean;
}

/**
 * The cautions that belong to a set, those of the blade first.
 *
 * Usual practice: art-education society guidance on knives and school sheets on trimmers. Under threes: 16 CFR
 * 1501.4, which leaves out paper and ribbon but not buttons, gems and brads; long ribbons: from memory.
 */
export function cautionsFor(set: CautionedSet): readonly Caution[] {
  return [
    {
      topic: 'Trimmer',
      says: 'Keep the guard on and your fingers behind it. Latch the arm down, or park the blade, whenever you look away. Show everyone who uses it how. Keep it from children.',
    },
    {
      topic: 'Knife',
      says: 'Cut on a mat that is larger than the work, along a metal ruler, with your other hand behind the blade. Change dull blades. Cap the knife when you lay it down, and put old blades where nobody can reach into them.',
    },
    ...(set.scored
      ? [{ topic: 'Scoring', says: 'Score with a blunt tool, never with the blade that cuts.' }]
      : []),
    ...(set.glued
      ? [
          {
            topic: 'Glue and heat',
            says: 'Open a window. Keep spray and solvent glues from any flame. A glue gun and its glue burn: cool a burn under water and do not pull the glue off.',
          },
        ]
      : []),
    {
      topic: 'Children',
      says: `${
        set.bought
          ? 'Buttons, gems, brads and other small parts can choke a child under three: leave them off a card that may come into small hands. '
          : 'Small pieces and snippets are not for children under three. '
      }Keep ribbon ends short.`,
    },
    {
      topic: 'Rules',
      says: 'What the makers of your tools, papers and glues say goes before what is printed here, and so do the rules of the place where you work. Your post office decides what goes as a letter.',
    },
  ];
}
