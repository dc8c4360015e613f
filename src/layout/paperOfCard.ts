import type { Dealt } from './layout.ts';

/** The paper that card number `card` (from 0) gets of those dealt; `null` where none is cut. */
export function paperOfCard(dealt: Dealt, card: number): string | null {
  return dealt.papers[card % Math.max(1, dealt.papers.length)] ?? null;
}
