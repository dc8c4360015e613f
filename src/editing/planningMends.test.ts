import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import type { Json, JsonObject } from '../files/index.ts';
import { inches } from '../measure/index.ts';
import {
  checkSet,
  type PlanningCode,
  type PlanningProblem,
  planSet,
  type Shortage,
  usualMarks,
} from '../planning/index.ts';
import { testSolver } from '../planning/testing/solver.ts';
import type { Trimmer } from '../trimming/index.ts';
import { trimmerWith } from '../trimming/testing/trimmers.ts';
import { editSentence } from '../words/index.ts';
import type { InHand } from './inHand.ts';
import { mendHolds } from './mends.ts';
import { planningMendsOf } from './planningMends.ts';
import { edited, inHandOf } from './testing/handmade.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await testSolver();
});

interface Looked {
  readonly problems: readonly PlanningProblem[];
  readonly shortage: Shortage | null;
}

function looked({ layout, arrangement }: InHand, trimmer: Trimmer | null): Looked {
  const set = { layout, arrangement, trimmer, solver };
  const answer = planSet(set);
  return { problems: checkSet(set, answer), shortage: answer.kind === 'short' ? answer : null };
}

/** What is offered for each problem, tried by planning again; how many that were not sure do not hold. */
function tried(before: InHand, trimmer: Trimmer | null = null) {
  const { problems, shortage } = looked(before, trimmer);
  const marks = trimmer?.marks ?? usualMarks(before.layout);
  const offered: { code: PlanningCode; says: string; holds: boolean }[] = [];
  for (const problem of problems) {
    const mends = planningMendsOf(before, problem, { marks, shortage });
    expect(mends.length).toBeLessThanOrEqual(3);
    for (const { edit, sure } of mends) {
      const after = looked(edited(before, edit), trimmer).problems;
      const gone = !after.some(
        ({ code, where, names }) =>
          code === problem.code &&
          where === problem.where &&
          names.axis === problem.names.axis &&
          names.piece === problem.names.piece,
      );
      const worse = after.some(
        (one) =>
          one.severity === 'error' &&
          !problems.some(
            ({ code, where, names }) =>
              code === one.code && where === one.where && names.piece === one.names.piece,
          ),
      );
      const holds = gone && !worse;
      expect(mendHolds(problem, problems, after)).toBe(holds);
      const says = editSentence(edit.told);
      if (sure) expect(holds, says).toBe(true);
      offered.push({ code: problem.code, says, holds });
    }
  }
  return offered;
}

function card(
  parts: readonly JsonObject[],
  papers: JsonObject,
  more: Readonly<Record<string, Json>> = {},
): InHand {
  return inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 10,
    base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
    papers,
    parts,
    ...more,
  });
}

const says = (code: PlanningCode, of: ReturnType<typeof tried>) =>
  of
    .filter((one) => one.code === code)
    .map(({ says: sentence, holds }) => (holds ? sentence : `(${sentence})`));

