import { expect, test } from 'vitest';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { letterOf } from './letters.ts';
import { longestName, printableName } from './printable.ts';

const printed = (name: string) => printableName(name, 'meadow', plainTypeface);

test('names keep what the typeface has', () => {
  expect(printed('Meadow')).toBe('Meadow');
  expect(printed('Blé d’été, 12 × 12')).toBe('Blé d’été, 12 × 12');
  expect(printed('Wheat \u{1f33e} field\n\tone')).toBe('Wheat field one');
  expect(printed('safe\u202egnp.exe')).toBe('safegnp.exe');
});

test('a name with nothing to print gives way to the id', () => {
  expect(printed('\u{1f33e}\u{1f33e}')).toBe('meadow');
  expect(printed(' — ')).toBe('meadow');
  expect(printed('')).toBe('meadow');
});

test('long names are cut short, and endless words may be broken', () => {
  const long = printed('a b '.repeat(100));
  expect([...long].length).toBeLessThanOrEqual(longestName);
  expect(long.endsWith('…')).toBe(true);
  expect(printed('x'.repeat(30))).toBe(`${'x'.repeat(20)}\u200b${'x'.repeat(10)}`);
  expect(printed('x'.repeat(20))).toBe('x'.repeat(20));
});

test('letters go on after Z', () => {
  expect([0, 1, 25, 26, 27, 51, 52, 701, 702].map(letterOf)).toEqual([
    'A',
    'B',
    'Z',
    'AA',
    'AB',
    'AZ',
    'BA',
    'ZZ',
    'AAA',
  ]);
});
