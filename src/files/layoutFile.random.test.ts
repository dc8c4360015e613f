import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fileProblemSentence } from '../words/index.ts';
import type { FileProblem } from './fileProblem.ts';
import type { JsonObject } from './json.ts';
import { readLayoutFile, writeLayoutFile } from './layoutFile.ts';
import type { Path } from './path.ts';
import { randomFile } from './testing/randomFile.ts';
import { readTrimmerFile } from './trimmerFile.ts';

test('a file without slips is read, and written it reads alike', () => {
  fc.assert(
    fc.property(randomFile(), (file) => {
      const read = readLayoutFile(JSON.stringify(file));
      expect('problems' in read ? read.problems : []).toEqual([]);
      if ('problems' in read) return;
      // Nothing is lost: the file written is the file that was read, x- fields and typed texts and all.
      const written = writeLayoutFile(read.file);
      expect(JSON.parse(written)).toEqual(JSON.parse(JSON.stringify(file)));
      const again = readLayoutFile(written);
      expect(again).toEqual(read);
      expect('file' in again && writeLayoutFile(again.file)).toBe(written);
    }),
    { numRuns: 300 },
  );
});

test('neither the order of fields nor the fields of other tools change the layout', () => {
  fc.assert(
    fc.property(randomFile(), (file) => {
      const turned = JSON.stringify(reversed(file));
      const read = readLayoutFile(JSON.stringify(file));
      const other = readLayoutFile(turned);
      if (!('layout' in read) || !('layout' in other)) throw new Error('a random file is without slips');
      expect({
        ...other.layout,
        typed: sorted(other.layout.typed),
        papers: sorted(other.layout.papers),
      }).toEqual({
        ...read.layout,
        typed: sorted(read.layout.typed),
        papers: sorted(read.layout.papers),
      });
    }),
    { numRuns: 100 },
  );
});

/** The file with the fields of every object the other way about, and one more field of another tool in each. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).reverse();
  return Object.fromEntries([
    ...entries.map(([name, entry]) => [name, reversed(entry)]),
    ['x-more', [{}, null]],
  ]);
}

function sorted<Value>(map: ReadonlyMap<string, Value>): [string, Value][] {
  return [...map].sort(([a], [b]) => (a < b ? -1 : 1));
}

// What might stand in place of a value.
const odd = fc.oneof(
  fc.constantFrom(
    null,
    true,
    0,
    -1,
    1.5,
    1e9,
    1e300,
    '',
    'fill',
    '1 in',
    '-1 in',
    '0',
    '1/0',
    'base',
    'toString',
    '\ud800',
  ),
  fc.constantFrom([], {}, [[]], ['1 in', '1 in'], { left: '1 in' }, { 'x-a': 1 }),
  fc.jsonValue({ maxDepth: 2 }),
);
const oddName = fc.constantFrom(
  'size',
  'id',
  'gap',
  'above',
  'inset',
  'sheets',
  'constructor',
  'x-y',
  'szie',
  '',
  'a\u200b',
);

/** The layouts that come with the program and those of the whole journeys. */
const examples = ['examples', 'test/sets'].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.card.json'))
    .map((name) => readFileSync(`${folder}/${name}`)),
);

function exampleOrRandom(): fc.Arbitrary<JsonObject> {
  const parsed = examples.map((bytes) => JSON.parse(bytes.toString()) as JsonObject);
  return fc.oneof(randomFile(), fc.constantFrom(...parsed));
}

test('whatever stands in a file, it is a layout or has problems that say where and what', () => {
  const edit = fc.record({
    at: fc.nat(),
    kind: fc.constantFrom('put', 'put', 'drop', 'rename', 'twice'),
    odd,
    oddName,
  });
  fc.assert(
    fc.property(exampleOrRandom(), fc.array(edit, { minLength: 1, maxLength: 4 }), (file, edits) => {
      const root = { file: JSON.parse(JSON.stringify(file)) as unknown };
      for (const { at, kind, odd, oddName } of edits) {
        const nodes = nodesOf(root);
        const node = nodes[at % nodes.length];
        // Each time a copy: a list that is put into itself is no JSON.
        if (node !== undefined) change(node, kind, structuredClone(odd), oddName);
      }
      judge(readLayoutFile(JSON.stringify(root.file) ?? ''), root.file);
    }),
    { numRuns: 1_500 },
  );
});

