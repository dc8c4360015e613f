import { type Length, minus, sum, times } from '../measure/index.ts';

/** What a band goes round: how far across, and how thick where it is thickest. */
export interface Wrapped {
  readonly across: Length;
  readonly thickness: Length;
}

/**
 * The band that goes once round something flat, its ends lying over one another by `overlap`: twice as long as that is
 * wide and thick, and the overlap.
 */
export function bandLength(round: Wrapped, overlap: Length): Length {
  return sum(once(round), overlap);
}

/** How far the ends of a band lie over one another behind; negative: so much is missing for them to meet. */
export function bandOverlap(round: Wrapped, length: Length): Length {
  return minus(length, once(round));
}

function once({ across, thickness }: Wrapped): Length {
  return times(sum(across, thickness), 2);
}
