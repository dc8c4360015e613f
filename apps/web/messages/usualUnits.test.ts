import { expect, it } from 'vitest';
import { usualUnits } from './usualUnits.ts';

it('proposes inches where they are usual, and millimetres elsewhere', () => {
  const proposed = (...languages: string[]) => usualUnits(languages);
  expect(proposed('en-US')).toBe('in');
  expect(proposed('en', 'de-DE')).toBe('in');
  expect(proposed('fr-CA', 'en-GB')).toBe('in');
  expect(['en-GB', 'en-AU', 'nl', 'de-CH', 'ja'].map((one) => proposed(one))).toEqual(
    Array.from({ length: 5 }, () => 'mm'),
  );
  expect(proposed('no language')).toBe('mm');
  expect(proposed()).toBe('mm');
});
