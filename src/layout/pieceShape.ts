import type { Box } from '../measure/index.ts';
import {
  bannerOutline,
  boxRegion,
  type Outline,
  ovalOutline,
  pathOutline,
  type Region,
  rectangleOutline,
  regionOf,
  roundedOutline,
} from '../shape/index.ts';
import type { Shape } from './layout.ts';

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
  }
}

/** What a piece of that shape covers in its seen box; of a torn one as it is reckoned to be torn. */
export function regionIn(shape: Shape, box: Box): Region {
  return shape.kind === 'rectangle' ? boxRegion(box) : regionOf(outlineIn(shape, box));
}
