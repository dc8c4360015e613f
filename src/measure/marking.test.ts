import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  inches,
  type Length,
  lengthOfTicks,
  type Marking,
  type MarkingId,
  millimetres,
  minus,
  readLength,
  readMark,
  sum,
  times,
  usualMarkings,
} from './index.ts';

const ids = Object.keys(usualMarkings) as MarkingId[];
const markings: fc.Arbitrary<Marking> = fc.oneof(
  fc.constantFrom(...ids).map((id): Marking => usualMarkings[id]),
  fc.integer({ min: 1, max: 300 }).map((half): Marking => ({ units: 'mm', step: lengthOfTicks(2 * half) })),
);
const lengths = fc.integer({ min: -60_000, max: 60_000 }).map((ticks) => lengthOfTicks(ticks));

test('every usual marking is named by its step', () => {
  for (const id of ids) {
    const { units, step } = usualMarkings[id];
    expect(readLength(id, 'mm')).toEqual({ ok: true, length: step, exact: true, units });
  }
});

test('NIST Handbook 44, appendix A, 10.3: 3-3/32 in on sixteenths lies midway, and the even 3-2/16 is taken', () => {
  // As quoted, with this figure, in a US guide to accessibility tolerances (corada.com).
  const reading = readMark(inches(99, 32), usualMarkings['1/16 in']);
  expect(reading).toEqual({
    mark: inches(25, 8),
    off: inches(-1, 32),
    exact: false,
    below: inches(49, 16),
    above: inches(50, 16),
  });
  // The next midway place, 3-5/32, goes down to the same even mark.
  expect(readMark(inches(101, 32), usualMarkings['1/16 in'])).toMatchObject({
    mark: inches(25, 8),
    off: inches(1, 32),
  });
});

test('a school worksheet: the sixteenth nearest to 2/3 is 11/16, not 10/16', () => {
  const reading = readLength('2/3', 'in');
  expect(reading.ok && readMark(reading.length, usualMarkings['1/16 in']).mark).toBe(inches(11, 16));
});

test('half millimetres on a ruler of whole ones go to the even millimetre', () => {
  const marks = [0.5, 1.5, 2.5, 3.5].map((count) => readMark(millimetres(count), usualMarkings['1 mm']).mark);
  expect(marks).toEqual([0, 2, 2, 4].map((count) => millimetres(count)));
});

test('the mark is the one that a search along the whole ruler finds', () => {
  const halfway = fc
    .tuple(fc.integer({ min: -40, max: 40 }), markings)
    .filter(([, { step }]) => step % 2 === 0)
    .map(([count, marking]) => [lengthOfTicks(count * marking.step + marking.step / 2), marking] as const);
  fc.assert(
    fc.property(fc.oneof(fc.tuple(lengths, markings), halfway), ([length, marking]) => {
      const reading = readMark(length, marking);
      expect(reading.mark).toBe(searchedMark(length, marking.step));
      expect(sum(reading.mark, reading.off)).toBe(length);
      expect(reading.exact).toBe(reading.off === 0);
      expect(reading.below <= length && length <= reading.above).toBe(true);
      expect(minus(reading.above, reading.below)).toBe(reading.exact ? 0 : marking.step);
      expect([reading.below, reading.above]).toContain(reading.mark);
    }),
    { numRuns: 2_000 },
  );
});

/** Walks over the marks one by one: the nearest, of two equally near the even one. */
function searchedMark(length: Length, step: Length): Length {
  const most = Math.ceil(Math.abs(length) / step) + 1;
  let found = { count: -most, distance: Number.POSITIVE_INFINITY };
  for (let count = -most; count <= most; count++) {
    const distance = Math.abs(length - count * step);
    const better = distance < found.distance || (distance === found.distance && Math.abs(count) % 2 === 0);
    if (better) found = { count, distance };
  }
  return times(step, found.count);
}

test('a longer length is never read at a smaller mark', () => {
  fc.assert(
    fc.property(lengths, fc.nat(1_000), markings, (length, more, marking) => {
      const longer = lengthOfTicks(length + more);
      expect(readMark(length, marking).mark).toBeLessThanOrEqual(readMark(longer, marking).mark);
    }),
  );
});
