import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wrapped } from './wrapped.ts';

test('breaks at spaces and hangs what follows', () => {
  expect(wrapped('  1. Set 5 in. Take Meadow sheet 1.', { width: 20, hang: 3 })).toEqual([
    '  1. Set 5 in. Take',
    '     Meadow sheet 1.',
  ]);
  expect(wrapped('')).toEqual(['']);
});

test('loses nothing and is no wider than asked, but for a word that is', () => {
  const words = fc.array(fc.stringMatching(/^[a-z0-9/.]{1,30}$/), { maxLength: 40 });
  fc.assert(
    fc.property(words, fc.integer({ min: 10, max: 60 }), (parts, width) => {
      const lines = wrapped(parts.join(' '), { width, hang: 2 });
      expect(lines.join(' ').split(/ +/).filter(Boolean)).toEqual(parts);
      for (const line of lines)
        expect(line.length <= width || line.trim().split(' ').length === 1).toBe(true);
    }),
  );
});
