import { type Length, lengthOfTicks, minus } from './length.ts';

/** The two unit systems that people measure cards in. */
export type Units = 'in' | 'mm';

/** Width then height, as everywhere: of a sheet with the pattern upright, of a part as the finished card stands. */
export interface Size {
  readonly width: Length;
  readonly height: Length;
}

/** The two directions of a flat thing: `width` runs left to right, `height` top to bottom. */
export type Axis = 'width' | 'height';

/** An edge of an upright rectangle. */
export type Edge = 'left' | 'right' | 'top' | 'bottom';

/** A rectangle in a plane whose origin is the top left corner of the card face; x to the right, y downwards. */
export interface Box {
  readonly left: Length;
  readonly top: Length;
  readonly width: Length;
  readonly height: Length;
}

/** The two sizes exchanged: what a quarter turn makes of it. */
export function quarterTurned(size: Size): Size {
  return { width: size.height, height: size.width };
}

/** x of the right edge. */
export function rightOf(box: Box): Length {
  return lengthOfTicks(box.left + box.width);
}

/** y of the bottom edge. */
export function bottomOf(box: Box): Length {
  return lengthOfTicks(box.top + box.height);
}

/** What `outer` shows on each side of `inner`: negative where `inner` hangs over. */
export function bordersOf(outer: Box, inner: Box): Readonly<Record<Edge, Length>> {
  return {
    left: minus(inner.left, outer.left),
    right: minus(rightOf(outer), rightOf(inner)),
    top: minus(inner.top, outer.top),
    bottom: minus(bottomOf(outer), bottomOf(inner)),
  };
}
