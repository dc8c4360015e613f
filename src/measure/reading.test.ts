import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readLength, type Units } from './index.ts';
import { typedLengths } from './testing/exactValue.ts';
import { readForms, refusedForms } from './testing/typedForms.ts';

test.each(readForms)('reads %j as %i ticks', (text, ticks, units) => {
  expect(readLength(text, 'in')).toMatchObject({ ok: true, length: ticks, units });
});

test.each(refusedForms)('refuses %j: %s', (text, why, at) => {
  const reading = readLength(text, 'in');
  expect(reading).toMatchObject({ ok: false, why, at });
  // What was found is the text from there on, or a stretch of it.
  if (!reading.ok) expect(text.startsWith(reading.found, at)).toBe(true);
});

test('a number without a unit is in the units that were asked for', () => {
  expect(readLength('57', 'mm')).toEqual({ ok: true, length: 57 * 1_600, exact: true, units: 'mm' });
  expect(readLength('57', 'in')).toEqual({ ok: true, length: 57 * 40_640, exact: true, units: 'in' });
  expect(readLength('5.7 cm', 'in')).toEqual({ ok: true, length: 57 * 1_600, exact: true, units: 'mm' });
  expect(readLength('2 1/4 in', 'mm')).toEqual({ ok: true, length: 91_440, exact: true, units: 'in' });
});

test('says when a length was rounded down to a whole tick', () => {
  expect(readLength('3 1/7', 'in')).toMatchObject({ length: 127_725, exact: false });
  expect(readLength('-3 1/7', 'in')).toMatchObject({ length: -127_726, exact: false });
  expect(readLength('1/128', 'in')).toMatchObject({ length: 317, exact: false });
  expect(readLength('1/127', 'in')).toMatchObject({ length: 320, exact: true });
});

test('every character that Unicode calls a vulgar fraction is read as its decomposition says', () => {
  // U+00BC to U+00BE, U+2150 to U+215E and U+2189; the names' values from the Unicode code charts.
  const values: Readonly<Record<string, readonly [number, number]>> = {
    '¼': [1, 4],
    '½': [1, 2],
    '¾': [3, 4],
    '⅐': [1, 7],
    '⅑': [1, 9],
    '⅒': [1, 10],
    '⅓': [1, 3],
    '⅔': [2, 3],
    '⅕': [1, 5],
    '⅖': [2, 5],
    '⅗': [3, 5],
    '⅘': [4, 5],
    '⅙': [1, 6],
    '⅚': [5, 6],
    '⅛': [1, 8],
    '⅜': [3, 8],
    '⅝': [5, 8],
    '⅞': [7, 8],
    '↉': [0, 3],
  };
  const codes = [0xbc, 0xbd, 0xbe, ...Array.from({ length: 15 }, (_, index) => 0x2150 + index), 0x2189];
  expect(codes.map((code) => String.fromCharCode(code)).sort()).toEqual(Object.keys(values).sort());
  for (const [glyph, [top, bottom]] of Object.entries(values)) {
    expect(readLength(glyph, 'in'), glyph).toEqual(readLength(`${top}/${bottom}`, 'in'));
    expect(readLength(`7${glyph}`, 'mm'), glyph).toEqual(readLength(`7 ${top}/${bottom}`, 'mm'));
  }
});

test.each(['in', 'mm'] as Units[])('reads what fraction.js reads, whatever the typing (%s)', (units) => {
  fc.assert(
    fc.property(typedLengths(units), (typed) => {
      expect(readLength(typed.text, units)).toEqual({
        ok: true,
        // + 0 makes 0 of -0.
        length: Number(typed.ticks.floor().valueOf()) + 0,
        exact: typed.ticks.d === 1n,
        units: typed.units,
      });
    }),
    { numRuns: 5_000 },
  );
});

test('an inch is 25.4 mm in either direction', () => {
  fc.assert(
    fc.property(fc.integer({ min: -9_999, max: 9_999 }), (hundredths) => {
      const inch = readLength(`${hundredths / 100} in`, 'mm');
      const metric = readLength(`${(hundredths * 254) / 1_000} mm`, 'in');
      expect(inch.ok && metric.ok && inch.length === metric.length).toBe(true);
    }),
  );
});

test('reading keeps the order of the numbers', () => {
  const fraction = fc.tuple(fc.integer({ min: -3_900, max: 3_900 }), fc.integer({ min: 1, max: 500 }));
  fc.assert(
    fc.property(fraction, fraction, (one, other) => {
      const lengths = [one, other].map(([top, bottom]) => {
        const reading = readLength(`${top}/${bottom}`, 'in');
        return reading.ok ? reading.length : Number.NaN;
      });
      const order = one[0] * other[1] - other[0] * one[1];
      if (order <= 0) expect(lengths[0]).toBeLessThanOrEqual(lengths[1]!);
      if (order >= 0) expect(lengths[0]).toBeGreaterThanOrEqual(lengths[1]!);
    }),
  );
});

test('100 m is the longest, by a tick', () => {
  expect(readLength('100000 mm', 'in')).toMatchObject({ length: 160_000_000 });
  expect(readLength('100000.000625 mm', 'in')).toMatchObject({ why: 'too-large', found: '100000.000625 mm' });
});

test('every text is either read or refused within itself', () => {
  const pieces = fc.constantFrom(
    ...[
      '5',
      '12',
      '0',
      '1/4',
      '¼',
      '/',
      '⁄',
      '-',
      '−',
      '+',
      '.',
      ',',
      ' ',
      '\u00a0',
      '"',
      "'",
      '’',
      'in',
      'mm',
    ],
    ...[
      'ft',
      'x',
      '×',
      'and',
      '²',
      '₄',
      '⅟',
      '\ud83d',
      '😀',
      '\u0000',
      '\u202e',
      'ß',
      '５',
      '__proto__',
      '\n',
    ],
  );
  const texts = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 100 }),
    fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join('')),
  );
  fc.assert(
    fc.property(texts, fc.constantFrom<Units>('in', 'mm'), (text, units) => {
      const reading = readLength(text, units);
      if (reading.ok) {
        expect(Number.isSafeInteger(reading.length)).toBe(true);
        expect(Object.is(reading.length, -0)).toBe(false);
      } else {
        expect(reading.at).toBeLessThanOrEqual(text.length);
        expect(text.slice(reading.at, reading.at + reading.found.length)).toBe(reading.found);
      }
    }),
    { numRuns: 20_000 },
  );
});

test.each([' ', '5', '1/', '-', '.5', 'x', "'", 'and ', '😀', '⅟'])(
  'a million of %j is refused at once',
  (bit) => {
    const started = performance.now();
    expect(readLength(bit.repeat(1_000_000), 'in')).toMatchObject({ ok: false, why: 'too-long', at: 80 });
    expect(performance.now() - started).toBeLessThan(1_000);
  },
);
