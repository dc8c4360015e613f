import { expect, test } from 'vitest';
import {
  inches,
  type Length,
  type LengthFault,
  lengthOfTicks,
  type MarkingId,
  millimetres,
  readLength,
  times,
  usualMarkings,
} from '../measure/index.ts';
import { exactValue, shownValue } from '../measure/testing/exactValue.ts';
import { refusedForms } from '../measure/testing/typedForms.ts';
import { whereOnRuler, whyNotALength } from './length.ts';

const example = ' Write it like 5 1/4, 5.25 in or 133 mm.';

/** Each without the example at its end, where it has that one. */
const sentences: readonly (readonly [text: string, why: LengthFault, sentence: string])[] = [
  ['', 'empty', 'No length stands here.'],
  ['in', 'no-number', '“in” is no length: its number is missing.'],
  ['"', 'no-number', '“"” is no length: its number is missing.'],
  ['- mm', 'no-number', '“- mm” is no length: its number is missing.'],
  ['-', 'no-number', '“-” is no length: its number is missing.'],
  ['abc', 'not-a-length', '“abc” is no length.'],
  ['__proto__', 'not-a-length', '“__proto__” is no length: “_” has no place there.'],
  ['.', 'not-a-length', '“.” is no length.'],
  ['/4', 'not-a-length', '“/4” is no length: “/” has no place there.'],
  ['--5', 'not-a-length', '“--5” is no length: “-” has no place there.'],
  ['5 €', 'not-a-length', '“5 €” is no length: “€” has no place there.'],
  ['5 😀', 'not-a-length', '“5 😀” is no length: “😀” has no place there.'],
  ['5 \ud800', 'not-a-length', '“5 �” is no length: “�” has no place there.'],
  ['5,', 'not-a-length', '“5,” is no length: “,” has no place there.'],
  ['5..2', 'not-a-length', '“5..2” is no length: “.” has no place there.'],
  ['1/2/3', 'not-a-length', '“1/2/3” is no length: “/” has no place there.'],
  ['5 in mm', 'not-a-length', '“5 in mm” is no length: “mm” has no place there.'],
  ['5%', 'not-a-length', '“5%” is no length: “%” has no place there.'],
  ['5 1/4 in\u0000', 'not-a-length', '“5 1/4 in�” is no length: “�” has no place there.'],
  ['133 m', 'unknown-unit', '“133 m” is no length: “m” is no unit known here (in, ft, mm and cm are).'],
  [
    '5 constructor',
    'unknown-unit',
    '“5 constructor” is no length: “constructor” is no unit known here (in, ft, mm and cm are).',
  ],
  ['1e3', 'unknown-unit', '“1e3” is no length: “e” is no unit known here (in, ft, mm and cm are).'],
  ['0x10', 'a-size', '“0x10” is a size or a product, and one length is wanted here.'],
  ['5 1/', 'unfinished-fraction', '“5 1/” is no length: its fraction has nothing to be over.'],
  ['1/ in', 'unfinished-fraction', '“1/ in” is no length: its fraction has nothing to be over.'],
  ['1/-4', 'unfinished-fraction', '“1/-4” is no length: its fraction has nothing to be over.'],
  ['5 1/0', 'zero-denominator', '“5 1/0” is no length: a fraction cannot be over 0.'],
  ['0/0 mm', 'zero-denominator', '“0/0 mm” is no length: a fraction cannot be over 0.'],
  [
    '5 3/2',
    'improper-fraction',
    '“5 3/2” is no length: after a whole number a fraction is less than 1, and “3/2” is not.',
  ],
  [
    '5-9/8"',
    'improper-fraction',
    '“5-9/8"” is no length: after a whole number a fraction is less than 1, and “9/8” is not.',
  ],
  [
    '5.5 1/4',
    'decimal-in-fraction',
    '“5.5 1/4” is no length: a number has decimals or a fraction, not both.',
  ],
  ['1/4.5', 'decimal-in-fraction', '“1/4.5” is no length: a number has decimals or a fraction, not both.'],
  [
    '1,234',
    'ambiguous-comma',
    '“1,234” can be meant in two ways: the comma in “1,234” may stand before decimals or after thousands. Write decimals with a point, and thousands without a mark.',
  ],
  [
    '12,500 mm',
    'ambiguous-comma',
    '“12,500 mm” can be meant in two ways: the comma in “12,500” may stand before decimals or after thousands. Write decimals with a point, and thousands without a mark.',
  ],
  [
    '1,234.5',
    'two-separators',
    '“1,234.5” is no length: “1,234.5” has more than one point or comma. Write decimals with a point, and thousands without a mark.',
  ],
  [
    '1.2.3',
    'two-separators',
    '“1.2.3” is no length: “1.2.3” has more than one point or comma. Write decimals with a point, and thousands without a mark.',
  ],
  [
    '5 - 1/4',
    'stray-dash',
    '“5 - 1/4” is not clear: a dash is a minus in front, or joins a fraction without blanks as in 5-1/4.',
  ],
  [
    '5-',
    'stray-dash',
    '“5-” is not clear: a dash is a minus in front, or joins a fraction without blanks as in 5-1/4.',
  ],
  [
    '3 1/2 - 3 3/4',
    'stray-dash',
    '“3 1/2 - 3 3/4” is not clear: a dash is a minus in front, or joins a fraction without blanks as in 5-1/4.',
  ],
  ['5 + 1/4', 'a-sum', '“5 + 1/4” is a sum, and wants to be worked out first.'],
  ['4 1/4 x 5 1/2 in', 'a-size', '“4 1/4 x 5 1/2 in” is a size or a product, and one length is wanted here.'],
  ['12X12', 'a-size', '“12X12” is a size or a product, and one length is wanted here.'],
  ['5 6', 'two-numbers', '“5 6” is no length: “6” is one number too many.'],
  ['1 000 mm', 'two-numbers', '“1 000 mm” is no length: “000” is one number too many.'],
  ['5 1/4 1/8', 'two-numbers', '“5 1/4 1/8” is no length: “1/8” is one number too many.'],
  ['5 mm²', 'two-numbers', '“5 mm²” is no length: “²” is one number too many.'],
  ['1 ft 2', 'two-numbers', '“1 ft 2” is no length: “2” is one number too many.'],
  [
    "5'",
    'lone-stroke',
    "“5'” can be meant in two ways: one stroke stands for feet, two strokes for inches. Write 5 ft or 5 in.",
  ],
  [
    '1 ft 14 in',
    'odd-feet',
    '“1 ft 14 in” is no length: feet before inches are whole, and the inches after them less than 12. Write it like 1 ft 2 in or 14 in.',
  ],
  [
    `½' 2"`,
    'odd-feet',
    `“½' 2"” is no length: feet before inches are whole, and the inches after them less than 12. Write it like 1 ft 2 in or 14 in.`,
  ],
  ['9999999 in', 'too-large', '“9999999 in” is too long: 100 m is the most.'],
];

