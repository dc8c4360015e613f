import { expect, test } from 'vitest';
import { inches, lengthOfTicks, zero } from '../measure/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { trimmerSentences } from './trimmerSentences.ts';

const plain: Trimmer = {
  name: 'The one on the shelf',
  marks: null,
  longest: inches(12),
  narrowest: null,
  reach: { measuringSide: null, otherSide: null },
  correction: zero,
  measuringEdge: 'left',
  hand: 'right',
  sheetsAtOnce: 1,
  cutsPerSitting: null,
};

test('a trimmer is told by its edge and hand, then by what was said of its rulers', () => {
  const typed = { units: 'in', glyphs: 'typed' } as const;
  expect(trimmerSentences(plain, typed)).toEqual([
    'For a trimmer that measures on the left, worked with the right hand.',
  ]);
  const reach = { measuringSide: inches(12), otherSide: inches(13, 2) };
  const told: Trimmer = { ...plain, marks: inches(1, 16), hand: 'left', reach, correction: inches(1, 32) };
  expect(trimmerSentences(told, typed)).toEqual([
    'For a trimmer with a mark every 1/16 in that measures on the left, worked with the left hand.',
    'Its ruler goes to 12 in, and 6 1/2 in on the other side of the blade.',
    'It cuts 1/32 in more than its ruler reads; each step says what to set.',
  ]);
  const short: Trimmer = { ...plain, correction: lengthOfTicks(-800), reach: { ...reach, otherSide: null } };
  expect(trimmerSentences(short, { units: 'mm', glyphs: 'typed' }).slice(1)).toEqual([
    'Its ruler goes to 304.8 mm.',
    'It cuts 0.5 mm less than its ruler reads; each step says what to set.',
  ]);
});
