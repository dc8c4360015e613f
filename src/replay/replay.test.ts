import { describe, expect, it } from 'vitest';
import { type PlanRecord, type ReplayConditions, replay } from './index.ts';

/** 1/8 in, so that the numbers of this file can be read. */
const eighth = 5_080;

/** Worked by hand: a sheet of 12 x 12 in gives ten panels of 2 1/4 x 5, where seven are needed; 12 x 2 is kept. */
const truePlan: PlanRecord = {
  cardwright_plan: 1,
  ticks_per_inch: 40640,
  cards: 7,
  pieces: [
    {
      piece: 'panel/meadow',
      part: 'panel',
      paper: 'meadow',
      size: [18 * eighth, 40 * eighth],
      need: 7,
      turn: 'locked',
    },
  ],
  sheets: [{ id: 'meadow-1', paper: 'meadow', stock: 0, size: [96 * eighth, 96 * eighth] }],
  steps: [
    {
      step: 1,
      take: ['meadow-1'],
      axis: 'height',
      set: 40 * eighth,
      repeat: 2,
      gives: [['a', 'b']],
      rest: ['c'],
    },
    {
      step: 2,
      take: ['a', 'b'],
      axis: 'width',
      set: 18 * eighth,
      repeat: 5,
      gives: [
        ['a1', 'a2', 'a3', 'a4', 'a5'],
        ['b1', 'b2', 'b3', 'b4', 'b5'],
      ],
      rest: ['a6', 'b6'],
    },
  ],
  finished: Object.fromEntries(
    ['a1', 'a2', 'a3', 'a4', 'a5', 'b1', 'b2', 'b3', 'b4', 'b5'].map((id) => [id, 'panel/meadow']),
  ),
  leftovers: [
    { id: 'c', size: [96 * eighth, 16 * eighth], keep: true },
    { id: 'a6', size: [6 * eighth, 40 * eighth], keep: false },
    { id: 'b6', size: [6 * eighth, 40 * eighth], keep: false },
  ],
  papers: {
    meadow: { sheets: 1, cost: 1, bound: 1, proved: true, passes: 12, settings: 2, turns: 2 },
  },
};

const noMargin = { left: 0, right: 0, top: 0, bottom: 0 };
const onHand: ReplayConditions = {
  stock: new Map([['meadow', [{ size: [96 * eighth, 96 * eighth], count: 1, cost: 1, margin: noMargin }]]]),
};

/** A copy of the true plan that a test may spoil. */
type Draft<T> = { -readonly [K in keyof T]: T[K] extends object ? Draft<T[K]> : T[K] };
function spoiled(spoil: (plan: Draft<PlanRecord>) => void): PlanRecord {
  const plan = structuredClone(truePlan) as Draft<PlanRecord>;
  spoil(plan);
  return plan;
}

function codesOf(plan: PlanRecord, conditions: ReplayConditions = onHand): readonly string[] {
  return [...new Set(replay(plan, conditions).map((fault) => fault.code))];
}

describe('a true plan', () => {
  it('has no fault', () => {
    expect(replay(truePlan, onHand)).toEqual([]);
  });

  it('may give a piece turned where it is free', () => {
    const turned = spoiled((plan) => {
      plan.pieces[0]!.size = [40 * eighth, 18 * eighth];
      plan.pieces[0]!.turn = 'free';
    });
    expect(replay(turned, onHand)).toEqual([]);
  });

  it('may be a sheet that is itself a finished piece', () => {
    const whole = spoiled((plan) => {
      plan.pieces[0]!.size = [96 * eighth, 96 * eighth];
      plan.pieces[0]!.need = 1;
      plan.steps = [];
      plan.finished = { 'meadow-1': 'panel/meadow' };
      plan.leftovers = [];
      Object.assign(plan.papers.meadow!, { passes: 0, settings: 0, turns: 0 });
    });
    expect(replay(whole, onHand)).toEqual([]);
  });

  it('needs no pass for the last of pieces that use the workpiece up', () => {
    const halves = spoiled((plan) => {
      plan.pieces[0]!.size = [48 * eighth, 96 * eighth];
      plan.pieces[0]!.need = 2;
      plan.steps = [
        {
          step: 1,
          take: ['meadow-1'],
          axis: 'width',
          set: 48 * eighth,
          repeat: 2,
          gives: [['l', 'r']],
          rest: [null],
        },
      ];
      plan.finished = { l: 'panel/meadow', r: 'panel/meadow' };
      plan.leftovers = [];
      Object.assign(plan.papers.meadow!, { passes: 1, settings: 1, turns: 0 });
    });
    expect(replay(halves, onHand)).toEqual([]);
  });
});

