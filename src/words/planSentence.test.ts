import { describe, expect, test } from 'vitest';
import { zero } from '../measure/index.ts';
import type { PaperOutcome, Plan } from '../planning/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { effortSentence, leftoverSentences, planSentence, slackSentences } from './planSentence.ts';
import { meadowSet, size } from './testing/meadowSet.ts';

const { layout, plan } = meadowSet();
const meadow = layout.papers.get('meadow')!;
const typed = { units: 'in', glyphs: 'typed' } as const;

/** The plan with another outcome for Meadow. */
function having(outcome: Partial<PaperOutcome>): Plan {
  return { ...plan, papers: new Map([['meadow', { ...plan.papers.get('meadow')!, ...outcome }]]) };
}

describe('planSentence', () => {
  test('says that a proved plan cannot be bettered', () => {
    expect(planSentence(meadow, plan)).toBe('1 sheet of Meadow; no plan takes fewer.');
  });

  test('says how far a plan without proof may be from the best', () => {
    expect(planSentence(meadow, having({ sheets: 11, cost: 11, bound: 10, proved: false }))).toBe(
      '11 sheets of Meadow; any plan takes at least 10 sheets.',
    );
    // A bound between two whole numbers of sheets is as good as the next whole number.
    expect(planSentence(meadow, having({ sheets: 11, cost: 11, bound: 9.2, proved: false }))).toContain(
      'at least 10 sheets',
    );
  });

  test('speaks of money where there are prices, and of area where sheets differ', () => {
    expect(planSentence(meadow, having({ sheets: 5, cost: 1.75, bound: 1.75, measuredIn: 'price' }))).toBe(
      '5 sheets of Meadow, 1.75 in all; no plan costs less.',
    );
    expect(
      planSentence(meadow, having({ cost: 0.0125, bound: 0.01, proved: false, measuredIn: 'price' })),
    ).toBe('1 sheet of Meadow, 0.0125 in all; any plan costs at least 0.01.');
    expect(planSentence(meadow, having({ cost: 144, bound: 144, measuredIn: 'square inches' }))).toBe(
      '1 sheet of Meadow; no plan takes less paper.',
    );
    expect(
      planSentence(meadow, having({ cost: 144, bound: 99.5, proved: false, measuredIn: 'square inches' })),
    ).toBe('1 sheet of Meadow; any plan takes at least 99.5 square inches of it.');
  });

  test('counts scraps apart', () => {
    const scraps = { ...meadow, sheets: meadow.sheets.map((sheet) => ({ ...sheet, scrap: true })) };
    expect(planSentence(scraps, having({ cost: 0, bound: 0 }))).toBe(
      '1 scrap of Meadow; no whole sheet is cut into.',
    );
    const mixed = { ...meadow, sheets: [meadow.sheets[0]!, { ...meadow.sheets[0]!, scrap: true }] };
    const sheets = [...plan.sheets, { ...plan.sheets[0]!, id: 'meadow-2', stock: 1 }];
    expect(planSentence(mixed, { ...having({ sheets: 2 }), sheets })).toBe(
      '1 sheet and 1 scrap of Meadow; no plan takes fewer.',
    );
  });
});

test('the effort is counted in passes, settings and quarter turns', () => {
  expect(effortSentence(meadow, plan)).toBe('6 passes, 2 settings and 2 quarter turns.');
  expect(effortSentence(meadow, having({ passes: 1, settings: 1, turns: 0, leastSettings: 1 }))).toBe(
    '1 pass and 1 setting.',
  );
  expect(effortSentence(meadow, having({ leastSettings: 2 }))).toBe(
    '6 passes, 2 settings (no fewer will do) and 2 quarter turns.',
  );
  expect(effortSentence(meadow, having({ passes: 0, settings: 0, turns: 0 }))).toBe(
    'Nothing to cut: the sheets are the pieces.',
  );
});

test('the effort tells the strokes of the blade where sheets are cut together', () => {
  const stacking = (sheetsAtOnce: number): Trimmer => ({
    name: '',
    marks: null,
    longest: null,
    narrowest: null,
    reach: { measuringSide: null, otherSide: null },
    correction: zero,
    measuringEdge: 'left',
    hand: 'right',
    sheetsAtOnce,
    cutsPerSitting: null,
  });
  // Two passes on the sheet, and two on each of the two strips: these can lie together.
  expect(effortSentence(meadow, plan, stacking(2))).toBe(
    '6 passes, 2 settings and 2 quarter turns. In stacks of up to 2 that is 4 strokes of the blade.',
  );
  expect(effortSentence(meadow, plan, stacking(1))).toBe('6 passes, 2 settings and 2 quarter turns.');
  const single = { ...plan, steps: plan.steps.slice(0, 1), leftovers: [...plan.leftovers] };
  const finished = new Map(['a', 'b'].map((id) => [id, 'panel/meadow']));
  const papers = having({ passes: 2, settings: 1, turns: 0 }).papers;
  expect(effortSentence(meadow, { ...single, finished, papers }, stacking(2))).toBe(
    '2 passes and 1 setting.',
  );
});

test('leftovers are said with size and direction, equal ones together, largest first', () => {
  expect(leftoverSentences(meadow, plan, typed)).toEqual(['12 x 2 in, stands upright: keep it.']);
  const steps = plan.steps.map((step) => (step.step === 1 ? { ...step, rest: [null] } : step));
  const finished = new Map([...plan.finished].filter(([id]) => id !== 'a1' && id !== 'b1'));
  const leftovers = [
    { id: 'a1', size: size(4, 5), keep: true },
    { id: 'b1', size: size(4, 5), keep: true },
  ];
  expect(leftoverSentences(meadow, { ...plan, steps, finished, leftovers }, typed)).toEqual([
    'Two pieces of 4 x 5 in, stand upright: keep them.',
  ]);
  expect(
    leftoverSentences(
      meadow,
      { ...plan, leftovers: [{ id: 'c', size: size(12, 2), keep: false }] },
      { units: 'mm', glyphs: 'printed' },
    ),
  ).toEqual(['304.8\u00a0× 50.8\u00a0mm: for the snippet box.']);
});

test('what a sheet has nothing to spare in is to be measured first', () => {
  expect(slackSentences(meadow, plan, typed)).toEqual([
    'Measure Meadow first: a sheet has to be a full 12 in wide; there is nothing to spare.',
  ]);
});
