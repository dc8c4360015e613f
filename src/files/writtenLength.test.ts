import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inches, lengthOfTicks, millimetres, readLength } from '../measure/index.ts';
import { writtenLength } from './writtenLength.ts';

test('a length is written as a person would', () => {
  expect(writtenLength(inches(17, 8), 'in', false)).toBe('2 1/8 in');
  expect(writtenLength(inches(-1, 16), 'in', true)).toBe('-1/16');
  expect(writtenLength(millimetres(57.5), 'mm', false)).toBe('57.5 mm');
  expect(writtenLength(millimetres(57.3), 'in', true)).toBe('57.3 mm');
  expect(writtenLength(lengthOfTicks(2_857), 'in', false)).toBe('0.07031 in');
  expect(writtenLength(lengthOfTicks(-2_857), 'in', true)).toBe('-0.0703');
  expect(writtenLength(lengthOfTicks(317), 'mm', true)).toBe('0.1982');
});

test('whatever is written is read as the very length', () => {
  fc.assert(
    fc.property(
      fc.oneof(fc.integer({ min: -2_000, max: 2_000 }), fc.integer({ min: -4_000_000, max: 16_000_000 })),
      fc.constantFrom('in', 'mm'),
      fc.boolean(),
      (ticks, units, bare) => {
        const reading = readLength(writtenLength(lengthOfTicks(ticks), units, bare), units);
        expect(reading.ok && reading.length).toBe(ticks);
      },
    ),
    { numRuns: 500 },
  );
});