describe('each way a plan can be wrong is found and named', () => {
  const cases: readonly [string, (plan: Draft<PlanRecord>) => void][] = [
    ['step-number', (plan) => Object.assign(plan.steps[1]!, { step: 3 })],
    ['take-nothing', (plan) => Object.assign(plan.steps[1]!, { take: [], gives: [], rest: [] })],
    ['not-on-the-table', (plan) => Object.assign(plan.steps[1]!, { take: ['a', 'nowhere'] })],
    ['not-on-the-table', (plan) => Object.assign(plan.steps[1]!, { take: ['a', 'a'] })],
    ['unequal-workpieces', (plan) => Object.assign(plan.steps[1]!, { take: ['a', 'c'] })],
    ['id-used-twice', (plan) => Object.assign(plan.steps[0]!, { rest: ['a'] })],
    ['wrong-count', (plan) => plan.steps[0]!.gives[0]!.pop()],
    ['wrong-count', (plan) => plan.steps[1]!.rest.pop()],
    ['does-not-fit', (plan) => Object.assign(plan.steps[0]!, { set: 49 * eighth })],
    ['rest-differs', (plan) => Object.assign(plan.steps[0]!, { rest: [null] })],
    ['rest-differs', (plan) => Object.assign(plan.steps[0]!, { set: 48 * eighth })],
    [
      'no-pass',
      (plan) => Object.assign(plan.steps[0]!, { repeat: 1, set: 96 * eighth, gives: [['a']], rest: [null] }),
    ],
    ['unknown-piece', (plan) => Object.assign(plan.finished, { a1: 'panel/bark' })],
    ['wrong-paper', (plan) => Object.assign(plan.pieces[0]!, { paper: 'bark' })],
    ['wrong-size', (plan) => Object.assign(plan.pieces[0]!, { size: [18 * eighth, 40 * eighth + 1] })],
    ['wrong-size', (plan) => Object.assign(plan.pieces[0]!, { size: [40 * eighth, 18 * eighth] })],
    ['finished-is-not-there', (plan) => Object.assign(plan.finished, { a: 'panel/meadow' })],
    ['leftover-differs', (plan) => Object.assign(plan.leftovers[0]!, { size: [16 * eighth, 96 * eighth] })],
    ['leftover-differs', (plan) => Object.assign(plan.leftovers[0]!, { id: 'd' })],
    ['left-on-the-table', (plan) => plan.leftovers.pop()],
    [
      'sheet-not-used',
      (plan) => {
        plan.sheets.push({ ...plan.sheets[0]!, id: 'meadow-2' });
        plan.leftovers.push({ id: 'meadow-2', size: [96 * eighth, 96 * eighth], keep: true });
      },
    ],
    ['too-few', (plan) => Object.assign(plan.pieces[0]!, { need: 11 })],
    ['unknown-sheet', (plan) => Object.assign(plan.sheets[0]!, { stock: 1 })],
    ['too-many-sheets', (plan) => plan.sheets.push({ ...plan.sheets[0]!, id: 'meadow-2' })],
    ['figure-differs', (plan) => Object.assign(plan.papers.meadow!, { passes: 11 })],
    ['figure-differs', (plan) => Object.assign(plan.papers.meadow!, { settings: 1 })],
    ['figure-differs', (plan) => Object.assign(plan.papers.meadow!, { turns: 0 })],
    ['figure-differs', (plan) => Object.assign(plan.papers.meadow!, { cost: 2, bound: 2 })],
    ['figure-differs', (plan) => Reflect.deleteProperty(plan.papers, 'meadow')],
    ['proof-differs', (plan) => Object.assign(plan.papers.meadow!, { bound: 0 })],
    ['proof-differs', (plan) => Object.assign(plan.papers.meadow!, { proved: false })],
    ['proof-differs', (plan) => Object.assign(plan.papers.meadow!, { bound: 2 })],
  ];
  it.each(cases)('%s', (code, spoil) => {
    expect(codesOf(spoiled(spoil))).toContain(code);
  });
});

