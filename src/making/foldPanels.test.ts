import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inches, lengthOfTicks } from '../measure/index.ts';
import { foldKinds, openedSize, usualAllowance } from './fold.ts';
import { type FlatFold, flatPanels, isFlatFold } from './foldPanels.ts';

// Five commercial printers give the same text; lengths in 32nds of an inch.
test.each<[FlatFold, number, readonly number[], number]>([
  ['trifold', 11, [118, 118, 116], 0],
  ['trifold', 14, [150, 150, 148], 0],
  ['trifold', 17, [182, 182, 180], 0],
  // Thirds “do not exactly equal the original size”: 8 1/2 in falls 1/32 in short, 12 in 1/16 in.
  ['trifold', 8.5, [91, 91, 89], 1],
  ['trifold', 12, [128, 128, 126], 2],
  ['parallel', 17, [137, 137, 135, 135], 0],
  ['roll', 17, [138, 138, 135, 133], 0],
])('%s of a sheet of %s in', (fold, flat, panels, rest) => {
  const found = flatPanels(fold, inches(flat * 2, 2));
  expect(found.panels).toEqual(panels.map((count) => inches(count, 32)));
  expect(found.rest).toBe(inches(rest, 32));
});

test('quarters come out of every length in 32nds of an inch, thirds never leave 1/8 in or more', () => {
  fc.assert(
    fc.property(fc.integer({ min: 64, max: 2_000 }), (count) => {
      for (const fold of ['parallel', 'roll'] as const)
        expect(flatPanels(fold, inches(count * 4, 32)).rest).toBe(0);
      const { rest } = flatPanels('trifold', inches(count, 32));
      // Three thirds are a length that a panel of each is rounded up from by less than 1/32 in, less 1/16 in.
      expect(rest).toBeLessThanOrEqual(inches(2, 32));
      expect(rest).toBeGreaterThanOrEqual(0);
    }),
  );
});

test('the panels are those of a base whose front is the widest', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...foldKinds.filter(isFlatFold)),
      fc.integer({ min: 100, max: 900 }),
      (fold, count) => {
        const flat = inches(count, 32);
        const { panels, rest } = flatPanels(fold, flat);
        const base = {
          size: { width: panels[0]!, height: lengthOfTicks(1_000) },
          fold,
          opens: 'sideways',
          allowance: usualAllowance.in,
        } as const;
        expect(openedSize(base).width + rest).toBe(flat);
      },
    ),
  );
});
