import { type Box, lengthOfTicks } from '../measure/index.ts';
import type { Outline } from './outline.ts';
import type { PathPoint, PathShape } from './path.ts';
import { type Point, pointNear } from './point.ts';

/**
 * The path made as large as the box, so that it meets all four of its edges; pressed out of shape where the box is
 * not as the path's `pathSize`. Ends and handles are rounded to whole ticks.
 */
export function pathOutline({ contours, bounds }: PathShape, box: Box): Outline {
  const placed = ({ x, y }: PathPoint): Point => {
    const { x: right, y: down } = pointNear(
      ((x - bounds.left) / bounds.width) * box.width,
      ((y - bounds.top) / bounds.height) * box.height,
    );
    return { x: lengthOfTicks(box.left + right), y: lengthOfTicks(box.top + down) };
  };
  return {
    contours: contours.map(({ from, segments }) => ({
      from: placed(from),
      segments: segments.map((segment) =>
        segment.kind === 'line'
          ? { kind: 'line', to: placed(segment.to) }
          : {
              kind: 'curve',
              first: placed(segment.first),
              second: placed(segment.second),
              to: placed(segment.to),
            },
      ),
    })),
  };
}