test.each(sentences)('%j: %s', (text, why, sentence) => {
  const reading = readLength(text, 'in');
  if (reading.ok) throw new Error('it was read');
  expect(reading.why).toBe(why);
  expect(whyNotALength(reading, text).replace(example, '')).toBe(sentence);
});

test('there is a sentence here for every reason but the one that wants a long text', () => {
  const reasons = new Set(refusedForms.map(([, why]) => why));
  for (const [, why] of sentences) reasons.delete(why);
  expect([...reasons]).toEqual(['too-long']);
});

test('every refusal is one short line that quotes what was typed and ends in what may be typed', () => {
  for (const [text] of refusedForms) {
    const reading = readLength(text, 'in');
    if (reading.ok) throw new Error(`${text} was read`);
    const sentence = whyNotALength(reading, text);
    expect(sentence.length).toBeLessThan(250);
    expect(sentence).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]|undefined|\[object/u);
    expect(sentence).toMatch(/^(“|This |No length stands here)/);
    expect(sentence).toMatch(/Write [^.]+(\.25 in or 133 mm|mark|in)\.$/);
  }
});

test('a long text is cut short, and one of blanks is not quoted', () => {
  const why = (text: string) => {
    const reading = readLength(text, 'mm');
    return reading.ok ? '' : whyNotALength(reading, text);
  };
  expect(why('7'.repeat(1_000))).toBe(`“${'7'.repeat(39)}…” is far too long for a length.${example}`);
  expect(why('😀'.repeat(40))).toBe(`“${'😀'.repeat(40)}” is no length: “😀” has no place there.${example}`);
  expect(why(' '.repeat(1_000))).toBe(`This is far too long for a length.${example}`);
});

