import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type PostTable, postTables } from '../making/index.ts';
import { millimetres } from '../measure/index.ts';
import { fileProblemSentence } from '../words/index.ts';
import { readPostFile, writePostFile } from './postFile.ts';

const least = {
  cardwright_post: 1,
  units: 'mm',
  country: 'Test',
  asOf: '2026-11',
  source: 'a leaflet',
  classes: [{ name: 'letter' }],
};
const read = (changes: Readonly<Record<string, unknown>>) =>
  readPostFile(JSON.stringify({ ...least, ...changes }));
const readClass = (fields: Readonly<Record<string, unknown>>) => {
  const answer = read({ classes: [{ name: 'letter', ...fields }] });
  return 'problems' in answer ? answer.problems.map(fileProblemSentence) : answer.table.classes[0];
};

test('a class of which nothing is said takes everything', () => {
  const none = { length: null, height: null, thickness: null };
  expect(readClass({})).toEqual({
    name: 'letter',
    least: none,
    most: none,
    stiffer: null,
    ratio: { least: null, most: null },
    grams: { least: null, most: null },
    takesUneven: true,
    takesRigid: true,
  });
});

test('every limit is read', () => {
  expect(
    readClass({
      least: { length: '140', height: '9 cm' },
      most: { thickness: '5 mm' },
      stiffer: { length: '150', height: '110', thickness: '0.25' },
      ratio: { least: 1.3, most: 2.5 },
      grams: { least: 2, most: 50.5 },
      uneven: false,
      rigid: false,
    }),
  ).toEqual({
    name: 'letter',
    least: { length: millimetres(140), height: millimetres(90), thickness: null },
    most: { length: null, height: null, thickness: millimetres(5) },
    stiffer: { length: millimetres(150), height: millimetres(110), thickness: millimetres(0.25) },
    ratio: { least: [13, 10], most: [25, 10] },
    grams: { least: 2, most: 50.5 },
    takesUneven: false,
    takesRigid: false,
  });
});

test.each(postTables.map((table): [string, PostTable] => [table.country, table]))(
  'the table of %s is written and read again as it was',
  (_, table) => {
    for (const units of ['in', 'mm'] as const) {
      const text = writePostFile(table, units);
      const again = readPostFile(text);
      if ('problems' in again) throw new Error(again.problems.map(fileProblemSentence).join('\n'));
      // 13 over 10 and 1.3 are one ratio.
      const plain = (of: PostTable) => ({
        ...of,
        id: '',
        classes: of.classes.map((one) => ({
          ...one,
          ratio: Object.values(one.ratio).map((ratio) => ratio && ratio[0] / ratio[1]),
        })),
      });
      expect(plain(again.table)).toEqual(plain(table));
      expect(writePostFile(again.table, units)).toBe(text);
    }
  },
);

describe('what is wrong is told where it is', () => {
  test.each([
    [{ most: { length: 240 } }, 'classes[0].most.length holds the bare number 240'],
    [
      { most: { lenght: '240' } },
      'classes[0].most.lenght is no field known here (perhaps "length" was meant)',
    ],
    [{ most: '5 mm' }, 'it may hold an object such as { "length": "240 mm"'],
    [
      { grams: { most: '50' } },
      'classes[0].grams.most holds "50"; it may hold a number from 0 to 100 000, without quotes',
    ],
    [{ grams: 50 }, 'it may hold an object such as { "least": 2, "most": 50 }'],
    [{ ratio: { least: 0.5 } }, 'classes[0].ratio.least holds 0.5; it may hold a number from 1 to 100'],
    [{ stiffer: { length: '150', height: '100' } }, 'classes[0].stiffer.thickness is missing'],
    [{ uneven: 'no' }, 'classes[0].uneven holds "no"; it may hold true or false'],
    [
      { least: { length: '300' }, most: { length: '240' } },
      'holds "300", which is more than classes[0].most.length, "240"',
    ],
    [
      { grams: { least: 60, most: 50 } },
      'classes[0].grams.least holds 60, which is more than classes[0].grams.most, 50',
    ],
  ])('%j', (fields, says) => {
    expect(readClass(fields)).toEqual([expect.stringContaining(says)]);
  });

  test('of the file as a whole', () => {
    const says = (text: string) => {
      const answer = readPostFile(text);
      return 'problems' in answer ? answer.problems.map(fileProblemSentence).join(' ') : '';
    };
    expect(says('')).toContain('The file is empty');
    expect(says('{ "cardwright_trimmer": 1 }')).toContain(
      'has the field "cardwright_trimmer" and not "cardwright_post"',
    );
    expect(says('{ "cardwright_post": 2 }')).toContain('newer than this program');
    expect(says(JSON.stringify({ ...least, classes: [] }))).toContain(
      'classes holds an empty list; it may hold a list of 1 to 40',
    );
    expect(says(JSON.stringify({ ...least, asOf: undefined }))).toContain('asOf is missing');
  });
});

test('the example and what the documentation shows can be read', () => {
  const docs = readFileSync('docs/post-file.md', 'utf8');
  const [, shown = ''] = /```json\n(.*?)```/s.exec(docs) ?? [];
  for (const text of [readFileSync('examples/counter.post.json', 'utf8'), shown]) {
    expect(readPostFile(text)).toHaveProperty('table');
  }
  const unknown = read({ classes: [{ name: 'letter', x: 1 }] });
  const fields = 'problems' in unknown ? (unknown.problems[0]?.names.fields ?? '').split(', ') : [];
  expect(fields.length).toBeGreaterThan(5);
  for (const field of fields) expect(docs).toContain(`\`${field}\``);
});
