import { describe, expect, test } from 'vitest';
import { arrange, type Layout, type Part } from '../layout/index.ts';
import { inch, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { shownProblemSentence } from '../words/index.ts';
import { shownProblems } from './shownProblems.ts';

const card = [mm(148), mm(105)] as const;

function found(parts: readonly Part[], more: Partial<Parameters<typeof layoutOf>[0]> = {}) {
  return problemsIn(layoutOf({ units: 'mm', base: card, parts, ...more }));
}

function problemsIn(layout: Layout) {
  const showing = { units: layout.units, glyphs: 'typed' } as const;
  return shownProblems(layout, arrange(layout)).map((problem) => [
    problem.code,
    problem.where,
    shownProblemSentence(problem, layout, showing),
  ]);
}

const half = (id: string, left: number) =>
  part(id, { size: [mm(74), mm(105)], place: { left: mm(left), top: mm(0) } });

describe('what shows, and how it holds', () => {
  test('a sound card has nothing wrong', () => {
    const parts = [
      part('mat', { inset: mm(3) }),
      part('panel', { on: 'mat', inset: mm(3) }),
      part('tag', { on: 'panel', size: [mm(40), mm(20)], adhere: 'raised' }),
    ];
    expect(found(parts)).toEqual([]);
  });

  test('a part that two others hide together; one alone is for the layout to tell', () => {
    const small = part('heart', { diameter: mm(20) });
    expect(found([small, half('left', 0), half('right', 74)])).toEqual([
      ['vanishes', 'parts[0]', 'Nothing of heart is seen: left and right together lie over all of it.'],
    ]);
    expect(found([small, part('all', { inset: mm(1) })])).toEqual([]);
    const mist = { ...paper('mist', []), seeThrough: true };
    const veiled = [
      small,
      { ...half('left', 0), papers: ['mist'] },
      { ...half('right', 74), papers: ['mist'] },
    ];
    expect(found(veiled, { papers: [mist] })).toEqual([]);
  });

  test('slivers beside, between and of a part', () => {
    const panel = (left: number) =>
      part('panel', { size: [mm(60), mm(60)], place: { left: mm(left), top: mm(20) } });
    expect(found([panel(0.5)])).toEqual([
      [
        'sliver',
        'parts[0]',
        'Only 0.5 mm of the card front shows left of panel: it looks like a slip. Let the edges meet, or leave a border that is seen.',
      ],
    ]);
    expect(found([panel(0.7)])).toEqual([]);
    // No more than what is unseen: they count as flush.
    expect(found([panel(0.01)])).toEqual([]);
    expect(
      found([
        half('left', 0),
        part('next', { size: [mm(60), mm(105)], place: { left: mm(74.4), top: mm(0) } }),
      ]),
    ).toEqual([
      [
        'sliver',
        'parts[1]',
        'Only 0.4 mm of the card front shows between left and next: it looks like a slip. Let them meet, or leave a gap that is seen.',
      ],
    ]);
    const strip = part('strip', { size: [mm(100), mm(20)], place: { left: mm(0), top: mm(10) } });
    const over = part('over', { size: [mm(110), mm(30)], place: { left: mm(0), top: mm(10.5) } });
    expect(found([strip, over])).toEqual([
      ['sliver', 'parts[0]', 'Only a sliver of strip is seen, 0.5 mm at its broadest: it looks like a slip.'],
    ]);
  });

  test('a tag that hangs beside the card, and one that holds by too little of a raised panel', () => {
    const beside = part('tag', { size: [mm(20), mm(20)], place: { left: mm(150), top: mm(20) } });
    expect(found([beside])).toEqual([
      ['noJoin', 'parts[0]', 'Tag lies on nothing: it hangs beside the card.'],
    ]);
    const panel = (adhere: 'flat' | 'raised') =>
      part('panel', { size: [mm(60), mm(60)], place: { left: mm(10), top: mm(20) }, adhere });
    const tag = part('tag', { on: 'panel', size: [mm(30), mm(20)], place: { left: mm(58) } });
    // On a raised panel it is held by 2 mm and hangs in the air beyond; on a flat one the card holds it too.
    expect(found([panel('raised'), tag])).toEqual([
      [
        'thinJoin',
        'parts[1]',
        'Tag rests on what is below it nowhere by as much as 3 mm, which glue needs to hold (common practice). Let it lie further on, or give it a larger piece.',
      ],
    ]);
    expect(found([panel('flat'), tag])).toEqual([]);
  });

  test('thirds of an inch that were rounded down are flush', () => {
    const third = mm(8.466_25);
    const parts = [0, 1, 2].map((place) =>
      part(`bar${place}`, { size: [third, inch('1')], place: { left: mm(8.466_25 * place), top: mm(0) } }),
    );
    expect(problemsIn(layoutOf({ base: [inch('1'), inch('1')], parts }))).toEqual([]);
  });
});
