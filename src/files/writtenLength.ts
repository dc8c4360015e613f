import { type Length, readLength, showLength, showLengthWithUnit, type Units } from '../measure/index.ts';
import { assert } from '../problem/index.ts';

/**
 * The text of a length for a file in `units`, which is read there as the very length: with its unit, or `bare`
 * without it if `units` can say it; one that these cannot say exactly, in the other unit.
 */
export function writtenLength(length: Length, units: Units, bare: boolean): string {
  const ways = [
    bare ? showLength(length, units) : showLengthWithUnit(length, units),
    showLengthWithUnit(length, units === 'in' ? 'mm' : 'in'),
    exactMillimetres(length),
  ];
  const text = ways.find((way) => readsAs(way, units, length));
  assert(text !== undefined, 'Every length can be written exactly', { length, ways });
  return text;
}

/** Whether a text that is a length says its unit. */
export function hasUnit(text: string): boolean {
  const [inInches, inMillimetres] = [readLength(text, 'in'), readLength(text, 'mm')];
  return inInches.ok && inMillimetres.ok && inInches.units === inMillimetres.units;
}

/** Whether a text is read as that length in a file in `units`. */
export function readsAs(text: string, units: Units, length: Length): boolean {
  const reading = readLength(text, units);
  return reading.ok && reading.length === length;
}

/** A tick is 0.000625 mm, so six decimals say every length. */
function exactMillimetres(length: Length): string {
  const digits = String(Math.abs(length) * 625).padStart(7, '0');
  const decimals = digits.slice(-6).replace(/0+$/, '');
  const whole = digits.slice(0, -6);
  return `${length < 0 ? '-' : ''}${whole}${decimals === '' ? '' : `.${decimals}`} mm`;
}
