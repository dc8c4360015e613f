import { expect, test } from 'vitest';
import { inches, lengthOfTicks, millimetres, ticksPerInch } from '../measure/index.ts';
import { isThickStock, scoringOf } from './scoring.ts';

const mils = (count: number) => lengthOfTicks(Math.floor((count * ticksPerInch) / 1000));

// A printer's: over 0.005 in; a finisher's: 0.006 in or more; a mill's: from 150 g/m².
test.each([
  [5, null, 0, 'fold'],
  [5.5, null, 1, 'score'],
  [6, null, 2, 'score'],
  [6, 149, 2, 'score'],
  [4, 150, 1, 'score'],
  [10, 271, 3, 'score'],
  // Office paper of 75.2 g/m² is 0.0038 in thick.
  [3.8, 75.2, 0, 'fold'],
] as const)('%s mils of %s g/m²: %s rules ask for a score', (thick, gsm, asked, verdict) => {
  expect(scoringOf({ thickness: mils(thick), gsm })).toEqual({ do: verdict, asked });
});

test('only board is scored twice', () => {
  expect(isThickStock(millimetres(0.5))).toBe(true);
  expect(isThickStock(inches(1, 64))).toBe(false);
});
