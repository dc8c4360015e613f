import { describe, expect, it } from 'vitest';
import { fileProblemSentence } from '../words/index.ts';
import { type PlanFile, readPlanFile } from './planFile.ts';

/** A plan that cuts one panel off a scrap that lies there. */
const plan = {
  cardwright_plan: 1,
  ticks_per_inch: 40_640,
  cards: 1,
  pieces: [
    {
      piece: 'panel/meadow',
      part: 'panel',
      paper: 'meadow',
      size: [40_640, 81_280],
      need: 1,
      turn: 'locked',
    },
  ],
  sheets: [{ id: 'meadow-1c', paper: 'meadow', stock: 1, size: [60_000, 81_280] }],
  steps: [
    {
      step: 4,
      take: ['meadow-1c'],
      axis: 'width',
      set: 40_640,
      repeat: 1,
      gives: [['meadow-1c1']],
      rest: ['meadow-1c2'],
    },
  ],
  finished: { 'meadow-1c1': 'panel/meadow' },
  leftovers: [{ id: 'meadow-1c2', size: [19_360, 81_280], keep: false }],
  papers: {
    meadow: { sheets: 1, cost: 0, bound: 0, proved: true, passes: 1, settings: 1, turns: 0 },
  },
  recut: {
    steps: 3,
    moreSpares: {},
    papers: {
      meadow: {
        begun: [1],
        sheets: 1,
        lying: [
          { id: 'meadow-1c', size: [60_000, 81_280], stock: 0, from: { kind: 'rest', step: 2 } },
          { id: 'meadow.found-1', size: [9_000, 9_000], margin: { left: 10 }, stock: null, from: null },
        ],
      },
    },
  },
} as const satisfies PlanFile;

/** The sentences on the plan with some of its fields changed. */
function refused(changes: object): readonly string[] {
  const read = readPlanFile(JSON.stringify({ ...plan, ...changes }));
  return 'problems' in read ? read.problems.map((problem) => fileProblemSentence(problem)) : [];
}

describe('a plan file', () => {
  it('is read as it was written', () => {
    expect(readPlanFile(JSON.stringify(plan))).toEqual({ plan });
  });

  it('may hold more than is needed', () => {
    const steps = plan.steps.map((step) => ({ ...step, note: 'mind the corner' }));
    expect(readPlanFile(JSON.stringify({ ...plan, steps, stakes: [1, 2], 'x-tool': null }))).toEqual({
      plan,
    });
  });

  it.each<[string, object, string]>([
    ['no list of steps', { steps: 5 }, 'steps holds 5; it may hold a list as plan --json writes it'],
    [
      'a length in inches',
      { sheets: [{ ...plan.sheets[0], size: ['1 in', 40_640] }] },
      'sheets[0].size[0] holds "1 in"; it may hold a whole number of ticks',
    ],
    ['a size of one', { sheets: [{ ...plan.sheets[0], size: [1] }] }, 'sheets[0].size holds'],
    [
      'an axis that is none',
      { steps: [{ ...plan.steps[0], axis: 'depth' }] },
      'steps[0].axis holds "depth"; it may hold "width" or "height"',
    ],
    [
      'a step that takes nothing',
      { steps: [{ ...plan.steps[0], take: [] }] },
      'steps[0].take holds an empty list',
    ],
    ['other ticks', { ticks_per_inch: 25_400 }, 'ticks_per_inch holds 25400; it may hold the number 40640'],
    [
      'a turn that is none',
      { pieces: [{ ...plan.pieces[0], turn: 'loose' }] },
      'pieces[0].turn holds "loose"; it may hold "locked" or "free"',
    ],
    ['finished as a list', { finished: [] }, 'finished holds'],
    [
      'a negative cost',
      { papers: { meadow: { ...plan.papers.meadow, cost: -1 } } },
      'papers.meadow.cost holds -1; it may hold a number from 0',
    ],
    [
      'a margin on no edge',
      {
        recut: {
          ...plan.recut,
          papers: {
            meadow: {
              begun: [],
              sheets: 0,
              lying: [{ ...plan.recut.papers.meadow.lying[1], margin: { corner: 5 } }],
            },
          },
        },
      },
      'recut.papers.meadow.lying[0].margin',
    ],
    ['no cards', { cards: 0 }, 'cards holds 0; it may hold a whole number from 1 to 100 000.'],
  ])('is refused with %s', (_, changes, says) => {
    const said = refused(changes);
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(says);
  });
});
