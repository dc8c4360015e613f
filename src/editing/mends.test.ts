import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json, JsonObject } from '../files/index.ts';
import { checkLayout, type LayoutCode, type LayoutProblem } from '../layout/index.ts';
import { inches, millimetres } from '../measure/index.ts';
import { editSentence, layoutProblemSentence } from '../words/index.ts';
import type { Edit } from './edit.ts';
import type { InHand } from './inHand.ts';
import { mendsOf } from './mends.ts';
import { edited, inHandOf, randomInHand } from './testing/handmade.ts';

const mat = { id: 'mat', inset: '1/8' };
const onMat = { on: 'mat' };

/** A card for each problem. */
const cards: Readonly<Record<string, readonly JsonObject[]>> = {
  sumOff: [mat, { id: 'panel', ...onMat, size: ['3', '4 1/2'], place: { top: '1/4', bottom: '1/4' } }],
  'sumOff 2': [
    mat,
    {
      id: 'panel',
      ...onMat,
      size: ['4', '4'],
      place: { top: '1/4', bottom: '1/2', left: '1/8', right: '1/8' },
    },
  ],
  noRoom: [mat, { id: 'panel', ...onMat, size: ['fill', '4'], place: { left: '3', right: '2' } }],
  insetTooLarge: [mat, { id: 'panel', ...onMat, inset: '2 1/2' }],
  roomsDiffer: [
    { id: 'one', size: ['1', '2'], place: { left: '0', top: '0' } },
    {
      id: 'bars',
      size: ['1', 'fill'],
      count: 2,
      place: [
        { left: '0', below: 'one', gap: '1/8', bottom: '1/8' },
        { right: '0', top: '1/8', bottom: '1/8' },
      ],
    },
  ],
  tornAway: [{ id: 'strip', size: ['4', '1/2'], torn: { top: '1/4', bottom: '1/4' } }],
  largerThanCard: [{ id: 'panel', size: ['5', '4'] }],
  'largerThanCard 2': [{ id: 'panel', size: ['5', '5'] }],
  largerThanPart: [mat, { id: 'panel', ...onMat, size: ['4 1/8', '3'] }],
  'largerThanPart 2': [mat, { id: 'moon', ...onMat, shape: 'circle', diameter: '4 1/8' }],
  overCardEdge: [{ id: 'panel', size: ['3', '3'], place: { left: '2', top: '1' } }],
  negativeBorder: [
    { id: 'mat', inset: '1/2' },
    { id: 'panel', ...onMat, inset: '1/4', place: { left: '3/4' } },
  ],
  overPartEdge: [
    { id: 'one', size: ['2', '3'] },
    { id: 'tag', on: 'one', size: ['1', '1'], place: { left: '1 1/4' } },
  ],
  'overPartEdge rim': [
    { id: 'moon', shape: 'circle', diameter: '2' },
    { id: 'tag', on: 'moon', size: ['1', '1'], place: { left: '1/8', top: '1/8' } },
  ],
  'overPartEdge rim 2': [
    { id: 'moon', shape: 'circle', diameter: '2' },
    { id: 'tag', on: 'moon', size: ['1 3/4', '1 3/4'] },
  ],
  overhang: [{ id: 'tag', size: ['1', '1'], place: { left: '-1/4' } }],
  'overhang 2': [{ id: 'band', size: ['fill', '1'], place: { left: '-1/4' } }],
  unevenBorder: [{ id: 'panel', size: ['4', '5 1/4'], place: { left: '1/16' } }],
  'unevenBorder 2': [{ id: 'panel', size: ['4', '5'] }],
  'unevenBorder 3': [
    { id: 'one', size: ['2', '5 1/4'], place: { left: '1/8' } },
    { id: 'two', size: ['1 3/4', '5 1/4'], place: { rightOf: 'one', gap: '1/8' } },
  ],
  overlap: [
    { id: 'one', size: ['2', '2'], place: { left: '1/4', top: '1/4' } },
    { id: 'two', size: ['1 1/2', '1 1/2'], place: { left: '2', top: '1 1/4' } },
  ],
  negativeGap: [
    { id: 'one', size: ['1 1/2', '2'], place: { left: '1/4', top: '1/4' } },
    { id: 'two', size: ['1', '2'], place: { rightOf: 'one', gap: '-1/4', top: '1/4' } },
  ],
  hidden: [
    { id: 'tag', size: ['1', '1'] },
    { id: 'panel', size: ['3', '4'] },
  ],
  'hidden 2': [
    { id: 'one', size: ['3', '4'] },
    { id: 'two', on: 'one', size: ['3', '4'] },
  ],
  piecesStacked: [{ id: 'dots', size: ['1', '1'], count: 3 }],
  stripTooShort: [{ id: 'ribbon', shape: 'ribbon', size: ['3 1/4', '1/2'], template: '3', slant: 20 }],
  foldedOverItself: [{ id: 'ribbon', shape: 'ribbon', size: ['7', '1/2'], template: '3', slant: -9 }],
  overlapTooLong: [{ id: 'bow', shape: 'loops', size: ['5', '1/2'], template: '1', loops: 2, overlap: '2' }],
  loopsOff: [{ id: 'bow', shape: 'loops', size: ['5', '1/2'], template: '1', loops: 2, overlap: '1/2' }],
};

