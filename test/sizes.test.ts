import { writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { cardwright, layoutDraft, scratchFolder } from './commandLine.ts';

/**
 * What papers are enough for, which small changes gain, and which sizes suit: people's sets, invented, and worked out
 * by hand before the tool, through the command line.
 */
const folder = scratchFolder();
afterAll(folder.remove);

interface Enough {
  readonly cards: number | null;
  readonly proved: boolean;
  readonly limit: readonly string[];
  readonly papers: Readonly<Record<string, { readonly cards: number | null }>>;
  readonly moreSheets: readonly { readonly paper: string; readonly count: number }[];
  readonly cliffs: readonly {
    readonly marks: number;
    readonly changes: readonly { readonly part: string; readonly name: string; readonly to: number }[];
    readonly gains: readonly Readonly<Record<string, unknown>>[];
    readonly says: string;
  }[];
}

interface Suited {
  readonly cards: number;
  readonly proved: boolean;
  readonly nearest: boolean;
  readonly changes: readonly { readonly part: string; readonly name: string; readonly to: number }[];
}

async function enoughOf(layout: unknown, ...options: string[]): Promise<Enough> {
  const run = await cardwright(['enough', '-', '--json', ...options], JSON.stringify(layout));
  expect(run.err).toBe('');
  expect(run.status).toBe(0);
  return JSON.parse(run.out) as Enough;
}

const inches = (ticks: number) => ticks / 40_640;

describe('ten inch cards with four panels of three inches from twelve', () => {
  const trap = () => {
    const layout = layoutDraft('test/sets/bees-and-dots.card.json');
    layout.papers.bees!.sheets[0]!.size = ['11 15/16 in', '11 15/16 in'];
    return layout;
  };

  it('are ten and no more, and the white paper runs out first', async () => {
    const { cards, proved, limit, papers } = await enoughOf(layoutDraft('test/sets/bees-and-dots.card.json'));
    expect([cards, proved, limit]).toEqual([10, true, ['white']]);
    expect(Object.values(papers).map((paper) => paper.cards)).toEqual([12, 14, 10, 12, 18]);
  });

  it('are nine from a sheet that is a mark short, and a mark off the panel with the gap a mark wider makes ten', async () => {
    const { cards, proved, limit, cliffs, moreSheets } = await enoughOf(trap());
    expect([cards, proved, limit]).toEqual([9, true, ['bees']]);
    expect(moreSheets).toMatchObject([{ paper: 'bees', count: 1 }]);
    const [first] = cliffs;
    expect(first!.marks).toBe(1);
    expect(first!.changes.map(({ part, name, to }) => [part, name, inches(to)])).toEqual([
      ['upper', 'height', 2 + 15 / 16],
      ['lower', 'gap', 5 / 16],
    ]);
    expect(first!.gains).toEqual([
      { kind: 'piece', piece: 'upper/bees', stock: 0, from: 9, to: 12 },
      { kind: 'card', from: 9, to: 10 },
    ]);
    expect(first!.says).toBe(
      'Upper 2 15/16 in high instead of 3: a sheet of bees gives 12 of upper instead of 9 and the papers are enough ' +
        'for 10 cards instead of 9. The gap between upper and lower becomes 5/16 in instead of 1/4. ' +
        'All other borders and gaps stay as they are.',
    );
  });

  it('come out with the size that suits, written as a layout that plans', async () => {
    const suited = folder.path('suited.card.json');
    const room = ['--room', 'upper height 2 3/4 to 3 in'];
    const run = await cardwright(['suit', '-', '-o', suited, '--json', ...room], JSON.stringify(trap()));
    expect(run.status).toBe(0);
    const { cards, nearest, changes } = JSON.parse(run.out) as Suited;
    expect([cards, nearest, changes.map(({ part, name, to }) => [part, name, inches(to)])]).toEqual([
      10,
      true,
      [
        ['upper', 'height', 2 + 15 / 16],
        ['lower', 'gap', 5 / 16],
      ],
    ]);
    const plan = await cardwright(['plan', suited]);
    expect([plan.status, plan.out]).toEqual([
      0,
      expect.stringContaining('1 sheet of bees; no plan takes fewer.'),
    ]);
    const check = await cardwright(['check', suited, '--json']);
    expect(
      (JSON.parse(check.out) as { problems: { code: string }[] }).problems.map(({ code }) => code),
    ).not.toContain('unevenBorder');
  });

  it('cannot be fourteen within that room: the most is said, and that it is proved', async () => {
    const run = await cardwright(
      ['suit', '-', '--cards', '14', '--room', 'upper height 2 3/4 to 3 in', '--json'],
      JSON.stringify(trap()),
    );
    expect(run.status).toBe(1);
    expect(JSON.parse(run.out)).toMatchObject({ cards: 10, asked: 14, proved: true });
  });
});

describe('twelve torn cards from two sheets', () => {
  const gum = () => layoutDraft('test/sets/gum-leaves.card.json');

  it('are ten and no more: the leaf paper is the limit, and a third sheet would do', async () => {
    const { cards, proved, limit, moreSheets } = await enoughOf({ ...gum(), cards: 12 });
    expect([cards, proved, limit]).toEqual([10, true, ['gum']]);
    expect(moreSheets).toMatchObject([{ paper: 'gum', count: 1, proved: true }]);
  });

  it('come out with smaller leaves and a wider band under both torn edges', async () => {
    // Three rows of leaves and one of eight stripes: 3 x 54 + 142 = 304 of 304.8 mm.
    const rooms = [
      'leaf height 52 to 55 mm',
      'stripe height 46 to 50 mm',
      'band height 28 to 34 mm',
      'band top 36 to 40 mm',
    ];
    const run = await cardwright(
      ['suit', '-', '--cards', '12', '--json', ...rooms.flatMap((room) => ['--room', room])],
      JSON.stringify(gum()),
    );
    const suited = JSON.parse(run.out) as Suited;
    expect([run.status, suited.cards, suited.nearest]).toEqual([0, 12, true]);
    const to = (part: string, name: string) =>
      suited.changes.find((change) => change.part === part && change.name === name)!.to / 1_600;
    // Both torn edges still lie on 10 mm of the band.
    const [leaf, stripe] = [to('leaf', 'height') - 8, to('stripe', 'height') - 8];
    expect(leaf + 3 - to('band', 'top')).toBe(10);
    expect(to('band', 'top') + to('band', 'height') - (105 - 3 - stripe)).toBe(10);
  });
});

describe('a class of fourteen with a teacher and a spare, three layouts from one pad of 6 x 6', () => {
  /** Sixteen cards of one layout; each cardstock is there as needed, four sheets of each print. */
  const pad = (cards: number, prints: Readonly<Record<string, string>>, parts: readonly unknown[]) => ({
    cardwright: 1,
    units: 'in',
    cards,
    base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: 'ivory' },
    papers: {
      ivory: { kind: 'cardstock', sheets: [{ size: ['8 1/2', '11'], count: null }] },
      slate: { kind: 'cardstock', sheets: [{ size: ['8 1/2', '11'], count: null }] },
      ...Object.fromEntries(
        Object.entries(prints).map(([id, up]) => [
          id,
          { kind: 'patterned', up, sheets: [{ size: ['6', '6'], count: 4 }] },
        ]),
      ),
    },
    parts,
  });
  const squarePanel = (cards: number) =>
    pad(cards, { ferns: 'one-way' }, [
      { id: 'mat', size: ['3 1/8', '3 1/8'], paper: 'slate' },
      { id: 'panel', on: 'mat', size: ['2 7/8', '2 7/8'], paper: 'ferns' },
    ]);
  const strip = (cards: number, height = '5 1/4') =>
    pad(cards, { lines: 'two-way' }, [
      { id: 'mat', size: ['1 5/8', height === '5 1/4' ? '5 1/2' : '6'], paper: 'slate' },
      { id: 'strip', on: 'mat', size: ['1 3/8', height], paper: 'lines' },
    ]);
  const squares = (cards: number) =>
    pad(
      cards,
      { dots: 'any', rings: 'any', stars: 'any' },
      ['dots', 'rings', 'stars'].flatMap((print, index) => [
        {
          id: `mat${index}`,
          size: ['2', '2'],
          place: { left: '1 1/8', top: `${index} 3/4` },
          paper: 'slate',
        },
        { id: print, on: `mat${index}`, size: ['1 3/4', '1 3/4'], paper: print },
      ]),
    );

  it('has panels and strips for sixteen and none to spare, squares for four times nine', async () => {
    const found = await Promise.all([squarePanel, strip, squares].map((layout) => enoughOf(layout(16))));
    expect(found.map(({ cards, proved, limit }) => [cards, proved, limit])).toEqual([
      [16, true, ['ferns']],
      [16, true, ['lines']],
      [36, true, ['dots', 'rings', 'stars']],
    ]);
  });

  it('is two panels and two strips short for two more seats, and another sheet of each would do', async () => {
    for (const [layout, paper] of [
      [squarePanel(18), 'ferns'],
      [strip(18), 'lines'],
    ] as const) {
      const { cards, moreSheets } = await enoughOf(layout);
      expect([cards, moreSheets]).toMatchObject([16, [{ paper, count: 1, proved: true }]]);
      const run = await cardwright(['plan', '-'], JSON.stringify(layout));
      expect(run.err).toMatch(/2 of the 18 pieces/);
    }
  });

  it('offers another print of the pad for the two panels that are wanting', async () => {
    const layout = squarePanel(18) as { papers: Record<string, unknown> };
    layout.papers.leaves = {
      name: 'Leaves print',
      kind: 'patterned',
      sheets: [{ size: ['6', '6'], count: 4 }],
    };
    const run = await cardwright(['enough', '-'], JSON.stringify(layout));
    expect(run.out).toContain('Leaves print could give what is wanting: 2 of panel.');
    const { standIns } = (await enoughOf(layout)) as unknown as { readonly standIns: unknown };
    expect(standIns).toEqual([{ paper: 'ferns', by: 'leaves', pieces: { 'panel/ferns': 2 } }]);
  });

  it('finds the narrower strip of which a sheet gives five, with its mat, on a trimmer marked in eighths', async () => {
    const eighths = folder.path('eighths.trimmer.json');
    const trimmer = { cardwright_trimmer: 1, units: 'in', marks: '1/8' };
    writeFileSync(eighths, JSON.stringify(trimmer));
    const { cliffs } = await enoughOf(strip(18), '--trimmer', eighths);
    const five = cliffs.find(({ changes }) =>
      changes.some(({ part, name }) => part === 'mat' && name === 'width'),
    )!;
    expect(five.marks).toBe(2);
    expect(five.gains).toContainEqual({ kind: 'card', from: 16, to: 20 });
    expect(five.gains).toContainEqual({ kind: 'piece', piece: 'strip/lines', stock: 0, from: 4, to: 5 });
    const to = five.changes.map(({ part, name, to }) => `${part} ${name} ${inches(to)}`).sort();
    expect(to).toEqual(['mat width 1.375', 'strip width 1.125']);
  });

  it('refuses the strip whose mat is taller than the card', async () => {
    const run = await cardwright(['check', '-'], JSON.stringify(strip(16, '5 3/4')));
    expect(run.status).toBe(1);
    expect(run.out).toContain('What would spoil the set');
  });
});

