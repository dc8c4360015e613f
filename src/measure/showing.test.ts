import fc from 'fast-check';
import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import {
  type Glyphs,
  inches,
  type Length,
  lengthOfTicks,
  millimetres,
  minus,
  readLength,
  showLength,
  showLengthWithUnit,
  showOnMarking,
  showSize,
  type Units,
  usualMarkings,
  zero,
} from './index.ts';
import { exactValue, shownValue } from './testing/exactValue.ts';

const lengths = fc.oneof(
  fc.integer({ min: -2_000_000, max: 2_000_000 }).map((ticks) => lengthOfTicks(ticks)),
  fc.integer({ min: -64_000, max: 64_000 }).map((count) => inches(count, 64)),
  fc.integer({ min: -100_000, max: 100_000 }).map((count) => millimetres(count / 100)),
  fc.integer({ min: -160_000_000, max: 160_000_000 }).map((ticks) => lengthOfTicks(ticks)),
);
const ways = fc.record({
  units: fc.constantFrom<Units>('in', 'mm'),
  glyphs: fc.constantFrom<Glyphs>('typed', 'printed'),
});

test.each([
  [zero, 'in', '0', '0'],
  [zero, 'mm', '0', '0'],
  [inches(29, 8), 'in', '3 5/8', '3\u00a05⁄8'],
  [inches(5, 8), 'in', '5/8', '5⁄8'],
  [inches(4), 'in', '4', '4'],
  [inches(7, 64), 'in', '7/64', '7⁄64'],
  [inches(-29, 8), 'in', '-3 5/8', '−3\u00a05⁄8'],
  [inches(35, 100), 'in', '0.35', '0.35'],
  [inches(22, 5), 'in', '4.4', '4.4'],
  [lengthOfTicks(127_725), 'in', 'about 3.1428', 'about 3.1428'],
  [lengthOfTicks(-127_725), 'in', 'about -3.1428', 'about −3.1428'],
  [lengthOfTicks(1), 'in', 'about 0', 'about 0'],
  [lengthOfTicks(-1), 'in', 'about 0', 'about 0'],
  [millimetres(148.5), 'mm', '148.5', '148.5'],
  [millimetres(92.1), 'mm', '92.1', '92.1'],
  [millimetres(-0.35), 'mm', '-0.35', '−0.35'],
  [millimetres(297), 'mm', '297', '297'],
  [millimetres(100), 'in', 'about 3.937', 'about 3.937'],
  [inches(25, 8), 'mm', '79.375', '79.375'],
  [inches(1, 64), 'mm', 'about 0.397', 'about 0.397'],
] as const)('%i ticks in %s are %j, printed %j', (length, units, typed, printed) => {
  expect(showLength(length, units)).toBe(typed);
  expect(showLength(length, units, 'printed')).toBe(printed);
});

test('units and sizes', () => {
  const size = { width: inches(17, 4), height: inches(11, 2) };
  expect(showLengthWithUnit(size.width, 'in')).toBe('4 1/4 in');
  expect(showLengthWithUnit(size.width, 'in', 'printed')).toBe('4\u00a01⁄4\u00a0in');
  expect(showLengthWithUnit(millimetres(92.1), 'mm')).toBe('92.1 mm');
  expect(showSize(size, 'in')).toBe('4 1/4 x 5 1/2 in');
  expect(showSize(size, 'in', 'printed')).toBe('4\u00a01⁄4\u00a0× 5\u00a01⁄2\u00a0in');
  expect(showSize(size, 'mm')).toBe('107.95 x 139.7 mm');
});

test('a length is shown as its ruler is marked, with how far off that is', () => {
  const sixteenths = usualMarkings['1/16 in'];
  expect(showOnMarking(inches(29, 8), sixteenths)).toMatchObject({ text: '3 5/8', exact: true, off: 0 });
  expect(showOnMarking(inches(229, 64), sixteenths, 'printed')).toMatchObject({
    text: '3\u00a09⁄16',
    exact: false,
    off: inches(1, 64),
  });
  expect(showOnMarking(inches(29, 8), usualMarkings['0.5 mm'])).toMatchObject({
    text: '92',
    exact: false,
    off: minus(inches(29, 8), millimetres(92)),
  });
});

test('what is shown without `about` is read back as the same length, with or without its unit', () => {
  fc.assert(
    fc.property(lengths, ways, (length, { units, glyphs }) => {
      const shown = showLength(length, units, glyphs);
      fc.pre(!shown.startsWith('about '));
      const back = { ok: true, length, exact: true, units };
      expect(readLength(shown, units)).toEqual(back);
      const withUnit = showLengthWithUnit(length, units, glyphs);
      expect(readLength(withUnit, units === 'in' ? 'mm' : 'in')).toEqual(back);
    }),
    { numRuns: 5_000 },
  );
});

test('`about` stands exactly before what is not the length, and that is off by half its last place at most', () => {
  fc.assert(
    fc.property(lengths, ways, (length, { units, glyphs }) => {
      const shown = showLength(length, units, glyphs);
      const error = shownValue(shown).sub(exactValue(length, units)).abs();
      expect(shown.startsWith('about ')).toBe(!error.equals(0));
      expect(error.lte(new Fraction(1, units === 'in' ? 20_000 : 2_000))).toBe(true);
    }),
    { numRuns: 5_000 },
  );
});

test('a longer length is never shown as a smaller number, but for the half of its last place that `about` is off by', () => {
  const holds = (length: Length, more: number, { units, glyphs }: { units: Units; glyphs: Glyphs }) => {
    const longer = lengthOfTicks(length + more);
    const texts = [length, longer].map((each) => showLength(each, units, glyphs));
    const [one, other] = texts.map(shownValue);
    // One exact and one rounded: 232 51/64 in, and a tick less, about 232.7969 in.
    const mixed = texts.filter((text) => text.startsWith('about ')).length === 1;
    const off = mixed ? new Fraction(1, units === 'in' ? 20_000 : 2_000) : new Fraction(0);
    expect(one!.lte(other!.add(off))).toBe(true);
  };
  holds(lengthOfTicks(-9_460_865), 1, { units: 'in', glyphs: 'typed' });
  fc.assert(fc.property(lengths, fc.nat(500), ways, holds));
});

test('every 1/64 in up to 20 in is a fraction in lowest terms', () => {
  for (let count = 1; count <= 20 * 64; count++) {
    const shown = showLength(inches(count, 64), 'in');
    expect(shown).toBe(new Fraction(count, 64).toFraction(true));
  }
});

test('a negative length is the positive one with a sign', () => {
  fc.assert(
    fc.property(lengths, ways, (length, { units, glyphs }) => {
      const opposite = shownValue(showLength(minus(zero, length), units, glyphs));
      expect(opposite.equals(shownValue(showLength(length, units, glyphs)).neg())).toBe(true);
    }),
  );
});