function cardOf(parts: readonly JsonObject[], more: Readonly<Record<string, Json>> = {}): InHand {
  return inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 4,
    base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
    papers: {},
    parts: parts.map((part) => ({ paper: null, ...part })),
    ...more,
  });
}

const papers = {
  print: { up: 'one-way', sheets: [{ size: ['12', '12'], count: 2 }] },
  card: { sheets: [{ size: ['8 1/2', '11'], count: null, grain: 'height' }] },
  long: { sheets: [{ size: ['11', '8 1/2'], count: null, grain: 'width' }] },
  across: { sheets: [{ size: ['8 1/2', '11'], count: null, grain: 'width' }] },
};
const base = { size: ['4 1/4', '5 1/2'], fold: 'left', paper: 'card' };

/** Cards whose trouble is not in their parts alone. */
const wholeCards: Readonly<Record<string, InHand>> = {
  noInside: cardOf([{ id: 'lining', on: 'inside', inset: '1/8' }], {
    base: { ...base, paper: null, fold: 'none' },
  }),
  directionFreed: cardOf([{ id: 'panel', size: ['2', '3'], paper: 'print', turn: 'free' }], { papers }),
  'directionFreed 2': cardOf([], { papers, base: { ...base, paper: 'print', turn: 'free' } }),
  allowanceTooLarge: cardOf([], { base: { ...base, paper: null, fold: 'roll', allowance: '2 in' } }),
  foldMayCrossGrain: cardOf([], {
    papers: { card: { sheets: [{ size: ['11', '8 1/2'], count: null, grain: 'height' }] } },
    base: { ...base, size: ['4', '5 1/2'] },
  }),
  foldAcrossGrain: cardOf([], { papers, base: { ...base, paper: 'across', turn: 'locked' } }),
};

function allOf(before: InHand): readonly LayoutProblem[] {
  return checkLayout(before.layout, before.arrangement);
}

function mended(name: string, before: InHand, marks = inches(1, 16)): readonly string[] {
  const code = name.split(' ')[0]!;
  const problem = allOf(before).find((one) => one.code === code);
  if (problem === undefined) throw new Error(`${name}: ${JSON.stringify(allOf(before))}`);
  return mendsOf(before, problem, marks).map((edit) => {
    holds(before, problem, edit);
    return editSentence(edit.told);
  });
}

/** The same problem before and after: by its code, its part's field and the way it is wrong. */
function sameAs(problem: LayoutProblem): (other: LayoutProblem) => boolean {
  const field = (one: LayoutProblem) => one.where.replace(/^parts\[\d+\]/, '');
  const sides = (one: LayoutProblem) =>
    ['left', 'top', 'across'].filter((side) => side in one.numbers).join();
  return (other) =>
    other.code === problem.code &&
    other.part === problem.part &&
    field(other) === field(problem) &&
    other.names.axis === problem.names.axis &&
    other.names.edge === problem.names.edge &&
    (problem.code !== 'unevenBorder' || sides(other) === sides(problem));
}

/** Throws where the edit leaves the problem or brings an error; undoing is tried too. */
function holds(before: InHand, problem: LayoutProblem, edit: Edit): void {
  const after = allOf(edited(before, edit));
  const told = `${layoutProblemSentence(problem, { units: 'in', glyphs: 'typed' })} ${editSentence(edit.told)}`;
  expect(after.filter(sameAs(problem)), told).toEqual([]);
  const errors = after.filter(({ severity }) => severity === 'error');
  expect(
    errors.filter((error) => !allOf(before).some(sameAs(error))),
    told,
  ).toEqual([]);
}

