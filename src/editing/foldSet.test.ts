import { expect, it } from 'vitest';
import { type JsonObject, valueAt } from '../files/index.ts';
import type { FoldKind } from '../making/index.ts';
import { editSentence } from '../words/index.ts';
import { foldSet } from './foldSet.ts';
import { edited, inHandOf } from './testing/handmade.ts';

/* A base folded otherwise; every edit is undone to the byte. */

const set = (base: JsonObject) =>
  inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 4,
    base: { size: ['4 in', '6 in'], ...base },
    papers: {},
    parts: [],
  });
const fields = ({ file }: ReturnType<typeof set>) => valueAt(file, ['base']);

it.each<[FoldKind, JsonObject]>([
  ['parallel', { fold: 'parallel', opens: 'upwards', allowance: '1/8 in' }],
  ['z', { fold: 'z', opens: 'upwards' }],
  ['left', { fold: 'left' }],
  ['none', { fold: 'none' }],
])('a roll that becomes %s keeps what that has', (fold, kept) => {
  const roll = set({ fold: 'roll', opens: 'upwards', allowance: '1/8 in', paper: null });
  const other = edited(roll, foldSet(roll.file, fold));
  expect(fields(other)).toEqual({ size: ['4 in', '6 in'], paper: null, ...kept });
  // Back again from what it was, nothing is lost.
  expect(fields(edited(other, foldSet(other.file, 'roll', roll.file)))).toEqual(fields(roll));
});

it('is told in words', () => {
  const side = set({ fold: 'left', paper: null });
  expect(editSentence(foldSet(side.file, 'gate').told)).toBe(
    'The base: fold as a gate instead of at the side.',
  );
});
