import { expect, it } from 'vitest';
import { pathLimits, readPath } from '../shape/index.ts';
import { pathRefusalSentence } from './pathRefusal.ts';

it.each([
  ['', 'The path draws nothing; it may hold closed lines, such as M0 0H20V10Z.'],
  ['L5 5', 'The path begins with L5 5; it may begin only with M and a place, such as M0 0.'],
  [
    'M0 0X5',
    'At character 5 of the path stands X5; a letter there may be only one of M L H V C S Q T A Z, small or capital.',
  ],
  [
    '\ud800\u0007',
    'At character 1 of the path stands \ufffd\ufffd; a letter there may be only one of M L H V C S Q T A Z, small or capital.',
  ],
  [
    'M0 0H9V9\n\t H1',
    'The line that begins at character 1 of the path, M0 0H9V9 H, is open; it may only come back to where it began, or end with Z.',
  ],
  ['M0 0L5', 'At character 7 of the path it ends; a number may stand there.'],
  ['M0 0L5Z', 'At character 7 of the path stands Z; a number may stand there.'],
  [
    'M0 0L05 1 3 9Z',
    'At character 6 of the path stands 05 1 3 9Z; a number may have no needless 0 before it.',
  ],
  [
    'M0 0A5 5 0 7 1 9 9Z',
    'At character 12 of the path stands 7 1 9 9Z; the fourth and fifth number of an arc may be only 0 or 1.',
  ],
  [
    'M0 0H9V9',
    'The line that begins at character 1 of the path, M0 0H9V9, is open; it may only come back to where it began, or end with Z.',
  ],
  ['M0 0H9Z', 'The path encloses nothing; it may hold closed lines with some breadth and height.'],
  [
    'M0 0L2e9 1 0 9Z',
    'At character 6 of the path stands 2e9 1 0 9Z; a number may be no larger than 1 000 000 000.',
  ],
  [
    ' '.repeat(pathLimits.characters + 1),
    'The path is too long; it may hold no more than 200 000 characters.',
  ],
  [
    `M0 0${'h1v1'.repeat(10_001)}Z`,
    'The path has too many pieces; it may have no more than 20 000 lines and curves.',
  ],
  [
    `M0 0${Array.from({ length: 300 }, (_, index) => `L${(index * index * 31) % 1009} ${(index * index * 17) % 997}`).join('')}Z`,
    'The path crosses itself more than 2 000 times; it may be a line round a shape, with hardly a crossing.',
  ],
])('%.20s', (text, says) => {
  const reading = readPath(text);
  if (reading.ok) throw new Error('It can be read');
  expect(pathRefusalSentence(reading)).toBe(says);
});
