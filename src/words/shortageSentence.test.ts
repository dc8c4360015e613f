import { expect, test } from 'vitest';
import type { PaperShortage, Shortage } from '../planning/index.ts';
import { shortageSentences } from './shortageSentence.ts';
import { meadowSet, size, stock } from './testing/meadowSet.ts';

const { layout, plan } = meadowSet();
const typed = { units: 'in', glyphs: 'typed' } as const;
const asked = { ...layout, cards: 20 };
const wanted = { kind: 'short', pieces: [{ ...plan.pieces[0]!, need: 20 }] } as const;
const none = new Map();
const noWayOut = { missingProved: true, limits: [], moreSheets: [] } as const;
const noCard = { cards: 0, proved: true, plan: null } as const;

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
    'It gives 12 of the 20 for Panel.',
    'The limit is what there is of Meadow: 2 sheets of 12 x 12 in. Its print has to stand upright.',
    'No way of cutting from edge to edge gives more; that is proved.',
    'The nearest that can be done: these papers give 12 cards of 20, and no more.',
  ]);
});

test('on a printed page names the piece as people do, not by its id', () => {
  const missing = new Map([['panel/meadow', 8]]);
  const papers = [{ paper: 'meadow', missing, proved: true, never: none, ...noWayOut }];
  const shortage: Shortage = { ...wanted, papers, nearest: { cards: 12, proved: true, plan } };
  const sentences = shortageSentences(shortage, asked, { units: 'in', glyphs: 'printed' });
  expect(sentences[0]).toBe(
    'Meadow is short: 8 of the 20 pieces for Panel (4\u00a0× 5\u00a0in) are wanting.',
  );
  expect(sentences.join(' ')).not.toContain('panel/meadow');
});

test('claims no more than was found', () => {
  const shortage: Shortage = {
    ...wanted,
    papers: [
      {
        paper: 'meadow',
        missing: new Map([['panel/meadow', 1]]),
        proved: false,
        never: none,
        ...noWayOut,
        missingProved: false,
      },
    ],
    nearest: { cards: 19, proved: false, plan },
  };
  const sentences = shortageSentences(shortage, asked, typed);
  expect(sentences[0]).toContain('1 of the 20 pieces for Panel (panel/meadow, 4 x 5 in) is wanting');
  expect(sentences[3]).toBe('No way of cutting that gives more was found; that there is none is not proved.');
  expect(sentences[4]).toBe(
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
    nearest: noCard,
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
    nearest: noCard,
  };
  expect(shortageSentences(shortage, asked, typed)[1]).toBe(
    'Panel (4 x 5 in) is larger than any sheet gives in one piece, as the piece has to lie.',
  );
});

test('says how sure it is that so few are wanting, and that not one card can be made', () => {
  const short = { paper: 'meadow', missing: new Map([['panel/meadow', 3]]), never: none, ...noWayOut };
  const said = (proved: boolean, missingProved: boolean) =>
    shortageSentences(
      {
        ...wanted,
        papers: [{ ...short, proved, missingProved }],
        nearest: { ...noCard, proved: missingProved },
      },
      asked,
      typed,
    ).slice(-2);
  expect(said(true, false)).toEqual([
    'No way of cutting from edge to edge gives them all; that is proved. Whether fewer need be wanting is not.',
    'No way was found to make even one card; that there is none is not proved.',
  ]);
  expect(said(true, true)).toEqual([
    'No way of cutting from edge to edge gives more; that is proved.',
    'These papers give not even one card.',
  ]);
});

test('says that there is no sheet on hand', () => {
  const papers = new Map(layout.papers);
  papers.set('meadow', { ...papers.get('meadow')!, sheets: [stock({ size: size(12, 12), count: 0 })] });
  const short = { paper: 'meadow', missing: new Map([['panel/meadow', 20]]), proved: true, never: none };
  const moreSheets = [{ stock: 0, count: 4, proved: true }];
  expect(
    shortageSentences(
      { ...wanted, papers: [{ ...short, ...noWayOut, moreSheets }], nearest: noCard },
      { ...asked, papers },
      typed,
    ),
  ).toEqual([
    'There is no sheet of Meadow on hand.',
    'Meadow is short: 20 of the 20 pieces for Panel (panel/meadow, 4 x 5 in) are wanting.',
    'No way of cutting from edge to edge gives more; that is proved.',
    '4 sheets of Meadow (12 x 12 in) would be enough, and no fewer.',
    'These papers give not even one card.',
  ]);
});

test('names what is the limit, and the sheets more that would do', () => {
  const short = { paper: 'meadow', missing: new Map([['panel/meadow', 2]]), proved: true, never: none };
  const said = (way: Partial<PaperShortage>) =>
    shortageSentences(
      { ...wanted, papers: [{ ...short, ...noWayOut, ...way }], nearest: noCard },
      asked,
      typed,
    );
  expect(said({ limits: ['trimmer'] })[2]).toMatch(/^The limit is the trimmer/);
  expect(said({ limits: ['direction', 'margins'] }).slice(2, 4)).toEqual([
    'The limit is the direction of the print: these sheets would give all the pieces if they might be given a quarter turn.',
    'The limit is the margins: these sheets would give all the pieces if they could be used to the edge.',
  ]);
  const one = { stock: 0, count: 1, proved: true };
  const more = said({ moreSheets: [one] });
  expect(more[2]).toMatch(/^The limit is what there is of Meadow/);
  expect(more).toContain('1 more sheet of Meadow (12 x 12 in) would be enough.');
  expect(said({ moreSheets: [one, { ...one, count: 3 }] })).toContain(
    '1 more sheet of Meadow (12 x 12 in) or 3 more sheets of Meadow (12 x 12 in) would be enough, and no fewer.',
  );
  expect(said({ moreSheets: [{ ...one, count: 2, proved: false }] })).toContain(
    '2 more sheets of Meadow (12 x 12 in) would be enough; whether fewer would do is not proved.',
  );
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
