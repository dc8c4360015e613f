import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type JsonObject, valueAt } from '../files/index.ts';
import type { Edge } from '../measure/index.ts';
import type { Edit } from './edit.ts';
import type { InHand } from './inHand.ts';
import {
  marginSet,
  newPaper,
  paperReplaced,
  sheetCutInto,
  sheetsAdded,
  sheetsPriced,
  sheetsTaken,
} from './stash.ts';
import { edited, inHandOf } from './testing/handmade.ts';

const letter = ['8 1/2', '11'];
const square = ['12', '12'] as const;

function stash(...sheets: readonly JsonObject[]): InHand {
  return inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 4,
    base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: 'moss' },
    papers: { moss: { name: 'Moss', sheets }, fern: { sheets: [] }, clay: { sheets: [] } },
    parts: [
      { id: 'mat', inset: '1/8', paper: 'moss' },
      { id: 'panel', on: 'mat', inset: '1/8', paper: ['fern', 'moss', 'moss'] },
      { id: 'tag', on: 'panel', size: ['1', '1'], paper: null },
      { id: 'strip', on: 'panel', size: ['1', '1/2'], paper: 'clay' },
    ],
  });
}

const sheetsOf = (before: InHand, edit: Edit) =>
  valueAt(edited(before, edit).file, ['papers', 'moss', 'sheets']);

describe('the stash', () => {
  it('takes a new paper under an id of its own, after the others', () => {
    const before = stash();
    const wanted = { name: 'Fern', kind: 'patterned', size: square, count: 2 } as const;
    const { layout } = edited(before, newPaper(before.file, before.layout, wanted));
    expect([...layout.papers.keys()]).toEqual(['moss', 'fern', 'clay', 'fern-2']);
    expect(layout.papers.get('fern-2')).toMatchObject({ name: 'Fern', kind: 'patterned', up: 'any' });
    expect(layout.papers.get('fern-2')!.sheets).toMatchObject([{ count: 2, scrap: false, price: null }]);
  });

  it('gives another paper to all that was cut from one that goes, wherever it stands', () => {
    const before = stash();
    const { layout } = edited(before, paperReplaced(before.file, 'moss', 'clay'));
    expect([...layout.papers.keys()]).toEqual(['fern', 'clay']);
    expect(layout.base.papers).toEqual(['clay']);
    expect(layout.parts.map(({ papers }) => papers)).toEqual([
      ['clay'],
      ['fern', 'clay', 'clay'],
      [],
      ['clay'],
    ]);
  });
});

describe('sheets of a paper', () => {
  it('of another size come at the price of the others', () => {
    const plain = stash({ size: letter, count: 3 });
    expect(sheetsOf(plain, sheetsAdded(plain.file, 'moss', square))).toEqual([
      { size: letter, count: 3 },
      { size: square, count: null },
    ]);
    const priced = stash({ size: letter, count: 1, scrap: true }, { size: letter, count: 3, price: '0.40' });
    expect(sheetsOf(priced, sheetsAdded(priced.file, 'moss', square))).toMatchObject([
      {},
      {},
      { price: '0.40' },
    ]);
  });

  it('are taken out', () => {
    const before = stash({ size: letter, count: 3 }, { size: square, count: 1 });
    expect(sheetsOf(before, sheetsTaken(before.file, 'moss', 0))).toEqual([{ size: square, count: 1 }]);
  });

  it('become a scrap one by one', () => {
    const before = stash({ size: letter, count: 3, price: '0.40', grain: 'height' });
    expect(sheetsOf(before, sheetCutInto(before.file, 'moss', 0))).toEqual([
      { size: letter, count: 2, price: '0.40', grain: 'height' },
      { size: letter, grain: 'height', count: 1, scrap: true },
    ]);
    const endless = stash({ size: letter, count: null });
    expect(sheetsOf(endless, sheetCutInto(endless.file, 'moss', 0))).toMatchObject([
      { count: null },
      { count: 1, scrap: true },
    ]);
    const last = stash({ size: letter, count: 1, price: '0.40' });
    expect(sheetsOf(last, sheetCutInto(last.file, 'moss', 0))).toMatchObject([{ count: 1, scrap: true }]);
  });

  it('have a price all together or none', () => {
    const before = stash(
      { size: letter, count: 3 },
      { size: square, count: 2 },
      { size: square, count: 1, scrap: true },
    );
    const priced = edited(before, sheetsPriced(before.file, 'moss', 1, '0.55'));
    const prices = ({ layout }: InHand) => layout.papers.get('moss')!.sheets.map(({ price }) => price);
    expect(prices(priced)).toEqual([5500, 5500, null]);
    const changed = edited(priced, sheetsPriced(priced.file, 'moss', 0, '0.30'));
    expect(prices(changed)).toEqual([3000, 5500, null]);
    expect(prices(edited(changed, sheetsPriced(changed.file, 'moss', 0, undefined)))).toEqual([
      null,
      null,
      null,
    ]);
  });

  it('keep the margins of the other edges, however they were written', () => {
    const edges = ['left', 'right', 'top', 'bottom'] as const satisfies readonly Edge[];
    const margin = fc.option(fc.constantFrom('1/8', '1/4', '1/2'), { nil: undefined });
    fc.assert(
      fc.property(
        fc.oneof(margin, fc.record({ left: margin, top: margin, bottom: margin }, { requiredKeys: [] })),
        fc.constantFrom(...edges),
        margin,
        (typed, edge, to) => {
          const written = JSON.parse(JSON.stringify({ size: square, count: 1, margin: typed })) as JsonObject;
          const before = stash(written);
          const next = edited(before, marginSet(before.file, 'moss', 0, { edge, margin: to }));
          const [was, is] = [before, next].map(({ layout }) => layout.papers.get('moss')!.sheets[0]!.margin);
          // An inch is 40 640 ticks.
          const ticks = { '1/8': 5080, '1/4': 10_160, '1/2': 20_320 };
          expect(is![edge]).toBe(to === undefined ? 0 : ticks[to]);
          for (const other of edges) if (other !== edge) expect(is![other]).toBe(was![other]);
        },
      ),
    );
  });
});
