import { expect, test } from 'vitest';
import { arrange } from '../layout/index.ts';
import { inches, zero } from '../measure/index.ts';
import { assemblyWords, dealtWords } from './assembly.ts';
import { exactnessSentences } from './exactness.ts';
import { centred, meadowSet, part } from './testing/meadowSet.ts';

const typed = { units: 'in', glyphs: 'typed' } as const;
const { layout, plan } = meadowSet();
const edge = (distance: number, parts = 1) => ({ from: 'edge', distance: inches(distance, parts) }) as const;

test('the pile is put together bottom first, each part with what holds it and where it lies', () => {
  const pile = {
    ...layout,
    parts: [
      part({
        id: 'note',
        name: 'Note',
        on: 'inside',
        papers: ['meadow'],
        extent: { by: 'inset', inset: inches(1, 4) },
      }),
      part({ id: 'mat', name: 'Mat', papers: ['meadow'], extent: { by: 'inset', inset: inches(1, 8) } }),
      part({
        id: 'torn',
        name: 'Torn panel',
        on: 'mat',
        papers: ['meadow'],
        extent: { by: 'size', width: inches(2), height: inches(5) },
        torn: { left: zero, right: inches(1, 2), top: zero, bottom: zero },
        places: [{ across: { start: edge(0), end: null }, down: centred.down }],
      }),
      part({
        id: 'tag',
        name: 'Tag',
        papers: ['meadow'],
        extent: { by: 'size', width: inches(1), height: inches(1) },
        adhere: 'raised',
        places: [
          { across: { start: edge(-1, 4), end: null }, down: { start: edge(1, 2), end: null } },
          { across: { start: null, end: edge(1, 2) }, down: { start: null, end: edge(1, 2) } },
        ],
      }),
      part({
        id: 'gem',
        name: 'Gem',
        on: 'tag',
        papers: [],
        adhere: 'spots',
        extent: { by: 'size', width: inches(1, 4), height: inches(1, 4) },
      }),
    ],
  };
  const words = assemblyWords(pile, arrange(pile), typed);
  expect(words.map(({ name, prepare, lay }) => [name, prepare, lay])).toEqual([
    ['Mat', '', 'Glue it flat on the front of the base: 1/8 in from every edge.'],
    [
      'Torn panel',
      'Tear 1/2 in off its right edge; 1 1/2 x 5 in stays to be seen.',
      'Glue it flat on Mat: along the left edge, 1/8 in from top and bottom.',
    ],
    [
      'Tag',
      '',
      'Two pieces. Raise them on foam tape over the front of the base: the first 1/4 in over the left edge, 1/2 in from the top; the second 1/2 in from the right, 1/2 in from the bottom.',
    ],
    ['Gem', '', 'Hold it with glue spots on Tag: 3/8 in from every edge.'],
    ['Note', '', 'Glue it flat on the inside: 1/4 in from every edge.'],
  ]);
});

test('says which card gets which paper, by numbers while they can be read', () => {
  const two = {
    ...layout,
    papers: new Map([...layout.papers, ['bark', { ...layout.papers.get('meadow')!, name: 'Bark' }]]),
  };
  const dealt = part({ id: 'a', name: 'A', papers: ['meadow', 'bark'] });
  expect(dealtWords(dealt, two)).toBe('Meadow on cards 1, 3 and 5; Bark on cards 2, 4 and 6');
  expect(dealtWords(dealt, { ...two, cards: 1 })).toBe('Meadow on card 1');
  expect(dealtWords(dealt, { ...two, cards: 500 })).toBe('Meadow and Bark in turn, card after card');
  expect(dealtWords(layout.parts[0]!, two)).toBe('');
});

test('a proof is claimed for all papers only where all are proved', () => {
  expect(exactnessSentences(layout, plan).join(' ')).toContain('for every paper');
  const doubtful = new Map([['meadow', { ...plan.papers.get('meadow')!, proved: false }]]);
  expect(exactnessSentences(layout, { ...plan, papers: doubtful }).join(' ')).toContain(
    'only where it says so',
  );
});

test('says which side shows and that a print lies sideways, where that can be got wrong', () => {
  const papers = new Map(layout.papers);
  papers.set('meadow', {
    ...papers.get('meadow')!,
    back: { name: 'Ticking stripe', up: 'two-way', colour: null },
  });
  const extent = { by: 'size', width: inches(3), height: inches(1) } as const;
  const laid = (sketch: object) => {
    const parts = [part({ id: 'strip', name: 'Strip', papers: ['meadow'], extent, ...sketch })];
    const set = { ...layout, papers, parts };
    return assemblyWords(set, arrange(set), typed)[0]!.lay;
  };
  expect(laid({ side: 'back', lies: 'sideways' })).toContain(
    'flat on the front of the base, Ticking stripe side up, its print sideways: ',
  );
  expect(laid({})).toContain('flat on the front of the base, Meadow side up: ');
});

test('tells no side of a part that is dealt from several papers, unless it is the other side', () => {
  const papers = new Map(layout.papers);
  papers.set('meadow', { ...papers.get('meadow')!, back: { name: 'Stripe', up: 'any', colour: null } });
  papers.set('bark', { ...papers.get('meadow')!, name: 'Bark', back: null });
  const extent = { by: 'size', width: inches(3), height: inches(1) } as const;
  const parts = [part({ id: 'strip', name: 'Strip', papers: ['meadow', 'bark'], extent })];
  const set = { ...layout, papers, parts };
  expect(assemblyWords(set, arrange(set), typed)[0]!.lay).not.toContain('side up');
});

test('what has another shape is cut out first, and a band goes round', () => {
  const size = { by: 'size', width: inches(3), height: inches(1) } as const;
  const none = { left: zero, right: zero, top: zero, bottom: zero };
  const shaped = {
    ...layout,
    parts: [
      part({
        id: 'egg',
        name: 'Egg',
        papers: ['meadow'],
        extent: size,
        shape: { kind: 'oval' },
        dieCut: true,
      }),
      part({
        id: 'flag',
        name: 'Flag',
        papers: ['meadow'],
        extent: size,
        shape: { kind: 'banner', ends: { left: 'slanted', right: 'notched' }, depth: inches(1, 2) },
      }),
      part({
        id: 'plate',
        name: 'Plate',
        papers: ['meadow'],
        extent: size,
        shape: { kind: 'rounded', corner: inches(1, 4) },
        margin: inches(1, 8),
        adhere: 'raised',
        foam: inches(1, 8),
      }),
      part({
        id: 'band',
        name: 'Band',
        papers: ['meadow'],
        extent: size,
        tuck: { ...none, left: inches(1, 2), right: inches(1, 2) },
      }),
    ],
  };
  const words = assemblyWords(shaped, arrange(shaped), typed);
  expect(words.map(({ prepare }) => prepare)).toEqual([
    'Cut an oval of 3 x 1 in out with the die.',
    'Cut its left end aslant, 1/2 in deep. Cut its right end in to a notch, 1/2 in deep.',
    'Round its corners with a radius of 1/4 in; 1/8 in stays all round it.',
    '',
  ]);
  expect(words[2]!.lay).toMatch(/^Raise it on foam tape of 1\/8 in over the front of the base: /);
  expect(words[3]!.lay).toMatch(
    /^Wrap it round the front of the base, 1\/2 in round the left edge and 1\/2 in round the right edge and behind: /,
  );
});