describe("a trimmer's limits", () => {
  const within = (trimmer: NonNullable<ReplayConditions['trimmer']>) =>
    codesOf(truePlan, { ...onHand, trimmer });

  it('are kept by this plan at 1/4 in marks, 12 in cuts and strips from 1 1/2 in', () => {
    // The waste of 6/8 in is narrower, and may be.
    expect(within({ marks: 2 * eighth, longest: 96 * eighth, narrowest: 12 * eighth })).toEqual([]);
  });
  it('name a setting off the marks', () => {
    expect(within({ marks: 4 * eighth, longest: null, narrowest: null })).toEqual(['off-the-marks']);
  });
  it('name a cut that is too long', () => {
    expect(within({ marks: null, longest: 95 * eighth, narrowest: null })).toEqual(['cut-too-long']);
  });
  it('name a setting beyond the reach of its side of the blade', () => {
    const reaching = (measuringSide: number | null, otherSide: number | null) =>
      ({ marks: null, longest: null, narrowest: null, reach: { measuringSide, otherSide } }) as const;
    expect(within(reaching(40 * eighth, null))).toEqual([]);
    expect(within(reaching(40 * eighth - 1, 96 * eighth))).toEqual(['beyond-reach']);
    const across = spoiled((plan) => Object.assign(plan.steps[0]!, { otherSide: true }));
    const codes = (trimmer: ReturnType<typeof reaching>) => codesOf(across, { ...onHand, trimmer });
    expect(codes(reaching(35 * eighth, 40 * eighth))).toEqual([]);
    expect(codes(reaching(96 * eighth, 40 * eighth - 1))).toEqual(['beyond-reach']);
    expect(codes(reaching(96 * eighth, null))).toEqual(['beyond-reach']);
  });
  it('name a dial that does not make up for what the ruler is off', () => {
    const off = { marks: null, longest: null, narrowest: null, correction: 3 };
    expect(within(off)).toEqual(['dial-differs']);
    const corrected = spoiled((plan) => {
      for (const step of plan.steps) Object.assign(step, { dial: step.set - 3 });
    });
    expect(codesOf(corrected, { ...onHand, trimmer: off })).toEqual([]);
    expect(codesOf(corrected, { ...onHand, trimmer: { ...off, correction: 0 } })).toEqual(['dial-differs']);
    // Whose trimmer it is, is not known then.
    expect(codesOf(corrected, onHand)).toEqual([]);
    // The reach is what the ruler reads, not what comes off.
    const short = { ...off, reach: { measuringSide: 40 * eighth - 3, otherSide: null } };
    expect(codesOf(corrected, { ...onHand, trimmer: short })).toEqual([]);
  });
  it('name strips too narrow to cut again or to keep', () => {
    expect(within({ marks: null, longest: null, narrowest: 19 * eighth })).toEqual(['strip-too-narrow']);
  });
});

describe('a margin of a sheet', () => {
  const withMargin: ReplayConditions = {
    stock: new Map([
      [
        'meadow',
        [{ size: [96 * eighth, 96 * eighth], count: 1, cost: 1, margin: { ...noMargin, right: 6 * eighth } }],
      ],
    ]),
  };
  /** The same panels, the right margin of 6/8 in cut off before anything else. */
  const squared = spoiled((plan) => {
    const [first, second] = plan.steps;
    plan.steps = [
      {
        step: 1,
        take: ['meadow-1'],
        axis: 'width',
        set: 90 * eighth,
        repeat: 1,
        gives: [['s']],
        rest: ['margin'],
      },
      { ...first!, step: 2, take: ['s'] },
      { ...second!, step: 3, rest: [null, null] },
    ];
    plan.leftovers = [
      { id: 'c', size: [90 * eighth, 16 * eighth], keep: true },
      { id: 'margin', size: [6 * eighth, 96 * eighth], keep: false },
    ];
    Object.assign(plan.papers.meadow!, { passes: 11, settings: 3, turns: 3 });
  });

  it('is cut off first in a true plan', () => {
    expect(replay(squared, withMargin)).toEqual([]);
  });
  it('may be measured off itself', () => {
    const measured = structuredClone(squared) as Draft<PlanRecord>;
    Object.assign(measured.steps[0]!, { set: 6 * eighth, gives: [['margin']], rest: ['s'] });
    expect(replay(measured as PlanRecord, withMargin)).toEqual([]);
  });
  it('is no part of what is cut or kept', () => {
    expect(codesOf(truePlan, withMargin)).toEqual(['not-squared', 'margin-used']);
    const kept = structuredClone(squared) as Draft<PlanRecord>;
    kept.leftovers[1]!.keep = true;
    expect(codesOf(kept as PlanRecord, withMargin)).toEqual(['margin-used']);
  });
});
