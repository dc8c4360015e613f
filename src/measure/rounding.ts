import { assert } from '../problem/index.ts';
import { type Length, lengthOfTicks } from './length.ts';

/**
 * The whole multiple of `step` (above 0) at or below the length, at or above it, or nearest to it.
 *
 * Down is towards the smaller number, also left of zero. `nearest` halfway between two multiples takes
 * the even one, as NIST Handbook 44 reads a graduated scale (appendix A, 10.3).
 */
export function roundTo(length: Length, step: Length, direction: 'down' | 'up' | 'nearest'): Length {
  assert(step > 0, 'A length is rounded to a step above 0', { step });
  const count = Math.floor(length / step);
  const rest = length - count * step;
  const up = {
    down: false,
    up: rest > 0,
    nearest: 2 * rest > step || (2 * rest === step && count % 2 !== 0),
  }[direction];
  return lengthOfTicks((up ? count + 1 : count) * step);
}
