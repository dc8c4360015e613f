import {
  type Length,
  readLength,
  showLength,
  showLengthWithUnit,
  ticksPerInch,
  ticksPerMillimetre,
  type Units,
} from '../measure/index.ts';
import { assert } from '../problem/index.ts';

/**
 * The text of a length for a file in `units`, which is read there as the very length: with its unit, or `bare`
 * without it. One that fractions and short decimals cannot say exactly is written in the other unit if that can, else
 * as a longer decimal that is rounded down to it.
 */
export function writtenLength(length: Length, units: Units, bare: boolean): string {
  const ways = [
    bare ? showLength(length, units) : showLengthWithUnit(length, units),
    showLengthWithUnit(length, units === 'in' ? 'mm' : 'in'),
    `${shortestDecimal(length, units)}${bare ? '' : ` ${units}`}`,
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

/**
 * The shortest decimal that is rounded down to the length when it is read: a tick is wider than 0.00002 in and 0.0006 mm,
 * so five decimals do for every length.
 */
function shortestDecimal(length: Length, units: Units): string {
  const unit = BigInt(units === 'in' ? ticksPerInch : ticksPerMillimetre);
  for (let places = 0; ; places += 1) {
    const scale = 10n ** BigInt(places);
    const least = -floorOf(-BigInt(length) * scale, unit);
    if (floorOf(least * unit, scale) === BigInt(length)) return decimalText(least, places);
  }
}

/** Rounded down, also below zero. */
function floorOf(top: bigint, bottom: bigint): bigint {
  const quotient = top / bottom;
  return top < 0n && top % bottom !== 0n ? quotient - 1n : quotient;
}

function decimalText(scaled: bigint, places: number): string {
  const digits = String(scaled < 0n ? -scaled : scaled).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const decimals = digits.slice(digits.length - places);
  return `${scaled < 0n ? '-' : ''}${whole}${decimals === '' ? '' : `.${decimals}`}`;
}
