import { type Box, lengthOfTicks } from '../measure/index.ts';
import {
  bannerOutline,
  boxRegion,
  difference,
  evenOddRegion,
  intersection,
  isEmpty,
  nothing,
  type Outline,
  ovalOutline,
  pathOutline,
  type Region,
  rectangleOutline,
  regionOf,
  roundedOutline,
  straightOutline,
  union,
} from '../shape/index.ts';
import { foldedStripOf, isFolded } from './foldedShape.ts';
import type { FoldedShape, Shape } from './layout.ts';

/** The true outline of a piece of that shape, which fills its seen box. */
export function outlineIn(shape: Shape, box: Box): Outline {
  switch (shape.kind) {
    case 'rectangle':
      return rectangleOutline(box);
    case 'circle':
    case 'oval':
      return ovalOutline(box);
    case 'rounded':
      return roundedOutline(box, shape.corner);
    case 'banner':
      return bannerOutline(box, shape.ends, shape.depth);
    case 'outline':
      return pathOutline(shape.path, box);
    case 'ribbon':
    case 'loops':
    case 'knot':
      return straightOutline(foldedRegion(shape, box).rings);
  }
}

/** What a piece of that shape covers in its seen box; of a torn one as it is reckoned to be torn. */
export function regionIn(shape: Shape, box: Box): Region {
  if (shape.kind === 'rectangle') return boxRegion(box);
  return isFolded(shape) ? foldedRegion(shape, box) : regionOf(outlineIn(shape, box));
}

/** What one layer of a folded strip covers. */
export interface FacetRegion {
  readonly region: Region;
  /** Whether it shows the other side of the paper than its part says. */
  readonly turned: boolean;
}

/**
 * The layers of a folded strip in its seen box, from the lowest to the highest, their corners rounded to ticks; none
 * where the strip is too short to be folded.
 */
export function facetRegionsIn(shape: FoldedShape, box: Box): readonly FacetRegion[] {
  const folded = foldedStripOf(shape);
  return (folded?.facets ?? []).map(({ corners, turned }) => ({
    region: evenOddRegion([
      corners.map(({ x, y }) => ({
        x: lengthOfTicks(box.left + Math.round(x)),
        y: lengthOfTicks(box.top + Math.round(y)),
      })),
    ]),
    turned,
  }));
}

/**
 * Where a folded strip lies at least once, at least twice and so on over itself in its seen box; the areas of all of them
 * together are that of its facets.
 */
export function depthRegionsIn(shape: FoldedShape, box: Box): readonly Region[] {
  let depths: readonly Region[] = [];
  for (const { region } of facetRegionsIn(shape, box)) {
    // A facet deepens by one what it lies on, from the deepest down.
    depths = [nothing, ...depths].map((_, index) => {
      const [own, above] = [depths[index] ?? nothing, index === 0 ? region : depths[index - 1]!];
      return union([own, intersection(above, region)]);
    });
  }
  return depths.filter((depth) => !isEmpty(depth));
}

/** What of a folded strip shows the side of the paper that its part says, nothing over it: the rest shows the other side. */
export function ownSideIn(shape: FoldedShape, box: Box): Region {
  let own = nothing;
  for (const { region, turned } of facetRegionsIn(shape, box))
    own = turned ? difference(own, region) : union([own, region]);
  return own;
}

function foldedRegion(shape: FoldedShape, box: Box): Region {
  const facets = facetRegionsIn(shape, box);
  return facets.length === 0 ? boxRegion(box) : union(facets.map(({ region }) => region));
}