/** What is offered for each, as it was looked over. */
const offered: Readonly<Record<string, readonly string[]>> = {
  stripTooShort: ['Ribbon: width 3 5/16 in.'],
  foldedOverItself: ['Ribbon: a slant of -9.5°.', 'Ribbon: template 3 3/16 in.'],
  overlapTooLong: ['Bow: overlap 1 in.'],
  loopsOff: ['Bow: width 4 1/2 in.', 'Bow: overlap 1 in.'],
  sumOff: [
    'Panel: 3/8 in from both the top and the bottom.',
    'Panel: height 4 3/4 in.',
    'Panel: 1/2 in from the bottom.',
  ],
  'sumOff 2': [
    'Panel: width 3 3/4 in.',
    'Panel: as wide as the room it has there.',
    'Panel: the distance from the right left out, so that it is worked out.',
  ],
  noRoom: [
    'Panel: 1/8 in from the right.',
    'Panel: 1/8 in from the left.',
    'Panel: edge to edge on the right.',
  ],
  insetTooLarge: ['Panel: inset 1/8 in.', 'Panel: inset 1 15/16 in.', 'Panel: inset 1 in.'],
  roomsDiffer: ['Bars: height 3 1/4 in.'],
  tornAway: ['Strip: height 1 in.', 'Strip: not torn at the top and the bottom.'],
  largerThanCard: [
    'Panel: as wide as the room it has there.',
    'Panel: width 4 in.',
    'Panel: width 4 1/4 in.',
  ],
  'largerThanCard 2': [
    'Panel: as wide as the room it has there.',
    'Panel: width 4 1/4 in.',
    'Panel: width 4 in.',
  ],
  largerThanPart: [
    'Panel: as wide as the room it has there.',
    'Panel: width 3 3/4 in.',
    'Panel: width 4 in.',
  ],
  'largerThanPart 2': ['Moon: diameter 3 3/4 in.', 'Moon: diameter 4 in.'],
  overCardEdge: [
    'Panel: moved until it lies edge to edge on the right.',
    'Panel: laid in the middle, from left to right.',
    'Panel: moved until it lies 1/8 in from the right.',
  ],
  negativeBorder: [
    'Panel: laid in the middle, from left to right.',
    'Panel: moved until it lies edge to edge on the right.',
    'Panel: moved until it lies 1/2 in from the right.',
  ],
  overPartEdge: [
    'Tag: moved until it lies edge to edge on the right.',
    'Tag: laid in the middle, from left to right.',
    'Tag: moved until it lies 1/8 in from the right.',
  ],
  'overPartEdge rim': ['Tag: laid in the middle.'],
  'overPartEdge rim 2': ['Tag: 1 3/8 in wide and 1 3/8 in high, in the middle.'],
  overhang: [
    'Tag: moved until it lies edge to edge on the left.',
    'Tag: laid in the middle, from left to right.',
    'Tag: moved until it lies 1/8 in from the left.',
  ],
  'overhang 2': ['Band: edge to edge on the left.'],
  unevenBorder: [
    'Panel: laid in the middle, from left to right.',
    'Panel: width 4 1/8 in, with 1/16 in on either side.',
  ],
  'unevenBorder 2': [
    'Panel: height 5 1/4 in, with 1/8 in above and below.',
    'Panel: inset 1/8 in all round.',
    'Panel: width 3 3/4 in, with 1/4 in on either side.',
  ],
  'unevenBorder 3': [
    'Two: moved until it lies 1/8 in from the right.',
    'Two: width 1 7/8 in.',
    'One: moved until it lies 3/16 in from the left.',
  ],
  overlap: [
    'Two: moved until it lies beside one, below it.',
    'Two: raised over what it lies on.',
    'Two: moved until it lies beside one, to the right of it.',
  ],
  negativeGap: ['Two: gap 1/4 in.', 'Two: no gap.'],
  hidden: [
    'Tag: moved up the pile, above panel.',
    'Panel: moved down the pile, below tag.',
    'Tag: taken off the pile.',
  ],
  'hidden 2': ['Two: inset 1/8 in all round.', 'One: taken off the pile.'],
  piecesStacked: [
    'Dots: its 3 pieces laid in a row, 1/8 in apart.',
    'Dots: its 3 pieces laid in a column, 1/8 in apart.',
    'Dots: one piece on each card.',
  ],
  noInside: [
    'Lining: laid on the back instead.',
    'The base: given a fold at the side.',
    'Lining: laid on the front instead.',
  ],
  directionFreed: ['Panel: cut only with its print upright.'],
  'directionFreed 2': ['The base: cut only with its print upright.'],
  allowanceTooLarge: ['The base: given the usual allowance.'],
  foldMayCrossGrain: ['The base: cut only as it stands, so that the grain runs along the fold.'],
  foldAcrossGrain: ['The base: cut either way round.'],
};

describe('a mend', () => {
  it('is offered', () => {
    const all: Record<string, readonly string[]> = {};
    for (const [name, parts] of Object.entries(cards)) all[name] = mended(name, cardOf(parts));
    for (const [name, card] of Object.entries(wholeCards)) all[name] = mended(name, card);
    expect(all).toEqual(offered);
  });

  it('holds whenever it is offered, on random layouts', () => {
    const met = new Map<LayoutCode, [number, number]>();
    fc.assert(
      fc.property(
        fc.boolean().chain((coarse) => randomInHand({ coarse, overFixed: true })),
        (before) => {
          for (const problem of allOf(before)) {
            const marks = before.layout.units === 'in' ? inches(1, 16) : millimetres(1);
            const mends = mendsOf(before, problem, marks);
            expect(mends.length).toBeLessThanOrEqual(3);
            for (const edit of mends) holds(before, problem, edit);
            const [some, all] = met.get(problem.code) ?? [0, 0];
            met.set(problem.code, [some + Number(mends.length > 0), all + 1]);
          }
        },
      ),
      { numRuns: 60 },
    );
    const some = [...met].filter(([, [with_]]) => with_ > 0).map(([code]) => code);
    expect(some.length, JSON.stringify([...met])).toBeGreaterThan(9);
  });
});
