import { type Box, bottomOf, type Length, lengthOfTicks, rightOf } from '../measure/index.ts';
import { areaOf, boundsOf, intersection, covers as regionCovers } from '../shape/index.ts';
import type { Shape } from './layout.ts';
import { regionIn } from './pieceShape.ts';
import { unseen } from './unseen.ts';

/** The outline of a piece, which fills its box. */
export interface Outline {
  readonly shape: Shape;
  readonly box: Box;
}

/** Whether nothing of `inner` lies outside `outer`, but for what is unseen. */
export function covers(outer: Outline, inner: Outline): boolean {
  const box = grown(outer.box, unseen);
  const inBox =
    box.left <= inner.box.left &&
    box.top <= inner.box.top &&
    rightOf(inner.box) <= rightOf(box) &&
    bottomOf(inner.box) <= bottomOf(box);
  if (outer.shape.kind === 'rectangle' || !inBox) return inBox;
  if (!isSimple(outer.shape) || !isSimple(inner.shape))
    return regionCovers(regionIn(outer.shape, outer.box), regionIn(inner.shape, inner.box), unseen);

  const { x, y } = doubledCentre(box);
  if (inner.shape.kind === 'circle') {
    const other = doubledCentre(inner.box);
    return square(other.x - x) + square(other.y - y) <= square(box.width - inner.box.width);
  }
  // The corner that is furthest from the centre.
  const dx = Math.max(x - 2 * inner.box.left, 2 * rightOf(inner.box) - x);
  const dy = Math.max(y - 2 * inner.box.top, 2 * bottomOf(inner.box) - y);
  return square(dx) + square(dy) <= square(box.width);
}

/** Whether two outlines lie partly or wholly on one another, by more than what is unseen. */
export function touches(one: Outline, other: Outline): boolean {
  // Of a circle and a rectangle the circle comes first, so that the order they are named in changes nothing.
  if (one.shape.kind === 'rectangle' && other.shape.kind !== 'rectangle') return touches(other, one);
  const box = grown(one.box, lengthOfTicks(-unseen));
  const inBoth =
    box.left < rightOf(other.box) &&
    other.box.left < rightOf(box) &&
    box.top < bottomOf(other.box) &&
    other.box.top < bottomOf(box);
  if (!inBoth || one.shape.kind === 'rectangle') return inBoth;
  if (!isSimple(one.shape) || !isSimple(other.shape)) {
    const common = intersection(regionIn(one.shape, one.box), regionIn(other.shape, other.box));
    const bounds = boundsOf(common);
    // A sliver no broader than what is unseen has no more area than that by half the way round its bounds.
    return bounds !== null && areaOf(common) > unseen * (bounds.width + bounds.height);
  }

  const { x, y } = doubledCentre(box);
  if (other.shape.kind === 'circle') {
    const centre = doubledCentre(other.box);
    return square(x - centre.x) + square(y - centre.y) < square(box.width + other.box.width);
  }
  // The point of the rectangle that is nearest to the centre.
  const nearestX = Math.min(Math.max(x, 2 * other.box.left), 2 * rightOf(other.box));
  const nearestY = Math.min(Math.max(y, 2 * other.box.top), 2 * bottomOf(other.box));
  return square(x - nearestX) + square(y - nearestY) < square(box.width);
}

/** Rectangles and circles are most of what lies on cards, and a sum tells of them. */
function isSimple({ kind }: Shape): boolean {
  return kind === 'rectangle' || kind === 'circle';
}

/** Doubled, so that the middle of an odd box is whole too; radii are doubled to widths to match. */
function doubledCentre(box: Box): { readonly x: number; readonly y: number } {
  return { x: 2 * box.left + box.width, y: 2 * box.top + box.height };
}

function grown(box: Box, by: Length): Box {
  return {
    left: lengthOfTicks(box.left - by),
    top: lengthOfTicks(box.top - by),
    width: lengthOfTicks(box.width + 2 * by),
    height: lengthOfTicks(box.height + 2 * by),
  };
}

function square(value: number): number {
  return value * value;
}
