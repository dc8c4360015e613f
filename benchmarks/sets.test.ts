import { expect, it } from 'vitest';
import { practicalSets } from './sets.ts';

const first = 20_261_125;
const sets = practicalSets(60, first);

it('practical sets are the same for one seed', () => {
  expect(practicalSets(6, 7)).toEqual(practicalSets(6, 7));
  expect(practicalSets(6, 7)).not.toEqual(practicalSets(6, 8));
});

it.each(sets)(
  'seed $seed: every kind of piece comes from a sheet without number',
  ({ items, sheets, oneSize }) => {
    const main = sheets.find(({ count }) => count === null)!;
    for (const { width, height, need, turns } of items) {
      const lies = width <= main.width && height <= main.height;
      const turned = turns && height <= main.width && width <= main.height;
      expect(lies || turned).toBe(true);
      expect(need).toBeGreaterThanOrEqual(5);
    }
    expect(items.length).toBeLessThanOrEqual(6);
    if (oneSize) expect(sheets).toHaveLength(1);
  },
);

it('some sets have mixed sheets, scraps and locked pieces', () => {
  expect(sets.filter(({ sheets }) => sheets.some(({ cost }) => cost === 0)).length).toBeGreaterThan(10);
  expect(
    sets.filter(({ sheets }) => sheets.some(({ count, cost }) => cost > 0 && count !== null)).length,
  ).toBeGreaterThan(10);
  expect(sets.filter(({ items }) => items.some(({ turns }) => !turns)).length).toBeGreaterThan(20);
});
