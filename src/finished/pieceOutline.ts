import type { Shape } from '../layout/index.ts';
import type { Box } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import {
  bannerOutline,
  type Outline,
  ovalOutline,
  pathOutline,
  readPath,
  rectangleOutline,
  roundedOutline,
} from '../shape/index.ts';

/** The true outline of a piece of that shape whose seen box is `box`. */
export function pieceOutline(shape: Shape, box: Box): Outline {
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
    case 'outline': {
      const reading = readPath(shape.path);
      assert(reading.ok, 'The path of a layout can be read', { path: shape.path.slice(0, 80) });
      return pathOutline(reading.path, box);
    }
  }
}