describe('a ribbon wrapped round the mat', () => {
  it('takes one sheet with 22 mm to tuck and with 23, where wrap and loop no longer come from one strip', async () => {
    for (const [tuck, wrapAndLoop] of [
      [22, 303],
      [23, 305],
    ] as const) {
      const layout = layoutDraft('test/sets/tulip-bow.card.json');
      const wrap = layout.parts.find(({ id }) => id === 'wrap')!;
      wrap.size = [`${129 + 2 * tuck} mm`, '20 mm'];
      wrap.tuck = { left: `${tuck} mm`, right: `${tuck} mm` };
      expect(129 + 2 * tuck + 130).toBe(wrapAndLoop);
      const { cards, papers } = await enoughOf(layout);
      expect([cards, papers.ribbon]).toEqual([10, { cards: tuck === 22 ? 11 : 10, proved: true }]);
    }
  });
});

describe('a set of which nothing is limited', () => {
  it('has no number, no limit, and nothing is said to run out', async () => {
    const layout = layoutDraft('test/sets/quiet-evening.card.json');
    expect(await enoughOf(layout)).toMatchObject({ cards: null, proved: true, limit: [] });
    const run = await cardwright(['enough', 'test/sets/quiet-evening.card.json']);
    expect(run.out).toContain('Enough for as many cards as you like');
  });
});

