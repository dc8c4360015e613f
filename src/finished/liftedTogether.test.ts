import { expect, test } from 'vitest';
import type { Part } from '../layout/index.ts';
import { mm, part } from '../layout/testing/build.ts';
import { isWrapped } from './isWrapped.ts';
import { liftedTogether } from './liftedTogether.ts';

const below = (id: string, other: string, more: Parameters<typeof part>[1] = {}): Part => {
  const made = part(id, { on: 'mat', size: [mm(40), mm(20)], ...more });
  const down = { start: { from: 'part', part: other, gap: mm(3) }, end: null } as const;
  return { ...made, places: made.places.map((place) => ({ ...place, down })) };
};
const parts = [
  part('mat', { inset: mm(3) }),
  part('one', { on: 'mat', size: [mm(40), mm(20)] }),
  below('two', 'one'),
  below('three', 'two'),
  below('foam', 'three', { adhere: 'raised' }),
  part('alone', { on: 'mat', size: [mm(40), mm(20)] }),
];
const ids = parts.map(({ id }) => id);

test('parts that are laid to one another, held alike and put on one after the other', () => {
  expect(liftedTogether({ parts }, ids, isWrapped)).toEqual([['one', 'two', 'three']]);
});

test('not what something comes between, nor what lies elsewhere, nor a band', () => {
  const between = ['mat', 'one', 'two', 'alone', 'three', 'foam'];
  expect(liftedTogether({ parts }, between, isWrapped)).toEqual([['one', 'two']]);
  const elsewhere = parts.map((each) => (each.id === 'two' ? { ...each, on: 'base' } : each));
  expect(liftedTogether({ parts: elsewhere }, ids, isWrapped)).toEqual([]);
  const band = parts.map((each) =>
    each.id === 'two' ? { ...each, tuck: { ...each.tuck, left: mm(5) } } : each,
  );
  expect(liftedTogether({ parts: band }, ids, isWrapped)).toEqual([]);
});
