import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches, zero } from '../measure/index.ts';
import { replay } from '../replay/index.ts';
import type { Paper } from '../stash/index.ts';
import { type Plan, planRecord, planSet, replayConditions, type Shortage } from './index.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

function planOf(layout: Layout): Plan | Shortage {
  return planSet({ layout, arrangement: arrange(layout), trimmer: null, solver });
}

/** Sets of one paper and one to three parts, most of them short. */
const sets: fc.Arbitrary<Layout> = fc
  .record({
    cards: fc.integer({ min: 2, max: 8 }),
    up: fc.constantFrom<'any' | 'one-way'>('any', 'one-way', 'one-way'),
    sheets: fc.array(
      fc.record({
        width: fc.integer({ min: 8, max: 12 }),
        height: fc.integer({ min: 8, max: 12 }),
        count: fc.integer({ min: 0, max: 2 }),
        scrap: fc.boolean(),
        margin: fc.constantFrom(0, 0, 1),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    parts: fc.array(
      fc.record({
        width: fc.integer({ min: 8, max: 40 }),
        height: fc.integer({ min: 8, max: 40 }),
        spare: fc.integer({ min: 0, max: 2 }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  })
  .map(({ cards, up, sheets, parts }) =>
    layoutOf({
      cards,
      base: [inches(12), inches(12)],
      fold: 'none',
      papers: [
        paper(
          'oat',
          sheets.map(({ width, height, count, scrap, margin }) => ({
            size: { width: inches(width), height: inches(height) },
            count,
            scrap,
            margin: { left: inches(margin, 2), right: zero, top: zero, bottom: zero },
          })),
          up,
        ),
      ],
      parts: parts.map(({ width, height, spare }, index) =>
        part(`p${index}`, { size: [inches(width, 4), inches(height, 4)], papers: ['oat'], spare }),
      ),
    }),
  );

function withPaper(layout: Layout, change: (oat: Paper) => Paper): Layout {
  return { ...layout, papers: new Map([['oat', change(layout.papers.get('oat')!)]]) };
}

function withMore(layout: Layout, stock: number, count: number): Layout {
  return withPaper(layout, (oat) => {
    const sheet = oat.sheets[stock]!;
    return { ...oat, sheets: oat.sheets.with(stock, { ...sheet, count: sheet.count! + count }) };
  });
}

it('more stock never costs more, gives fewer cards, or leaves more pieces wanting', () => {
  fc.assert(
    fc.property(sets, fc.nat(), (set, which) => {
      const { sheets } = set.papers.get('oat')!;
      const [few, more] = [planOf(set), planOf(withMore(set, which % sheets.length, 1))];
      if (few.kind === 'plan') {
        expect(more.kind).toBe('plan');
        if (more.kind !== 'plan') return;
        const [before, after] = [few.papers.get('oat')!, more.papers.get('oat')!];
        expect(after.bound).toBeLessThanOrEqual(before.cost + 1e-9);
        if (after.proved) expect(after.cost).toBeLessThanOrEqual(before.cost + 1e-9);
        return;
      }
      if (more.kind === 'plan') return;
      if (more.nearest.proved) expect(more.nearest.cards).toBeGreaterThanOrEqual(few.nearest.cards);
      if (more.papers[0]!.missingProved) expect(wanting(more)).toBeLessThanOrEqual(wanting(few));
    }),
    { numRuns: 30 },
  );
});

function wanting({ papers }: Shortage): number {
  return papers.flatMap(({ missing }) => [...missing.values()]).reduce((sum, count) => sum + count, 0);
}

it('what is said to help does, one sheet fewer does not, and the nearest set comes out', () => {
  let helped = 0;
  fc.assert(
    fc.property(sets, (set) => {
      const short = planOf(set);
      if (short.kind === 'plan') return;
      const [{ limits, moreSheets, proved }] = short.papers as [Shortage['papers'][number]];
      for (const limit of limits) {
        helped += 1;
        const freed =
          limit === 'direction'
            ? { ...set, parts: set.parts.map((each) => ({ ...each, turn: 'free' as const })) }
            : withPaper(set, (oat) => ({
                ...oat,
                sheets: oat.sheets.map((stock) => ({
                  ...stock,
                  margin: { left: zero, right: zero, top: zero, bottom: zero },
                })),
              }));
        expect(planOf(freed).kind).toBe('plan');
      }
      for (const { stock, count, proved: fewest } of moreSheets) {
        helped += 1;
        expect(planOf(withMore(set, stock, count)).kind).toBe('plan');
        if (fewest && count > 1) expect(planOf(withMore(set, stock, count - 1)).kind).toBe('short');
      }
      const { cards, plan, proved: most } = short.nearest;
      expect(cards === 0).toBe(plan === null);
      if (plan !== null) {
        expect(plan.cards).toBe(cards);
        // No more pieces are wanting than the cards that cannot be made would take.
        const needed = (pieces: Plan['pieces']) => pieces.reduce((sum, { need }) => sum + need, 0);
        expect(wanting(short)).toBeLessThanOrEqual(needed(short.pieces) - needed(plan.pieces));
        expect(replay(planRecord(plan), replayConditions(set, null))).toEqual([]);
      }
      if (most && cards + 1 < set.cards) {
        const next = planOf({ ...set, cards: cards + 1 });
        expect(next).toMatchObject({ kind: 'short', papers: [{ proved: true }] });
      } else if (most) expect(proved).toBe(true);
    }),
    { numRuns: 40 },
  );
  expect(helped).toBeGreaterThan(0);
});
