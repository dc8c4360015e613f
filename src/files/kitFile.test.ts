import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { fileProblemSentence } from '../words/index.ts';
import { gatheredKit, layoutFilesOf, readKitFile } from './kitFile.ts';
import { kitSchemaText } from './kitSchema.ts';
import { writeKitFile } from './kitText.ts';
import { layoutSchemaText } from './layoutSchema.ts';

const text = readFileSync('examples/autumn-afternoon.kit.json', 'utf8');

interface Draft {
  [field: string]: unknown;
  papers: Record<string, unknown>;
  layouts: Record<string, unknown>[];
}
const drawn = (change: (kit: Draft) => void): string => {
  const kit = JSON.parse(text) as Draft;
  change(kit);
  return JSON.stringify(kit);
};

test('a kit is read, and written again without loss', () => {
  const read = readKitFile(text);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  expect(JSON.parse(writeKitFile(read.file))).toEqual(JSON.parse(text));
  expect(read.kit.layouts.map(({ id, layout }) => [id, layout.cards])).toEqual([
    ['window', 16],
    ['path', 16],
    ['stones', 16],
  ]);
  expect(read.kit.layouts[0]!.layout.papers.get('acorns')!.sheets).toHaveLength(1);
});

test('fields of other tools are kept', () => {
  const read = readKitFile(drawn((kit) => Object.assign(kit, { 'x-note': { a: 1 } })));
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  expect(read.file['x-note']).toEqual({ a: 1 });
});

test('layouts stand in files of their own, too, and are gathered', () => {
  const [window] = (JSON.parse(text) as Draft).layouts;
  const beside = new Map([['window.card.json', JSON.stringify(window!.layout)]]);
  const kit = drawn(({ layouts }) => {
    layouts[0] = { id: 'window', file: 'window.card.json' };
  });
  expect(layoutFilesOf(kit)).toEqual(['window.card.json']);
  const read = readKitFile(kit, beside);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  const whole = readKitFile(writeKitFile(gatheredKit(read.file, beside)));
  if ('problems' in whole) throw new Error(JSON.stringify(whole.problems));
  expect(whole.kit).toEqual(read.kit);
});

const slips: readonly { name: string; file: string; code: string; where: string; says: string }[] = [
  {
    name: 'a layout that is not there',
    file: drawn(({ layouts }) => {
      layouts[0] = { id: 'window', file: 'gone.card.json' };
    }),
    code: 'kitFileMissing',
    where: 'layouts[0].file',
    says: 'gone.card.json',
  },
  {
    name: 'a layout nowhere',
    file: drawn(({ layouts }) => {
      layouts[1] = { id: 'path' };
    }),
    code: 'kitLayoutWhere',
    where: 'layouts[1]',
    says: 'neither',
  },
  {
    name: 'two layouts of one id',
    file: drawn(({ layouts }) => {
      layouts[1]!.id = 'window';
    }),
    code: 'kitIdTwice',
    where: 'layouts[1].id',
    says: 'layouts[0]',
  },
  {
    name: 'a paper of two layouts that the kit has not',
    file: drawn(({ papers, layouts }) => {
      for (const one of layouts) (one.layout as Draft).papers = { white: papers.white };
      delete papers.white;
      layouts.length = 2;
    }),
    code: 'kitPaperTwice',
    where: 'layouts[1]',
    says: 'white',
  },
  {
    name: 'a paper that is nowhere',
    file: drawn(({ papers, layouts }) => {
      delete papers.acorns;
      layouts.length = 1;
    }),
    code: 'paperUnknown',
    where: 'layouts[0].layout.parts[1].paper',
    says: 'acorns',
  },
  {
    name: 'a sheet with a bare number',
    file: drawn(({ papers }) => {
      papers.moss = { sheets: [{ size: [6, '6 in'], count: 4 }] };
    }),
    code: 'lengthBareNumber',
    where: 'papers.moss.sheets[0].size[0]',
    says: '6',
  },
  {
    name: 'no seats',
    file: drawn((kit) => {
      kit.seats = 0;
    }),
    code: 'numberRange',
    where: 'seats',
    says: '1 to 1 000',
  },
  {
    name: 'a field that is none',
    file: drawn((kit) => {
      kit.seat = 3;
    }),
    code: 'fieldUnknown',
    where: 'seat',
    says: 'seats',
  },
  {
    name: 'a stand-in for a layout that is none',
    file: drawn((kit) => {
      kit.instead = [{ layout: 'door', part: 'panel', paper: 'acorns', by: 'straw', cards: 2 }];
    }),
    code: 'kitInsteadLayout',
    where: 'instead[0].layout',
    says: 'door',
  },
  {
    name: 'a stand-in for a part that is none',
    file: drawn((kit) => {
      kit.instead = [{ layout: 'window', part: 'pane', paper: 'acorns', by: 'straw', cards: 2 }];
    }),
    code: 'kitInsteadPart',
    where: 'instead[0].part',
    says: 'pane',
  },
  {
    name: 'a stand-in for a paper that is not its',
    file: drawn((kit) => {
      kit.instead = [{ layout: 'window', part: 'panel', paper: 'moss', by: 'straw', cards: 2 }];
    }),
    code: 'kitInsteadPaper',
    where: 'instead[0].paper',
    says: 'acorns',
  },
  {
    name: 'a stand-in that is no paper',
    file: drawn((kit) => {
      kit.instead = [{ layout: 'window', part: 'panel', paper: 'acorns', by: 'silk', cards: 2 }];
    }),
    code: 'paperUnknown',
    where: 'instead[0].by',
    says: 'silk',
  },
  {
    name: 'a layout file',
    file: JSON.stringify((JSON.parse(text) as Draft).layouts[0]!.layout),
    code: 'fileKind',
    where: 'cardwright_kit',
    says: 'cardwright_kit',
  },
];

describe('one slip makes one problem, at its path, with one clear sentence', () => {
  test.each(slips)('$name', ({ file, code, where, says }) => {
    const read = readKitFile(file);
    const problems = 'problems' in read ? read.problems : [];
    expect(problems.map((problem) => `${problem.code} at ${problem.where}`)).toEqual([`${code} at ${where}`]);
    const sentence = fileProblemSentence(problems[0]!);
    expect(sentence).toContain(says);
    expect(sentence).not.toMatch(/undefined|\[object/);
  });

  test('what is wrong in a file of its own is told with its name', () => {
    const kit = drawn(({ layouts }) => {
      layouts[0] = { id: 'window', file: 'window.card.json' };
    });
    const read = readKitFile(kit, new Map([['window.card.json', '{ "cardwright": 1, "units": "in" }']]));
    const problems = 'problems' in read ? read.problems : [];
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.every(({ file }) => file === 'window.card.json')).toBe(true);
  });
});

test('the published schema is what the code makes, and ajv accepts the example by it', async () => {
  await expect(kitSchemaText()).toMatchFileSnapshot('../../schema/kit.schema.json');
  const ajv = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false });
  ajv.addSchema({
    ...(JSON.parse(layoutSchemaText()) as object),
    $id: 'https://example.test/card.schema.json',
  });
  const validate = ajv.compile({
    ...(JSON.parse(kitSchemaText()) as object),
    $id: 'https://example.test/kit.schema.json',
  });
  expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
  expect(validate(JSON.parse(drawn((kit) => Object.assign(kit, { seats: 0 }))))).toBe(false);
  expect(validate(JSON.parse(drawn(({ papers }) => Object.assign(papers, { moss: { sheets: 3 } }))))).toBe(
    false,
  );
});
