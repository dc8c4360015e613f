import { expect, test } from 'vitest';
import { kindnessSentence } from './kindnessSentence.ts';

test('says in which order plans of one cost were compared', () => {
  expect(kindnessSentence()).toBe(
    'Of plans at this cost the kindest to cut was looked for: fewest settings first, then fewest passes, then fewest quarter turns, then sheets cut alike, then the largest leftover whole, then scraps and small sheets before large ones. Where a single sheet is begun, a pass more is made for every fiftieth of it that is kept whole.',
  );
  expect(kindnessSentence(['leftover', 'passes'])).toBe(
    'Of plans at this cost the kindest to cut was looked for: the largest leftover whole first, then fewest passes, then fewest settings, then fewest quarter turns, then sheets cut alike, then scraps and small sheets before large ones.',
  );
});
