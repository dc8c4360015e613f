import type { CutLimits } from './task.ts';

/** Whether a length can be measured off under the limits: a whole multiple of the step and within the reach. */
export function measurable(length: number, { step, reach }: Pick<CutLimits, 'step' | 'reach'>): boolean {
  return length > 0 && (step === null || length % step === 0) && (reach === null || length <= reach);
}

/**
 * Whether a length can be cut from a longer one along its axis and be kept: measured off itself, or left when what
 * is over has been measured off in strips. True where the two are equal, for then there is nothing to cut.
 */
export function cuttableFrom(length: number, whole: number, limits: CutLimits): boolean {
  if (length >= whole) return length === whole;
  return measurable(length, limits) || addUp(whole - length, limits);
}

/**
 * Strips that can be measured off one after another and add up to a length; `null` where none do. As few as can
 * be, or one more where all are alike then; else the longest that there can be, and a last one that is shorter.
 */
export function stripsOf(length: number, limits: CutLimits): readonly number[] | null {
  if (measurable(length, limits)) return [length];
  if (!addUp(length, limits)) return null;
  const unit = limits.step ?? 1;
  const reach = limits.reach ?? length;
  const longest = reach - (reach % unit);
  const fewest = Math.ceil(length / longest);
  for (const count of [fewest, fewest + 1]) {
    const each = length / count;
    if (each % unit === 0) return new Array<number>(count).fill(each);
  }
  return [...new Array<number>(fewest - 1).fill(longest), length - (fewest - 1) * longest];
}

/** Whether strips that can be measured off add up to a length. */
function addUp(length: number, { step, reach }: CutLimits): boolean {
  const unit = step ?? 1;
  return length > 0 && length % unit === 0 && (reach === null || reach >= unit);
}
