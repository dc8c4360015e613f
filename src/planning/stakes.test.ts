import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { leastByTrying } from '../cutting/testing/everyCut.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches, inchesOf, type Length, type Size } from '../measure/index.ts';
import { replayed } from '../trimming/testing/replayed.ts';
import {
  nothingCut,
  type Plan,
  piecesOf,
  planSet,
  proveFirstOf,
  recutSet,
  type SetToPlan,
  type StepStakes,
  stakesOf,
  tableNow,
  untouchedTable,
} from './index.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

function setOf(layout: Layout): SetToPlan {
  return { layout, arrangement: arrange(layout), trimmer: null, solver };
}

function planned(set: SetToPlan): Plan {
  const plan = planSet(set);
  if (plan.kind !== 'plan') throw new Error('expected a plan');
  return plan;
}

function stakes(set: SetToPlan): readonly StepStakes[] {
  return stakesOf(set, { plan: planned(set), onTable: untouchedTable });
}

function panels(count: number, sheets: Parameters<typeof paper>[1], spare = 0): SetToPlan {
  const layout = layoutOf({
    cards: count,
    base: [inches(6), inches(8)],
    fold: 'none',
    papers: [paper('meadow', sheets, 'one-way')],
    parts: [part('panel', { size: [inches(4), inches(4)], papers: ['meadow'], spare })],
  });
  return setOf(layout);
}

const twelve: Size = { width: inches(12), height: inches(12) };

describe('what is at stake', () => {
  it('is nothing where the plan makes enough anyway', () => {
    // A sheet gives nine: six are needed, three are spares that the layout asks for.
    const found = stakes(panels(6, [{ size: twelve, count: 1 }], 3));
    expect(found[0]!.rescue).toMatchObject({ kind: 'none' });
    for (const { loses, rescue } of found.slice(1)) {
      expect([...loses]).toEqual([['panel/meadow', 3]]);
      expect(rescue).toEqual({ kind: 'spare' });
    }
  });

  it('is made good from what is left over, or from another sheet', () => {
    const leftover = stakes(panels(4, [{ size: twelve, count: 1 }]));
    // The strip is lost that three of four come from, or the last two: 8 x 12 in are there besides, or 8 x 4 in.
    expect(leftover.slice(-2).map(({ rescue }) => rescue.kind)).toEqual(['leftover', 'leftover']);
    const sheet = stakes(panels(9, [{ size: twelve, count: 2 }]));
    expect(sheet.map(({ rescue }) => rescue.kind)).toEqual(sheet.map(() => 'new sheet'));
  });

  it('is cards where there is nothing else', () => {
    const found = stakes(panels(9, [{ size: twelve, count: 1 }]));
    expect(found[0]).toMatchObject({ rescue: { kind: 'none', cardsFewer: 9, proved: true } });
    expect(found.at(-1)).toMatchObject({ rescue: { kind: 'none', cardsFewer: 3, proved: true } });
  });
});

