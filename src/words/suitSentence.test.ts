import { expect, test } from 'vitest';
import { arrange } from '../layout/index.ts';
import { inches } from '../measure/index.ts';
import type { SuitedSizes } from '../planning/index.ts';
import { roomRefusal, suitSentences } from './suitSentence.ts';
import { meadowSet } from './testing/meadowSet.ts';

const { layout } = meadowSet();
const showing = { units: 'in', glyphs: 'typed' } as const;
const suited = (about: Partial<SuitedSizes>): SuitedSizes => ({
  kind: 'suited',
  cards: 6,
  proved: true,
  nearest: true,
  alike: true,
  marks: 1,
  changes: [{ path: 'parts[0].size[0]', part: 'panel', name: 'width', from: inches(4), to: inches(63, 16) }],
  effect: [],
  set: { layout, arrangement: arrange(layout), trimmer: null },
  plan: null,
  ...about,
});
const said = (about: Partial<SuitedSizes>) => suitSentences(suited(about), layout, 6, showing);

test('the sizes that make the cards, and that none nearer do', () => {
  expect(said({})).toEqual([
    '6 cards come out with these sizes:',
    '  Panel 3 15/16 in wide instead of 4.',
    '  Borders and gaps stay as they are.',
    'No sizes within this room that do are nearer to what was drawn.',
  ]);
  expect(said({ changes: [] })).toEqual(['6 cards come out with the sizes as they were drawn.']);
  expect(said({ nearest: false, alike: false }).slice(-2)).toEqual([
    '  Borders are even left and right, top and bottom, but no longer the same all round: no sizes in this room that give so many are.',
    'Whether nearer sizes do is not proved.',
  ]);
});

test('the nearest, where the cards do not come out', () => {
  expect(said({ cards: 5 })[0]).toBe(
    'No sizes within this room give 6 cards; that is proved. The most is 5 cards, with these sizes:',
  );
  expect(said({ cards: 0, proved: false })).toEqual([
    'No sizes within this room give one card, as far as was found.',
  ]);
});

test('why nothing could be looked for', () => {
  const sentences = (answer: Parameters<typeof suitSentences>[0]) =>
    suitSentences(answer, layout, 6, showing);
  expect(sentences({ kind: 'no-room' })[0]).toContain('No length of this layout has room to move.');
  expect(sentences({ kind: 'no-mark', path: 'parts[0].size[0]', mark: inches(1, 16) })).toEqual([
    'Panel, width: no whole mark of 1/16 in lies in its room.',
  ]);
  expect(sentences({ kind: 'never-even', proved: true })[0]).toContain('keep borders and gaps even');
});

test('what stands in the way of a room', () => {
  expect(roomRefusal({ part: 'roof', name: 'width' }, [], layout)).toBe(
    '“roof” is no part of this layout; it has base, panel.',
  );
  expect(roomRefusal({ part: 'panel', name: 'inset' }, ['width', 'height'], layout)).toBe(
    'Panel has no inset that could be given room; it has width, height.',
  );
  expect(roomRefusal({ part: 'panel', name: 'width' }, ['width', 'height'], layout)).toBeNull();
});
