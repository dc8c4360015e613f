import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arrange } from '../layout/index.ts';
import { inch, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { inches, type Length, lengthOfTicks, type Size, ticksPerInch, type Units } from '../measure/index.ts';
import { envelopeFit, envelopeNeeded, largestCard, sidesOf, smallestEnvelope } from './envelope.ts';
import { sectionOf } from './section.ts';

const size = (width: Length, height: Length): Size => ({ width, height });
const thousandths = (count: number): Length => lengthOfTicks(Math.floor((count * ticksPerInch) / 1000));

/** A folded card of that size, `mils` thousandths of an inch a sheet; raised over its middle where foam is said. */
function section(
  width: Length,
  height: Length,
  { units = 'in', foam }: { units?: Units; foam?: Length } = {},
) {
  const layout = layoutOf({
    units,
    base: [width, height],
    basePapers: ['p'],
    papers: [{ ...paper('p', []), thickness: thousandths(12) }],
    parts:
      foam === undefined
        ? []
        : [part('panel', { inset: inches(1, 8), papers: ['p'], adhere: 'raised', foam })],
  });
  return sectionOf(layout, arrange(layout), 0);
}

// The usual pairs of card and envelope, as merchants' lists have them.
test.each([
  ['A1', '3 1/2', '4 7/8', '3 5/8', '5 1/8'],
  ['A2', '4 1/4', '5 1/2', '4 3/8', '5 3/4'],
  ['A6', '4 1/2', '6 1/4', '4 3/4', '6 1/2'],
  ['A7', '5', '7', '5 1/4', '7 1/4'],
  ['A8', '5 1/4', '7 7/8', '5 1/2', '8 1/8'],
  ['A9', '5 1/2', '8 1/2', '5 3/4', '8 3/4'],
  ['A10', '5 3/4', '9 1/4', '6', '9 1/2'],
  ['No. 10', '3 7/8', '9 1/4', '4 1/8', '9 1/2'],
])('a flat card for %s fits it, and no smaller one', (name, width, height, short, long) => {
  const card = section(inch(width), inch(height));
  const fit = envelopeFit(card, size(inch(long), inch(short)), 'in');
  expect(fit.is).toBe('fits');
  expect([fit.length.spare, fit.height.spare]).toEqual([
    inch(long) - inch(height),
    inch(short) - inch(width),
  ]);
  expect(smallestEnvelope(card, 'in')?.name).toBe(name);
});

describe('an A2 card in an A2 envelope', () => {
  const envelope = size(inch('5 3/4'), inch('4 3/8'));

  // Not a quarter of an inch, as is said of all envelopes.
  test('leaves an eighth of an inch on the short side, of which its two sheets take a little', () => {
    const { height, is } = envelopeFit(section(inch('4 1/4'), inch('5 1/2')), envelope, 'in');
    expect(is).toBe('fits');
    expect(height.spare).toBe(inch('1/8'));
    expect(height.thickness).toBe(thousandths(12) * 2);
    expect(height.left).toBe(inch('1/8') - thousandths(12) * 2);
  });

  test('is tight or does not go in where foam makes it thick to its edges', () => {
    const is = (foam: Length) =>
      envelopeFit(section(inch('4 1/4'), inch('5 1/2'), { foam }), envelope, 'in').is;
    expect(is(inch('1/32'))).toBe('fits');
    expect(is(inch('5/32'))).toBe('tight');
    expect(is(inch('3/8'))).toBe('tooSmall');
  });
});

test('an A6 card in a C6 envelope has 9 and 14 mm to spare; a 149 mm one goes in too', () => {
  const { length, height, is } = envelopeFit(
    section(mm(105), mm(148), { units: 'mm' }),
    size(mm(114), mm(162)),
    'mm',
  );
  expect([length.spare, height.spare, is]).toEqual([mm(14), mm(9), 'fits']);
  expect(smallestEnvelope(section(mm(105), mm(148), { units: 'mm' }), 'mm')?.name).toBe('C6');
  // A third of A4 is the card for DL, not the envelope.
  expect(smallestEnvelope(section(mm(99), mm(210), { units: 'mm' }), 'mm')?.name).toBe('DL');
  expect(envelopeFit(section(mm(99), mm(210), { units: 'mm' }), size(mm(210), mm(99)), 'mm').is).toBe(
    'tooSmall',
  );
});

test('a card that no usual envelope takes needs one of its own', () => {
  const card = section(mm(230), mm(330), { units: 'mm' });
  expect(smallestEnvelope(card, 'mm')).toBeNull();
  expect(envelopeNeeded(card, 'mm').height).toBe(mm(233));
});

test('the largest card for an envelope fits it, and one a mark larger does not', () => {
  const card = section(inch('4 1/4'), inch('5 1/2'), { foam: inch('1/8') });
  const envelope = { length: inch('5 3/4'), height: inch('4 3/8') };
  const largest = largestCard(card, envelope, 'in')!;
  const is = (width: Length, height: Length) =>
    envelopeFit(section(width, height, { foam: inch('1/8') }), size(envelope.length, envelope.height), 'in')
      .is;
  expect(is(largest.height, largest.length)).toBe('fits');
  expect(is(lengthOfTicks(largest.height + inch('1/16')), largest.length)).not.toBe('fits');
});

test('what is needed fits, a tick less in either direction does not, and turning the envelope changes nothing', () => {
  const length = fc.integer({ min: 60_000, max: 300_000 }).map(lengthOfTicks);
  fc.assert(
    fc.property(
      length,
      length,
      fc.integer({ min: 0, max: 9_600 }),
      fc.constantFrom('in', 'mm'),
      (width, height, foam, units) => {
        const card = section(width, height, { units, foam: lengthOfTicks(foam) });
        const needed = envelopeNeeded(card, units);
        const is = (long: number, short: number) =>
          envelopeFit(card, size(lengthOfTicks(long), lengthOfTicks(short)), units).is;
        expect(is(needed.length, needed.height)).toBe('fits');
        expect(is(needed.length, needed.height - 1)).not.toBe('fits');
        if (needed.length > needed.height) {
          expect(is(needed.length - 1, needed.height)).not.toBe('fits');
          expect(is(needed.height, needed.length)).toBe('fits');
        }
        expect(sidesOf(size(height, width))).toEqual(sidesOf(size(width, height)));
      },
    ),
    { numRuns: 60 },
  );
});
