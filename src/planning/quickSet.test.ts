import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches, type Size } from '../measure/index.ts';
import { replay } from '../replay/index.ts';
import { type CardSet, planRecord, planSet, quickSet, replayConditions } from './index.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

const twelve: Size = { width: inches(12), height: inches(12) };

function setOf(layout: Layout): CardSet {
  return { layout, arrangement: arrange(layout), trimmer: null };
}

it('gives a plan that comes out, never better than the one that is looked for, with bounds that hold', () => {
  const eighths = (min: number, max: number) => fc.integer({ min, max }).map((count) => inches(count, 8));
  const size = (min: number, max: number) =>
    fc.record({ width: eighths(min, max), height: eighths(min, max) });
  const anySet = fc
    .record({
      cards: fc.integer({ min: 1, max: 30 }),
      sheets: fc.array(
        fc.record({ size: size(40, 96), scrap: fc.boolean(), count: fc.constantFrom(null, 1, 9) }),
        { minLength: 1, maxLength: 3 },
      ),
      up: fc.constantFrom('any' as const, 'one-way' as const),
      parts: fc.array(size(6, 44), { minLength: 1, maxLength: 4 }),
    })
    .map(({ cards, sheets, up, parts }) =>
      layoutOf({
        cards,
        base: [inches(6), inches(6)],
        fold: 'none',
        papers: [paper('ivory', sheets, up)],
        parts: parts.map(({ width, height }, index) =>
          part(`p${index}`, { size: [width, height], papers: ['ivory'] }),
        ),
      }),
    );
  let given = 0;
  fc.assert(
    fc.property(anySet, (layout) => {
      const set = setOf(layout);
      const quick = quickSet(set);
      expect(quickSet(set)).toEqual(quick);
      const best = planSet({ ...set, solver });
      if (best.kind === 'short' && best.papers.every(({ proved }) => proved)) expect(quick).toBeNull();
      if (quick === null) return;
      given += 1;
      expect(replay(planRecord(quick), replayConditions(layout, null))).toEqual([]);
      expect(best.kind).toBe('plan');
      if (best.kind !== 'plan') return;
      expect(quick.pieces).toEqual(best.pieces);
      const [first, found] = [quick.papers.get('ivory')!, best.papers.get('ivory')!];
      expect(found.cost).toBeLessThanOrEqual(first.cost);
      expect(first.bound).toBeLessThanOrEqual(found.cost);
      expect(first.proved).toBe(first.cost === first.bound);
      if (first.proved) expect(found.cost).toBe(first.cost);
    }),
    { numRuns: 40 },
  );
  expect(given).toBeGreaterThan(10);
});

it('gives none where a piece fits no sheet', () => {
  const layout = layoutOf({
    cards: 2,
    base: [inches(6), inches(6)],
    fold: 'none',
    papers: [paper('ivory', [{ size: twelve }])],
    parts: [part('panel', { size: [inches(13), inches(2)], papers: ['ivory'] })],
  });
  expect(quickSet(setOf(layout))).toBeNull();
});

it('makes the spares that are asked for', () => {
  const layout = layoutOf({
    cards: 4,
    base: [inches(6), inches(6)],
    fold: 'none',
    papers: [paper('ivory', [{ size: twelve }])],
    parts: [part('panel', { size: [inches(6), inches(6)], papers: ['ivory'] })],
  });
  const quick = quickSet({ ...setOf(layout), moreSpares: new Map([['panel/ivory', 3]]) });
  expect(quick?.pieces[0]?.need).toBe(7);
  expect(quick?.papers.get('ivory')).toMatchObject({ sheets: 2, bound: 2, proved: true });
});
