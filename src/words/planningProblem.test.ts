import { expect, test } from 'vitest';
import { inches } from '../measure/index.ts';
import type { PlanningProblem } from '../planning/index.ts';
import { planningProblemSentence } from './planningProblem.ts';
import { meadowSet } from './testing/meadowSet.ts';

const { layout } = meadowSet();

function said(problem: Pick<PlanningProblem, 'code' | 'numbers'> & { readonly axis?: string }): string {
  return planningProblemSentence(
    {
      code: problem.code,
      severity: 'error',
      where: 'parts[0]',
      part: 'panel',
      numbers: problem.numbers,
      names: { paper: 'Meadow', ...(problem.axis === undefined ? {} : { axis: problem.axis }) },
    },
    layout,
    { units: 'in', glyphs: 'typed' },
  );
}

const noLimit = { sheets: 1, trimmer: 0, direction: 0, margins: 0, cardsProved: 1 };

test('every planning problem says what was found and where the limit is', () => {
  expect(said({ code: 'short', numbers: { missing: 8, need: 20, proved: 1, cards: 12, ...noLimit } })).toBe(
    'Meadow is short: 8 of the 20 pieces for Panel are wanting. No way of cutting from edge to edge gives them all; that is proved. The papers of this set give 12 cards and no more.',
  );
  expect(
    said({ code: 'short', numbers: { missing: 1, need: 20, proved: 0, cards: 0, ...noLimit, trimmer: 1 } }),
  ).toBe(
    'Meadow is short: 1 of the 20 pieces for Panel is wanting. No way of cutting that gives them all was found. The limit is the trimmer: one without its limits would do. The papers of this set give not even one card.',
  );
  expect(
    said({
      code: 'short',
      numbers: {
        missing: 9,
        need: 9,
        proved: 1,
        cards: 3,
        ...noLimit,
        cardsProved: 0,
        sheets: 0,
        direction: 1,
        margins: 1,
      },
    }),
  ).toBe(
    'There is no sheet of Meadow on hand. Meadow is short: 9 of the 9 pieces for Panel are wanting. No way of cutting from edge to edge gives them all; that is proved. The limit is the direction of the print: a quarter turn of the pieces would do. The limit is the margins: sheets that can be used to the edge would do. The papers of this set give 3 cards, as far as was found.',
  );
  const large = { width: inches(13), height: inches(5), direction: 0, margins: 0 };
  expect(said({ code: 'pieceTooLarge', numbers: { ...large, direction: 1, margins: 1 } })).toBe(
    'Panel (13 x 5 in) is larger than any sheet of Meadow, as the piece has to lie. It would come out if the print might be given a quarter turn. It would come out of a sheet that can be used to the edge.',
  );
  expect(said({ code: 'pieceTooLarge', numbers: large })).toBe(
    'Panel (13 x 5 in) is larger than any sheet of Meadow, as the piece has to lie.',
  );
  expect(
    said({
      code: 'pieceTooNarrow',
      numbers: { width: inches(1, 4), height: inches(5), narrowest: inches(1, 2) },
    }),
  ).toBe('Panel (1/4 x 5 in) is narrower than the 1/2 in that the trimmer can hold.');
  expect(
    said({
      code: 'betweenMarks',
      axis: 'height',
      numbers: { length: inches(225, 64), marks: inches(1, 16), off: inches(1, 64) },
    }),
  ).toBe(
    'Panel is 3 33/64 in high, which falls between the marks: 1/64 in past one, and the next is 1/16 in on.',
  );
  expect(
    said({
      code: 'nothingToSpare',
      numbers: { side: inches(12), count: 3, set: inches(4), missing: 2 },
    }),
  ).toBe(
    'Three times 4 in is all of the 12 in that a sheet of Meadow has, with nothing to spare: a sheet one mark shorter leaves you 2 pieces short. Measure the sheets first.',
  );
  expect(
    said({
      code: 'nothingToSpare',
      numbers: { side: inches(12), count: 3, set: inches(4), moreSheets: 1 },
    }),
  ).toContain('takes 1 sheet more');
  expect(said({ code: 'cannotSquare', numbers: { width: inches(12), height: inches(12) } })).toBe(
    'The margins of a sheet of Meadow (12 x 12 in) cannot be cut off on this trimmer, so that sheet is left alone.',
  );
});

test('a problem without the numbers of its sentence is a fault of ours', () => {
  expect(() => said({ code: 'short', numbers: {} })).toThrow('brings the numbers');
});
