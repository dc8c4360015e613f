import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { chance } from '../cutting/testing/chance.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches } from '../measure/index.ts';
import {
  type Plan,
  planRecord,
  planSet,
  quickSet,
  readSavedPlan,
  type SavedPlan,
  type SetToPlan,
} from './index.ts';
import { givesByHand, units, wantedByHand } from './testing/smallSet.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

function setOf(layout: Layout): SetToPlan {
  return { layout, arrangement: arrange(layout), trimmer: null, solver };
}

function planned(layout: Layout): Plan {
  const answer = planSet(setOf(layout));
  if (answer.kind !== 'plan') throw new Error('expected a plan');
  return answer;
}

/**
 * Four mats of 5 x 5 leave of 12 x 12 in plum a strip of 2 x 12 and one of 10 x 2; four of 4 x 5 leave of letter ivory half
 * an inch and 1 in beside them.
 */
function tags(cards: number, over: Partial<Parameters<typeof part>[1]> = {}): Layout {
  return layoutOf({
    cards,
    base: [inches(5), inches(7)],
    fold: 'none',
    papers: [
      paper('ivory', [{ size: { width: inches(17, 2), height: inches(11) }, count: 3 }]),
      paper('plum', [{ size: { width: inches(12), height: inches(12) }, count: 3 }]),
    ],
    parts: [
      part('mat', { size: [inches(5), inches(5)], papers: ['plum'] }),
      part('panel', { on: 'mat', size: [inches(4), inches(5)], papers: ['ivory'] }),
      part('tag', {
        on: 'panel',
        size: [inches(1), inches(2)],
        papers: ['ivory', 'plum'],
        from: 'leftovers',
        ...over,
      }),
    ],
  });
}

describe('a part that is cut from leftovers', () => {
  it('comes of the first paper that has room for it, and of the next for the other cards', () => {
    // Ivory: 8 x 10 in are cut of 8 1/2 x 11, which leaves 1 x 8 1/2 in: four tags of 2 x 1 in turned; the set has 4 cards.
    const four = planned(tags(4));
    expect(four.dealt?.get('tag')).toEqual([{ paper: 'ivory', cards: 4, beyond: 0 }]);
    expect([...four.papers].map(([id, { sheets }]) => [id, sheets])).toEqual([
      ['ivory', 1],
      ['plum', 1],
    ]);
    // With tags of 1 1/2 in nothing of ivory is broad enough, and plum gives all.
    const broad = planned(tags(4, { size: [inches(3, 2), inches(2)] }));
    expect(broad.dealt?.get('tag')).toEqual([{ paper: 'plum', cards: 4, beyond: 0 }]);
  });

  it('takes a new sheet only for what no leftover gives, and says for how many cards', () => {
    // Two on each card: ivory gives two cards, and plum, whose strips hold 12 + 10 of 1 x 2 in, the other two.
    const plan = planned(tags(4, { count: 2 }));
    expect(plan.dealt?.get('tag')).toEqual([
      { paper: 'ivory', cards: 2, beyond: 0 },
      { paper: 'plum', cards: 2, beyond: 0 },
    ]);
    // 6 x 6 in: nothing is left of that size, so each takes a new sheet of the first paper that has one.
    const large = planned(tags(4, { on: 'base', size: [inches(5, 1), inches(6)] }));
    expect(large.dealt?.get('tag')).toEqual([{ paper: 'ivory', cards: 4, beyond: 4 }]);
  });

  it('is planned from the dealing that its plan was saved with', () => {
    const layout = tags(4, { count: 2 });
    const plan = planned(layout);
    const saved = readSavedPlan(setOf(layout), JSON.parse(JSON.stringify(planRecord(plan))) as SavedPlan);
    if ('problems' in saved) throw new Error('expected a plan that fits');
    expect(saved.inHand.plan.dealt).toEqual(plan.dealt);
    expect(saved.inHand.plan.pieces).toEqual(plan.pieces);
  });

  it('costs the other pieces nothing: the sheets are those of the set without it', () => {
    const layout = tags(4);
    const without = planned({ ...layout, parts: layout.parts.slice(0, 2) });
    expect(planned(layout).papers.get('plum')?.sheets).toBe(without.papers.get('plum')?.sheets);
    expect(planned(layout).papers.get('ivory')?.sheets).toBe(without.papers.get('ivory')?.sheets);
  });
});

it('a layout without such a part has no dealing', () => {
  const layout = tags(4);
  expect(planned({ ...layout, parts: layout.parts.slice(0, 2) }).dealt).toBeUndefined();
});

describe('small sets of chance, one sheet of each paper', () => {
  const seeds = Array.from({ length: 60 }, (_, index) => index + 1);
  it.each(seeds)('seed %d: what comes of each paper is the most that trying every cut finds', (seed) => {
    const int = chance(seed);
    const size = () => [units(int(1, 4)), units(int(1, 4))] as const;
    const sheet = () => ({ size: { width: units(int(3, 7)), height: units(int(3, 7)) }, count: 1 });
    const cards = int(1, 4);
    const layout = layoutOf({
      cards,
      base: [units(8), units(8)],
      fold: 'none',
      papers: [paper('bark', [sheet()], int(1, 2) === 1 ? 'one-way' : 'any'), paper('plum', [sheet()])],
      parts: [
        part('one', { size: size(), papers: ['bark'] }),
        part('two', { size: size(), papers: ['plum'] }),
        part('tag', { size: size(), papers: ['bark', 'plum'], from: 'leftovers', count: int(1, 2) }),
      ],
    });
    const [one, two, tag] = layout.parts;
    const without = { ...layout, parts: [one!, two!] };
    const gives = (paperId: string, number: number) => {
      const own = wantedByHand(without, cards).get(paperId) ?? [];
      const more = wantedByHand({ ...layout, parts: [{ ...tag!, papers: [paperId] }] }, number);
      const same = (more.get(paperId) ?? []).filter(({ need }) => need > 0);
      return givesByHand(layout, paperId, [...own, ...same], null);
    };
    const most = (paperId: string, enough: number) => {
      let found = 0;
      while (found < enough && gives(paperId, found + 1) === true) found += 1;
      return found;
    };
    const bark = gives('bark', 0) === true ? most('bark', cards) : 0;
    const plum = gives('plum', 0) === true ? most('plum', cards - bark) : 0;
    const answer = planSet(setOf(layout));
    if (bark + plum < cards || gives('bark', 0) !== true || gives('plum', 0) !== true) {
      // There is no second sheet to take.
      expect(answer.kind).toBe('short');
      return;
    }
    if (answer.kind !== 'plan') throw new Error('expected a plan');
    const runs = answer.dealt?.get('tag') ?? [];
    expect(runs.map(({ paper: id, cards: many }) => [id, many])).toEqual(
      [['bark', bark] as const, ['plum', plum] as const].filter(([, many]) => many > 0),
    );
    const quick = quickSet(setOf(layout));
    if (quick !== null) expect(quick.dealt?.get('tag')?.reduce((sum, run) => sum + run.cards, 0)).toBe(cards);
  });
});
