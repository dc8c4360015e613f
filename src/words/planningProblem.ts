import type { Layout } from '../layout/index.ts';
import { lengthOfTicks, showLengthWithUnit, showSize } from '../measure/index.ts';
import type { PlanningCode, PlanningProblem } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import { capital, counted, countWord } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/** What is wrong between a layout and the papers and trimmer on hand, in one or two sentences. */
export function planningProblemSentence(problem: PlanningProblem, layout: Layout, showing: Showing): string {
  const number = (name: string): number => {
    const value = problem.numbers[name];
    assert(value !== undefined, 'A problem brings the numbers of its sentence', { problem, name });
    return value;
  };
  const length = (name: string): string => {
    return showLengthWithUnit(lengthOfTicks(number(name)), showing.units, showing.glyphs);
  };
  return sentences[problem.code]({
    part: problem.part === undefined ? '' : partName(layout, problem.part),
    paper: problem.names.paper ?? '',
    side: problem.names.axis === 'height' ? 'high' : 'wide',
    number,
    has: (name) => problem.numbers[name] !== undefined,
    length,
    size: () =>
      showSize(
        { width: lengthOfTicks(number('width')), height: lengthOfTicks(number('height')) },
        showing.units,
        showing.glyphs,
      ),
  });
}

/** What a sentence may draw on. */
interface Told {
  readonly part: string;
  readonly paper: string;
  readonly side: 'wide' | 'high';
  readonly number: (name: string) => number;
  readonly has: (name: string) => boolean;
  readonly length: (name: string) => string;
  readonly size: () => string;
}

const sentences = {
  short: ({ part, paper, number }) => {
    const missing = number('missing');
    const cards = number('cards');
    const noMore = number('cardsProved') === 1;
    return [
      ...(number('sheets') === 0 ? [`There is no sheet of ${paper} on hand.`] : []),
      `${paper} is short: ${missing} of the ${number('need')} pieces for ${part} ${missing === 1 ? 'is' : 'are'} wanting.`,
      number('proved') === 1
        ? 'No way of cutting from edge to edge gives them all; that is proved.'
        : 'No way of cutting that gives them all was found.',
      ...(number('trimmer') === 1 ? ['The limit is the trimmer: one without its limits would do.'] : []),
      ...(number('direction') === 1
        ? ['The limit is the direction of the print: a quarter turn of the pieces would do.']
        : []),
      ...(number('margins') === 1
        ? ['The limit is the margins: sheets that can be used to the edge would do.']
        : []),
      cards > 0
        ? `The papers of this set give ${counted(cards, 'card')}${noMore ? ' and no more' : ', as far as was found'}.`
        : noMore
          ? 'The papers of this set give not even one card.'
          : 'No way was found to make even one card.',
    ].join(' ');
  },
  pieceTooLarge: ({ part, paper, size, number }) =>
    [
      `${part} (${size()}) is larger than any sheet of ${paper}, as the piece has to lie.`,
      ...(number('direction') === 1 ? ['It would come out if the print might be given a quarter turn.'] : []),
      ...(number('margins') === 1 ? ['It would come out of a sheet that can be used to the edge.'] : []),
    ].join(' '),
  pieceTooNarrow: ({ part, size, length }) =>
    `${part} (${size()}) is narrower than the ${length('narrowest')} that the trimmer can hold.`,
  betweenMarks: ({ part, side, length }) =>
    `${part} is ${length('length')} ${side}, which falls between the marks: ${length('off')} past one, and the next is ${length('marks')} on.`,
  nothingToSpare: ({ paper, number, has, length }) => {
    const cost = has('missing')
      ? `leaves you ${counted(number('missing'), 'piece')} short`
      : number('moreSheets') > 0
        ? `takes ${counted(number('moreSheets'), 'sheet')} more`
        : 'has to be cut another way, from no more sheets';
    const pieces =
      number('count') === 1
        ? `A piece of ${length('set')}`
        : `${capital(countWord(number('count')))} times ${length('set')}`;
    return (
      `${pieces} is all of the ${length('side')} that a sheet of ${paper} has, with nothing to spare: ` +
      `a sheet one mark shorter ${cost}. Measure the sheets first.`
    );
  },
  cannotSquare: ({ paper, size }) =>
    `The margins of a sheet of ${paper} (${size()}) cannot be cut off on this trimmer, so that sheet is left alone.`,
} as const satisfies Record<PlanningCode, (told: Told) => string>;
