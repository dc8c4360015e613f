import type { Box } from '../measure/index.ts';
import { bottomOf, rightOf } from '../measure/index.ts';
import type { Point } from './point.ts';

/** How an outline goes on from where it has come to. */
export type Segment =
  | { readonly kind: 'line'; readonly to: Point }
  /** A cubic Bézier curve with its two handles. */
  | { readonly kind: 'curve'; readonly first: Point; readonly second: Point; readonly to: Point }
  /**
   * A quarter of an upright ellipse. `corner` is where the tangents of its two ends meet, so that the centre is the
   * start plus `to` less `corner`.
   */
  | { readonly kind: 'quarter'; readonly corner: Point; readonly to: Point };

/** A closed line: from `from` by the segments in turn; a straight line closes it where they do not come back. */
export interface Contour {
  readonly from: Point;
  readonly segments: readonly Segment[];
}

/** The true outline of a shape, its contours filled even-odd: a contour inside another is a hole, whatever its direction. */
export interface Outline {
  readonly contours: readonly Contour[];
}

/** The outline of straight closed lines through those points. */
export function straightOutline(rings: readonly (readonly Point[])[]): Outline {
  return {
    contours: rings
      .filter((ring) => ring.length > 0)
      .map(([from, ...others]) => ({
        from: from!,
        segments: others.map((to) => ({ kind: 'line', to })),
      })),
  };
}

/** The four corners of a box, clockwise from the top left one. */
export function cornersOf(box: Box): [Point, Point, Point, Point] {
  const [left, top, right, bottom] = [box.left, box.top, rightOf(box), bottomOf(box)];
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

/** The outline of the box itself. */
export function rectangleOutline(box: Box): Outline {
  return straightOutline([cornersOf(box)]);
}
