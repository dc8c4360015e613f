import { expect, test } from 'vitest';
import type { PaperShortage, Shortage } from '../planning/index.ts';
import { shortageSentences } from './shortageSentence.ts';
import { meadowSet, size, stock } from './testing/meadowSet.ts';

const { layout, plan } = meadowSet();
const typed = { units: 'in', glyphs: 'typed' } as const;
const asked = { ...layout, cards: 20 };
const wanted = { kind: 'short', pieces: [{ ...plan.pieces[0]!, need: 20 }] } as const;
const none = new Map();
const noWayOut = { trimmerLimits: false, moreSheets: null } as const;

test('names the piece, the paper, the number, the limit, the proof and the nearest', () => {
  const shortage: Shortage = {
    ...wanted,
    papers: [
      { paper: 'meadow', missing: new Map([['panel/meadow', 8]]), proved: true, never: none, ...noWayOut },
    ],
    nearest: { cards: 12, proved: true, plan },
  };
  expect(shortageSentences(shortage, asked, typed)).toEqual([
    'Meadow is short: 8 of the 20 pieces for Panel (panel/meadow, 4 x 5 in) are wanting.',
    'The limit is what there is of Meadow: 2 sheets of 12 x 12 in. Its print has to stand upright.',
    'No way of cutting from edge to edge gives more; that is proved.',
    'The nearest that can be done: these papers give 12 cards of 20, and no more.',
  ]);
});

test('claims no more than was found', () => {
  const shortage: Shortage = {
    ...wanted,
    papers: [
      { paper: 'meadow', missing: new Map([['panel/meadow', 1]]), proved: false, never: none, ...noWayOut },
    ],
    nearest: { cards: 19, proved: false, plan },
  };
  const sentences = shortageSentences(shortage, asked, typed);
  expect(sentences[0]).toContain('1 of the 20 pieces for Panel (panel/meadow, 4 x 5 in) is wanting');
  expect(sentences[2]).toBe('No way of cutting that gives more was found; that there is none is not proved.');
  expect(sentences[3]).toBe(
    'The nearest that was found: these papers give 19 cards of 20; whether they give more is not proved.',
  );
});

test('says so when not one card can be made, and names every stock', () => {
  const papers = new Map(layout.papers);
  papers.set('meadow', {
    ...papers.get('meadow')!,
    up: 'any',
    sheets: [stock({ size: size(6, 6), count: 0 }), stock({ size: size(3, 9), count: 1, scrap: true })],
  });
  const shortage: Shortage = {
    ...wanted,
    papers: [
      { paper: 'meadow', missing: new Map([['panel/meadow', 20]]), proved: true, never: none, ...noWayOut },
    ],
    nearest: null,
  };
  const sentences = shortageSentences(shortage, { ...asked, papers }, typed);
  expect(sentences[1]).toBe(
    'The limit is what there is of Meadow: no sheets of 6 x 6 in and 1 scrap of 3 x 9 in.',
  );
  expect(sentences.at(-1)).toBe('These papers give not even one card.');
});

test('says why no sheet gives even one of a piece', () => {
  const shortage: Shortage = {
    ...wanted,
    papers: [
      {
        paper: 'meadow',
        missing: new Map([['panel/meadow', 20]]),
        proved: true,
        never: new Map([['panel/meadow', 'too-large']]),
        ...noWayOut,
      },
    ],
    nearest: null,
  };
  expect(shortageSentences(shortage, asked, typed)[1]).toBe(
    'Panel (4 x 5 in) is larger than any sheet gives in one piece, as the piece has to lie.',
  );
});

test('names the trimmer where it is the limit, and a sheet more where that would do', () => {
  const short = { paper: 'meadow', missing: new Map([['panel/meadow', 2]]), proved: true, never: none };
  const said = (way: Pick<PaperShortage, 'trimmerLimits' | 'moreSheets'>) =>
    shortageSentences({ ...wanted, papers: [{ ...short, ...way }], nearest: null }, asked, typed);
  expect(said({ trimmerLimits: true, moreSheets: null })[1]).toMatch(/^The limit is the trimmer/);
  const more = said({ trimmerLimits: false, moreSheets: { stock: 0, count: 1 } });
  expect(more[1]).toMatch(/^The limit is what there is of Meadow/);
  expect(more).toContain('1 more sheet of Meadow (12 x 12 in) would be enough.');
});

test('says that spares are counted in', () => {
  const shortage: Shortage = {
    ...wanted,
    pieces: [{ ...wanted.pieces[0], spare: 2 }],
    papers: [
      { paper: 'meadow', missing: new Map([['panel/meadow', 2]]), proved: true, never: none, ...noWayOut },
    ],
    nearest: { cards: 3, proved: true, plan },
  };
  expect(shortageSentences(shortage, asked, typed).at(-1)).toBe(
    'The nearest that can be done: these papers give 3 cards of 20 with all the spares, and no more.',
  );
});
