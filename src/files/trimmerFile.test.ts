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
      reach: { measuringSide: null, otherSide: null },
      correction: 0,
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
      reach: { measuringSide: '12', otherSide: '6 1/2 in' },
      testCut: { set: '4 in', measured: '4 1/32 in' },
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
      reach: { measuringSide: 12 * 40_640, otherSide: 264_160 },
      correction: 1_270,
      measuringEdge: 'right',
      hand: 'left',
      sheetsAtOnce: 2,
      cutsPerSitting: 35,
    },
  });
});

test('null is no limit', () => {
  const none = { marks: null, longest: null, narrowest: null, reach: null, testCut: null };
  expect(read({ ...none, cutsPerSitting: null })).toEqual(read({}));
  expect(read({ reach: { measuringSide: null, otherSide: null } })).toEqual(read({}));
  expect(read({ reach: {} })).toEqual(read({}));
});

test('a ruler that cuts too short has a negative correction, one that is true none', () => {
  const correctionOf = (set: string, measured: string) => {
    const answer = read({ testCut: { set, measured } });
    return 'trimmer' in answer ? answer.trimmer.correction : answer.problems;
  };
  expect(correctionOf('100', '99.5')).toBe(-800);
  expect(correctionOf('4 in', '101.6 mm')).toBe(0);
  // The most there may be, and the shortest.
  expect(correctionOf('25', '31')).toBe(9_600);
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
    [{ longest: '1 cm', marks: '2 cm' }, 'trimmerMarks', 'marks', 'more than the longest cut, "1 cm"'],
    [{ reach: '30 cm' }, 'fieldType', 'reach', 'an object such as { "measuringSide"'],
    [{ reach: { otherside: '15 cm' } }, 'fieldUnknown', 'reach.otherside', 'perhaps "otherSide" was meant'],
    [{ reach: { measuringSide: 30 } }, 'lengthBareNumber', 'reach.measuringSide', 'write "30 mm"'],
    [{ reach: { measuringSide: '0' } }, 'lengthNotPositive', 'reach.measuringSide', 'greater than zero'],
    [
      { reach: { measuringSide: '4' }, marks: '5' },
      'trimmerReach',
      'reach.measuringSide',
      'less than marks, "5", so that nothing could be measured off',
    ],
    [
      { reach: { measuringSide: '10', otherSide: '20' }, narrowest: '25' },
      'trimmerReach',
      'reach.otherSide',
      'less than narrowest, "25"',
    ],
    [
      { reach: { measuringSide: '4' }, marks: '5', narrowest: '6' },
      'trimmerReach',
      'reach.measuringSide',
      'less than marks',
    ],
    [{ testCut: '4 in' }, 'fieldType', 'testCut', '"measured": "4 1/32 in" }, or null'],
    [{ testCut: { set: '100' } }, 'fieldMissing', 'testCut.measured', 'a length as text'],
    [{ testCut: { set: '24', measured: '24' } }, 'testCutShort', 'testCut.set', 'no shorter than 25 mm'],
    [{ testCut: { set: '100', measured: '107' } }, 'testCutFar', 'testCut.measured', 'no more than 6 mm'],
    [
      { units: 'in', testCut: { set: '4', measured: '3 11/16' } },
      'testCutFar',
      'testCut.measured',
      'set to "4"; a ruler may be off by no more than 1/4 in',
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
