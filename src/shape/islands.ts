import { islandsByArithmetic } from './arithmetic.ts';
import type { Region } from './region.ts';

/**
 * The connected pieces of a region, each with its holes and with what lies in them left to pieces of their own; none
 * for nothing. Pieces that meet in a corner alone are two. Their areas add up to the region's, to within a tick along
 * its edges.
 */
export function islandsOf(region: Region): Region[] {
  return region.rings.length <= 1 && region.rings.every((ring) => ring.length <= 4)
    ? region.rings.map(() => region)
    : islandsByArithmetic(region);
}
