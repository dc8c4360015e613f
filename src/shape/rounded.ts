import { type Box, bottomOf, halves, type Length, lengthOfTicks, rightOf } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { cornersOf, type Outline, rectangleOutline, type Segment } from './outline.ts';
import type { Point } from './point.ts';

/**
 * The oval that fills the box, a circle where the box is a square: four quarters of an ellipse.
 *
 * They meet in the middle of the sides. Of an odd side one half is a tick longer, so its quarters differ by that tick;
 * the area stays π/4 · width · height.
 */
export function ovalOutline(box: Box): Outline {
  const x = lengthOfTicks(box.left + halves(box.width).smaller);
  const y = lengthOfTicks(box.top + halves(box.height).smaller);
  const [topLeft, topRight, bottomRight, bottomLeft] = cornersOf(box);
  const top = { x, y: box.top };
  const quarter = (corner: Point, to: Point): Segment => ({ kind: 'quarter', corner, to });
  return {
    contours: [
      {
        from: top,
        segments: [
          quarter(topRight, { x: rightOf(box), y }),
          quarter(bottomRight, { x, y: bottomOf(box) }),
          quarter(bottomLeft, { x: box.left, y }),
          quarter(topLeft, top),
        ],
      },
    ],
  };
}

/**
 * The box with its four corners rounded by the radius `corner`.
 *
 * A radius of more than half the shorter side is taken as that half; none leaves the rectangle.
 */
export function roundedOutline(box: Box, corner: Length): Outline {
  assert(corner >= 0, 'A corner is rounded outwards', { corner });
  const radius = Math.min(corner, halves(box.width).smaller, halves(box.height).smaller);
  if (radius === 0) return rectangleOutline(box);
  const [topLeft, topRight, bottomRight, bottomLeft] = cornersOf(box);
  const moved = (from: Point, x: number, y: number): Point => ({
    x: lengthOfTicks(from.x + x * radius),
    y: lengthOfTicks(from.y + y * radius),
  });
  const from = moved(topLeft, 1, 0);
  return {
    contours: [
      {
        from,
        segments: [
          { kind: 'line', to: moved(topRight, -1, 0) },
          { kind: 'quarter', corner: topRight, to: moved(topRight, 0, 1) },
          { kind: 'line', to: moved(bottomRight, 0, -1) },
          { kind: 'quarter', corner: bottomRight, to: moved(bottomRight, -1, 0) },
          { kind: 'line', to: moved(bottomLeft, 1, 0) },
          { kind: 'quarter', corner: bottomLeft, to: moved(bottomLeft, 0, -1) },
          { kind: 'line', to: moved(topLeft, 0, 1) },
          { kind: 'quarter', corner: topLeft, to: from },
        ],
      },
    ],
  };
}
