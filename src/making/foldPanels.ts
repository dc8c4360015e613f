import { inches, type Length, lengthOfTicks, minus, sum, times } from '../measure/index.ts';
import type { FoldKind } from './fold.ts';

/** A sheet that is folded as it is, edge to edge. */
export interface FlatPanels {
  /** In the order of a base of that kind, its inside up. */
  readonly panels: readonly Length[];
  /** What of the sheet the panels do not use; negative where they come to more than there is. */
  readonly rest: Length;
}

/** The folds that printers tell a rule for that begins with the flat sheet. */
export type FlatFold = Extract<FoldKind, 'trifold' | 'roll' | 'parallel'>;

/**
 * The panels of a sheet so long that is folded as it is, by the rule that five commercial printers give alike:
 * `trifold`: a third, rounded up to 1/32 in, and a short panel 1/16 in less; `parallel` (and a gate folded in half): a
 * quarter and 1/32 in, and short panels 1/16 in less; `roll`: a quarter and 1/16 in, then 3/32 in less, then 1/16 in
 * less again.
 *
 * Thirds do not come out of every length: 8 1/2 in leaves 1/32 in and 12 in 1/16 in, which has to be cut off; the
 * others always come out, but for a quarter's ticks.
 */
export function flatPanels(fold: FlatFold, flat: Length): FlatPanels {
  const panels = rules[fold](flat);
  return { panels, rest: minus(flat, sum(...panels)) };
}

/** Whether there is such a rule for a fold. */
export function isFlatFold(fold: FoldKind): fold is FlatFold {
  return Object.hasOwn(rules, fold);
}

const rules = {
  trifold: (flat) => {
    const wide = times(fine, Math.ceil(flat / (3 * fine)));
    return [wide, wide, minus(wide, times(fine, 2))];
  },
  roll: (flat) => {
    const wide = sum(quarterOf(flat), times(fine, 2));
    const third = minus(wide, times(fine, 3));
    return [wide, wide, third, minus(third, times(fine, 2))];
  },
  parallel: (flat) => {
    const wide = sum(quarterOf(flat), fine);
    const short = minus(wide, times(fine, 2));
    return [wide, wide, short, short];
  },
} as const satisfies Record<FlatFold, (flat: Length) => readonly Length[]>;

/** What the rules count in. */
const fine: Length = inches(1, 32);

function quarterOf(flat: Length): Length {
  return lengthOfTicks(Math.floor(flat / 4));
}