test.each([
  [inches(29, 8), '1/16 in', '3 5/8 in: halfway between the 1/2 and the 3/4 mark'],
  [inches(57, 16), '1/16 in', '3 9/16 in: halfway between the 1/2 and the 5/8 mark'],
  [inches(31, 8), '1/8 in', '3 7/8 in: halfway between the 3 3/4 and the 4 mark'],
  [inches(7, 2), '1/8 in', '3 1/2 in: halfway between the 3 and the 4 mark'],
  [inches(1, 8), '1/8 in', '1/8 in: halfway between the 0 and the 1/4 mark'],
  [inches(4), '1/16 in', '4 in: at the 4 mark'],
  [inches(-1, 8), '1/16 in', '-1/8 in: halfway between the -1/4 and the 0 mark'],
  [inches(-29, 8), '1/16 in', '-3 5/8 in: halfway between the -3 3/4 and the -3 1/2 mark'],
  [inches(225, 64), '1/16 in', '3 33/64 in: between marks, 1/64 in past the 3 1/2 mark'],
  [inches(227, 64), '1/16 in', '3 35/64 in: between marks, 1/64 in short of the 3 9/16 mark'],
  [inches(99, 32), '1/16 in', '3 3/32 in: between marks, halfway between the 3 1/16 and the 3 1/8 mark'],
  [lengthOfTicks(127_725), '1/16 in', 'about 3.1428 in: between marks, about 0.0178 in past the 3 1/8 mark'],
  [millimetres(92.5), '0.5 mm', '92.5 mm: halfway between the 92 and the 93 mm mark'],
  [millimetres(92), '0.5 mm', '92 mm: 2 mm past the 90 mm mark'],
  [millimetres(94), '1 mm', '94 mm: 1 mm before the 95 mm mark'],
  [millimetres(95), '5 mm', '95 mm: halfway between the 90 and the 100 mm mark'],
  [millimetres(90), '5 mm', '90 mm: at the 90 mm mark'],
  [millimetres(92.5), '1 mm', '92.5 mm: between marks, halfway between the 92 and the 93 mm mark'],
  [millimetres(92.2), '1 mm', '92.2 mm: between marks, 0.2 mm past the 92 mm mark'],
  [inches(1), '1 mm', '25.4 mm: between marks, 0.4 mm past the 25 mm mark'],
] as const)('%i ticks on %s: %s', (length, id, sentence) => {
  expect(whereOnRuler(length, usualMarkings[id])).toBe(sentence);
});

test('printed, with fraction slashes and spaces that do not break', () => {
  expect(whereOnRuler(inches(29, 8), usualMarkings['1/16 in'], 'printed')).toBe(
    '3\u00a05⁄8\u00a0in: halfway between the 1⁄2 and the 3⁄4 mark',
  );
  expect(whereOnRuler(millimetres(92), usualMarkings['1 mm'], 'printed')).toBe(
    '92\u00a0mm: 2\u00a0mm past the 90\u00a0mm mark',
  );
});

test.each(Object.keys(usualMarkings) as MarkingId[])(
  'following the words on a ruler of %s leads to the length',
  (id) => {
    const marking = usualMarkings[id];
    // Marks, quarters of a step, and every place in the first two steps.
    const places: Length[] = Array.from({ length: 600 }, (_, count) => times(marking.step, count));
    for (let ticks = 0; ticks <= 2 * marking.step; ticks += 16) places.push(lengthOfTicks(ticks));
    for (const length of places) {
      const sentence = whereOnRuler(length, marking);
      const led = followed(sentence, exactValue(length, marking.units).floor());
      const error = led.sub(exactValue(length, marking.units)).abs();
      // Words that say `about` are off by half their last place.
      expect(error.lte(sentence.includes('about') ? '0.0005' : 0), sentence).toBe(true);
    }
  },
);

/** The number to which the words after the colon lead; a pair of bare fractions is counted from `whole`. */
function followed(sentence: string, whole: ReturnType<typeof shownValue>) {
  const [, words = ''] = sentence.split(': ');
  const number = '(?:about )?(?:\\d+ \\d+/\\d+|\\d+/\\d+|[\\d.]+)';
  const numbers = (words.match(new RegExp(number, 'g')) ?? []).map(shownValue);
  const [first = shownValue('0'), second = shownValue('0')] = numbers;
  if (words.includes('halfway')) {
    const bare = !words.startsWith('between') && first.compare(0) > 0 && second.compare(1) < 0;
    return first
      .add(second)
      .div(2)
      .add(bare ? whole : 0);
  }
  if (words.includes('past')) return second.add(first);
  if (words.includes('before') || words.includes('short of')) return second.sub(first);
  return first;
}
