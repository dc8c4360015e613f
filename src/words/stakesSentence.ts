import type { ProveReason, StakesRescue } from '../planning/index.ts';
import { counted } from './count.ts';

/**
 * What is said of the stakes of a step: `Point of no return: a strip spoiled here is 2 cards fewer.`; empty where it
 * can be made good or nobody knows. `noun` is what the step takes.
 */
export function stakesSentence(rescue: StakesRescue, noun: 'sheet' | 'strip' | 'piece'): string {
  if (rescue.kind !== 'none') return '';
  const cards = counted(rescue.cardsFewer, 'card');
  return `Point of no return: a ${noun} spoiled here is ${rescue.proved ? '' : 'up to '}${cards} fewer.`;
}

/**
 * That one is proved before the others are cut, and by what, in one sentence that the weightiest reason leads;
 * `isSaid`: that nothing is to spare has been said.
 */
export function proveSentence(reasons: readonly ProveReason[], { isSaid = false } = {}): string {
  const [first] = reasons;
  if (first === undefined) return '';
  if (first === 'nothing to spare' && isSaid) return proveWords['new setting'];
  return proveWords[first];
}

const proveWords = {
  'nothing to spare': 'Prove one first: cut one and measure it; nothing is to spare here.',
  direction: 'Prove one first: cut one and see that its print stands as it should.',
  'new setting': 'Prove one first: cut one and measure it.',
} as const satisfies Record<ProveReason, string>;