describe('room that cannot be', () => {
  const file = 'test/sets/bees-and-dots.card.json';
  it.each([
    ['upper', 'is no room. Write a part, a length and from where to where'],
    ['roof width 2 to 3 in', '“roof” is no part of this layout; it has base, mat, upper'],
    ['upper inset 1/8 to 1/4 in', 'Upper has no inset that could be given room; it has width, height, top.'],
    ['upper width 3 to 2 in', '3 is more than 2 in'],
    ['upper width 2x3 to 4 in', 'one length is wanted here'],
  ])('%s', async (room, sentence) => {
    const run = await cardwright(['suit', file, '--room', room]);
    expect([run.status, run.out]).toEqual([2, '']);
    expect(run.err).toContain(sentence);
  });

  it('says so where there is none, no whole mark in it, or none that is even', async () => {
    const said = async (...rooms: string[]) => {
      const run = await cardwright(['suit', file, ...rooms.flatMap((room) => ['--room', room])]);
      expect([run.status, run.out]).toEqual([1, '']);
      return run.err;
    };
    expect(await said()).toContain('No length of this layout has room to move');
    expect(await said('upper width 2.01 to 2.02 in')).toContain('no whole mark of 1/16 in lies in its room');
    expect(await said('upper width 2 to 3 in')).toContain(
      'No sizes within this room keep borders and gaps even',
    );
  });
});