describe('a mend of what planning finds', () => {
  it('of papers that are short: fewer cards, more sheets, pieces freed', () => {
    const meadow = { name: 'Meadow', up: 'one-way', sheets: [{ size: ['6', '6'], count: 2 }] };
    const before = card([{ id: 'panel', size: ['3', '2'], paper: 'meadow' }], { meadow });
    expect(says('short', tried({ ...before }))).toEqual([]);
    const more = card([{ id: 'panel', size: ['3', '2'], paper: 'meadow' }], { meadow }, { cards: 14 });
    expect(says('short', tried(more))).toEqual(['The set: 12 cards.', 'Meadow: 3 sheets on hand, 1 more.']);
    const lying = card([{ id: 'panel', size: ['4', '2'], paper: 'meadow' }], { meadow }, { cards: 8 });
    expect(says('short', tried(lying))).toEqual([
      'The set: 6 cards.',
      'Meadow: 3 sheets on hand, 1 more.',
      'Meadow: cut either way, so that the print may lie on its side.',
    ]);
  });

  it('of pieces that no sheet or trimmer gives', () => {
    const meadow = { name: 'Meadow', up: 'one-way', sheets: [{ size: ['4', '6'], count: null }] };
    const large = (size: readonly string[]) => card([{ id: 'panel', size, paper: 'meadow' }], { meadow });
    expect(says('pieceTooLarge', tried(large(['4 1/4', '2'])))).toEqual([
      'Panel: cut either way, so that the print may lie on its side.',
      'Panel: width 4 in.',
    ]);
    const narrow = card([{ id: 'strip', size: ['3/8', '5'], paper: 'meadow' }], { meadow });
    const trimmer = trimmerWith({ marks: inches(1, 16), narrowest: inches(1, 2) });
    expect(says('pieceTooNarrow', tried(narrow, trimmer))).toEqual(['Strip: width 1/2 in.']);
  });

  it('of lengths between the marks: the mark below and above', () => {
    const plain = { plain: { sheets: [{ size: ['12', '12'], count: null }] } };
    const at = (part: JsonObject) =>
      says('betweenMarks', tried(card([{ id: 'panel', paper: 'plain', ...part }], plain)));
    expect(at({ size: ['2 1/32', '3'] })).toEqual(['Panel: width 2 in.', 'Panel: width 2 1/16 in.']);
    expect(at({ size: ['3', '2 3/64'], lies: 'sideways' })).toEqual([
      'Panel: height 2 1/16 in.',
      'Panel: height 2 in.',
    ]);
    expect(at({ size: ['fill', '3'], place: { right: '1/8', left: '3/32' } })).toEqual([
      'Panel: 5/32 in from the right.',
      'Panel: 3/32 in from the right.',
    ]);
    const inset = at({ inset: '9/64' });
    expect(inset).toContain('Panel: inset 5/32 in.');
    const base = card([], plain, { base: { size: ['4 1/64', '5 1/2'], fold: 'left', paper: 'plain' } });
    expect(says('betweenMarks', tried(base))[0]).toBe('The base: width 4 in.');
  });

  it('of fits with nothing to spare: the piece a mark shorter', () => {
    const meadow = { name: 'Meadow', up: 'one-way', sheets: [{ size: ['12', '6'], count: null }] };
    const before = card([{ id: 'panel', size: ['3', '2 1/2'], paper: 'meadow' }], { meadow }, { cards: 8 });
    expect(says('nothingToSpare', tried(before))).toEqual(['Panel: width 2 15/16 in.']);
  });

  it('holds where it is sure, on random small sets', () => {
    const length = (most: number) => fc.integer({ min: 4, max: most * 8 }).map((count) => `${count}/8`);
    const odd = (most: number) => fc.integer({ min: 16, max: most * 64 }).map((count) => `${count}/64`);
    const size = fc.tuple(fc.oneof(length(5), odd(5)), fc.oneof(length(5), odd(5)));
    const sheet = fc.record({
      size: fc.tuple(length(9), length(9)),
      count: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 3 })),
    });
    const offers = { all: 0, held: 0 };
    fc.assert(
      fc.property(
        fc.array(sheet, { minLength: 1, maxLength: 2 }),
        fc.constantFrom('any', 'one-way', 'two-way'),
        fc.array(fc.record({ size, lies: fc.constantFrom('upright', 'sideways'), spare: fc.nat(2) }), {
          minLength: 1,
          maxLength: 2,
        }),
        fc.integer({ min: 1, max: 8 }),
        fc.boolean(),
        (sheets, up, parts, cards, marked) => {
          const before = card(
            parts.map((part, index) => ({ id: `p${index}`, paper: 'meadow', ...part })),
            { meadow: { up, sheets } },
            { cards },
          );
          const trimmer = marked ? trimmerWith({ marks: inches(1, 16), narrowest: inches(1, 2) }) : null;
          for (const { holds } of tried(before, trimmer)) {
            offers.all += 1;
            offers.held += Number(holds);
          }
        },
      ),
      { numRuns: 40 },
    );
    expect(offers.all).toBeGreaterThan(40);
    expect(offers.held).toBeGreaterThan(offers.all / 2);
  });
});
