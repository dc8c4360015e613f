import { expect, test } from 'vitest';
import { capital, counted, countedInWords, countWord, listed, numbersListed, plural } from './count.ts';

test('counts stand in words up to twelve', () => {
  expect([0, 1, 2, 12, 13].map(countWord)).toEqual(['no', 'one', 'two', 'twelve', '13']);
  expect(countedInWords(1, 'sheet')).toBe('one sheet');
  expect(countedInWords(30, 'sheet')).toBe('30 sheets');
});

test('nouns bend with their count', () => {
  expect([counted(1, 'pass'), counted(2, 'pass'), counted(0, 'strip')]).toEqual([
    '1 pass',
    '2 passes',
    '0 strips',
  ]);
  expect(plural('pinch')).toBe('pinches');
});

test('things are listed as one says them', () => {
  expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'])]).toEqual([
    '',
    'a',
    'a and b',
    'a, b and c',
  ]);
});

test('numbers draw runs of three and more together', () => {
  expect(numbersListed([1])).toBe('1');
  expect(numbersListed([2, 1])).toBe('1 and 2');
  expect(numbersListed([1, 2, 3, 4])).toBe('1 to 4');
  expect(numbersListed([1, 2, 3, 7, 9, 10])).toBe('1 to 3, 7, 9 and 10');
});

test('a sentence begins large, whatever it begins with', () => {
  expect([capital('ab'), capital(''), capital('é'), capital('5 in'), capital('𐐨x')]).toEqual([
    'Ab',
    '',
    'É',
    '5 in',
    '𐐀x',
  ]);
});
