import fc from 'fast-check';
import Fraction from 'fraction.js';
import type { Length, Units } from '../index.ts';

/** Ticks in one unit by the definitions alone: 1 in is 25.4 mm, 1 tick is 0.625 µm. */
const ticksIn: Readonly<Record<Units | 'cm' | 'ft', Fraction>> = {
  in: new Fraction('25.4').div('0.000625'),
  ft: new Fraction('25.4').mul(12).div('0.000625'),
  mm: new Fraction(1).div('0.000625'),
  cm: new Fraction(10).div('0.000625'),
};

/** So many of a unit in ticks, as an exact fraction. */
export function ticksOf(value: Fraction, unit: Units | 'cm' | 'ft'): Fraction {
  return value.mul(ticksIn[unit]);
}

/** A length in a unit, as an exact fraction. */
export function exactValue(length: Length, units: Units): Fraction {
  return new Fraction(length).div(ticksIn[units]);
}

/** The value of a shown length, `about` left out: signs, blanks and fraction slashes only, read by fraction.js. */
export function shownValue(text: string): Fraction {
  return new Fraction(
    text.replace('about ', '').replace('−', '-').replace('⁄', '/').replaceAll('\u00a0', ' '),
  );
}

/** A text that a person might type, with what it means. */
export interface TypedLength {
  readonly text: string;
  readonly ticks: Fraction;
  readonly units: Units;
}

const blank = fc.constantFrom(' ', '  ', '\u00a0', '\u2009', '\u202f', '\t');
const blankOrNone = fc.constantFrom('', ' ', '\u00a0', '\u2009');
const sign = fc.constantFrom('', '', '', '-', '−', '+');
const unitForms = fc.constantFrom(
  ...(['in', 'in.', 'inch', 'inches', 'Inches', '"', '”', '″', "''", '’’', '′′'] as const).map(
    (typed) => ({ typed, unit: 'in' }) as const,
  ),
  ...(['mm', 'MM', 'mm.', 'millimetres', 'millimeter', '㎜'] as const).map(
    (typed) => ({ typed, unit: 'mm' }) as const,
  ),
  ...(['cm', 'Cm', 'centimetre', 'centimeters', '㎝'] as const).map(
    (typed) => ({ typed, unit: 'cm' }) as const,
  ),
  ...(['ft', 'feet', 'foot'] as const).map((typed) => ({ typed, unit: 'ft' }) as const),
);

const fraction = fc
  .tuple(fc.integer({ min: 2, max: 999 }), fc.nat(998))
  .map(([bottom, top]) => ({ top: top % bottom, bottom }));

/** Numbers in every typing, not negative. */
const number: fc.Arbitrary<{ text: string; value: Fraction }> = fc.oneof(
  fc.nat(999).map((whole) => ({ text: `${whole}`, value: new Fraction(whole) })),
  // Decimals: any number of places but three after a comma, which may be thousands.
  fc
    .tuple(fc.nat(999), fc.stringMatching(/^\d{1,9}$/), fc.constantFrom('.', ','))
    .filter(([whole, decimals, mark]) => mark === '.' || decimals.length !== 3 || whole === 0)
    .map(([whole, decimals, mark]) => ({
      text: `${whole}${mark}${decimals}`,
      value: new Fraction(`${whole}.${decimals}`),
    })),
  fc.tuple(fraction, fc.constantFrom('/', '⁄', '∕', '／', ' / ')).map(([{ top, bottom }, slash]) => ({
    text: `${top}${slash}${bottom}`,
    value: new Fraction(top, bottom),
  })),
  fc
    .tuple(fc.nat(99), fraction, fc.oneof(blank, fc.constantFrom('-', '‑', '–', ' and ', ' & ')))
    .map(([whole, { top, bottom }, join]) => ({
      text: `${whole}${join}${top}/${bottom}`,
      value: new Fraction(top, bottom).add(whole),
    })),
  fc
    .tuple(fc.nat(99), blankOrNone, fc.constantFrom('½ 1/2', '¼ 1/4', '⅜ 3/8', '⅔ 2/3', '⅒ 1/10', '⅞ 7/8'))
    .map(([whole, gap, pair]) => {
      const [glyph = '', value = ''] = pair.split(' ');
      return { text: `${whole}${gap}${glyph}`, value: new Fraction(value).add(whole) };
    }),
);

/** Lengths as people type them, each with its exact value; those without a unit mean `units`. */
export function typedLengths(units: Units): fc.Arbitrary<TypedLength> {
  return (
    fc
      .tuple(sign, blankOrNone, number, blankOrNone, fc.option(unitForms), blankOrNone)
      .map(([signText, before, { text, value }, gap, form, after]) => ({
        text: `${before}${signText}${text}${gap}${form?.typed ?? ''}${after}`,
        ticks: ticksOf(signText === '-' || signText === '−' ? value.neg() : value, form?.unit ?? units),
        units: { in: 'in', ft: 'in', mm: 'mm', cm: 'mm' }[form?.unit ?? units] as Units,
      }))
      // Up to 100 m, and a text of 80 characters.
      .filter(({ text, ticks }) => text.length <= 80 && ticks.abs().lte(160_000_000))
  );
}
