import { describe, expect, it } from 'vitest';
import { inches } from '../measure/index.ts';
import { type TableCode, type TableProblem, tableCodes } from '../planning/index.ts';
import { tableProblemSentence } from './tableProblem.ts';

type Told = Partial<Pick<TableProblem, 'where' | 'numbers' | 'names'>>;

const letter = { width: inches(17, 2), height: inches(11) };

/** For each code what a problem may bring, and what is said of it. */
const cases: Readonly<Record<TableCode, readonly (readonly [told: Told, says: string])[]>> = {
  planPaperUnknown: [
    [
      { names: { paper: 'rose', papers: 'ivory, plum' } },
      'The plan cuts the paper “rose”, which the layout does not have; it has ivory, plum. A plan goes only with the layout it was made from.',
    ],
  ],
  planPieceUnknown: [
    [
      { where: 'pieces[2]', numbers: { cards: 12 }, names: { piece: 'lid/plum' } },
      'pieces[2] of the plan is “lid/plum”, which the layout does not cut for 12 cards. A plan goes only with the layout it was made from.',
    ],
  ],
  planPieceMissing: [
    [
      { where: 'pieces', numbers: { cards: 1 }, names: { piece: 'mat/plum' } },
      'The layout cuts “mat/plum” for 1 card, and the plan does not. A plan goes only with the layout it was made from.',
    ],
  ],
  planPieceDiffers: [
    [
      {
        where: 'pieces[0]',
        numbers: { width: inches(4), height: inches(5), layoutWidth: inches(4), layoutHeight: inches(6) },
        names: { piece: 'mat/plum' },
      },
      'pieces[0] of the plan is “mat/plum” of 4 x 5 in, but in the layout it is 4 x 6 in or turns otherwise. A plan goes only with the layout it was made from.',
    ],
  ],
  planSheetDiffers: [
    [
      { where: 'sheets[0]', numbers: letter, names: { sheet: 'plum-1', paper: 'plum' } },
      'sheets[0] of the plan is “plum-1”, 8 1/2 x 11 in of plum, and there is no such sheet in the layout, nor anything of that name and size on the table.',
    ],
  ],
  planSheetsFewer: [
    [
      { where: 'recut.papers.plum.begun[0]', numbers: { begun: 3, count: 2 }, names: { paper: 'plum' } },
      'recut.papers.plum.begun[0] of the plan says that 3 sheets of plum are cut into; the layout has 2 sheets there.',
    ],
  ],
  planNotTrue: [
    [
      {
        numbers: { step: 3 },
        names: {
          fault: 'not-on-the-table',
          id: 'plum-1a',
          expected: 'a workpiece on the table',
          found: 'none',
        },
      },
      'The plan does not come out when it is followed (step 3): not on the table “plum-1a”, none where it should be a workpiece on the table. It may have been changed by hand, or made for other sheets, prices or another trimmer.',
    ],
  ],
  stepUnknown: [
    [{ numbers: { step: 9, first: 1, last: 4 } }, 'There is no step 9: the plan has steps 1 to 4.'],
    [{ numbers: { step: 1, first: 0, last: 0 } }, 'There is no step 1: the plan has no steps left.'],
  ],
  stepHasFewer: [
    [{ numbers: { step: 2, said: 3, workpieces: 1 } }, 'Step 2 takes 1 workpiece; it cannot be done for 3.'],
  ],
  stepTooEarly: [
    [
      { numbers: { step: 4, by: 3 } },
      'Step 4 cannot be done yet: it takes what step 3 makes, and that is not done so far.',
    ],
  ],
  workpieceUnknown: [
    [
      { names: { id: 'plum-9' } },
      'No workpiece of the plan is called “plum-9”. Pieces that are finished may be told by their number, as "1 panel/meadow"; the names of workpieces stand in plan --json.',
    ],
  ],
  workpieceCutUp: [
    [
      { numbers: { step: 2 }, names: { id: 'plum-1' } },
      '“plum-1” cannot be spoiled now: it was cut up at step 2. Say which of the pieces that were made of it is.',
    ],
  ],
  workpieceNotYet: [
    [
      { numbers: { step: 2 }, names: { id: 'plum-1a' } },
      '“plum-1a” cannot be spoiled yet: step 2 makes it, and that is not done.',
    ],
  ],
  spoiledTwice: [[{ names: { id: 'plum-1' } }, '“plum-1” is said to be spoiled twice; once is enough.']],
  pieceUnknown: [
    [
      { names: { piece: 'lid/plum', pieces: 'mat/plum, tag/plum' } },
      'No piece is called “lid/plum”; it may be mat/plum or tag/plum.',
    ],
  ],
  piecesTooFew: [
    [
      { numbers: { said: 2, finished: 1 }, names: { piece: 'mat/plum' } },
      '2 pieces of “mat/plum” cannot be spoiled: only one is finished by then.',
    ],
    [
      { numbers: { said: 1, finished: 0 }, names: { piece: 'mat/plum' } },
      '1 piece of “mat/plum” cannot be spoiled: none is finished by then.',
    ],
  ],
  paperUnknownOnTable: [
    [{ names: { paper: 'rose', papers: 'ivory' } }, 'The layout has no paper “rose”; it may be ivory.'],
  ],
};

describe('what is wrong with a table', () => {
  const all = Object.entries(cases).flatMap(([code, told]) => told.map((one) => [code, ...one] as const));
  it.each(all)('%s', (code, { where = '', numbers = {}, names = {} }, says) => {
    const problem: TableProblem = { code: code as TableCode, severity: 'error', where, numbers, names };
    expect(tableProblemSentence(problem, { units: 'in', glyphs: 'typed' })).toBe(says);
  });

  it('is said for every code', () => {
    expect(Object.keys(cases).sort()).toEqual(Object.keys(tableCodes).sort());
  });
});
