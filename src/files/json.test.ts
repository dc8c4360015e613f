import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deepest, isObject, readJson } from './json.ts';

/** `JSON.parse` (ECMA-404) is the second opinion. */
function parsed(text: string): { value: unknown } | null {
  try {
    return { value: JSON.parse(text) };
  } catch {
    return null;
  }
}

/** With our objects without prototype made plain, and -0 made 0. */
function plain(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

/** What is read more strictly than JSON asks. */
const stricter = ['fieldTwice', 'fieldReserved', 'jsonNumberInexact', 'jsonDeep'];

function agrees(text: string): void {
  const ours = readJson(text);
  const theirs = parsed(text);
  const codes = ours.problems.map(({ code }) => code);
  if (ours.ok && codes.length === 0) expect({ value: plain(ours.value) }).toEqual(theirs && plain(theirs));
  else if (theirs !== null) expect(codes.filter((code) => !stricter.includes(code))).toEqual([]);
}

describe('reads what JSON.parse reads', () => {
  test('texts that are JSON', () => {
    fc.assert(
      fc.property(
        fc.jsonValue({ maxDepth: 6 }),
        fc.constantFrom(undefined, 1, '\t', '\r\n '),
        (value, indent) => {
          agrees(JSON.stringify(value, null, indent));
        },
      ),
      { numRuns: 500 },
    );
  });

  test('texts that were JSON before something fell in or out', () => {
    const pieces = fc.constantFrom(
      ...[
        '"',
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '\\',
        '0',
        '-',
        '.',
        'e',
        '1e5',
        'null',
        'tru',
        '//',
        ' ',
        '\n',
        '\u0007',
      ],
    );
    fc.assert(
      fc.property(
        fc.json({ maxDepth: 4 }),
        fc.array(fc.tuple(fc.nat(), fc.nat(2), pieces)),
        (json, edits) => {
          const text = edits.reduce((before, [at, out, piece]) => {
            const place = at % (before.length + 1);
            return before.slice(0, place) + piece + before.slice(place + out);
          }, json);
          agrees(text);
        },
      ),
      { numRuns: 2_000 },
    );
  });

  test('numbers of every writing', () => {
    const part = fc.constantFrom(
      '',
      '-',
      '+',
      '0',
      '1',
      '12',
      '007',
      '.',
      '.5',
      '5.',
      'e',
      'E',
      'e5',
      'e+',
      'E-2',
    );
    fc.assert(
      fc.property(part, part, part, part, (...parts) => agrees(parts.join(''))),
      { numRuns: 2_000 },
    );
  });
});

test('a byte order mark at the start is passed over', () => {
  expect(readJson('\uFEFF[1]')).toEqual({ ok: true, value: [1], problems: [] });
});

test('names that every object has are fields like any other, and no prototype is touched', () => {
  const read = readJson(
    '{"constructor": 1, "toString": 2, "hasOwnProperty": 3, "__proto__": {"polluted": true}}',
  );
  expect(read.ok && isObject(read.value) && Object.entries(read.value)).toEqual([
    ['constructor', 1],
    ['toString', 2],
    ['hasOwnProperty', 3],
  ]);
  expect(read.problems.map(({ code, where }) => [code, where])).toEqual([['fieldReserved', '__proto__']]);
  expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
});

test('the first of two fields of one name is kept and the others are told with their lines', () => {
  const read = readJson('{\n "a": 1,\r\n "b": {"c": 1,\r "c": 2},\n "a": {"d": 1, "d": 2}\n}');
  expect(read.ok && plain(read.value)).toEqual({ a: 1, b: { c: 1 } });
  expect(read.problems.map(({ where, numbers }) => [where, numbers])).toEqual([
    ['b.c', { line: 4, column: 2 }],
    ['a', { line: 5, column: 2 }],
    ['a.d', { line: 5, column: 16 }],
  ]);
});

test('brackets may stand just so deep', () => {
  const nested = (depth: number) => '['.repeat(depth) + ']'.repeat(depth);
  expect(readJson(nested(deepest)).ok).toBe(true);
  expect(readJson(nested(deepest + 1)).ok).toBe(false);
});

test('a repeated name costs no more than the text is long', () => {
  // 400 000 fields of one name: with work that grows as the square this would take hours.
  const read = readJson(`{${Array.from({ length: 400_000 }, (_, index) => `"a":${index}`).join(',\n')}}`);
  expect(read.problems).toHaveLength(100);
  expect(read.ok && isObject(read.value) && read.value.a).toBe(0);
});

test.each([
  ['9007199254740993', false],
  ['-9007199254740993', false],
  ['520000000000000000', true],
  // Not the number itself (that ends in 683968), but what it is written as again.
  ['123456789012345680000', true],
  ['1000000000000000000000', true],
  ['1000000000000000000001', false],
  ['1e308', true],
  ['1e309', false],
])('the number %s is kept as it was typed: %s', (text, kept) => {
  expect(readJson(text).problems.map(({ code }) => code)).toEqual(kept ? [] : ['jsonNumberInexact']);
});
