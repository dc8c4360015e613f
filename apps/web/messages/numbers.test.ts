import fc from 'fast-check';
import { expect, it } from 'vitest';
import { lengthOfTicks, readLength, showLengthWithUnit } from '../../../src/measure/index.ts';
import { numbersFor } from './numbers.ts';

const languages = ['en-US', 'de-DE', 'fr-FR', 'de-CH', 'nl', 'es', 'en-IN', 'pt-BR', 'sv', 'ar-EG'];

it('writes counts and decimals as they are written in a place', () => {
  expect(numbersFor('en-US').count(12_000)).toBe('12,000');
  expect(numbersFor('de-DE').count(12_000)).toBe('12.000');
  expect(numbersFor('en-US').shown('114.3 mm')).toBe('114.3 mm');
  expect(numbersFor('de-DE').shown('114.3\u00a0× 160.25\u00a0mm')).toBe('114,3\u00a0× 160,25\u00a0mm');
  expect(numbersFor('de-DE').shown('2\u00a01⁄4\u00a0in')).toBe('2\u00a01⁄4\u00a0in');
  expect(numbersFor('no language').count(1234)).toBe('1,234');
});

it('reads a count however it is grouped there, and nothing that is no whole number', () => {
  expect(numbersFor('en-US').readCount('1,200')).toBe(1200);
  expect(numbersFor('de-DE').readCount('1.200')).toBe(1200);
  expect(numbersFor('fr-FR').readCount('1 200')).toBe(1200);
  expect(numbersFor('de-CH').readCount("1'200")).toBe(1200);
  for (const [language, text] of [
    ['en-US', '1.200'],
    ['de-DE', '1,200'],
    ['en-US', '1,20'],
    ['de-DE', '12.5'],
    ['fr-FR', 'ten'],
    ['en-US', ''],
  ] as const)
    expect(numbersFor(language).readCount(text), text).toBeNaN();
});

it('takes a comma for decimals where it is one, and no point that may stand between thousands', () => {
  const german = numbersFor('de-DE');
  expect(german.written('1,234 mm')).toBe('1.234 mm');
  expect(german.written('0,35')).toBe('0.35');
  expect(german.written('13.5 cm')).toBe('13.5 cm');
  expect(german.written('1.234 mm')).toBeNull();
  expect(german.written('2 1/4 in')).toBe('2 1/4 in');
  expect(numbersFor('en-US').written('1,234 mm')).toBe('1,234 mm');
  expect(numbersFor('en-US').written('1.234 mm')).toBe('1.234 mm');
});

it('reads back what it shows, in every place', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...languages),
      fc.integer({ min: 0, max: 2_000_000 }),
      fc.integer({ min: 0, max: 200_000 }),
      fc.constantFrom<'in' | 'mm'>('in', 'mm'),
      (language, count, hundredths, units) => {
        const numbers = numbersFor(language);
        expect(numbers.readCount(numbers.count(count))).toBe(count);
        const length = lengthOfTicks(hundredths * 16);
        const shown = showLengthWithUnit(length, units, 'printed');
        fc.pre(!shown.startsWith('about'));
        const written = numbers.written(numbers.shown(shown));
        // What cannot be told apart is refused, and never read as something else.
        if (written === null) expect(numbers.shown(shown)).toMatch(/\.\d{3}/u);
        else expect(readLength(written, units)).toEqual(readLength(shown, units));
      },
    ),
  );
});

it('a moment is shown as the clocks of the place do, and with its weekday where it is another day', () => {
  const since = new Date(2026, 4, 4, 15, 50).getTime();
  const later = new Date(2026, 4, 4, 16, 20).getTime();
  const plain = (text: string) => text.replaceAll(/\s/gu, ' ');
  expect(plain(numbersFor('en-US').clock(later, since))).toBe('4:20 PM');
  expect(numbersFor('de-DE').clock(later, since)).toBe('16:20');
  expect(plain(numbersFor('en-US').clock(new Date(2026, 4, 5, 15, 50).getTime(), since))).toBe(
    'Tuesday 3:50 PM',
  );
});
