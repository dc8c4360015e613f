import { expect, test } from 'vitest';
import { inches } from '../measure/index.ts';
import type { PaperOutcome, PieceSpares } from '../planning/index.ts';
import { sparesMadeSentence, sparesSentences } from './sparesSentence.ts';
import { meadowSet } from './testing/meadowSet.ts';

const { layout, plan } = meadowSet();
const typed = { units: 'in', glyphs: 'typed' } as const;
const meadow = layout.papers.get('meadow')!;

const offer: PieceSpares = {
  piece: 'panel/meadow',
  paper: 'meadow',
  risk: 'torn',
  made: 0,
  offered: 2,
  proved: true,
  passes: 1,
  leftover: { width: inches(12), height: inches(2) },
  next: { kind: 'costs', cost: 1, sheets: 1, scraps: 0, proved: true },
};

function said(spare: Partial<PieceSpares>, outcome: Partial<PaperOutcome> = {}): readonly string[] {
  const papers = new Map([['meadow', { ...plan.papers.get('meadow')!, ...outcome }]]);
  return sparesSentences(
    meadow,
    { layout, plan: { ...plan, papers }, spares: [{ ...offer, ...spare }] },
    typed,
  );
}

test('what comes for nothing is said with its passes, and the price of one more', () => {
  expect(said({})).toEqual([
    'Spares for nothing: 2 more for Panel, 1 pass more.',
    'One more for Panel than that takes another sheet.',
  ]);
  expect(said({ passes: 0 })[0]).toContain('with no pass more.');
  expect(said({ passes: -2 })[0]).toContain('2 passes fewer.');
});

test('a leftover that the spares are cut from is named', () => {
  expect(said({ leftover: { width: inches(4), height: inches(2) } })[1]).toBe(
    'The largest leftover is then 4 x 2 in, not 12 x 2 in.',
  );
  expect(said({ leftover: null })[1]).toBe('They use up what would be kept, 12 x 2 in at the largest.');
});

test('where nothing comes for nothing the price is said alone', () => {
  expect(said({ offered: 0, passes: 0 })).toEqual(['One more for Panel takes another sheet.']);
});

test('what is not known is not said', () => {
  expect(said({ next: null })).toEqual(['Spares for nothing: 2 more for Panel, 1 pass more.']);
  expect(said({ offered: 0, next: null })).toEqual([]);
  expect(said({ paper: 'bark' })).toEqual([]);
});

test('the price is told in what the paper is measured in, and how sure it is', () => {
  const next = { kind: 'costs', cost: 0.3, sheets: 1, scraps: 0, proved: true } as const;
  const priceOf = (of: PieceSpares['next'], measuredIn: PaperOutcome['measuredIn']) =>
    said({ offered: 0, next: of }, { measuredIn })[0];
  expect(priceOf(next, 'price')).toBe('One more for Panel costs 0.30 more: another sheet.');
  expect(priceOf({ ...next, cost: 0, sheets: 0, scraps: 1 }, 'price')).toBe(
    'One more for Panel takes another scrap.',
  );
  expect(priceOf({ ...next, cost: 2, sheets: 2, proved: false }, 'sheets')).toBe(
    'One more for Panel takes 2 more sheets, as far as was found.',
  );
  expect(priceOf({ ...next, cost: 50.5, sheets: 0 }, 'square inches')).toBe(
    'One more for Panel takes 50.5 square inches of paper more.',
  );
  expect(priceOf({ kind: 'none', proved: true }, 'sheets')).toBe(
    'One more for Panel cannot be had from what there is.',
  );
  expect(priceOf({ kind: 'none', proved: false }, 'sheets')).toContain('is not proved');
});

test('spares that were made are said together', () => {
  expect(sparesMadeSentence({ layout, plan, spares: [offer] })).toBe(
    'Made as spares, for nothing: 2 more for Panel.',
  );
  expect(sparesMadeSentence({ layout, plan, spares: [{ ...offer, offered: 0 }] })).toBe(
    'No spare was found that comes for nothing.',
  );
});
