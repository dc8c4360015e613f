import { assert } from '../problem/index.ts';

declare const lengthBrand: unique symbol;

/**
 * An exact length: a whole number of ticks of 0.625 µm, so that every 1/64 in (635 ticks) and every 0.01 mm
 * (16 ticks) is whole. May be zero or negative (an overhang is a negative distance). Adding, subtracting and
 * whole multiples are exact; equality is `===`.
 */
export type Length = number & { readonly [lengthBrand]: 'ticks' };

/** 1 in is 25.4 mm exactly (international yard and pound agreement, 1959), so 25.4 mm / 0.625 µm. */
export const ticksPerInch = 40_640;
/** 1 mm / 0.625 µm. */
export const ticksPerMillimetre = 1_600;

/** The length of no extent. */
export const zero = 0 as Length;

/** The length of that many whole ticks; throws on a number that is not whole and safe. */
export function lengthOfTicks(ticks: number): Length {
  assert(Number.isSafeInteger(ticks), 'A length is a whole number of ticks', { ticks });
  // -0 would make `Object.is` and JSON differ from 0.
  return (ticks === 0 ? 0 : ticks) as Length;
}

/** `count` inches over `parts` (`inches(9, 4)` is 2 1/4 in); throws when that is no whole number of ticks. */
export function inches(count: number, parts = 1): Length {
  return lengthOfTicks(cleared((count * ticksPerInch) / parts));
}

/** `count` millimetres; throws when that is no whole number of ticks (0.000625 mm). */
export function millimetres(count: number): Length {
  return lengthOfTicks(cleared(count * ticksPerMillimetre));
}

/** Cleared of what binary numbers add to decimal fractions (1.1, 0.35): far less than a thousandth of a tick. */
function cleared(ticks: number): number {
  const whole = Math.round(ticks);
  return Math.abs(ticks - whole) < 0.001 ? whole : ticks;
}

/** The sum of the lengths; zero for none. */
export function sum(...lengths: readonly Length[]): Length {
  return lengthOfTicks(lengths.reduce((total: number, length) => total + length, 0));
}

/** `from - taken`, which may be negative. */
export function minus(from: Length, taken: Length): Length {
  return lengthOfTicks(from - taken);
}

/** A whole multiple of a length. */
export function times(length: Length, count: number): Length {
  return lengthOfTicks(length * count);
}

/** How many times `part` goes into `whole` (not negative), and what is left: whole = count * part + rest, 0 <= rest < part. */
export function goesInto(part: Length, whole: Length): { count: number; rest: Length } {
  assert(part > 0 && whole >= 0, 'goesInto wants a positive part of a whole that is not negative', {
    part,
    whole,
  });
  const rest = whole % part;
  return { count: (whole - rest) / part, rest: lengthOfTicks(rest) };
}

/** Half of a length, the odd tick in `larger`: smaller + larger = length, larger - smaller is 0 or 1 tick. */
export function halves(length: Length): { smaller: Length; larger: Length } {
  const smaller = lengthOfTicks(Math.floor(length / 2));
  return { smaller, larger: minus(length, smaller) };
}

/** The length in points of 1/72 in, for the pen; not exact. */
export function pointsOf(length: Length): number {
  return (length * 72) / ticksPerInch;
}

/** The length in millimetres, for the screen and for files that want a plain number; not always exact. */
export function millimetresOf(length: Length): number {
  return length / ticksPerMillimetre;
}

/** The length in inches, as a plain number; not always exact. */
export function inchesOf(length: Length): number {
  return length / ticksPerInch;
}
