import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, type PartSketch, paper, part } from '../layout/testing/build.ts';
import { inches, type Size } from '../measure/index.ts';
import { replay } from '../replay/index.ts';
import {
  offeredOf,
  type Plan,
  planRecord,
  planSet,
  replayConditions,
  type SetToPlan,
  sparesOf,
} from './index.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

const twelve: Size = { width: inches(12), height: inches(12) };

function setOf(layout: Layout): SetToPlan {
  return { layout, arrangement: arrange(layout), trimmer: null, solver };
}

function planned(set: SetToPlan): Plan {
  const answer = planSet(set);
  if (answer.kind !== 'plan') throw new Error('expected a plan');
  return answer;
}

/** Flat cards with parts of the one paper. */
function cards(count: number, from: ReturnType<typeof paper>, parts: Record<string, PartSketch>): SetToPlan {
  const layout = layoutOf({
    cards: count,
    base: [inches(5), inches(7)],
    fold: 'none',
    papers: [from],
    parts: Object.entries(parts).map(([id, sketch]) => part(id, { papers: [from.id], ...sketch })),
  });
  return setOf(layout);
}

describe('spares that come for nothing', () => {
  it('are the two that a sheet of twelve panels has over ten, and the next takes another sheet', () => {
    const bees = paper('bees', [{ size: twelve, count: 2 }], 'one-way');
    const set = cards(10, bees, { upper: { size: [inches(15, 4), inches(3)] } });
    expect(sparesOf(set, planned(set))).toEqual([
      {
        piece: 'upper/bees',
        paper: 'bees',
        risk: 'plain',
        made: 0,
        offered: 2,
        proved: true,
        // The third strip is cut through to its end: from two passes to three.
        passes: 1,
        leftover: null,
        next: { kind: 'costs', cost: 1, sheets: 1, scraps: 0, proved: true },
      },
    ]);
  });

  it('say that the papers on hand give no more', () => {
    const bees = paper('bees', [{ size: twelve, count: 1 }], 'one-way');
    const set = cards(10, bees, { upper: { size: [inches(15, 4), inches(3)] } });
    expect(sparesOf(set, planned(set))).toMatchObject([{ offered: 2, next: { kind: 'none', proved: true } }]);
  });

  it('cost money or a scrap where that is what the next one takes', () => {
    const half = { width: inches(6), height: inches(12) };
    const priced = paper('oat', [
      { size: half, count: 2, scrap: true },
      { size: twelve, price: 9_000 },
    ]);
    const of = (count: number) => {
      const set = cards(count, priced, { panel: { size: [inches(6), inches(6)] } });
      return sparesOf(set, planned(set))[0];
    };
    expect(of(1)).toMatchObject({ offered: 1, next: null });
    expect(of(2)).toMatchObject({
      offered: 0,
      next: { kind: 'costs', cost: 0, sheets: 0, scraps: 1, proved: true },
    });
    expect(of(4)).toMatchObject({
      offered: 0,
      next: { kind: 'costs', cost: 0.9, sheets: 1, proved: true },
    });
  });

  it('are offered for torn parts first, then die-cut, then stamped ones', () => {
    const size = [inches(3), inches(3)] as const;
    const set = cards(3, paper('oat', [{ size: twelve }]), {
      plain: { size },
      stamped: { size, stamped: true },
      cut: { size, dieCut: true },
      torn: { size, torn: { right: inches(1, 4) } },
    });
    // Sixteen come out of the sheet, twelve are needed; three spares of one part are as many as the set needs.
    expect(sparesOf(set, planned(set)).map(({ piece, risk, offered }) => [piece, risk, offered])).toEqual([
      ['torn/oat', 'torn', 3],
      ['cut/oat', 'die-cut', 1],
      ['stamped/oat', 'stamped', 0],
      ['plain/oat', 'plain', 0],
    ]);
  });

  it('go to the piece with fewer spares for its number first', () => {
    const size = [inches(3), inches(3)] as const;
    const set = cards(6, paper('oat', [{ size: twelve }]), { first: { size, spare: 1 }, second: { size } });
    expect(sparesOf(set, planned(set)).map(({ piece, offered }) => [piece, offered])).toEqual([
      ['second/oat', 3],
      ['first/oat', 0],
    ]);
  });

  it('are not looked for where thousands of pieces are cut', () => {
    const set = cards(2_001, paper('oat', [{ size: twelve }]), { panel: { size: [inches(4), inches(4)] } });
    expect(sparesOf(set, planned(set))).toEqual([]);
  });
});

