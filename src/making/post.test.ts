import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inches, lengthOfTicks, millimetres, minus } from '../measure/index.ts';
import { type Mailpiece, type PostTable, postedAs, postFaults, postTables } from './index.ts';

const tableOf = (country: string): PostTable => postTables.find((table) => table.country === country)!;
const letterOf = (country: string) => tableOf(country).classes[0]!;
const light: Omit<Mailpiece, 'length' | 'height'> = {
  thickness: millimetres(1.5),
  grams: 15,
  isUneven: false,
  isRigid: false,
};
const envelope = (length: number, height: number): Mailpiece => ({
  ...light,
  length: lengthOfTicks(Math.round(length * 1600)),
  height: lengthOfTicks(Math.round(height * 1600)),
});

/**
 * The usual envelopes (longer side, shorter side, in mm) and the first class of five posts, by size alone; worked out
 * beforehand from the limits the posts print. `ratio`: it is refused for its ratio, `size`: for a measure.
 */
const table = [
  ['A1', 130.175, 92.075, { us: null, uk: null, ca: 'size', de: 'size', au: 'size' }],
  ['A2', 146.05, 111.125, { us: null, uk: null, ca: null, de: 'ratio', au: null }],
  ['A6', 165.1, 120.65, { us: null, uk: null, ca: null, de: 'ratio', au: null }],
  ['A7', 184.15, 133.35, { us: null, uk: null, ca: null, de: 'size', au: 'size' }],
  ['A9', 222.25, 146.05, { us: null, uk: null, ca: null, de: 'size', au: 'size' }],
  ['A10', 241.3, 152.4, { us: null, uk: 'size', ca: null, de: 'size', au: 'size' }],
  ['No. 10', 241.3, 104.775, { us: null, uk: 'size', ca: null, de: 'size', au: 'size' }],
  ['6 in square', 152.4, 152.4, { us: 'ratio', uk: null, ca: null, de: 'size', au: 'size' }],
  ['6 1/2 in square', 165.1, 165.1, { us: 'size', uk: 'size', ca: 'size', de: 'size', au: 'size' }],
  ['C6', 162, 114, { us: null, uk: null, ca: null, de: null, au: null }],
  ['DL', 220, 110, { us: null, uk: null, ca: null, de: null, au: null }],
  ['B6', 176, 125, { us: null, uk: null, ca: null, de: null, au: null }],
  ['C5', 229, 162, { us: 'size', uk: null, ca: 'size', de: 'size', au: 'size' }],
] as const;

const countries = {
  us: 'United States',
  uk: 'United Kingdom',
  ca: 'Canada',
  de: 'Germany',
  au: 'Australia',
} as const;

describe.each(table)('an envelope %s', (_, length, height, expected) => {
  it.each(Object.entries(countries))('by size in %s', (short, country) => {
    const faults = postFaults(envelope(length, height), letterOf(country));
    const measures = faults.filter(({ code }) => code !== 'tooSquare' && code !== 'tooNarrow');
    const why = measures.length > 0 ? 'size' : faults.length > 0 ? 'ratio' : null;
    expect(why).toBe(expected[short as keyof typeof countries]);
  });
});

it('a bare letter sheet is too near to a square for the first class of the United States', () => {
  const sheet: Mailpiece = { ...light, length: inches(11), height: inches(17, 2) };
  expect(postFaults(sheet, letterOf('United States')).map(({ code }) => code)).toContain('tooSquare');
});

it('what has foam is thicker in places, and goes as the letter that machines cannot sort', () => {
  const card: Mailpiece = { ...light, length: inches(23, 4), height: inches(35, 8), isUneven: true };
  const { as, not } = postedAs(card, tableOf('United States'));
  expect(as?.name).toBe('letter that machines cannot sort');
  expect(not.map(({ faults }) => faults.map(({ code }) => code))).toEqual([['uneven']]);
  // Two layers of 1/8 in foam are past a quarter inch with the card.
  const thick = postedAs({ ...card, thickness: inches(9, 32) }, tableOf('United States'));
  expect(thick.as?.name).toBe('large envelope');
  expect(postedAs({ ...card, thickness: inches(7, 8) }, tableOf('United States')).as).toBeNull();
});

it('a large piece has to be stiffer, and one of thin paper is not', () => {
  const thin = lengthOfTicks(300);
  const small: Mailpiece = { ...light, length: inches(6), height: inches(17, 4), thickness: thin };
  expect(postFaults(small, letterOf('United States'))).toEqual([]);
  expect(postFaults({ ...small, length: inches(49, 8) }, letterOf('United States'))).toEqual([
    { code: 'tooThin', is: 300, limit: 365 },
  ]);
});

it('limits themselves are within, and one tick beyond is not, whatever the class', () => {
  const classes = postTables.flatMap((one: PostTable) => one.classes);
  fc.assert(
    fc.property(fc.constantFrom(...classes), (of) => {
      const most: Mailpiece = {
        length: of.most.length!,
        height: of.most.height!,
        thickness: of.most.thickness!,
        grams: of.grams.most ?? 1,
        isUneven: false,
        isRigid: false,
      };
      const codes = (piece: Mailpiece) =>
        postFaults(piece, of)
          .map(({ code }) => code)
          .filter((code) => code !== 'tooSquare' && code !== 'tooNarrow');
      expect(codes(most)).toEqual([]);
      expect(codes({ ...most, length: lengthOfTicks(most.length + 1) })).toEqual(['tooLong']);
      expect(codes({ ...most, height: lengthOfTicks(most.height + 1) })).toEqual(['tooHigh']);
      expect(codes({ ...most, thickness: lengthOfTicks(most.thickness + 1) })).toEqual(['tooThick']);
      if (of.grams.most !== null) expect(codes({ ...most, grams: most.grams + 0.001 })).toEqual(['tooHeavy']);
      const { length, height } = of.least;
      if (length === null || height === null) return;
      expect(codes({ ...most, length, height })).toEqual([]);
      expect(codes({ ...most, length: minus(length, lengthOfTicks(1)), height })).toEqual(['tooShort']);
      expect(codes({ ...most, length, height: minus(height, lengthOfTicks(1)) })).toEqual(['tooLow']);
    }),
  );
});

it('a class that refuses a piece refuses it for what the piece is, and a later one takes what an earlier takes not', () => {
  fc.assert(
    fc.property(
      fc.constantFrom<PostTable>(...postTables),
      fc.integer({ min: 80, max: 400 }),
      fc.integer({ min: 60, max: 300 }),
      fc.integer({ min: 1, max: 300 }),
      fc.integer({ min: 1, max: 700 }),
      fc.boolean(),
      (of, first, second, tenths, grams, isUneven) => {
        const piece: Mailpiece = {
          length: millimetres(Math.max(first, second)),
          height: millimetres(Math.min(first, second)),
          thickness: millimetres(tenths / 10),
          grams,
          isUneven,
          isRigid: false,
        };
        const { as, not } = postedAs(piece, of);
        expect(not.every(({ faults }) => faults.length > 0)).toBe(true);
        expect(of.classes.slice(0, not.length)).toEqual(not.map((one) => one.class));
        if (as === null) expect(not).toHaveLength(of.classes.length);
        else expect(postFaults(piece, as)).toEqual([]);
      },
    ),
  );
});
