import { expect, test } from 'vitest';
import { cautionsFor } from './caution.ts';

test('the blade, children, makers and local rules are never left out', () => {
  const plain = cautionsFor({ scored: false, glued: false, bought: false });
  expect(plain.map(({ topic }) => topic)).toEqual(['Trimmer', 'Knife', 'Children', 'Rules']);
});

test('scores, glue and bought parts bring their own', () => {
  const all = cautionsFor({ scored: true, glued: true, bought: true });
  expect(all.map(({ topic }) => topic)).toEqual([
    'Trimmer',
    'Knife',
    'Scoring',
    'Glue and heat',
    'Children',
    'Rules',
  ]);
  expect(all.find(({ topic }) => topic === 'Children')?.says).toContain('choke');
});
