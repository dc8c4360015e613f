import { inches, type Length, type Size } from '../measure/index.ts';
import { type Trimmer, wideEnough } from './trimmer.ts';

/** The shortest side a leftover may have and still be worth keeping: 1 in (common practice, no source). */
export const smallestUseful: Length = inches(1);

/** Whether a leftover goes back into the stash: no side under `smallest`, nor under what the trimmer can cut again. */
export function worthKeeping(
  size: Size,
  trimmer: Trimmer | null,
  smallest: Length = smallestUseful,
): boolean {
  return Math.min(size.width, size.height) >= smallest && wideEnough(size, trimmer);
}
