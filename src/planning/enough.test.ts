import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it, test } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { readLayoutFile } from '../files/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { inch, layoutOf, paper, part } from '../layout/testing/build.ts';
import type { Trimmer } from '../trimming/index.ts';
import { type Enough, enoughFor, mostCards, type Plan, planSet, type Shortage } from './index.ts';
import { givesByHand, smallSet, units, wantedByHand } from './testing/smallSet.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

const enoughOf = (layout: Layout, trimmer: Trimmer | null = null) =>
  enoughFor({ layout, arrangement: arrange(layout), trimmer, solver });

function planOf(layout: Layout, cards: number, trimmer: Trimmer | null = null): Plan | Shortage {
  return planSet({ layout: { ...layout, cards }, arrangement: arrange(layout), trimmer, solver });
}

describe('on random small sets', () => {
  test('so many cards come out and one more does not, whether planned or every cut is tried', () => {
    let endless = 0;
    let none = 0;
    let tried = 0;
    let withTrimmer = 0;
    const limitedByTwo = new Set<number>();
    for (let seed = 1; seed <= 80; seed += 1) {
      const { layout, trimmer } = smallSet(seed);
      const shown = `seed ${seed}`;
      const enough = enoughOf(layout, trimmer);
      const gives = (id: string, cards: number) => {
        const items = wantedByHand(layout, cards).get(id) ?? [];
        return givesByHand(layout, id, items, trimmer);
      };
      if (trimmer !== null) withTrimmer += 1;
      // An endless paper gives what a set of any size wants; a few cards and a heap of them are both looked at.
      if (enough.cards === null) {
        endless += 1;
        expect(enough, shown).toMatchObject({ proved: true, limit: [], plan: null });
        for (const cards of [1, 40]) expect(planOf(layout, cards, trimmer).kind, shown).toBe('plan');
        continue;
      }
      expect(enough.cards, shown).toBeLessThan(mostCards);
      expect(enough.proved, shown).toBe(true);
      expect(enough.limit.length, shown).toBeGreaterThan(0);
      if (enough.limit.length > 1) limitedByTwo.add(seed);
      if (enough.cards === 0) none += 1;
      else {
        expect(planOf(layout, enough.cards, trimmer).kind, shown).toBe('plan');
        expect(enough.plan!.cards, shown).toBe(enough.cards);
        expectAllMade(layout, enough.plan!, shown);
      }
      const more = planOf(layout, enough.cards + 1, trimmer);
      if (more.kind !== 'short') throw new Error(`${shown}: a card more comes out`);
      expect(
        more.papers.map((short) => short.paper),
        shown,
      ).toEqual(enough.limit);
      for (const id of layout.papers.keys()) {
        const now = gives(id, enough.cards);
        const then = gives(id, enough.cards + 1);
        if (now !== null && enough.cards > 0) expect(now, `${shown} ${id}`).toBe(true);
        if (then === null) continue;
        tried += 1;
        expect(!then, `${shown} ${id}`).toBe(enough.limit.includes(id));
      }
    }
    // What the sets are there for is among them.
    expect(endless).toBeGreaterThan(3);
    expect(none).toBeGreaterThan(3);
    expect(tried).toBeGreaterThan(30);
    expect(withTrimmer).toBeGreaterThan(15);
    expect(limitedByTwo.size).toBeGreaterThan(2);
  });
});

/** That a plan makes at least what the cards want, paper by paper and size by size. */
function expectAllMade(layout: Layout, plan: Plan, shown: string): void {
  for (const [id, items] of wantedByHand(layout, plan.cards)) {
    const own = plan.pieces.filter((piece) => piece.paper === id);
    const made = [...plan.finished.values()].filter((piece) => own.some((each) => each.id === piece));
    const need = items.reduce((sum, item) => sum + item.need, 0);
    expect(made.length, `${shown} ${id}`).toBeGreaterThanOrEqual(need);
  }
}

