import { zero } from '../measure/index.ts';
import type { Trimmer } from '../trimming/index.ts';

/** The hand that works the blade. */
export type Hand = Trimmer['hand'];

/**
 * The trimmer that a guide for that hand is told by.
 *
 * `null` for a hand is the hand of the trimmer: it stays as it is. A trimmer for the other hand is its mirror, with the
 * measuring edge and the ruler across the blade on the other sides; what it can be set to is the same, so a plan for the
 * one is a plan for the other. Where nobody said which trimmer, that of a hand measures on the side of the other hand
 * (common practice, no source) and can do anything.
 */
export function trimmerFor(hand: Hand, trimmer: Trimmer | null): Trimmer;
export function trimmerFor(hand: Hand | null, trimmer: Trimmer | null): Trimmer | null;
export function trimmerFor(hand: Hand | null, trimmer: Trimmer | null): Trimmer | null {
  if (hand === null || hand === trimmer?.hand) return trimmer;
  if (trimmer === null) return { ...anyTrimmer, hand, measuringEdge: otherSide[hand] };
  return { ...trimmer, hand, measuringEdge: otherSide[trimmer.measuringEdge] };
}

/**
 * What becomes of the measuring edge in a guide for a hand that was asked for; empty where that is the hand of the
 * trimmer, or none was asked for.
 */
export function handSentence(hand: Hand | null, trimmer: Trimmer | null): string {
  if (hand === null || hand === trimmer?.hand) return '';
  const { measuringEdge } = trimmerFor(hand, trimmer);
  const stays = 'every setting is the same, and no print is mirrored';
  if (trimmer === null) {
    return `Nobody said which trimmer: one for the ${hand} hand is taken to measure on the ${measuringEdge}. For the other hand, left and right change places; ${stays}.`;
  }
  return `The trimmer was said to be worked with the ${trimmer.hand} hand. For the ${hand} hand it is taken as seen in a mirror, the measuring edge on the ${measuringEdge}; ${stays}.`;
}

const otherSide = { left: 'right', right: 'left' } as const satisfies Record<Hand, Hand>;

const anyTrimmer: Omit<Trimmer, 'hand' | 'measuringEdge'> = {
  name: '',
  marks: null,
  longest: null,
  narrowest: null,
  reach: { measuringSide: null, otherSide: null },
  correction: zero,
  sheetsAtOnce: 1,
  cutsPerSitting: null,
};
