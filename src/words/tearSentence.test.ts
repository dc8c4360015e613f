import { describe, expect, it } from 'vitest';
import { finishedCodes, tearProblems, tearsOf } from '../finished/index.ts';
import { arrange, type Layout, type Part } from '../layout/index.ts';
import { awayFrom, inch, layoutOf, mm, part } from '../layout/testing/build.ts';
import {
  chanceWords,
  coreSentence,
  finishedProblemSentence,
  riskWords,
  tearingAdvice,
  tearSentence,
  tearsSentences,
} from './index.ts';

/** Leaves and ticking torn over a navy strip. */
function thankYou({ overlap = 10, reveal = 5, wander = 3, usual = 8 } = {}): Layout {
  const tear = { least: mm(usual - wander), usual: mm(usual), most: mm(usual + wander), core: null };
  const torn = (of: Part): Part => ({ ...of, tear });
  return layoutOf({
    units: 'mm',
    cards: 12,
    base: [mm(148), mm(105)],
    parts: [
      part('Navy', { size: [mm(142), mm(2 * overlap + reveal)], place: { top: mm(67 - overlap) } }),
      torn(part('Leaf', { size: [mm(142), mm(72)], torn: { bottom: mm(8) }, place: { top: mm(3) } })),
      torn(
        part('Stripe', {
          size: [mm(142), mm(38)],
          torn: { top: mm(8) },
          place: { top: awayFrom('Leaf', mm(reveal)) },
        }),
      ),
    ],
  });
}

function told(layout: Layout) {
  const tears = tearsOf(layout, arrange(layout), { marks: layout.units === 'mm' ? mm(1) : inch('1/16') });
  const showing = { units: layout.units, glyphs: 'typed' } as const;
  return {
    joins: tears.joins.map((join) => tearSentence(join, tears, layout, showing)),
    all: tearsSentences(tears),
    problems: tearProblems(layout, tears).map((problem) => [
      problem.code,
      finishedProblemSentence(problem, layout, showing),
    ]),
  };
}

