import { lengthOfTicks, showSize } from '../measure/index.ts';
import type { TableCode, TableProblem } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import { counted, listed } from './count.ts';
import type { Showing } from './showing.ts';

/** What is wrong with a table as it was told, or with the plan that was to be cut by: what was found, what may stand there. */
export function tableProblemSentence(problem: TableProblem, showing: Showing): string {
  const number = (name: string): number => {
    const value = problem.numbers[name];
    assert(value !== undefined, 'A problem brings the numbers of its sentence', { problem, name });
    return value;
  };
  return sentences[problem.code]({
    where: problem.where,
    number,
    name: (name) => problem.names[name] ?? '',
    size: (width = 'width', height = 'height') =>
      showSize(
        { width: lengthOfTicks(number(width)), height: lengthOfTicks(number(height)) },
        showing.units,
        showing.glyphs,
      ),
  });
}

/** What a sentence may draw on. */
interface Told {
  readonly where: string;
  readonly number: (name: string) => number;
  readonly name: (name: string) => string;
  readonly size: (width?: string, height?: string) => string;
}

const sentences = {
  planPaperUnknown: ({ name }) =>
    `The plan cuts the paper “${name('paper')}”, which the layout does not have; it has ${name('papers')}. A plan goes only with the layout it was made from.`,
  planPieceUnknown: ({ where, number, name }) =>
    `${where} of the plan is “${name('piece')}”, which the layout does not cut for ${counted(number('cards'), 'card')}. A plan goes only with the layout it was made from.`,
  planPieceMissing: ({ number, name }) =>
    `The layout cuts “${name('piece')}” for ${counted(number('cards'), 'card')}, and the plan does not. A plan goes only with the layout it was made from.`,
  planPieceDiffers: ({ where, name, size }) =>
    `${where} of the plan is “${name('piece')}” of ${size()}, but in the layout it is ${size('layoutWidth', 'layoutHeight')} or turns otherwise. A plan goes only with the layout it was made from.`,
  planSheetDiffers: ({ where, name, size }) =>
    `${where} of the plan is “${name('sheet')}”, ${size()} of ${name('paper')}, and there is no such sheet in the layout, nor anything of that name and size on the table.`,
  planSheetsFewer: ({ where, number, name }) =>
    `${where} of the plan says that ${counted(number('begun'), 'sheet')} of ${name('paper')} ${number('begun') === 1 ? 'is' : 'are'} cut into; the layout has ${counted(number('count'), 'sheet')} there.`,
  planNotTrue: ({ number, name }) =>
    `The plan does not come out when it is followed${number('step') === 0 ? '' : ` (step ${number('step')})`}: ${faultWords(name)}. It may have been changed by hand, or made for other sheets, prices or another trimmer.`,

  stepUnknown: ({ number }) =>
    number('last') === 0
      ? `There is no step ${number('step')}: the plan has no steps left.`
      : `There is no step ${number('step')}: the plan has steps ${number('first')} to ${number('last')}.`,
  stepHasFewer: ({ number }) =>
    `Step ${number('step')} takes ${counted(number('workpieces'), 'workpiece')}; it cannot be done for ${number('said')}.`,
  stepTooEarly: ({ number }) =>
    `Step ${number('step')} cannot be done yet: it takes what step ${number('by')} makes, and that is not done${number('by') === number('step') ? '' : ' so far'}.`,
  workpieceUnknown: ({ name }) =>
    `No workpiece of the plan is called “${name('id')}”. Pieces that are finished may be told by their number, as "1 panel/meadow"; the names of workpieces stand in plan --json.`,
  workpieceCutUp: ({ number, name }) =>
    `“${name('id')}” cannot be spoiled now: it was cut up at step ${number('step')}. Say which of the pieces that were made of it is.`,
  workpieceNotYet: ({ number, name }) =>
    `“${name('id')}” cannot be spoiled yet: step ${number('step')} makes it, and that is not done.`,
  spoiledTwice: ({ name }) => `“${name('id')}” is said to be spoiled twice; once is enough.`,
  pieceUnknown: ({ name }) => `No piece is called “${name('piece')}”; it may be ${either(name('pieces'))}.`,
  piecesTooFew: ({ number, name }) =>
    `${counted(number('said'), 'piece')} of “${name('piece')}” cannot be spoiled: ${number('finished') === 0 ? 'none is' : number('finished') === 1 ? 'only one is' : `only ${number('finished')} are`} finished by then.`,
  paperUnknownOnTable: ({ name }) =>
    `The layout has no paper “${name('paper')}”; it may be ${either(name('papers'))}.`,
} as const satisfies Record<TableCode, (told: Told) => string>;

function faultWords(name: Told['name']): string {
  const id = name('id') === '' ? '' : ` “${name('id')}”`;
  return `${name('fault').replaceAll('-', ' ')}${id}, ${name('found')} where it should be ${name('expected')}`;
}

function either(names: string): string {
  return listed(names.split(', ')).replace(/ and ([^ ]+)$/, ' or $1');
}
