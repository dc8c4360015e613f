import { ticksPerInch, ticksPerMillimetre } from '../measure/index.ts';

/** An area in square ticks as square millimetres, a plain number. */
export function squareMillimetres(area: number): number {
  return area / ticksPerMillimetre ** 2;
}

/** An area in square ticks as square inches, a plain number. */
export function squareInches(area: number): number {
  return area / ticksPerInch ** 2;
}
