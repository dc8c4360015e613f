import { evenOdd } from './arithmetic.ts';
import type { Point } from './point.ts';
import { type Region, regionOfRings, ringArea } from './region.ts';

/** What closed rings of any direction cover, filled even-odd: where two overlap is a hole. Rings may cross themselves. */
export function evenOddRegion(rings: readonly (readonly Point[])[]): Region {
  const [ring, other] = rings;
  // A triangle cannot cross itself.
  if (ring?.length === 3 && other === undefined) {
    const area = ringArea(ring);
    if (area !== 0) return regionOfRings([area > 0 ? ring : ring.toReversed()]);
  }
  return evenOdd(rings);
}
