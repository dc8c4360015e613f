import type { Size, Units } from './box.ts';
import { type Length, ticksPerInch, ticksPerMillimetre } from './length.ts';
import { type Marking, type MarkReading, readMark } from './marking.ts';

/**
 * Which characters a shown length is made of: those of a keyboard (`3 5/8`, `-`, `x`), or those of a printed
 * page (`3 5⁄8` with the fraction slash, a no-break space, the true minus, `×`), which fonts set as fractions.
 */
export type Glyphs = 'typed' | 'printed';

/**
 * The length as a number in `units`, without the unit.
 *
 * Inches are whole numbers and fractions down to 1/64, else decimals of up to 4 places; millimetres are
 * decimals of up to 3. What these cannot say exactly is rounded to the nearest and begins with `about `.
 * Law: whatever is shown without `about` is read back by `readLength` as the same length.
 */
export function showLength(length: Length, units: Units, glyphs: Glyphs = 'typed'): string {
  const minusSign = glyphs === 'printed' ? '−' : '-';
  const extent = Math.abs(length);
  const { text, exact } =
    units === 'in' && extent % ticksPerSixtyFourth === 0
      ? { text: fractionText(extent / ticksPerSixtyFourth, glyphs), exact: true }
      : decimalText(extent, perUnit[units]);
  return `${exact ? '' : 'about '}${length < 0 && text !== '0' ? minusSign : ''}${text}`;
}

/** As `showLength`, with the unit: `3 5/8 in`, `92.1 mm`. */
export function showLengthWithUnit(length: Length, units: Units, glyphs: Glyphs = 'typed'): string {
  return `${showLength(length, units, glyphs)}${joiningSpace(glyphs)}${units}`;
}

/** Width by height with the unit at the end: `4 1/4 x 5 1/2 in`. */
export function showSize(size: Size, units: Units, glyphs: Glyphs = 'typed'): string {
  // A line may break after the cross, not before it.
  const cross = glyphs === 'printed' ? `${joiningSpace(glyphs)}× ` : ' x ';
  return `${showLength(size.width, units, glyphs)}${cross}${showLengthWithUnit(size.height, units, glyphs)}`;
}

/** How the length is read off a marking: the nearest mark as text without its unit, and how far off it is. */
export function showOnMarking(
  length: Length,
  marking: Marking,
  glyphs: Glyphs = 'typed',
): MarkReading & { readonly text: string } {
  const reading = readMark(length, marking);
  return { ...reading, text: showLength(reading.mark, marking.units, glyphs) };
}

const ticksPerSixtyFourth = ticksPerInch / 64;

const perUnit: Readonly<Record<Units, { readonly ticks: number; readonly places: number }>> = {
  // 0.0001 in is 2.5 µm, 0.001 mm is 1 µm: beyond what paper keeps.
  in: { ticks: ticksPerInch, places: 4 },
  mm: { ticks: ticksPerMillimetre, places: 3 },
};

function joiningSpace(glyphs: Glyphs): string {
  return glyphs === 'printed' ? '\u00a0' : ' ';
}

/** `sixtyFourths` (not negative) as a whole number and a fraction in lowest terms. */
function fractionText(sixtyFourths: number, glyphs: Glyphs): string {
  const whole = Math.floor(sixtyFourths / 64);
  let top = sixtyFourths % 64;
  if (top === 0) return `${whole}`;
  let bottom = 64;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = `${top}${glyphs === 'printed' ? '⁄' : '/'}${bottom}`;
  return whole === 0 ? fraction : `${whole}${joiningSpace(glyphs)}${fraction}`;
}

/** The nearest decimal of that many places, without needless zeros; whole-number arithmetic throughout. */
function decimalText(
  extent: number,
  { ticks, places }: { readonly ticks: number; readonly places: number },
): { text: string; exact: boolean } {
  const scaled = BigInt(extent) * 10n ** BigInt(places);
  const divisor = BigInt(ticks);
  const digits = `${(2n * scaled + divisor) / (2n * divisor)}`.padStart(places + 1, '0');
  const decimals = digits.slice(-places).replace(/0+$/, '');
  const whole = digits.slice(0, -places);
  return { text: decimals === '' ? whole : `${whole}.${decimals}`, exact: scaled % divisor === 0n };
}
