import { type Box, bottomOf, type Length, lengthOfTicks, rightOf } from '../measure/index.ts';
import type { Part } from './layout.ts';
import { unseen } from './unseen.ts';

/** The outline of a piece; a circle fills its box, which is square. */
export interface Outline {
  readonly shape: Part['shape'];
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
  if (outer.shape === 'rectangle' || !inBox) return inBox;

  const { x, y } = doubledCentre(box);
  if (inner.shape === 'circle') {
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
  const box = grown(one.box, lengthOfTicks(-unseen));
  const inBoth =
    box.left < rightOf(other.box) &&
    other.box.left < rightOf(box) &&
    box.top < bottomOf(other.box) &&
    other.box.top < bottomOf(box);
  if (!inBoth) return false;
  if (one.shape === 'rectangle' && other.shape === 'rectangle') return true;
  if (one.shape === 'circle' && other.shape === 'circle') {
    const [a, b] = [doubledCentre(box), doubledCentre(other.box)];
    return square(a.x - b.x) + square(a.y - b.y) < square(box.width + other.box.width);
  }
  const [circle, rectangle] = one.shape === 'circle' ? [box, other.box] : [other.box, box];
  const { x, y } = doubledCentre(circle);
  // The point of the rectangle that is nearest to the centre.
  const nearestX = Math.min(Math.max(x, 2 * rectangle.left), 2 * rightOf(rectangle));
  const nearestY = Math.min(Math.max(y, 2 * rectangle.top), 2 * bottomOf(rectangle));
  return square(x - nearestX) + square(y - nearestY) < square(circle.width);
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
