import { describe, expect, test } from 'vitest';
import { fileProblemCodes, fileProblemSentence } from '../words/index.ts';
import { readLayoutFile } from './layoutFile.ts';
import { plainLayout } from './testing/plainLayout.ts';
import { slips } from './testing/slips.ts';

test('there are as many slips as were asked for, and each code that a layout may meet has one', () => {
  expect(slips.length).toBeGreaterThan(80);
  const met = new Set(slips.map(({ code }) => code));
  const elsewhere = fileProblemCodes().filter(
    (code) => !met.has(code) && !/^(trimmer|testCut|limit|kit)/.test(code),
  );
  expect(elsewhere).toEqual(['moreProblems']);
});

test('without a slip there is no problem', () => {
  expect(readLayoutFile(plainLayout())).toHaveProperty('layout');
});

describe('one slip makes one problem, at its path, with one clear sentence', () => {
  test.each(slips)('$name', ({ file, where, code, says }) => {
    const read = readLayoutFile(file);
    const problems = 'problems' in read ? read.problems : [];
    expect(problems.map((problem) => `${problem.code} at ${problem.where}`)).toEqual([`${code} at ${where}`]);
    const [problem] = problems;
    const sentence = problem === undefined ? '' : fileProblemSentence(problem);
    expect(sentence).toContain(where);
    expect(sentence).toContain(says);
    expect(sentence).toMatch(/^[\x20-\x7e“”…é½\u0400-\u04ff]+\.$/);
    expect(sentence).not.toMatch(/undefined|\[object|\{\w+\}/);
    expect(sentence.length).toBeLessThan(400);
  });
});
