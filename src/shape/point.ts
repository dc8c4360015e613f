import { type Length, lengthOfTicks } from '../measure/index.ts';

/** A place in the plane of the card face: x to the right, y downwards, from the top left corner of the face. */
export interface Point {
  readonly x: Length;
  readonly y: Length;
}

/** The point at those ticks, each rounded to the next whole one; halves go up. */
export function pointNear(x: number, y: number): Point {
  return { x: lengthOfTicks(Math.round(x)), y: lengthOfTicks(Math.round(y)) };
}
