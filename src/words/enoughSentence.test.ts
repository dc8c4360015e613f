import { expect, test } from 'vitest';
import { inches } from '../measure/index.ts';
import type { Cliff, Enough } from '../planning/index.ts';
import { cliffSentence, enoughSentences } from './enoughSentence.ts';
import { meadowSet } from './testing/meadowSet.ts';

const { layout } = meadowSet();
const showing = { units: 'in', glyphs: 'typed' } as const;
const enough = (about: Partial<Enough>): Enough => ({
  cards: 18,
  proved: true,
  limit: ['meadow'],
  papers: new Map([['meadow', { cards: 18, proved: true }]]),
  plan: null,
  ...about,
});

test('the cards, how sure that is and what runs out', () => {
  expect(enoughSentences(enough({}), layout)).toEqual([
    'Enough for 18 cards, and no more; that is proved.',
    'What runs out first: Meadow.',
  ]);
  expect(enoughSentences(enough({ proved: false, cards: 1 }), layout)[0]).toBe(
    'Enough for 1 card, as far as was found; whether for more is not proved.',
  );
  expect(enoughSentences(enough({ cards: 0 }), layout)[0]).toBe('Not enough for one card; that is proved.');
});

test('what the papers that do not limit are enough for', () => {
  const papers = new Map([['meadow', { cards: null, proved: true }]]);
  expect(enoughSentences(enough({ papers, limit: [] }), layout)).toEqual([
    'Enough for 18 cards, and no more; that is proved.',
    'The others are enough by themselves: Meadow for as many as you like.',
  ]);
});

test('where nothing limits, and where nothing is cut', () => {
  expect(enoughSentences(enough({ cards: null, limit: [] }), layout)).toEqual([
    'Enough for as many cards as you like: of every paper there are as many sheets as needed.',
  ]);
  expect(enoughSentences(enough({ cards: null, limit: [], papers: new Map() }), layout)).toEqual([
    'Nothing is cut for this set: everything in it is bought.',
  ]);
});

test('a small change, what it gains and what becomes of the card', () => {
  const cliff: Cliff = {
    changes: [
      { path: 'parts[0].size[1]', part: 'panel', name: 'height', from: inches(5), to: inches(79, 16) },
    ],
    marks: 1,
    gains: [
      { kind: 'piece', piece: 'panel/meadow', stock: 0, from: 6, to: 9 },
      { kind: 'sheet', paper: 'meadow', from: 3, to: 2, sheets: { from: 3, to: 2 } },
      { kind: 'card', from: 12, to: 18 },
    ],
    effect: [
      {
        kind: 'border',
        on: 'base',
        axis: 'height',
        between: [null, 'panel'],
        from: inches(1, 4),
        to: inches(9, 32),
      },
      {
        kind: 'border',
        on: 'base',
        axis: 'height',
        between: ['panel', null],
        from: inches(1, 4),
        to: inches(9, 32),
      },
    ],
    pieces: [],
  };
  expect(cliffSentence(cliff, layout, showing)).toBe(
    'Panel 4 15/16 in high instead of 5: a sheet of Meadow gives 9 of Panel instead of 6, the set takes 2 sheets of ' +
      'Meadow instead of 3 and the papers are enough for 18 cards instead of 12. ' +
      'The border above and below Panel becomes 9/32 in instead of 1/4. All other borders and gaps stay as they are.',
  );
});