test('whatever text a file holds, it is a layout or has problems', () => {
  const piece = fc.constantFrom(
    '"',
    '{',
    '}',
    '[',
    ']',
    ',',
    ':',
    '0',
    '-',
    '\\',
    '/',
    "'",
    '\u0000',
    '\u2028',
    'null',
    '"x-a":',
  );
  fc.assert(
    fc.property(
      randomFile(),
      fc.array(fc.tuple(fc.nat(), fc.nat(3), piece), { minLength: 1, maxLength: 3 }),
      (file, edits) => {
        const text = edits.reduce(
          (before, [at, out, put]) => {
            const place = at % (before.length + 1);
            return before.slice(0, place) + put + before.slice(place + out);
          },
          JSON.stringify(file, null, 1),
        );
        const read = readLayoutFile(text);
        for (const problem of 'problems' in read ? read.problems : []) speaks(problem);
        expect('layout' in read || read.problems.length > 0).toBe(true);
      },
    ),
    { numRuns: 1_000 },
  );
});

test('whatever bytes a file holds, it is a layout or has problems', () => {
  const edit = fc.record({
    at: fc.nat(),
    out: fc.nat(8),
    put: fc.oneof(fc.uint8Array({ maxLength: 4 }), fc.uint8Array({ min: 0x20, max: 0x7e, maxLength: 8 })),
  });
  fc.assert(
    fc.property(
      fc.constantFrom(...examples),
      fc.array(edit, { minLength: 1, maxLength: 4 }),
      (example, edits) => {
        const bytes = edits.reduce((before, { at, out, put }) => {
          const place = at % (before.length + 1);
          return Buffer.concat([before.subarray(0, place), put, before.subarray(place + out)]);
        }, example);
        const text = bytes.toString('utf8');
        const read = readLayoutFile(text);
        if ('layout' in read) {
          expect(JSON.parse(writeLayoutFile(read.file))).toEqual(JSON.parse(text.replace(/^\ufeff/, '')));
          return;
        }
        expect(read.problems.length).toBeGreaterThan(0);
        for (const problem of read.problems) speaks(problem);
        // What is JSON is judged by its fields.
        const parsed = parsedOrNull(text);
        if (parsed !== null)
          for (const problem of read.problems) expect(stands(problem.path, parsed), problem.where).toBe(true);
      },
    ),
    { numRuns: 2_000 },
  );
});

test('whatever stands in a trimmer file, it is a trimmer or has problems that say where and what', () => {
  const fields = [
    'cardwright_trimmer',
    'units',
    'marks',
    'longest',
    'narrowest',
    'hand',
    'sheetsAtOnce',
    'x-a',
  ];
  fc.assert(
    fc.property(fc.dictionary(fc.constantFrom(...fields), odd), (file) => {
      const whole = { cardwright_trimmer: 1, units: 'mm', ...file };
      const read = readTrimmerFile(JSON.stringify(whole));
      if ('trimmer' in read) return;
      expect(read.problems.length).toBeGreaterThan(0);
      for (const problem of read.problems) {
        speaks(problem);
        expect(stands(problem.path, whole), problem.where).toBe(true);
      }
    }),
    { numRuns: 1_000 },
  );
});

function parsedOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

interface Node {
  readonly holder: object;
  readonly key: string;
}

/** Every value below `holder` with what holds it. */
function nodesOf(holder: object): Node[] {
  return Object.entries<unknown>({ ...holder }).flatMap(([key, value]) => [
    { holder, key },
    ...(typeof value === 'object' && value !== null ? nodesOf(value) : []),
  ]);
}

function change({ holder, key }: Node, kind: string, value: unknown, name: string): void {
  const list = Array.isArray(holder);
  const entry: unknown = Reflect.get(holder, key);
  if (kind === 'put' || (kind === 'rename' && list)) Reflect.set(holder, key, value);
  else if (kind === 'drop' && list) holder.splice(Number(key), 1);
  else if (kind === 'twice' && list) holder.push(entry);
  else {
    if (kind !== 'twice') Reflect.deleteProperty(holder, key);
    if (kind !== 'drop' && !('file' in holder)) Reflect.set(holder, name, entry);
  }
}

function judge(read: ReturnType<typeof readLayoutFile>, file: unknown): void {
  if ('layout' in read) return;
  expect(read.problems.length).toBeGreaterThan(0);
  for (const problem of read.problems) {
    speaks(problem);
    expect(stands(problem.path, file), `${problem.code} at ${problem.where}`).toBe(true);
  }
}

function speaks(problem: FileProblem): void {
  const sentence = fileProblemSentence(problem);
  expect(sentence).toContain(problem.where);
  expect(sentence).toMatch(/^\S.{10,900}\.$/u);
  expect(sentence).not.toMatch(/undefined|\[object|[\p{Cc}\p{Cs}]/u);
}

/** Whether the field is there, or is missing from an object that is there. */
function stands(path: Path, file: unknown): boolean {
  let value: unknown = file;
  for (const [index, key] of path.entries()) {
    if (typeof value !== 'object' || value === null) return false;
    if (!Object.hasOwn(value, key)) return index === path.length - 1 && typeof key === 'string';
    value = Reflect.get(value, key);
  }
  return true;
}