describe('of random sets', () => {
  const side = fc.integer({ min: 6, max: 24 }).map((quarters) => inches(quarters, 4));
  const sets = fc
    .record({
      count: fc.integer({ min: 1, max: 6 }),
      first: fc.record({
        width: side,
        height: side,
        spare: fc.integer({ min: 0, max: 2 }),
        stamped: fc.boolean(),
      }),
      second: fc.record({
        width: side,
        height: side,
        spare: fc.integer({ min: 0, max: 2 }),
        stamped: fc.boolean(),
      }),
      up: fc.constantFrom<'any' | 'one-way'>('any', 'one-way'),
      onHand: fc.constantFrom(null, 4),
      price: fc.constantFrom(null, 5_000),
    })
    .map(({ count, first, second, up, onHand, price }) => {
      const sketch = ({ width, height, ...rest }: typeof first) => ({
        size: [width, height] as const,
        ...rest,
      });
      return cards(count, paper('oat', [{ size: twelve, count: onHand, price }], up), {
        first: sketch(first),
        second: sketch(second),
      });
    });

  it('all that is offered can be had at once at no more cost, replayed; one more than is proved cannot', () => {
    fc.assert(
      fc.property(sets, (set) => {
        const plan = planSet(set);
        fc.pre(plan.kind === 'plan');
        const spares = sparesOf(set, plan);
        const all = planned({ ...set, moreSpares: offeredOf(spares) });
        expect(replay(planRecord(all), replayConditions(set.layout, null))).toEqual([]);
        const [before, after] = [plan.papers.get('oat')!, all.papers.get('oat')!];
        expect(after.cost).toBeLessThanOrEqual(before.cost);
        expect(after.sheets).toBeLessThanOrEqual(before.sheets);
        for (const [index, { piece, offered, made, proved, next }] of spares.entries()) {
          const earlier = spares.slice(0, index);
          // What the plan makes as it is comes for nothing as long as nothing else was taken.
          if (earlier.every((other) => other.offered <= other.made))
            expect(offered).toBeGreaterThanOrEqual(made);
          if (!proved) continue;
          const moreSpares = new Map([...offeredOf(earlier), [piece, offered + 1]]);
          const beyond = planSet({ ...set, moreSpares });
          if (beyond.kind === 'short') {
            expect(next).toEqual({ kind: 'none', proved: true });
            continue;
          }
          const dearer = beyond.papers.get('oat')!;
          expect(dearer.cost - before.cost).toBeGreaterThan(0);
          expect(next).toMatchObject({ kind: 'costs', sheets: dearer.sheets - before.sheets });
          if (next?.kind === 'costs') expect(next.cost).toBeCloseTo(dearer.cost - before.cost, 9);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('a spare never costs less than none', () => {
    fc.assert(
      fc.property(sets, fc.constantFrom('first/oat', 'second/oat'), (set, piece) => {
        const plan = planSet(set);
        const more = planSet({ ...set, moreSpares: new Map([[piece, 1]]) });
        if (plan.kind === 'short') expect(more.kind).toBe('short');
        if (plan.kind === 'short' || more.kind === 'short') return;
        expect(more.papers.get('oat')!.cost).toBeGreaterThanOrEqual(plan.papers.get('oat')!.bound);
        expect(more.papers.get('oat')!.bound).toBeLessThanOrEqual(more.papers.get('oat')!.cost);
      }),
      { numRuns: 40 },
    );
  });
});