describe('on random sets', () => {
  const whole = (min: number, max: number) => fc.integer({ min, max }).map((count) => inches(count));
  const size = (min: number, max: number) => fc.record({ width: whole(min, max), height: whole(min, max) });
  const anySet = fc
    .record({
      cards: fc.integer({ min: 1, max: 5 }),
      sheets: fc.array(fc.record({ size: size(4, 7), count: fc.integer({ min: 1, max: 3 }) }), {
        minLength: 1,
        maxLength: 2,
      }),
      up: fc.constantFrom('any' as const, 'one-way' as const),
      parts: fc.array(fc.record({ size: size(1, 4), spare: fc.integer({ min: 0, max: 1 }) }), {
        minLength: 1,
        maxLength: 2,
      }),
    })
    .map(({ cards, parts, sheets, up }) =>
      setOf(
        layoutOf({
          cards,
          base: [inches(8), inches(8)],
          fold: 'none',
          papers: [paper('ivory', sheets, up)],
          parts: parts.map(({ size: { width, height }, spare }, index) =>
            part(`p${index}`, { size: [width, height], papers: ['ivory'], spare }),
          ),
        }),
      ),
    );

  it('says what trying every cut says, and what planning again says', () => {
    const seen: Record<StepStakes['rescue']['kind'], number> = {
      spare: 0,
      leftover: 0,
      'new sheet': 0,
      none: 0,
      unknown: 0,
    };
    fc.assert(
      fc.property(anySet, (set) => {
        const plan = planSet(set);
        if (plan.kind !== 'plan') return;
        const inHand = { plan, onTable: untouchedTable };
        for (const { step, loses, rescue } of stakesOf(set, inHand)) {
          seen[rescue.kind] += 1;
          const at = plan.steps.findIndex((one) => one.step === step);
          const before = plan.steps.slice(0, at);
          const there = replayed(before, plan.sheets).table;
          const each = plan.steps[at]!.take.map((id) => byTrying(set, plan, { there, id }));
          const worst = Math.max(...each.map(({ cards }) => set.layout.cards - cards));
          if (rescue.kind === 'unknown') continue;
          expect(rescue.kind === 'none').toBe(worst > 0);
          if (rescue.kind === 'none') expect(rescue).toMatchObject({ cardsFewer: worst, proved: true });
          if (rescue.kind === 'leftover' || rescue.kind === 'spare')
            expect(each.every(({ leftover }) => leftover)).toBe(true);
          // Planned again with that workpiece gone and without spares, it comes out just where it can be made good.
          const spareless = set.layout.parts.map((one) => ({ ...one, spare: 0 }));
          const without = setOf({ ...set.layout, parts: spareless });
          const short = plan.steps[at]!.take.some((id) => {
            const done = new Map(before.map((one) => [one.step, 'all' as const]));
            const spoiled = [{ kind: 'workpiece' as const, id }];
            const table = tableNow(set.layout, inHand, { ...nothingCut, done, spoiled });
            return 'problems' in table || recutSet(without, table).kind === 'short';
          });
          expect(short).toBe(rescue.kind === 'none');
          for (const [piece, count] of loses)
            expect(count).toBeLessThanOrEqual(
              [...plan.finished.values()].filter((one) => one === piece).length,
            );
        }
      }),
      { numRuns: 60 },
    );
    expect(seen.unknown).toBe(0);
    for (const kind of ['spare', 'leftover', 'new sheet', 'none'] as const)
      expect(seen[kind], kind).toBeGreaterThan(4);
  });

  /**
   * The most cards without spares that the table gives with one workpiece gone, and whether all of them come without
   * a sheet that the plan does not begin; by trying every cut.
   */
  function byTrying(
    set: SetToPlan,
    plan: Plan,
    { there, id }: { readonly there: ReadonlyMap<string, readonly [number, number]>; readonly id: string },
  ): { readonly cards: number; readonly leftover: boolean } {
    const inch = (ticks: number) => inchesOf(ticks as Length);
    const isWhole = (one: string) => plan.sheets.some((sheet) => sheet.id === one);
    const left = [...there].filter(([one]) => one !== id);
    const made = new Map<string, number>();
    for (const [one] of left) {
      const piece = plan.finished.get(one);
      if (piece !== undefined && !isWhole(one)) made.set(piece, (made.get(piece) ?? 0) + 1);
    }
    const { sheets } = set.layout.papers.get('ivory')!;
    const lying = left
      .filter(([one]) => isWhole(one) || !plan.finished.has(one))
      .map(([, [width, height]]) => ({ width: inch(width), height: inch(height), count: 1, cost: 0 }));
    const more = sheets.map(({ size: { width, height }, count }, stock) => ({
      width: inch(width),
      height: inch(height),
      count: count! - plan.sheets.filter((sheet) => sheet.stock === stock).length,
      cost: 0,
    }));
    const comes = (cards: number, from: typeof lying) => {
      const pieces = piecesOf({ ...set.layout, cards }, set.arrangement);
      const items = pieces
        .map((piece) => ({
          width: inch(piece.size.width),
          height: inch(piece.size.height),
          need: piece.need - piece.spare - (made.get(piece.id) ?? 0),
          turns: piece.turn === 'free',
        }))
        .filter(({ need }) => need > 0);
      const limits = { step: null, longest: null, reach: null };
      return items.length === 0 || leastByTrying({ items, sheets: from, limits }, 20) !== null;
    };
    let { cards } = set.layout;
    while (cards > 0 && !comes(cards, [...lying, ...more])) cards -= 1;
    return { cards, leftover: comes(set.layout.cards, lying) };
  }
});

describe('where one is proved before the others', () => {
  const setIn = (up: 'any' | 'one-way', width: number, count: number) =>
    setOf(
      layoutOf({
        cards: count,
        base: [inches(6), inches(8)],
        fold: 'none',
        papers: [paper('meadow', [{ size: twelve }], up)],
        parts: [part('panel', { size: [inches(width), inches(5)], papers: ['meadow'], turn: 'locked' })],
      }),
    );
  const reasons = (set: SetToPlan) => [...proveFirstOf(planned(set), set.layout).values()];

  it('a fit with nothing to spare, a direction and a new setting begin', () => {
    const tight = setIn('one-way', 3, 8);
    const plan = planned(tight);
    const stops = proveFirstOf(plan, tight.layout);
    for (const [number, why] of stops) {
      const step = plan.steps.find((one) => one.step === number)!;
      expect(why.includes('nothing to spare')).toBe(step.set === inches(3));
      expect(why.includes('new setting')).toBe(true);
      expect(why.includes('direction')).toBe(number === 1);
    }
    expect(stops.size).toBe(2);
  });

  it('and not once more where they go on, nor where only one is cut', () => {
    expect(reasons(setIn('any', 5, 16)).every((why) => why.join() === 'new setting')).toBe(true);
    expect(reasons(setIn('any', 5, 16))).toHaveLength(1);
    const one = planned(setIn('any', 5, 1));
    expect(proveFirstOf({ ...one, steps: one.steps.slice(0, 1) }, setIn('any', 5, 1).layout).size).toBe(0);
  });
});