describe('what is said of torn edges', () => {
  it('tells where what is left under a tear is too little for glue', () => {
    // 5 mm under each tear, which may go 3 mm deeper: 2 mm are left.
    expect(told(thankYou({ overlap: 5 })).joins[1]).toBe(
      'Leaf, torn at the bottom, lies 5 mm over Navy. At the deepest tear 2 mm of that is left, less than the 3 mm that glue needs to hold there (common practice).',
    );
  });

  it('tells how far each goes where nothing can go wrong', () => {
    const { joins, all, problems } = told(thankYou());
    expect(joins).toEqual([
      'Between the torn bottom of Leaf and Stripe, 5 mm of Navy is reckoned to show. It comes out at 0 to 11 mm, nine times in ten at 2 to 8 mm. They meet on 1 card in 1900; with 12 cards, that is 1 set in 160.',
      'Leaf, torn at the bottom, lies 10 mm over Navy. At the deepest tear 7 mm of that is left.',
      'Stripe, torn at the top, lies 10 mm over Navy. At the deepest tear 7 mm of that is left.',
    ]);
    expect(all).toEqual([
      'With 12 cards to a set, edges meet or a border is gone in 1 set in 160.',
      'Wanted: no more than 1 set in 20.',
      'Estimated: each tear is taken at its worst place along the edge, and the tears of all edges and cards as independent of one another.',
    ]);
    expect(problems).toEqual([]);
  });

  it('tells the chance of a bare spot and the ways out', () => {
    const { joins, problems } = told(thankYou({ overlap: 2 }));
    expect(joins[1]).toBe(
      'Leaf, torn at the bottom, lies 2 mm over Navy. A deeper tear lets the card front show there, 1 mm of it at the worst. That happens on 1 card in 18; with 12 cards, that is 1 set in 2. For no more than 1 set in 20: 1 mm more room, by Leaf cut 73 mm high, Navy cut 10 mm high or a tear 6 to 10 mm deep.',
    );
    expect(problems[0]).toEqual([
      'tearMayShow',
      'A deep tear at the bottom of Leaf may let the card front show beside Navy, 1 mm of it at the worst: on 1 card in 18; with 12 cards, that is 1 set in 2. With 1 mm more room it is no more than 1 set in 20.',
    ]);
  });

  it('tells that even the usual tear shows', () => {
    const layout = thankYou({ usual: 19 });
    expect(told(layout).problems[0]).toEqual([
      'tearShows',
      'Even as deep as it usually goes, the tear at the bottom of Leaf leaves 1 mm of the card front showing beside Navy. With 4 mm more room it is no more than 1 set in 20.',
    ]);
  });

  it('tells that edges may meet', () => {
    expect(told(thankYou({ reveal: 2 })).problems).toEqual([
      [
        'tearMeets',
        'A shallow tear at the bottom of Leaf may leave nothing of Navy between it and Stripe: on 1 card in 8; with 12 cards, that is 4 sets in 5. With 3 mm more room it is no more than 1 set in 20.',
      ],
    ]);
  });

  it('meets every code of a torn edge in a sentence', () => {
    const met = [{ overlap: 2 }, { usual: 19 }, { reveal: 2 }].flatMap((sketch) =>
      told(thankYou(sketch)).problems.map(([code]) => code),
    );
    const codes = Object.keys(finishedCodes).filter((code) => code.startsWith('tear'));
    expect([...new Set(met)].sort()).toEqual(codes.sort());
  });

  it('tells of borders, covers and what comes out past them, in inches', () => {
    const panel = part('Panel', {
      size: [inch('3'), inch('3')],
      torn: { bottom: inch('1/2') },
      place: { left: inch('1/2'), top: inch('1/2') },
    });
    const strip = part('Strip', { size: [inch('4'), inch('1/4')], place: { top: inch('2 7/8') } });
    const label = part('Label', {
      on: 'Panel',
      size: [inch('2'), inch('1')],
      place: { bottom: inch('1/16') },
    });
    const card = (parts: readonly Part[]) =>
      told(layoutOf({ cards: 10, base: [inch('4 1/4'), inch('5 1/2')], parts })).joins;
    expect(card([panel, strip])).toEqual([
      'Strip hides the torn bottom of Panel and lies 1/8 in over it. At the deepest tear nothing of that is left.',
    ]);
    expect(card([panel, label])).toEqual([
      'Beyond the torn bottom of Panel, a border of 2 1/2 in of the card front is reckoned. It comes out at 2 3/8 to 2 5/8 in, nine times in ten at 2 13/32 to 2 19/32 in.',
      'Label lies 1/16 in within the torn bottom of Panel. It comes out at 0 to 3/16 in, nine times in ten at 0 to 5/32 in. Nothing of it is left on 1 card in 8; with 10 cards, that is 7 sets in 10. For no more than 1 set in 20: 1/16 in more room, by Panel cut 3 1/16 in high, Label cut 15/16 in high or a tear 7/16 to 9/16 in deep.',
    ]);
  });

  it('says how broad the core shows, where somebody said', () => {
    const layout = thankYou();
    const [, leaf] = layout.parts as [Part, Part];
    const showing = { units: 'mm', glyphs: 'typed' } as const;
    expect(coreSentence(leaf, layout, showing)).toBe('');
    expect(coreSentence({ ...leaf, tear: { ...leaf.tear!, core: mm(2) } }, layout, showing)).toBe(
      'Pulled toward you, the torn edges of Leaf show the core, about 2 mm broad; pushed away, none of it.',
    );
  });

  it('says which way to pull, and that it is to be tried', () => {
    expect(tearingAdvice().join(' ')).toMatch(/toward you.*core shows.*away from you.*scrap/);
  });
});

describe('a chance in words', () => {
  it.each([
    [0, 'no card'],
    [1e-7, 'fewer than 1 card in 10 000'],
    [1 / 1944, '1 card in 1900'],
    [1 / 40, '1 card in 40'],
    [0.125, '1 card in 8'],
    [0.2, '1 card in 5'],
    [0.5, '1 card in 2'],
    [0.72, '7 cards in 10'],
    [0.97, 'nearly every card'],
    [1, 'every card'],
  ])('%d is %s', (chance, words) => {
    expect(chanceWords({ chance }, 'card')).toBe(words);
  });

  it('has no more figures than drawing gives', () => {
    expect(chanceWords({ chance: 1 / 43, standardError: 1 / 1000 }, 'card')).toBe('1 card in 43');
    expect(chanceWords({ chance: 1 / 43, standardError: 1 / 200 }, 'card')).toBe('1 card in 40');
    expect(chanceWords({ chance: 0, standardError: 1 / 20_000 }, 'card')).toBe('fewer than 1 card in 10 000');
  });

  it('of a wanted risk is said as it was given', () => {
    expect(riskWords(1 / 20, 'set')).toBe('1 set in 20');
    expect(riskWords(0.3, 'set')).toBe('3 sets in 10');
  });
});
