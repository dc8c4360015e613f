import { describe, expect, it } from 'vitest';
import { readSavedLayout } from '../files/index.ts';
import { arrange } from '../layout/index.ts';
import { inches, lengthOfTicks } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { changed } from './change.ts';
import type { InHand } from './inHand.ts';
import { gapOf, gapSet } from './ribbonSet.ts';

function inHand(slant: number): InHand {
  const read = readSavedLayout({
    cardwright: 1,
    units: 'in',
    cards: 1,
    base: { size: ['5 in', '5 in'], fold: 'none', paper: null },
    papers: {},
    parts: [
      { id: 'ribbon', shape: 'ribbon', size: ['6 in', '1/2 in'], template: '3 in', slant, paper: null },
    ],
  });
  assert('layout' in read, 'The layout of this test can be read');
  return { ...read, arrangement: arrange(read.layout) };
}

describe('the gap between the tails of a ribbon', () => {
  it('is set by its slant, and set again it is the same', () => {
    for (const [before, after] of [
      [20, 18.4349],
      [-20, -18.4349],
    ] as const) {
      const made = gapSet(inHand(before), 0, inches(1, 2));
      if ('cannot' in made) throw new Error(made.cannot);
      const { file } = changed(inHand(before).file, made.changes);
      expect(file).toMatchObject({ parts: [{ slant: after }] });
      expect(Math.abs(gapOf(inHand(after), 0) - inches(1, 2))).toBeLessThanOrEqual(2);
    }
  });

  it('cannot be more than the strip gives, or less than nothing', () => {
    expect(gapSet(inHand(20), 0, inches(5))).toMatchObject({ cannot: 'tooShort' });
    expect(gapSet(inHand(20), 0, lengthOfTicks(-1))).toEqual({ cannot: 'noGap' });
  });
});
