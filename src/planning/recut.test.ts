import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { leastByTrying } from '../cutting/testing/everyCut.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { layoutOf, type PartSketch, paper, part } from '../layout/testing/build.ts';
import { inches, inchesOf, type Size, zero } from '../measure/index.ts';
import { replay } from '../replay/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { replayed } from '../trimming/testing/replayed.ts';
import {
  type CutSoFar,
  nothingCut,
  type Piece,
  type Plan,
  type PlanInHand,
  planRecord,
  planSet,
  type Recut,
  type RecutShort,
  recutSet,
  replayConditions,
  type SetToPlan,
  type TableNow,
  tableNow,
  untouchedTable,
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

function planned(set: SetToPlan): PlanInHand {
  const plan = planSet(set);
  if (plan.kind !== 'plan') throw new Error('expected a plan');
  return { plan, onTable: untouchedTable };
}

/** Flat cards with parts of the papers. */
function cards(
  count: number,
  from: readonly ReturnType<typeof paper>[],
  parts: Record<string, PartSketch>,
): SetToPlan {
  const layout = layoutOf({
    cards: count,
    base: [inches(6), inches(8)],
    fold: 'none',
    papers: from,
    parts: Object.entries(parts).map(([id, sketch]) => part(id, { papers: [from[0]!.id], ...sketch })),
  });
  return setOf(layout);
}

function tableOf(set: SetToPlan, inHand: PlanInHand, state: Partial<CutSoFar>): TableNow {
  const table = tableNow(set.layout, inHand, { ...nothingCut, ...state });
  if ('problems' in table) throw new Error(JSON.stringify(table.problems));
  return table;
}

function recut(set: SetToPlan, inHand: PlanInHand, state: Partial<CutSoFar>): Recut {
  const answer = recutSet(set, tableOf(set, inHand, state));
  if (answer.kind !== 'recut') throw new Error(`expected a plan: ${JSON.stringify(answer.papers)}`);
  return answer;
}

function short(set: SetToPlan, inHand: PlanInHand, state: Partial<CutSoFar>): RecutShort {
  const answer = recutSet(set, tableOf(set, inHand, state));
  if (answer.kind !== 'short') throw new Error('expected no plan');
  return answer;
}

function all(...steps: readonly number[]): CutSoFar['done'] {
  return new Map(steps.map((step) => [step, 'all']));
}

function spoiled(piece: string, count = 1): CutSoFar['spoiled'] {
  return [{ kind: 'pieces', piece, count }];
}

describe('a table on which nothing went wrong', () => {
  it('has the plan itself while nothing is cut', () => {
    const set = cards(10, [paper('meadow', [{ size: twelve, count: 2 }], 'one-way')], {
      panel: { size: [inches(4), inches(3)] },
    });
    const inHand = planned(set);
    const answer = recut(set, inHand, {});
    expect(answer.plan).toBe(inHand.plan);
    expect(answer.onTable).toBe(untouchedTable);
    expect(answer.layout).toBe(set.layout);
  });

  it('has the steps that are left, with their numbers', () => {
    const set = cards(10, [paper('meadow', [{ size: twelve, count: 2 }], 'one-way')], {
      panel: { size: [inches(4), inches(3)] },
    });
    const inHand = planned(set);
    const answer = recut(set, inHand, { done: all(1) });
    expect(answer.plan.steps).toEqual(inHand.plan.steps.slice(1));
    expect(answer.plan.leftovers).toEqual(
      inHand.plan.leftovers.filter(({ id }) => answer.plan.steps.some(({ rest }) => rest.includes(id))),
    );
    expect(answer.papers.get('meadow')).toMatchObject({ way: 'goes on' });
    expect(answer.plan.papers.get('meadow')).toMatchObject({ proved: true });
  });

  it('has the rest of a step that is done in part', () => {
    const set = cards(6, [paper('meadow', [{ size: twelve, count: 2 }], 'one-way')], {
      panel: { size: [inches(12), inches(4)] },
    });
    const inHand = planned(set);
    expect(inHand.plan.steps).toHaveLength(1);
    const answer = recut(set, inHand, { done: new Map([[1, 1]]) });
    expect(answer.plan.steps).toMatchObject([{ step: 1, take: ['meadow-2'] }]);
    expect(answer.plan.papers.get('meadow')).toMatchObject({
      passes: 2,
      cost: 144,
      bound: 144,
      proved: true,
    });
    expect([...answer.onTable.begun]).toEqual([['meadow', [1]]]);
  });
});

describe('a piece that is spoiled', () => {
  it('is a spare that came for nothing: the plan goes on without it', () => {
    // Two sheets of 12 x 12 give twelve panels each at the same cuts.
    const set = cards(5, [paper('meadow', [{ size: twelve, count: 1 }], 'one-way')], {
      panel: { size: [inches(6), inches(4)] },
    });
    const more = { ...set, moreSpares: new Map([['panel/meadow', 1]]) };
    const inHand = planned(more);
    const steps = inHand.plan.steps.map(({ step }) => step);
    const answer = recut(set, inHand, { done: all(...steps), spoiled: spoiled('panel/meadow') });
    expect(answer.plan.steps).toEqual([]);
    expect(answer.plan.finished.size).toBe(5);
    expect(answer.papers.get('meadow')).toMatchObject({ way: 'goes on' });
  });

  it('is one whose place a spare takes: what is needed is one fewer, and the plan goes on', () => {
    const set = cards(8, [paper('meadow', [{ size: twelve, count: 2 }], 'one-way')], {
      panel: { size: [inches(4), inches(4)], spare: 1 },
    });
    const inHand = planned(set);
    const steps = inHand.plan.steps.map(({ step }) => step);
    const answer = recut(set, inHand, { done: all(...steps), spoiled: spoiled('panel/meadow') });
    expect(answer.plan.pieces).toMatchObject([{ need: 8, spare: 0 }]);
    expect(answer.papers.get('meadow')).toMatchObject({ way: 'goes on' });
    // The next that is spoiled has to be cut again, and its spare with it.
    const next = recut(set, answer, { spoiled: spoiled('panel/meadow') });
    expect(next.papers.get('meadow')).toMatchObject({ way: 'again', moreSheets: 1 });
    expect(next.plan.pieces).toMatchObject([{ need: 9, spare: 1 }]);
  });

  it('is cut again from a leftover, and no sheet is begun', () => {
    const set = cards(6, [paper('meadow', [{ size: twelve, count: 2 }], 'one-way')], {
      panel: { size: [inches(4), inches(5)] },
    });
    const inHand = planned(set);
    const steps = inHand.plan.steps.map(({ step }) => step);
    // 12 x 2 in is left, which gives no panel: a sheet has to be begun.
    const whole = recut(set, inHand, { done: all(...steps), spoiled: spoiled('panel/meadow') });
    expect(whole.papers.get('meadow')).toMatchObject({ way: 'again', moreSheets: 1, reused: [] });
    expect(whole.plan.sheets.some(({ id, stock }) => id === 'meadow-2' && stock === 0)).toBe(true);
    expect(whole.plan.steps[0]!.step).toBe(steps.length + 1);
    // With a scrap that was found, none.
    const scrap = { paper: 'meadow', size: { width: inches(4), height: inches(6) } };
    const found = recut(set, inHand, {
      done: all(...steps),
      spoiled: spoiled('panel/meadow'),
      found: [scrap],
    });
    expect(found.papers.get('meadow')).toMatchObject({ way: 'again', moreSheets: 0 });
    expect(found.papers.get('meadow')!.reused.map(({ id }) => id)).toEqual(['meadow.found-1']);
    expect(found.plan.papers.get('meadow')).toMatchObject({ cost: 0, bound: 0, proved: true });
  });

  it('is cut from a scrap of the stash before a sheet is begun', () => {
    const scrap = { size: { width: inches(5), height: inches(5) }, count: 1, scrap: true };
    const set = cards(9, [paper('meadow', [{ size: twelve, count: 2 }, scrap], 'one-way')], {
      panel: { size: [inches(4), inches(4)] },
    });
    const inHand = planned(set);
    const steps = inHand.plan.steps.map(({ step }) => step);
    const used = inHand.plan.sheets.filter(({ stock }) => stock === 1).length;
    const answer = recut(set, inHand, { done: all(...steps), spoiled: spoiled('panel/meadow', 1) });
    expect(used).toBe(0);
    expect(answer.papers.get('meadow')).toMatchObject({ way: 'again', reused: [], moreSheets: 0 });
    expect(answer.plan.sheets.filter(({ stock }) => stock === 1)).toHaveLength(1);
  });

  it('leaves the other papers as they were planned', () => {
    const set = cards(
      6,
      [
        paper('meadow', [{ size: twelve, count: 2 }], 'one-way'),
        paper('bark', [{ size: twelve, count: 1 }], 'two-way'),
      ],
      { panel: { size: [inches(4), inches(5)] }, band: { size: [inches(2), inches(5)], papers: ['bark'] } },
    );
    const inHand = planned(set);
    const { plan } = inHand;
    const answer = recut(set, inHand, { spoiled: [{ kind: 'workpiece', id: 'meadow-1' }] });
    const ofBark = ({ steps }: Plan) => steps.filter(({ take }) => take[0]!.startsWith('bark'));
    expect(ofBark(answer.plan)).toEqual(ofBark(plan));
    expect(answer.plan.papers.get('bark')).toEqual(plan.papers.get('bark'));
    const last = plan.steps.at(-1)!.step;
    for (const { step, take } of answer.plan.steps)
      if (take[0]!.startsWith('meadow')) expect(step).toBeGreaterThan(last);
  });
});

describe('a sheet with margins', () => {
  it('that is only partly squared keeps its other margins', () => {
    const margin = { left: inches(1, 2), right: zero, top: inches(1, 2), bottom: zero };
    const set = cards(2, [paper('meadow', [{ size: twelve, count: 2, margin }], 'one-way')], {
      panel: { size: [inches(4), inches(4)] },
    });
    const inHand = planned(set);
    const squaring = inHand.plan.steps.filter(({ squares }) => squares !== undefined);
    expect(squaring).toHaveLength(2);
    const [first, second] = squaring.map(({ squares }) => squares!);
    const table = tableOf(set, inHand, { done: all(1) });
    expect(table.onTable.lying).toHaveLength(1);
    expect(table.onTable.lying[0]!.margin).toEqual({ ...margin, [first!]: zero });
    expect(table.onTable.lying[0]!.margin[second!]).toBe(inches(1, 2));
    // Planned again from it, what is left is squared first.
    const wider = { ...set, layout: { ...set.layout, cards: 4 } };
    const answer = recut(wider, inHand, { done: all(1) });
    expect(answer.papers.get('meadow')).toMatchObject({ way: 'again', moreSheets: 0 });
    expect(answer.plan.steps.filter(({ squares }) => squares === second)).toHaveLength(1);
  });
});

describe('what cannot be done', () => {
  const set = () =>
    cards(9, [paper('meadow', [{ size: twelve, count: 1 }], 'one-way')], {
      panel: { size: [inches(4), inches(4)], spare: 0 },
    });

  it('has the nearest rescues, each planned', () => {
    const of = set();
    const inHand = planned(of);
    const answer = short(of, inHand, {
      done: all(...inHand.plan.steps.map(({ step }) => step)),
      spoiled: spoiled('panel/meadow', 2),
    });
    expect(answer.papers).toMatchObject([{ paper: 'meadow', proved: true }]);
    expect([...answer.papers[0]!.missing]).toEqual([['panel/meadow', 2]]);
    expect(answer.rescues).toMatchObject([
      { kind: 'more sheets', sheets: [{ paper: 'meadow', stock: 0, count: 1, proved: true }] },
      { kind: 'fewer cards', cards: 7, proved: true },
    ]);
    for (const { recut: rescued } of answer.rescues) expect(rescued).not.toBeNull();
  });

  it('gives up the spares first', () => {
    const of = cards(8, [paper('meadow', [{ size: twelve, count: 1 }], 'one-way')], {
      panel: { size: [inches(4), inches(4)], spare: 1 },
    });
    const inHand = planned(of);
    const answer = short(of, inHand, {
      done: all(...inHand.plan.steps.map(({ step }) => step)),
      spoiled: spoiled('panel/meadow', 2),
      found: [{ paper: 'meadow', size: { width: inches(4), height: inches(4) } }],
    });
    expect(answer.rescues.map(({ kind }) => kind)).toEqual(['no spares', 'more sheets', 'fewer cards']);
    expect(answer.rescues[2]).toMatchObject({ cards: 7, proved: true, spares: true });
  });
});

describe('a leftover that is a mark too narrow', () => {
  const size = { width: inches(12), height: inches(191, 16) };

  it('gives the piece when all are made a mark smaller, and what is finished is trimmed down', () => {
    const of = cards(9, [paper('meadow', [{ size, count: 1 }], 'one-way')], {
      panel: { size: [inches(4), inches(3)] },
    });
    const inHand = planned(of);
    const answer = short(of, inHand, {
      done: all(...inHand.plan.steps.map(({ step }) => step)),
      spoiled: spoiled('panel/meadow'),
    });
    const [first] = answer.rescues;
    expect(first).toMatchObject({
      kind: 'other sizes',
      marks: 1,
      changes: [{ part: 'panel', name: 'height', from: inches(3), to: inches(47, 16) }],
    });
    const { recut: rescued } = first as Extract<RecutShort['rescues'][number], { kind: 'other sizes' }>;
    expect(rescued.plan.finished.size).toBe(9);
    expect(rescued.plan.pieces[0]!.size).toEqual({ width: inches(4), height: inches(47, 16) });
    // Three come off the leftover, six are trimmed.
    expect(rescued.plan.sheets).toHaveLength(7);
    expect(rescued.plan.sheets.filter(({ id }) => inHand.plan.finished.has(id))).toHaveLength(6);
    const conditions = { ...replayConditions(rescued.layout, null), numberedOn: true };
    expect(replay(planRecord(rescued.plan), conditions)).toEqual([]);
  });

  it('is no rescue where no size of the piece may move', () => {
    const of = cards(9, [paper('meadow', [{ size, count: 1 }], 'one-way')], {
      panel: { size: [inches(4), inches(3)], dieCut: true },
    });
    const inHand = planned(of);
    const answer = short(of, inHand, {
      done: all(...inHand.plan.steps.map(({ step }) => step)),
      spoiled: spoiled('panel/meadow', 2),
      found: [{ paper: 'meadow', size: { width: inches(4), height: inches(4) } }],
    });
    expect(answer.rescues.map(({ kind }) => kind)).toEqual(['more sheets', 'fewer cards']);
  });
});

describe('a table that no step could have left', () => {
  const set = () =>
    cards(10, [paper('meadow', [{ size: twelve, count: 2 }], 'one-way')], {
      panel: { size: [inches(4), inches(3)] },
    });
  const problemsOf = (state: Partial<CutSoFar>) => {
    const of = set();
    const table = tableNow(of.layout, planned(of), { ...nothingCut, ...state });
    return 'problems' in table ? table.problems : [];
  };

  it.each<[string, Partial<CutSoFar>, object]>([
    ['a step that is not there', { done: all(9) }, { code: 'stepUnknown', numbers: { step: 9, first: 1 } }],
    [
      'too many workpieces',
      { done: new Map([[1, 5]]) },
      { code: 'stepHasFewer', numbers: { said: 5, workpieces: 1 } },
    ],
    [
      'a step before the one that feeds it',
      { done: all(2) },
      { code: 'stepTooEarly', numbers: { step: 2, by: 1 } },
    ],
    ['no such workpiece', { spoiled: [{ kind: 'workpiece', id: 'medow-1' }] }, { code: 'workpieceUnknown' }],
    [
      'a workpiece not yet made',
      { spoiled: [{ kind: 'workpiece', id: 'meadow-1a' }] },
      { code: 'workpieceNotYet', numbers: { step: 1 } },
    ],
    [
      'a workpiece cut up',
      { done: all(1), spoiled: [{ kind: 'workpiece', id: 'meadow-1' }] },
      { code: 'workpieceCutUp', numbers: { step: 1 } },
    ],
    [
      'one spoiled twice',
      { spoiled: ['meadow-1', 'meadow-1'].map((id) => ({ kind: 'workpiece', id })) },
      { code: 'spoiledTwice' },
    ],
    ['no such piece', { spoiled: spoiled('panel/bark') }, { code: 'pieceUnknown' }],
    [
      'more pieces than there are',
      { spoiled: spoiled('panel/meadow') },
      { code: 'piecesTooFew', numbers: { said: 1, finished: 0 } },
    ],
    ['no such paper', { found: [{ paper: 'bark', size: twelve }] }, { code: 'paperUnknownOnTable' }],
  ])('%s', (_, state, found) => {
    expect(problemsOf(state)).toMatchObject([found]);
  });
});

describe('on random sets, cut so far as chance will have it', () => {
  const whole = (min: number, max: number) => fc.integer({ min, max }).map((count) => inches(count));
  const size = (min: number, max: number) => fc.record({ width: whole(min, max), height: whole(min, max) });
  const anySet = fc
    .record({
      cards: fc.integer({ min: 1, max: 5 }),
      sheets: fc.array(
        fc.record({ size: size(4, 7), scrap: fc.boolean(), count: fc.integer({ min: 1, max: 3 }) }),
        { minLength: 1, maxLength: 2 },
      ),
      up: fc.constantFrom('any' as const, 'one-way' as const),
      parts: fc.array(fc.record({ size: size(1, 4), spare: fc.integer({ min: 0, max: 1 }) }), {
        minLength: 1,
        maxLength: 2,
      }),
      // Where along the plan it stops, what is spoiled, what is found, all of it by chance.
      cut: fc.nat(),
      spoiled: fc.array(fc.nat(), { maxLength: 2 }),
      found: fc.option(size(1, 5), { freq: 3 }),
    })
    .map(({ parts, sheets, up, ...rest }) => ({
      ...rest,
      set: setOf(
        layoutOf({
          cards: rest.cards,
          base: [inches(8), inches(8)],
          fold: 'none',
          papers: [paper('ivory', sheets, up)],
          parts: parts.map(({ size: { width, height }, spare }, index) =>
            part(`p${index}`, { size: [width, height], papers: ['ivory'], spare }),
          ),
        }),
      ),
    }));
  /** Does the first workpieces of a plan's steps, so many of them. */
  const doneUpTo = ({ steps }: Plan, workpieces: number): CutSoFar['done'] => {
    const done = new Map<number, number>();
    let left = workpieces % (steps.reduce((sum, { take }) => sum + take.length, 0) + 1);
    for (const { step, take } of steps) {
      const count = Math.min(left, take.length);
      if (count > 0) done.set(step, count);
      left -= count;
    }
    return done;
  };
  /** What lies there after that, by following the rules of the file alone. */
  const followedTo = ({ plan, onTable }: PlanInHand, done: CutSoFar['done']) =>
    replayed(
      plan.steps.flatMap((step) => {
        const count = Number(done.get(step.step) ?? 0);
        const cut = <T>(list: readonly T[]) => list.slice(0, count);
        return count === 0
          ? []
          : [{ ...step, take: cut(step.take), gives: cut(step.gives), rest: cut(step.rest) }];
      }),
      [...plan.sheets, ...onTable.lying.filter(({ id }) => !plan.sheets.some((sheet) => sheet.id === id))],
    ).table;
  const chosen = (table: ReadonlyMap<string, unknown>, at: readonly number[]) => {
    const ids = [...table.keys()];
    return [...new Set(at.map((index) => ids[index % ids.length]!))];
  };
  const wholeSheets = ({ plan, layout, onTable }: Recut) => {
    const own = layout.papers.get('ivory')!.sheets.length - onTable.lying.length;
    return plan.sheets.filter(({ stock }) => stock < own);
  };

  it('comes out when it is followed from the first sheet on, and costs no more than it must', () => {
    const seen = { again: 0, short: 0, plans: 0 };
    fc.assert(
      fc.property(anySet, ({ set, cut, spoiled: at, found }) => {
        const plan = planSet(set);
        if (plan.kind !== 'plan') return;
        seen.plans += 1;
        const inHand = { plan, onTable: untouchedTable };
        const done = doneUpTo(plan, cut);
        const there = followedTo(inHand, done);
        const gone = chosen(there, at);
        const table = tableOf(set, inHand, {
          done,
          spoiled: gone.map((id) => ({ kind: 'workpiece', id })),
          found: found === null ? [] : [{ paper: 'ivory', size: found }],
        });
        const answer = recutSet(set, table);

        // The table as the rules have it: finished pieces, scraps to cut from, whole sheets.
        const { sheets } = set.layout.papers.get('ivory')!;
        const begun = sheets.map(() => 0);
        for (const { id, stock } of plan.sheets) if (!there.has(id) || gone.includes(id)) begun[stock]! += 1;
        const isWhole = (id: string) => plan.sheets.some((sheet) => sheet.id === id);
        const left = [...there].filter(([id]) => !gone.includes(id));
        const made = new Map<string, number>();
        for (const [id] of left) {
          const piece = plan.finished.get(id);
          if (piece !== undefined && !isWhole(id)) made.set(piece, (made.get(piece) ?? 0) + 1);
        }
        const inch = (ticks: number) => inchesOf(ticks as Size['width']);
        const scraps = left
          .filter(([id]) => !isWhole(id) && !plan.finished.has(id))
          .map(([, [width, height]]) => ({ width: inch(width), height: inch(height), count: 1, cost: 0 }));
        if (found !== null)
          scraps.push({ width: inch(found.width), height: inch(found.height), count: 1, cost: 0 });
        const alike = sheets.every(
          (sheet) =>
            sheet.size.width === sheets[0]!.size.width && sheet.size.height === sheets[0]!.size.height,
        );
        const limits = { step: null, longest: null, reach: null };
        const from = [
          ...scraps,
          ...sheets.map(({ size: { width, height }, count, scrap }, index) => ({
            width: inch(width),
            height: inch(height),
            count: count! - begun[index]!,
            cost: scrap ? 0 : inch(width) * inch(height),
          })),
        ];
        const leastFor = (needOf: (piece: Piece) => number) => {
          const items = plan.pieces
            .map((piece) => ({
              width: inch(piece.size.width),
              height: inch(piece.size.height),
              need: needOf(piece) - (made.get(piece.id) ?? 0),
              turns: piece.turn === 'free',
            }))
            .filter(({ need }) => need > 0);
          return items.length === 0 ? { cost: 0 } : leastByTrying({ items, sheets: from, limits }, 20);
        };
        if (answer.kind === 'short') {
          seen.short += 1;
          expect(leastFor(({ need }) => need)).toBeNull();
          return;
        }
        const { way } = answer.papers.get('ivory')!;
        if (way === 'again') seen.again += 1;
        const { cost, bound, proved, measuredIn } = answer.plan.papers.get('ivory')!;
        const area = measuredIn === 'sheets' ? inch(sheets[0]!.size.width) * inch(sheets[0]!.size.height) : 1;
        expect(alike || measuredIn === 'square inches').toBe(true);
        // The spares that are asked for may have taken the place of what is spoiled, never more.
        const needs = new Map(answer.plan.pieces.map(({ id, need }) => [id, need]));
        for (const { id, need, spare } of plan.pieces)
          expect(needs.get(id)).toBeGreaterThanOrEqual(need - spare);
        const isWholeSet = plan.pieces.every(({ id, need }) => needs.get(id) === need);
        const least = leastFor(({ id }) => needs.get(id)!)!;
        expect(bound * area).toBeLessThanOrEqual(least.cost + 1e-6);
        expect(least.cost).toBeLessThanOrEqual(cost * area + 1e-6);
        if (isWholeSet || way === 'again') expect(proved).toBe(true);

        // Followed by the checker, and by hand from what the rules left.
        const conditions = { ...replayConditions(answer.layout, null), numberedOn: true };
        expect(replay(planRecord(answer.plan), conditions)).toEqual([]);
        const start = left.map(([id, [width, height]]) => ({ id, size: { width, height } }));
        if (found !== null) start.push({ id: 'ivory.found-1', size: found });
        const fresh = wholeSheets(answer).filter(({ id }) => !there.has(id));
        const end = replayed(answer.plan.steps, [...start, ...fresh]).table;
        for (const [id, piece] of answer.plan.finished) {
          const [width, height] = end.get(id)!;
          const of = plan.pieces.find((candidate) => candidate.id === piece)!;
          const sizes = [[of.size.width, of.size.height]];
          if (of.turn === 'free') sizes.push([of.size.height, of.size.width]);
          expect(sizes).toContainEqual([width, height]);
        }
        for (const [id, need] of needs)
          expect(
            [...answer.plan.finished.values()].filter((piece) => piece === id).length,
          ).toBeGreaterThanOrEqual(need);
        wholeSheets(answer).forEach(({ stock }) => {
          begun[stock]! += 1;
        });
        for (const [index, { count }] of sheets.entries()) expect(begun[index]).toBeLessThanOrEqual(count!);
      }),
      { numRuns: 400 },
    );
    expect(seen.plans).toBeGreaterThan(60);
    expect(seen.again).toBeGreaterThan(10);
    expect(seen.short).toBeGreaterThan(5);
  });

  it('a piece that is spoiled never costs fewer sheets for as many pieces; a recut can be recut', () => {
    let compared = 0;
    fc.assert(
      fc.property(anySet, fc.nat(), ({ set, cut, spoiled: at }, further) => {
        const plan = planSet(set);
        if (plan.kind !== 'plan') return;
        const inHand = { plan, onTable: untouchedTable };
        const done = doneUpTo(plan, cut);
        const well = recut(set, inHand, { done });
        const gone = chosen(followedTo(inHand, done), at);
        const answer = recutSet(
          set,
          tableOf(set, inHand, { done, spoiled: gone.map((id) => ({ kind: 'workpiece', id })) }),
        );
        if (answer.kind === 'short') return;
        const area = (of: Recut) =>
          wholeSheets(of).reduce((sum, { stock, size: { width, height } }) => {
            return sum + (of.layout.papers.get('ivory')!.sheets[stock]!.scrap ? 0 : width * height);
          }, 0);
        // Spares that take the place of what is spoiled are cut no more, and may need no sheet of their own.
        const needs = new Map(answer.plan.pieces.map(({ id, need }) => [id, need]));
        if (plan.pieces.every(({ id, need }) => needs.get(id) === need)) {
          compared += 1;
          expect(area(answer)).toBeGreaterThanOrEqual(area(well));
        }

        // On from there: some more steps, all well; then the rest, to the end.
        const next = recut(set, answer, { done: doneUpTo(answer.plan, further) });
        expect(
          replay(planRecord(next.plan), { ...replayConditions(next.layout, null), numberedOn: true }),
        ).toEqual([]);
        expect([...next.plan.finished.values()].sort()).toEqual([...answer.plan.finished.values()].sort());
        const end = recut(set, next, { done: all(...next.plan.steps.map(({ step }) => step)) });
        expect(end.plan.steps).toEqual([]);
        expect([...end.plan.finished.values()].sort()).toEqual([...answer.plan.finished.values()].sort());
      }),
      { numRuns: 80 },
    );
    expect(compared).toBeGreaterThan(20);
  });
});

it('holds to margins and to what a trimmer can do, wherever the cutting stops', () => {
  const trimmer: Trimmer = {
    name: 'Small one',
    marks: inches(1, 8),
    longest: inches(13),
    narrowest: inches(1, 2),
    reach: { measuringSide: inches(9), otherSide: inches(4) },
    correction: inches(1, 32),
    measuringEdge: 'left',
    hand: 'right',
    sheetsAtOnce: 1,
    cutsPerSitting: null,
  };
  const eighths = (min: number, max: number) => fc.integer({ min, max }).map((count) => inches(count, 8));
  const edge = fc.constantFrom(zero, inches(1, 2), inches(3, 4));
  const margin = fc.record({ left: edge, right: edge, top: edge, bottom: edge });
  const anySet = fc
    .record({
      count: fc.integer({ min: 2, max: 14 }),
      sheets: fc.array(
        fc.record({
          size: fc.record({ width: eighths(56, 96), height: eighths(56, 96) }),
          count: fc.integer({ min: 2, max: 5 }),
          margin,
        }),
        { minLength: 1, maxLength: 2 },
      ),
      parts: fc.array(fc.record({ width: eighths(8, 40), height: eighths(8, 40) }), {
        minLength: 1,
        maxLength: 3,
      }),
      stop: fc.nat(),
      gone: fc.array(fc.nat(), { minLength: 1, maxLength: 2 }),
    })
    .map(({ count, sheets, parts, stop, gone }) => {
      const sketches = parts.map(
        ({ width, height }, index) => [`p${index}`, { size: [width, height] }] as const,
      );
      const set = cards(count, [paper('ivory', sheets, 'one-way')], Object.fromEntries(sketches));
      return { set: { ...set, trimmer }, stop, gone };
    });
  let recutAgain = 0;
  fc.assert(
    fc.property(anySet, ({ set, stop, gone }) => {
      const plan = planSet(set);
      if (plan.kind !== 'plan') return;
      const inHand = { plan, onTable: untouchedTable };
      // The first steps are done; of what then lies there, by its ids, some is spoiled.
      const steps = plan.steps.slice(0, stop % (plan.steps.length + 1));
      const done = all(...steps.map(({ step }) => step));
      const { onTable, whole } = tableOf(set, inHand, { done });
      const there = [...onTable.lying, ...whole].map(({ id }) => id);
      const ids = [...new Set(gone.map((at) => there[at % there.length]!))];
      const answer = recutSet(
        set,
        tableOf(set, inHand, { done, spoiled: ids.map((id) => ({ kind: 'workpiece', id })) }),
      );
      if (answer.kind === 'short') return;
      if (answer.papers.get('ivory')!.way === 'again') recutAgain += 1;
      const conditions = { ...replayConditions(answer.layout, trimmer), numberedOn: true };
      expect(replay(planRecord(answer.plan), conditions)).toEqual([]);
      expect(recut(set, answer, {}).plan).toBe(answer.plan);
    }),
    { numRuns: 40 },
  );
  expect(recutAgain).toBeGreaterThan(5);
});
