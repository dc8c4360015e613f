import { expect, test } from 'vitest';
import { inches } from '../measure/index.ts';
import { docketOf, takenOf, toBuy, toolsFor } from './papers.ts';
import { meadowSet, paper, part, size, stock } from './testing/meadowSet.ts';

const typed = { units: 'in', glyphs: 'typed' } as const;

test('stock reads as an order docket', () => {
  const { layout } = meadowSet();
  expect(docketOf(layout.papers.get('meadow')!, typed)).toEqual([
    'Meadow, 12 x 12 in, two on hand, stands upright.',
  ]);
  const ivory = paper({
    id: 'ivory',
    name: 'ivory',
    kind: 'cardstock',
    gsm: 270,
    back: { name: 'Ticking', up: 'two-way', colour: null },
    sheets: [
      stock({ size: { width: inches(17, 2), height: inches(11) }, count: null, grain: 'height' }),
      stock({ size: size(5, 6), count: 1, scrap: true }),
      stock({ size: size(5, 5), count: 0 }),
      stock({ size: size(5, 4), count: 3, scrap: true }),
    ],
  });
  const sides = 'may lie any way, other side Ticking, stands upright or half round.';
  expect(docketOf(ivory, typed)).toEqual([
    `Ivory, cardstock, 270 g/m², 8 1/2 x 11 in, as many as needed, grain up and down, ${sides}`,
    `Ivory, cardstock, 270 g/m², 5 x 6 in, a scrap, ${sides}`,
    `Ivory, cardstock, 270 g/m², 5 x 5 in, none on hand, ${sides}`,
    `Ivory, cardstock, 270 g/m², 5 x 4 in, three scraps, ${sides}`,
  ]);
});

test('a paper that is sold by the pound says its pounds, and the grams that these are', () => {
  const ledger = paper({
    id: 'sand',
    name: 'Sand',
    gsm: 216.329,
    pounds: { pounds: 80, of: 'cover' },
    sheets: [stock({ size: size(12, 12), count: 2 })],
  });
  expect(docketOf(ledger, typed)).toEqual([
    'Sand, 80 lb cover (216 g/m²), 12 x 12 in, two on hand, may lie any way.',
  ]);
});

test('what is bought is counted for the set, spares included', () => {
  const { layout, plan } = meadowSet();
  const bought = {
    ...layout,
    papers: new Map([
      [
        'meadow',
        paper({ id: 'meadow', name: 'Meadow', sheets: [stock({ size: size(12, 12), count: null })] }),
      ],
    ]),
    parts: [
      ...layout.parts,
      part({
        id: 'gem',
        name: 'Gem',
        papers: [],
        spare: 2,
        places: [layout.parts[0]!.places[0]!, layout.parts[0]!.places[0]!],
      }),
    ],
  };
  expect(toBuy(bought, plan, typed)).toEqual({
    papers: ['One sheet of Meadow, 12 x 12 in.'],
    parts: [
      'Six bases, bought ready made, 4 1/4 x 5 1/2 in closed, side fold.',
      'Gem, 14, two for each card, two of them spare.',
    ],
  });
  expect(toBuy(layout, plan, typed).papers).toEqual([]);
});

test('tools follow what the set asks for', () => {
  const { layout } = meadowSet();
  expect(toolsFor(layout, 'in')).toEqual([
    'a trimmer, and a ruler marked in inches to measure the sheets first',
    'liquid glue or tape, for what lies flat',
  ]);
  const torn = { ...layout.parts[0]!.torn, right: inches(1, 2) };
  const rich = {
    ...layout,
    base: { ...layout.base, papers: ['meadow'] },
    parts: [
      part({ id: 'a', name: 'A', papers: ['meadow'], torn, adhere: 'raised' }),
      part({ id: 'b', name: 'B', papers: ['meadow'], dieCut: true, stamped: true, adhere: 'raised' }),
    ],
  };
  expect(toolsFor(rich, 'mm')).toEqual([
    'a trimmer, and a ruler marked in millimetres to measure the sheets first',
    'a scoring tool and a bone folder',
    'a ruler with a firm edge, to tear against',
    'the dies, and the machine that presses them',
    'stamps and ink',
    'foam tape, for what is raised',
  ]);
});

test('what a plan takes is told with the number of sheets, and only that', () => {
  const { layout, plan } = meadowSet();
  const meadow = layout.papers.get('meadow')!;
  const more = { ...meadow, sheets: [...meadow.sheets, stock({ size: size(6, 6), count: 3 })] };
  expect(takenOf(more, plan, typed)).toEqual(['1 sheet of Meadow, 12 x 12 in, two on hand, stands upright.']);
});
