import fc from 'fast-check';
import { expect, test } from 'vitest';
import { excerpt } from './excerpt.ts';
import { pathText } from './path.ts';

test.each([
  ['4 in', '"4 in"'],
  ['say "hi"', '"say \\"hi\\""'],
  [12.5, '12.5'],
  [null, 'null'],
  [true, 'true'],
  [[], '[]'],
  [{}, '{}'],
  [[1, ['a'], {}], '[1, ["a"], {}]'],
  [{ left: '1 in', top: [2] }, '{ "left": "1 in", "top": [2] }'],
  ['a\u200bb\u0007\u202e\ud800', '"a\\u200bb\\u0007\\u202e\\ud800"'],
  ['é ☾ дом', '"é ☾ дом"'],
  ['🌙'.repeat(30), `"${'🌙'.repeat(30)}"`],
  ['🌙'.repeat(3_000), `"${'🌙'.repeat(47)}…"`],
  ['x'.repeat(100), `"${'x'.repeat(47)}…"`],
  [['x'.repeat(100)], `["${'x'.repeat(47)}…`],
])('%j is shown as %s', (value, shown) => {
  expect(excerpt(value)).toBe(shown);
});

test('an excerpt is short and shows all it holds, whatever the value', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      const shown = excerpt(value as Parameters<typeof excerpt>[0]);
      expect([...shown].length).toBeLessThanOrEqual(50);
      expect(shown).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u);
    }),
  );
});

test('short text is shown so that JSON reads it again', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 3, unit: 'binary' }), (text) => {
      expect(JSON.parse(excerpt(text))).toBe(text);
    }),
  );
});

test.each([
  [[], ''],
  [['cards'], 'cards'],
  [['parts', 2, 'size', 0], 'parts[2].size[0]'],
  [['papers', 'x-mas_1', 'sheets'], 'papers.x-mas_1.sheets'],
  [['papers', 'odd name', 'up'], 'papers["odd name"].up'],
  [['a.b'], '["a.b"]'],
  [['papers', ''], 'papers[""]'],
])('the path %j is written %s', (path, written) => {
  expect(pathText(path)).toBe(written);
});
