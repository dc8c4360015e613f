import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { readLayoutFile } from '../files/index.ts';
import { leftoverUses, planSet } from '../planning/index.ts';
import { testSolver } from '../planning/testing/solver.ts';
import { newScraps, restocked, usedSheets } from './index.ts';
import { edited, inHandOf } from './testing/handmade.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

/** Seven mats of 4 x 3: six of a letter sheet, one of the scrap; the tags come of the 8 1/2 x 1 1/2 in that are left. */
const file = JSON.stringify({
  cardwright: 1,
  units: 'in',
  cards: 7,
  base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
  papers: {
    plum: {
      sheets: [
        { size: ['8 1/2', '11'], count: 3, grain: 'height', margin: { top: '1/2' } },
        { size: ['4 1/2', '3 1/4'], count: 1, scrap: true },
      ],
    },
    moss: { sheets: [{ size: ['6', '6'], count: null }] },
    bark: { sheets: [{ size: ['6', '6'], count: 2 }] },
  },
  extras: [{ name: 'Tag', size: ['1 1/2', '2'], count: 2, paper: 'plum' }],
  parts: [
    { id: 'mat', size: ['4', '3'], paper: 'plum' },
    { id: 'square', size: ['2', '2'], paper: 'moss' },
  ],
});

function cutSet() {
  const read = readLayoutFile(file);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  const hand = inHandOf(read.file);
  const set = { ...hand, trimmer: null, solver };
  const plan = planSet(set);
  if (plan.kind !== 'plan') throw new Error('expected a plan');
  const uses = leftoverUses(set, plan);
  const edit = restocked(hand.file, hand.layout, {
    used: usedSheets(plan),
    scraps: newScraps(hand.layout, uses.kept),
  });
  return { hand, plan, uses, after: edited(hand, edit) };
}

describe('the stash once a set is cut', () => {
  it('has the used sheets out and the leftovers in, with their grain and without the margin that was cut off', () => {
    const { after, plan, hand } = cutSet();
    const plum = after.layout.papers.get('plum')!.sheets;
    const begun = plan.sheets.filter(({ paper, stock }) => paper === 'plum' && stock === 0).length;
    expect(plum[0]).toMatchObject({ count: 3 - begun, grain: 'height' });
    // The scrap is used up and goes; what is kept of the sheets comes in.
    expect(
      plum.some(({ size }) => size.width === hand.layout.papers.get('plum')!.sheets[1]!.size.width),
    ).toBe(false);
    const scraps = plum.filter(({ scrap }) => scrap);
    expect(scraps.length).toBeGreaterThan(0);
    for (const { grain, margin } of scraps) {
      expect(grain).toBe('height');
      expect(Object.values(margin)).toEqual([0, 0, 0, 0]);
    }
    // As many as needed stays so, and what was not cut is as it was.
    expect(after.layout.papers.get('moss')!.sheets[0]!.count).toBeNull();
    expect(after.layout.papers.get('bark')!.sheets).toEqual(hand.layout.papers.get('bark')!.sheets);
  });

  it('loses and gains no paper: what was on hand is what is left, the pieces, the extras, and what is thrown away', () => {
    const { hand, plan, uses, after } = cutSet();
    const area = ({ width, height }: { width: number; height: number }) => BigInt(width) * BigInt(height);
    const sum = (areas: readonly bigint[]) => areas.reduce((total, one) => total + one, 0n);
    const onHand = ({ layout }: typeof hand) =>
      sum(layout.papers.get('plum')!.sheets.map(({ size, count }) => area(size) * BigInt(count!)));
    const own = new Set(plan.sheets.filter(({ paper }) => paper === 'plum').map(({ id }) => id));
    for (const { take, gives, rest } of plan.steps)
      if (take.some((id) => own.has(id)))
        for (const id of [...gives.flat(), ...rest]) if (id !== null) own.add(id);
    const pieces = sum(
      [...plan.finished]
        .filter(([id]) => own.has(id))
        .map(([, piece]) => area(plan.pieces.find(({ id }) => id === piece)!.size)),
    );
    const thrown = sum(
      plan.leftovers.filter(({ id, keep }) => own.has(id) && !keep).map(({ size }) => area(size)),
    );
    // Of a leftover that extras are cut from, what is not kept is extras and the waste beside them.
    const taken = sum(uses.used.map(({ size, rests }) => area(size) - sum(rests.map(area))));
    expect(onHand(hand) - onHand(after)).toBe(pieces + thrown + taken);
    expect(uses.used.flatMap(({ places }) => places)).toHaveLength(2);
  });

  it('puts leftovers of one size together, also with scraps that were there', () => {
    const { hand } = cutSet();
    const size = hand.layout.papers.get('plum')!.sheets[1]!.size;
    const scraps = [1, 2].map(() => ({ paper: 'plum', size, grain: null }));
    const edit = restocked(hand.file, hand.layout, { used: new Map(), scraps });
    expect(
      edited(hand, edit)
        .layout.papers.get('plum')!
        .sheets.map(({ count }) => count),
    ).toEqual([3, 3]);
  });
});
