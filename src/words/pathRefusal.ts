import { type PathFault, type PathRefusal, pathLimits } from '../shape/index.ts';
import { printable } from './printable.ts';

/**
 * Why path data is no outline, as a sentence: what stands where, and what may stand there. Characters are counted from
 * 1, as an editor shows them.
 */
export function pathRefusalSentence(refusal: Pick<PathRefusal, 'code' | 'at' | 'found'>): string {
  return sentences[refusal.code](refusal);
}

type Told = Pick<PathRefusal, 'at' | 'found'>;

const sentences = {
  empty: () => 'The path draws nothing; it may hold closed lines, such as M0 0H20V10Z.',
  start: (told) =>
    `The path begins with ${standing(told)}; it may begin only with M and a place, such as M0 0.`,
  command: (told) =>
    `At character ${place(told)} of the path stands ${standing(told)}; a letter there may be only one of M L H V C S Q T A Z, small or capital.`,
  number: (told) => `At character ${place(told)} of the path ${stands(told)}; a number may stand there.`,
  leadingZero: (told) =>
    `At character ${place(told)} of the path stands ${standing(told)}; a number may have no needless 0 before it.`,
  flag: (told) =>
    `At character ${place(told)} of the path ${stands(told)}; the fourth and fifth number of an arc may be only 0 or 1.`,
  open: (told) =>
    `The line that begins at character ${place(told)} of the path, ${standing(told)}, is open; it may only come back to where it began, or end with Z.`,
  flat: () => 'The path encloses nothing; it may hold closed lines with some breadth and height.',
  tooLong: () => `The path is too long; it may hold no more than ${count(pathLimits.characters)} characters.`,
  tooMany: () =>
    `The path has too many pieces; it may have no more than ${count(pathLimits.segments)} lines and curves.`,
  tooLarge: (told) =>
    `At character ${place(told)} of the path stands ${standing(told)}; a number may be no larger than ${count(pathLimits.number)}.`,
  tangled: () =>
    `The path crosses itself more than ${count(pathLimits.crossings)} times; it may be a line round a shape, with hardly a crossing.`,
} as const satisfies Record<PathFault, (told: Told) => string>;

function place({ at }: Told): string {
  return count(at + 1);
}

function stands(told: Told): string {
  return told.found.trim() === '' ? 'it ends' : `stands ${standing(told)}`;
}

function standing({ found }: Told): string {
  return found.trim() === '' ? 'a blank' : printable(found.trim().replaceAll(/\s+/g, ' '));
}

function count(number: number): string {
  return String(number).replace(/(?<=\d)(?=(?:\d{3})+$)/g, ' ');
}
