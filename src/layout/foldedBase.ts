import { type FoldedBase, largestAllowance, takesAllowance, usualAllowance } from '../making/index.ts';
import { type Length, lengthOfTicks, zero } from '../measure/index.ts';
import type { Layout } from './layout.ts';

/**
 * The base of a layout by all that says how it is folded, with the usual allowance where none is said; one that is too
 * large to leave every panel something is cut down to the largest, and `checkLayout` says so where it was said.
 */
export function foldedBase(layout: Pick<Layout, 'base' | 'units'>): FoldedBase {
  const { size, fold, opens } = layout.base;
  const base = { size, fold, opens };
  const allowance = takesAllowance(fold)
    ? lengthOfTicks(Math.min(allowanceSaid(layout), largestAllowance(base)))
    : zero;
  return { ...base, allowance };
}

/** How much narrower panels within others are to be, as the layout says, else as is usual. */
export function allowanceSaid({ base, units }: Pick<Layout, 'base' | 'units'>): Length {
  return base.allowance ?? usualAllowance[units];
}
