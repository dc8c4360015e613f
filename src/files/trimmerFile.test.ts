import { describe, expect, test } from 'vitest';
import { fileProblemSentence } from '../words/index.ts';
import { readTrimmerFile } from './trimmerFile.ts';

const least = { cardwright_trimmer: 1, units: 'mm' };

function read(changes: Readonly<Record<string, unknown>>) {
  return readTrimmerFile(JSON.stringify({ ...least, ...changes }));
}

test('only version and units are needed', () => {
  expect(read({})).toEqual({
    trimmer: {
      name: '',
      marks: null,
      longest: null,
      narrowest: null,
      measuringEdge: 'left',
      hand: 'right',
      sheetsAtOnce: 1,
      cutsPerSitting: null,
    },
  });
});

test('every field is read, lengths in ticks of 0.625 µm', () => {
  expect(
    read({
      name: 'The small one',
      units: 'in',
      marks: '1/16 in',
      longest: '12',
      narrowest: '25 mm',
      measuringEdge: 'right',
      hand: 'left',
      sheetsAtOnce: 2,
      cutsPerSitting: 35,
      'x-shop': { aisle: 4 },
    }),
  ).toEqual({
    trimmer: {
      name: 'The small one',
      marks: 40_640 / 16,
      longest: 12 * 40_640,
      narrowest: 40_000,
      measuringEdge: 'right',
      hand: 'left',
      sheetsAtOnce: 2,
      cutsPerSitting: 35,
    },
  });
});

test('null is no limit', () => {
  expect(read({ marks: null, longest: null, narrowest: null, cutsPerSitting: null })).toEqual(read({}));
});

describe('one slip makes one problem, with one clear sentence', () => {
  test.each([
    [{ cardwright_trimmer: undefined }, 'fileKind', 'cardwright_trimmer', '{ "cardwright_trimmer": 1, … }'],
    [{ cardwright_trimmer: 2 }, 'versionNewer', 'cardwright_trimmer', 'holds 2'],
    [{ cardwright_trimmer: true }, 'fieldChoice', 'cardwright_trimmer', 'the number 1'],
    [{ units: undefined }, 'fieldMissing', 'units', '"in" or "mm"'],
    [{ units: 'inches' }, 'fieldChoice', 'units', 'holds "inches"'],
    [{ name: 3 }, 'fieldType', 'name', 'text in double quotes'],
    [{ name: 'a\u0000' }, 'textOdd', 'name', '"\\u0000"'],
    [{ marks: 5 }, 'lengthBareNumber', 'marks', 'write "5 mm"'],
    [{ marks: '0' }, 'lengthNotPositive', 'marks', 'greater than zero'],
    [{ marks: [] }, 'fieldType', 'marks', 'or null'],
    [{ longest: '1 yard' }, 'lengthUnreadable', 'longest', '“yard”'],
    [{ longest: '11 m' }, 'lengthUnreadable', 'longest', '“m”'],
    [{ longest: '1100 cm' }, 'lengthTooLarge', 'longest', '10 000 mm'],
    [
      { longest: '1 cm', narrowest: '2 cm' },
      'trimmerNarrow',
      'narrowest',
      'more than the longest cut, "1 cm"',
    ],
    [{ measuringEdge: 'top' }, 'fieldChoice', 'measuringEdge', '"left" or "right"'],
    [{ hand: 'both' }, 'fieldChoice', 'hand', '"left" or "right"'],
    [{ sheetsAtOnce: 0 }, 'numberRange', 'sheetsAtOnce', 'from 1 to 100'],
    [{ sheetsAtOnce: null }, 'fieldType', 'sheetsAtOnce', 'from 1 to 100'],
    [{ cutsPerSitting: 0 }, 'numberRange', 'cutsPerSitting', 'or null for no limit'],
    [{ longset: '30 cm' }, 'fieldUnknown', 'longset', 'perhaps "longest" was meant'],
  ])('%j', (changes, code, where, says) => {
    const answer = read(changes);
    const problems = 'problems' in answer ? answer.problems : [];
    expect(problems.map((problem) => [problem.code, problem.where])).toEqual([[code, where]]);
    expect(problems.map(fileProblemSentence).join()).toContain(where);
    expect(problems.map(fileProblemSentence).join()).toContain(says);
  });
});

test('what is no JSON is told as for a layout', () => {
  const answer = readTrimmerFile('{ "cardwright_trimmer": 1, }');
  expect('problems' in answer && answer.problems.map(({ code }) => code)).toEqual(['jsonTrailingComma']);
  const empty = readTrimmerFile('');
  expect('problems' in empty && empty.problems.map(fileProblemSentence)).toEqual([
    'The file is empty; it may hold an object that begins with { "cardwright_trimmer": 1, … }.',
  ]);
});

test('everything that is wrong is told at once, in the order of the file', () => {
  const answer = readTrimmerFile(
    '{ "hand": "foot", "cardwright_trimmer": 1, "marks": 1, "marks": 2, "narrowest": "5", "longest": "4", "units": "mm" }',
  );
  expect('problems' in answer && answer.problems.map(({ code, where }) => [where, code])).toEqual([
    ['hand', 'fieldChoice'],
    ['marks', 'fieldTwice'],
    ['marks', 'lengthBareNumber'],
    ['narrowest', 'trimmerNarrow'],
  ]);
});
