import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nearest } from './nearest.ts';

test.each([
  ['cuont', 'count'],
  ['Count', 'count'],
  ['count', 'count'],
  ['cont', 'count'],
  ['counts', 'count'],
  ['prise', 'price'],
  ['colour', null],
  ['c', null],
  ['', null],
  ['x'.repeat(1_000_000), null],
])('%.20s is near to %s', (found, meant) => {
  expect(nearest(found, ['size', 'count', 'price'])).toBe(meant);
});

test('of equally near words the first is meant', () => {
  expect(nearest('bat', ['bar', 'cat'])).toBe('bar');
});

test('the near words are those that a few slips make, counted by trying every alignment', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(word, fc.array(word, { maxLength: 5 }), (found, words) => {
      const allowed = Math.max(1, Math.floor(found.length / 3));
      const counts = words.map((other) => slips(found, other));
      const least = Math.min(...counts);
      expect(nearest(found, words)).toBe(least <= allowed ? words[counts.indexOf(least)] : null);
    }),
    { numRuns: 500 },
  );
});

/** The fewest slips, by the definition: every way to begin is tried. */
function slips(from: string, to: string): number {
  if (from === '' || to === '') return from.length + to.length;
  const ways = [
    slips(from.slice(1), to) + 1,
    slips(from, to.slice(1)) + 1,
    slips(from.slice(1), to.slice(1)) + (from[0] === to[0] ? 0 : 1),
  ];
  if (from.length > 1 && to.length > 1 && from[0] === to[1] && from[1] === to[0])
    ways.push(slips(from.slice(2), to.slice(2)) + 1);
  return Math.min(...ways);
}