describe('worked by hand', () => {
  test('ten cards from one sheet of each print, cardstock by the sheet: the letter sheets limit', () => {
    // Cream 2 bases a sheet of 6: 12; bees 4 x 3; dots 3 x 6; white 4 linings a sheet of 3, and strips from the rests.
    const file = readSet('bees-and-dots');
    expect(summary(enoughOf(file))).toEqual({
      cards: 10,
      proved: true,
      limit: ['white'],
      papers: { cream: 12, coral: 14, white: 10, bees: 12, dots: 18 },
    });
  });

  test('eight panels and no strips, 6 and 4, 4 and 8 or 2 and 12 a sheet: two sheets are enough for ten', () => {
    expect(summary(enoughOf(readSet('gum-leaves')))).toMatchObject({
      cards: 10,
      proved: true,
      limit: ['gum'],
    });
  });

  test('panels, strips and squares of a pad of 6 x 6: 16, 16 and 18 cards, whatever is limited by it', () => {
    const pad = (id: string, count: number, up: 'one-way' | 'two-way' | 'any') =>
      paper(id, [{ size: { width: inch('6'), height: inch('6') }, count }], up);
    const card = { base: [inch('4 1/4'), inch('5 1/2')] as const };
    const square = (side: string) => [inch(side), inch(side)] as const;
    const p = layoutOf({
      ...card,
      papers: [pad('first', 4, 'one-way')],
      parts: [part('panel', { size: square('2 7/8'), papers: ['first'] })],
    });
    const q = layoutOf({
      ...card,
      papers: [pad('second', 4, 'two-way')],
      parts: [part('strip', { size: [inch('1 3/8'), inch('5 1/4')], papers: ['second'] })],
    });
    const thirds = ['third', 'fourth', 'fifth'];
    const r = layoutOf({
      ...card,
      papers: thirds.map((id) => pad(id, 2, 'any')),
      parts: thirds.map((id) => part(`square-${id}`, { size: square('1 3/4'), papers: [id] })),
    });
    expect(summary(enoughOf(p))).toMatchObject({ cards: 16, proved: true, limit: ['first'] });
    expect(summary(enoughOf(q))).toMatchObject({ cards: 16, proved: true, limit: ['second'] });
    expect(summary(enoughOf(r))).toMatchObject({ cards: 18, proved: true, limit: thirds });
    // The one narrower strip that five of come out of a sheet.
    const narrower = {
      ...q,
      parts: [part('strip', { size: [inch('1 1/8'), inch('5 1/4')], papers: ['second'] })],
    };
    expect(enoughOf(narrower).cards).toBe(20);
  });

  test('a list of papers dealt in turn ends with the paper whose turn comes and is short', () => {
    // Cards 1, 4, 7 … take bark twice in three; with 5 and 4 on hand card 8 wants the sixth of bark.
    const sheets = (count: number) => [{ size: { width: inch('2'), height: inch('2') }, count }];
    const layout = layoutOf({
      base: [inch('4'), inch('4')],
      papers: [paper('bark', sheets(5)), paper('meadow', sheets(4))],
      parts: [part('panel', { size: [inch('2'), inch('2')], papers: ['bark', 'bark', 'meadow'] })],
    });
    expect(summary(enoughOf(layout))).toEqual({
      cards: 7,
      proved: true,
      limit: ['bark'],
      papers: { bark: 7, meadow: 14 },
    });
    // A spare for each paper in turn: two for bark, which is enough for four cards then.
    const spared = { ...layout, parts: [{ ...layout.parts[0]!, spare: 2 }] };
    expect(summary(enoughOf(spared))).toMatchObject({ cards: 4, limit: ['bark'] });
  });
});

describe('at the ends', () => {
  const panel = (papers: readonly ReturnType<typeof paper>[], size = units(8)) =>
    layoutOf({
      base: [units(16), units(16)],
      papers,
      parts: [part('panel', { size: [size, size], papers: papers.map(({ id }) => id) })],
    });
  const square = { width: units(48), height: units(48) };

  it('says that nothing limits where everything is bought', () => {
    const layout = layoutOf({
      base: [units(16), units(16)],
      parts: [part('die', { size: [units(4), units(4)] })],
    });
    expect(enoughOf(layout)).toEqual({ cards: null, proved: true, limit: [], papers: new Map(), plan: null });
  });

  it('says that a card cannot be made of no sheets, or of sheets that are too small', () => {
    for (const sheets of [
      [],
      [{ size: square, count: 0 }],
      [{ size: { width: units(7), height: units(48) } }],
    ]) {
      expect(enoughOf(panel([paper('plum', sheets)])), JSON.stringify(sheets)).toMatchObject({
        cards: 0,
        proved: true,
        limit: ['plum'],
        plan: null,
      });
    }
  });

  it('says that no card is left where the spares alone take all', () => {
    const layout = panel([paper('plum', [{ size: square, count: 1 }])]);
    const parts = [{ ...layout.parts[0]!, spare: 40 }];
    expect(enoughOf({ ...layout, parts })).toMatchObject({ cards: 0, proved: true, limit: ['plum'] });
  });

  it('is not limited by a paper that no card comes to', () => {
    const layout = panel([paper('plum', [{ size: square }])]);
    const unused = paper('bark', [{ size: square, count: 0 }]);
    const papers = new Map([...layout.papers, [unused.id, unused]]);
    expect(enoughOf({ ...layout, papers })).toMatchObject({ cards: null, limit: [] });
  });

  it('knows no more than the most cards that a set may have', () => {
    const layout = panel([paper('plum', [{ size: square, count: 40_000 }])]);
    expect(enoughOf(layout)).toMatchObject({ cards: mostCards, proved: true, limit: [] });
  });

  it('says the same whatever number of cards the layout asks for, and in whatever order its papers stand', () => {
    for (let seed = 301; seed <= 330; seed += 1) {
      const { layout, trimmer } = smallSet(seed);
      const turned = { ...layout, cards: 77, papers: new Map([...layout.papers].reverse()) };
      const [one, other] = [enoughOf(layout, trimmer), enoughOf(turned, trimmer)];
      expect(other.cards, `seed ${seed}`).toBe(one.cards);
      expect([...other.limit].reverse(), `seed ${seed}`).toEqual(one.limit);
    }
  });
});

function readSet(name: string): Layout {
  const file = readFileSync(new URL(`../../test/sets/${name}.card.json`, import.meta.url), 'utf8');
  const read = readLayoutFile(file);
  if (!('layout' in read)) throw new Error(`${name} is not a layout`);
  return read.layout;
}

function summary({ cards, proved, limit, papers }: Enough) {
  return { cards, proved, limit, papers: Object.fromEntries([...papers].map(([id, of]) => [id, of.cards])) };
}
