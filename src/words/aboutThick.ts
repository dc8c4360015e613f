import { inchesOf, type Length, millimetresOf } from '../measure/index.ts';
import type { Showing } from './showing.ts';

/**
 * A thickness with no more figures than are known of paper: `0.14 in`, `0.012 in`, `3.5 mm`, `0.28 mm`. Two figures that
 * count, since paper of one kind varies by some per cent.
 */
export function aboutThick(thickness: Length, { units, glyphs }: Showing): string {
  const value = units === 'in' ? inchesOf(thickness) : millimetresOf(thickness);
  const space = glyphs === 'printed' ? '\u00a0' : ' ';
  return `${Number(value.toPrecision(2))}${space}${units}`;
}
