import { type Length, lengthOfTicks, millimetres, ticksPerInch } from '../measure/index.ts';

/** What is known of a paper that is folded: thickness, and grammage where that was said. */
export interface FoldedPaper {
  readonly thickness: Length;
  /** In g/m²; `null`: nobody said. */
  readonly gsm: number | null;
}

/** A rule in print for when a paper is scored before it is folded. */
export interface ScoringRule {
  readonly says: string;
  asks(paper: FoldedPaper): boolean;
}

/**
 * The rules in print, which disagree: a printer's over 0.005 in, a finisher's from 0.006 in, a mill's from 150 g/m² for
 * coated paper. (A fourth, “100 lb or heavier”, does not say of which kind of paper, so nobody can go by it.)
 */
export const scoringRules: readonly ScoringRule[] = [
  { says: 'over 0.005 in thick', asks: ({ thickness }) => thickness > mils(5) },
  { says: 'from 0.006 in thick', asks: ({ thickness }) => thickness >= mils(6) },
  { says: 'from 150 g/m²', asks: ({ gsm }) => gsm !== null && gsm >= 150 },
];

/**
 * What the rules say of a paper: `score` where one asks for it at least, which costs a minute where a crack costs a card;
 * `fold` where none does.
 */
export function scoringOf(paper: FoldedPaper): { readonly do: 'score' | 'fold'; readonly asked: number } {
  const asked = scoringRules.filter((rule) => rule.asks(paper)).length;
  return { do: asked > 0 ? 'score' : 'fold', asked };
}

/** From this thickness a fold wants two scores, a thickness apart (common practice, no source). */
export const thickStock: Length = millimetres(0.5);

/** Whether a paper is scored twice for one fold. */
export function isThickStock(thickness: Length): boolean {
  return thickness >= thickStock;
}

/** Thousandths of an inch as they would be read from a file, rounded down to a tick. */
function mils(count: number): Length {
  return lengthOfTicks(Math.floor((count * ticksPerInch) / 1000));
}
