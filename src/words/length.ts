import {
  type Glyphs,
  inches,
  type Length,
  type LengthFault,
  type LengthRefusal,
  lengthOfTicks,
  type Marking,
  minus,
  placeOnRuler,
  showLength,
  showLengthWithUnit,
  sum,
  type Units,
  zero,
} from '../measure/index.ts';
import { printable } from './printable.ts';

/**
 * Where a ruler of that marking has the length: `3 5/8 in: halfway between the 1/2 and the 3/4 mark`, or
 * `3 33/64 in: between marks, 1/64 in past the 3 1/2 mark`.
 */
export function whereOnRuler(length: Length, marking: Marking, glyphs: Glyphs = 'typed'): string {
  const { units } = marking;
  const place = placeOnRuler(length, marking);
  const shown = showLengthWithUnit(length, units, glyphs);
  const markAt = (at: Length) => markName(showLength(at, units, glyphs), units, glyphs);

  if (!place.exact) {
    const toBelow = length - place.below;
    const toAbove = place.above - length;
    if (toBelow === toAbove) {
      const pair = markPair(place, { within: null, units, glyphs });
      return `${shown}: between marks, halfway between ${pair}`;
    }
    const side = place.off > 0 ? 'past' : 'short of';
    const distance = showLengthWithUnit(lengthOfTicks(Math.abs(place.off)), units, glyphs);
    return `${shown}: between marks, ${distance} ${side} the ${markAt(place.mark)}`;
  }
  const { longer } = place;
  if (longer === null) return `${shown}: at the ${markAt(place.mark)}`;
  if (longer.side === 'halfway') {
    const pair = markPair(longer, { within: place.numbered, units, glyphs });
    return `${shown}: halfway between ${pair}`;
  }
  const nearer = longer.side === 'past' ? longer.below : longer.above;
  return `${shown}: ${showLengthWithUnit(longer.distance, units, glyphs)} ${longer.side} the ${markAt(nearer)}`;
}

/** What was found in a text that is no length and what is wrong with it, then what may stand there. */
export function whyNotALength(refusal: LengthRefusal, text: string): string {
  return faultSentences[refusal.why](quoted(text.trim()), quoted(refusal.found));
}

/** A mark as its ruler has it: inches go without saying, millimetres are told from the centimetres printed there. */
function markName(text: string, units: Units, glyphs: Glyphs): string {
  return units === 'in' ? `${text} mark` : `${text}${glyphs === 'printed' ? '\u00a0' : ' '}mm mark`;
}

/** Two marks; inside one inch by their fractions alone, as the eye counts them from the printed number. */
function markPair(
  marks: { readonly below: Length; readonly above: Length },
  of: { readonly within: Length | null; readonly units: Units; readonly glyphs: Glyphs },
): string {
  const { within, units, glyphs } = of;
  const inside =
    within !== null &&
    within >= 0 &&
    units === 'in' &&
    marks.below > within &&
    marks.above < sum(within, inches(1));
  const from = inside ? within : zero;
  const below = showLength(minus(marks.below, from), units, glyphs);
  const above = showLength(minus(marks.above, from), units, glyphs);
  return `the ${below} and the ${markName(above, units, glyphs)}`;
}

const example = 'Write it like 5 1/4, 5.25 in or 133 mm.';

/** `text` is all that was typed, `found` the stretch that could not be read; both in quotation marks. */
const faultSentences: Readonly<Record<LengthFault, (text: string, found: string) => string>> = {
  empty: () => `No length stands here. ${example}`,
  'too-long': (text) => `${text} is far too long for a length. ${example}`,
  'no-number': (text) => `${text} is no length: its number is missing. ${example}`,
  'not-a-length': (text, found) =>
    text === found
      ? `${text} is no length. ${example}`
      : `${text} is no length: ${found} has no place there. ${example}`,
  'unknown-unit': (text, found) =>
    `${text} is no length: ${found} is no unit known here (in, ft, mm and cm are). ${example}`,
  'unfinished-fraction': (text) => `${text} is no length: its fraction has nothing to be over. ${example}`,
  'zero-denominator': (text) => `${text} is no length: a fraction cannot be over 0. ${example}`,
  'improper-fraction': (text, found) =>
    `${text} is no length: after a whole number a fraction is less than 1, and ${found} is not. ${example}`,
  'decimal-in-fraction': (text) =>
    `${text} is no length: a number has decimals or a fraction, not both. ${example}`,
  'ambiguous-comma': (text, found) =>
    `${text} can be meant in two ways: the comma in ${found} may stand before decimals or after thousands. ` +
    'Write decimals with a point, and thousands without a mark.',
  'two-separators': (text, found) =>
    `${text} is no length: ${found} has more than one point or comma. ` +
    'Write decimals with a point, and thousands without a mark.',
  'stray-dash': (text) =>
    `${text} is not clear: a dash is a minus in front, or joins a fraction without blanks as in 5-1/4. ${example}`,
  'a-sum': (text) => `${text} is a sum, and wants to be worked out first. ${example}`,
  'a-size': (text) => `${text} is a size or a product, and one length is wanted here. ${example}`,
  'two-numbers': (text, found) => `${text} is no length: ${found} is one number too many. ${example}`,
  'lone-stroke': (text) =>
    `${text} can be meant in two ways: one stroke stands for feet, two strokes for inches. Write 5 ft or 5 in.`,
  'odd-feet': (text) =>
    `${text} is no length: feet before inches are whole, and the inches after them less than 12. ` +
    'Write it like 1 ft 2 in or 14 in.',
  'too-large': (text) => `${text} is too long: 100 m is the most. ${example}`,
};

/** In quotation marks and cut short, with a visible stand-in for what cannot be seen or would upset the line. */
function quoted(text: string): string {
  if (text === '') return 'This';
  const characters = Array.from(printable(text));
  const shown = characters.length > 40 ? [...characters.slice(0, 39), '…'] : characters;
  return `“${shown.join('')}”`;
}
