import { expect, test } from 'vitest';
import { inches, zero } from '../measure/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { sittingBreaks, sittingsSentence } from './sittingBreaks.ts';
import { meadowSet } from './testing/meadowSet.ts';

const { plan } = meadowSet();
const resting = (cutsPerSitting: number | null): Trimmer => ({
  name: '',
  marks: inches(1, 16),
  longest: null,
  narrowest: null,
  reach: { measuringSide: null, otherSide: null },
  correction: zero,
  measuringEdge: 'left',
  hand: 'right',
  sheetsAtOnce: 1,
  cutsPerSitting,
});

// Two passes, then two at each of two strips.

test('a break is told where one step ends, or within one that is too long', () => {
  expect(sittingBreaks(plan, resting(5))).toEqual([
    { step: 1, cut: 1, isWithin: false, says: 'A good place to stop: what follows is for sitting 2.' },
  ]);
  expect(sittingsSentence(plan, resting(5))).toBe('6 passes, at most 5 at a sitting: a break after step 1.');
  expect(sittingBreaks(plan, resting(3)).map(({ says }) => says)).toEqual([
    'A good place to stop: what follows is for sitting 2.',
    'A good place to stop, when 1 of the 2 are cut: what follows is for sitting 3.',
  ]);
  expect(sittingsSentence(plan, resting(3))).toBe(
    '6 passes, at most 3 at a sitting: breaks after step 1 and within step 2.',
  );
});

test('there is none where one sitting does', () => {
  for (const trimmer of [null, resting(null), resting(6)]) {
    expect(sittingBreaks(plan, trimmer)).toEqual([]);
    expect(sittingsSentence(plan, trimmer)).toBe('');
  }
});
