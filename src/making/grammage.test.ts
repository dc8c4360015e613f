import fc from 'fast-check';
import { expect, it } from 'vitest';
import { grammageOf, type PoundKind, poundKinds, poundsOf } from './index.ts';

it.each<[PoundKind, number]>([
  ['bond', 3.76],
  ['cover', 2.704],
  ['text', 1.48],
  ['tag', 1.627],
])(
  'a pound of %s is %d grams per square metre, as a print encyclopaedia has it (“Grammage”)',
  (kind, factor) => {
    expect(grammageOf(1, kind)).toBeCloseTo(factor, 3);
  },
);

it('agrees with what printers print: 20 lb bond, 50 lb cover and text, 103.6 g/m² book', () => {
  // From a paper calculator and a printer's page.
  expect(grammageOf(20, 'bond')).toBeCloseTo(75.2, 1);
  expect(Math.round(grammageOf(50, 'cover'))).toBe(135);
  expect(Math.round(grammageOf(50, 'text'))).toBe(74);
  expect(poundsOf(103.6, 'text')).toBeCloseTo(70, 0);
});

/** Rows that two printers' manuals agree on: bond, text, cover, bristol, index, tag, and grams per square metre. */
const printed = [
  [20, 50, 28, 34, 42, 46, 75],
  [24, 60, 33, 41, 50, 55, 90],
  [28, 70, 39, 49, 58, 65, 105],
  [32, 80, 44, 55, 67, 74, 120],
  [43, 110, 60, 74, 90, 100, 163],
  [47, 119, 65, 80, 97, 108, 176],
  [53, 134, 74, 90, 110, 122, 199],
  [58, 146, 80, 98, 120, 133, 216],
  [67, 171, 94, 115, 140, 155, 253],
  [72, 183, 100, 123, 150, 166, 271],
] as const;

it.each(printed)('%d lb bond, %d text, %d cover, %d bristol, %d index and %d tag are %d g/m²', (...row) => {
  const grammage = row[6];
  for (const [at, kind] of (['bond', 'text', 'cover', 'bristol', 'index', 'tag'] as const).entries()) {
    // Pounds are printed in whole numbers, and some are the customary name of a nearby one.
    expect(Math.abs(poundsOf(grammage, kind) - row[at]!), kind).toBeLessThan(1.3);
  }
});

it('there and back is the same, for any kind', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 500, noNaN: true }),
      fc.constantFrom(...poundKinds),
      (pounds, kind) => {
        expect(poundsOf(grammageOf(pounds, kind), kind)).toBeCloseTo(pounds, 9);
      },
    ),
  );
});
