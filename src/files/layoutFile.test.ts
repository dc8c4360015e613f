import { describe, expect, test } from 'vitest';
import type { Layout, Part } from '../layout/index.ts';
import { fileProblemSentence } from '../words/index.ts';
import { readLayoutFile, type SavedLayout, writeLayoutFile } from './layoutFile.ts';
import { plainLayout } from './testing/plainLayout.ts';

/** 1 in and 1 mm in ticks of 0.625 µm, worked out by hand. */
const inch = 40_640;
const mm = 1_600;

function opened(text: string): { layout: Layout; file: SavedLayout } {
  const read = readLayoutFile(text);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read;
}

function told(text: string): string[] {
  const read = readLayoutFile(text);
  return 'problems' in read ? read.problems.map(({ code, where }) => `${where} ${code}`) : [];
}

function part(id: string, text = plainLayout()): Part {
  const found = opened(text).layout.parts.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no part ${id}`);
  return found;
}

const notTorn = { left: 0, right: 0, top: 0, bottom: 0 };
const centred = { start: null, end: null };

describe('a layout as its file says it', () => {
  const { layout } = opened(plainLayout());

  test('the set and its base', () => {
    expect(layout).toMatchObject({ title: 'Lantern evening', units: 'in', cards: 12 });
    expect(layout.base).toEqual({
      size: { width: 4.25 * inch, height: 5.5 * inch },
      fold: 'left',
      opens: 'sideways',
      allowance: null,
      papers: ['ivory'],
      side: 'front',
      turn: null,
      spare: 0,
      thickness: null,
      grams: null,
      rooms: { height: { least: 5.25 * inch, most: 5.5 * inch } },
    });
  });

  test('the papers, in the order of the file', () => {
    expect([...layout.papers.keys()]).toEqual(['ivory', 'meadow', 'bark']);
    expect(layout.papers.get('ivory')).toEqual({
      id: 'ivory',
      name: 'Ivory cardstock',
      kind: 'cardstock',
      gsm: 270,
      thickness: 0.33 * mm,
      colour: '#f4efdf',
      core: null,
      seeThrough: false,
      up: 'any',
      back: null,
      sheets: [
        {
          size: { width: 8.5 * inch, height: 11 * inch },
          count: null,
          price: 3_500,
          grain: 'height',
          scrap: false,
          margin: notTorn,
        },
        {
          size: { width: 6 * inch, height: 4 * inch },
          count: 3,
          price: null,
          grain: null,
          scrap: true,
          margin: notTorn,
        },
      ],
    });
    expect(layout.papers.get('meadow')).toMatchObject({
      up: 'one-way',
      back: { name: 'Meadow stripe', up: 'two-way', colour: '#b7c59a' },
      sheets: [{ margin: { ...notTorn, bottom: inch / 2 } }],
    });
    const sixteenth = inch / 16;
    expect(layout.papers.get('bark')).toMatchObject({
      name: 'bark',
      kind: 'patterned',
      gsm: null,
      thickness: null,
      colour: null,
      back: null,
      sheets: [{ margin: { left: sixteenth, right: sixteenth, top: sixteenth, bottom: sixteenth } }],
    });
  });

  test('a part with nothing but what is needed', () => {
    expect(part('mat')).toEqual({
      id: 'mat',
      name: 'mat',
      on: 'base',
      shape: { kind: 'rectangle' },
      extent: { by: 'inset', inset: inch / 8 },
      torn: notTorn,
      tear: null,
      tuck: notTorn,
      margin: 0,
      dieCut: false,
      stamped: false,
      places: [{ across: centred, down: centred }],
      papers: ['ivory'],
      side: 'front',
      turn: null,
      spare: 0,
      lies: 'upright',
      adhere: 'flat',
      foam: null,
      thickness: null,
      grams: null,
    });
  });

  test('a torn part dealt from two papers', () => {
    expect(part('panel')).toMatchObject({
      on: 'mat',
      extent: { by: 'size', width: 2.25 * inch, height: 5 * inch },
      torn: { ...notTorn, right: inch / 2 },
      tear: { least: (inch * 3) / 8, usual: null, most: (inch * 5) / 8, core: inch / 16 },
      places: [{ across: { start: { from: 'edge', distance: inch / 8 }, end: null }, down: centred }],
      papers: ['meadow', 'bark'],
      spare: 1,
    });
  });

  test('a part that fills the room beside its neighbour; a length without a unit is in those of the file', () => {
    expect(part('strip')).toMatchObject({
      name: 'Side strip',
      extent: { by: 'size', width: null, height: 5 * inch },
      places: [
        {
          across: {
            start: { from: 'part', part: 'panel', gap: inch / 8 },
            end: { from: 'edge', distance: inch / 8 },
          },
          down: centred,
        },
      ],
      side: 'back',
      turn: 'free',
      lies: 'sideways',
    });
  });

  test('parts that are die-cut or stamped', () => {
    expect(part('moon')).toMatchObject({ dieCut: true, stamped: false });
    expect(part('note')).toMatchObject({ dieCut: false, stamped: true });
  });

  test('circles', () => {
    const circle = { kind: 'circle' };
    expect(part('moon')).toMatchObject({ shape: circle, extent: { by: 'diameter', diameter: 1.5 * inch } });
    expect(part('moon-face')).toMatchObject({ shape: circle, extent: { by: 'inset', inset: inch / 16 } });
  });

  test('ovals, rounded rectangles and banners', () => {
    const note = (more: Parameters<typeof plainLayout>[0]) => part('note', plainLayout(more)).shape;
    expect(note({ 'parts[6].shape': 'oval' })).toEqual({ kind: 'oval' });
    expect(note({ 'parts[6].shape': 'rounded', 'parts[6].corner': '1/4 in' })).toEqual({
      kind: 'rounded',
      corner: inch / 4,
    });
    const banner = { 'parts[6].shape': 'banner', 'parts[6].ends': { right: 'notched', left: 'slanted' } };
    expect(note(banner)).toEqual({
      kind: 'banner',
      ends: { left: 'slanted', right: 'notched' },
      depth: null,
    });
    expect(note({ ...banner, 'parts[6].endDepth': '1/2 in' })).toMatchObject({ depth: inch / 2 });
  });

  test('what goes behind, what a die leaves, foam, and what is bought', () => {
    const more = { 'parts[6].tuck': { left: '1/2 in' }, 'parts[6].margin': '1/8 in' };
    expect(part('note', plainLayout(more))).toMatchObject({
      tuck: { ...notTorn, left: inch / 2 },
      margin: inch / 8,
    });
    expect(part('moon-face', plainLayout({ 'parts[4].foam': '1/8 in' })).foam).toBe(inch / 8);
    const button = { 'parts[5].thickness': '2 mm', 'parts[5].grams': 0.25 };
    expect(part('dot', plainLayout(button))).toMatchObject({ thickness: 2 * mm, grams: 0.25 });
  });

  test('the envelope and the post', () => {
    expect(layout).toMatchObject({
      envelope: {
        name: 'The white ones',
        size: { width: 4.375 * inch, height: 5.75 * inch },
        gsm: 90,
        thickness: null,
        grams: null,
      },
      post: 'us',
    });
    const without = opened(plainLayout({ envelope: undefined, post: undefined })).layout;
    expect(without).toMatchObject({ envelope: null, post: null });
  });

  test('vellum is seen through unless the file says that it is not', () => {
    const seeThrough = (more: Parameters<typeof plainLayout>[0]) =>
      opened(plainLayout(more)).layout.papers.get('bark')!.seeThrough;
    expect(seeThrough({})).toBe(false);
    expect(seeThrough({ 'papers.bark.kind': 'vellum' })).toBe(true);
    expect(seeThrough({ 'papers.bark.kind': 'vellum', 'papers.bark.seeThrough': false })).toBe(false);
    expect(seeThrough({ 'papers.bark.seeThrough': true })).toBe(true);
  });

  test('two pieces at places of their own; a negative distance is an overhang', () => {
    const edge = (distance: number) => ({ from: 'edge', distance });
    expect(part('dot')).toMatchObject({
      on: 'base',
      papers: [],
      places: [
        {
          across: { start: edge(-inch / 16), end: null },
          down: { start: edge(0), end: null },
        },
        {
          across: { start: null, end: edge(inch / 4) },
          down: { start: { from: 'part', part: 'panel', gap: -inch / 32 }, end: null },
        },
      ],
    });
  });

  test('several pieces with one place or none all take it', () => {
    const two = part('mat', plainLayout({ 'parts[0].count': 2, 'parts[0].place': { left: '0' } }));
    const place = { across: { start: { from: 'edge', distance: 0 }, end: null }, down: centred };
    expect(two.places).toEqual([place, place]);
    expect(part('note', plainLayout({ 'parts[6].count': 3 })).places).toHaveLength(3);
  });

  test('each neighbour fixes its own edge, across and down with their own gaps', () => {
    const beside = { leftOf: 'mat', above: 'panel', gap: ['1 in', '2 in'] };
    const below = { rightOf: 'mat', below: 'panel', gap: '1/4 in' };
    const near = (neighbour: string, gap: number) => ({ from: 'part', part: neighbour, gap });
    expect(part('dot', plainLayout({ 'parts[5].place': [beside, below] })).places).toEqual([
      {
        across: { start: null, end: near('mat', inch) },
        down: { start: null, end: near('panel', 2 * inch) },
      },
      {
        across: { start: near('mat', inch / 4), end: null },
        down: { start: near('panel', inch / 4), end: null },
      },
    ]);
  });

  test('room for lengths, or none at all', () => {
    expect(part('panel').rooms).toEqual({
      width: { least: 2 * inch, most: 2.5 * inch },
      height: { least: 5 * inch, most: 5 * inch },
      left: { least: -inch / 8, most: inch / 4 },
    });
    expect(part('strip').rooms).toEqual({
      width: { least: inch / 2, most: inch },
      gap: { least: 0, most: inch / 8 },
    });
    expect(part('moon').rooms).toEqual({ diameter: { least: inch, most: 2 * inch } });
    expect(part('note').rooms).toBe('none');
    expect(part('mat')).not.toHaveProperty('rooms');
    expect(part('note', plainLayout({ 'parts[6].room': {} })).rooms).toEqual({});
  });

  test('every length as it was typed, by its path', () => {
    expect(
      [...layout.typed].filter(([path]) => path.startsWith('parts[2]') || path.startsWith('base')),
    ).toEqual([
      ['base.size[0]', '4 1/4 in'],
      ['base.size[1]', '5 1/2 in'],
      ['base.room.height[0]', '5 1/4 in'],
      ['base.room.height[1]', '5 1/2 in'],
      ['parts[2].size[1]', '5'],
      ['parts[2].place.gap[0]', '1/8 in'],
      ['parts[2].place.gap[1]', '0'],
      ['parts[2].place.right', '1/8'],
      ['parts[2].room.width[0]', '1/2 in'],
      ['parts[2].room.width[1]', '1 in'],
      ['parts[2].room.gap[0]', '0'],
      ['parts[2].room.gap[1]', '1/8'],
    ]);
  });
});

test('a length that is no whole number of ticks is rounded down, so that seven of 3 1/7 in come out of 22 in', () => {
  const { width } = opened(plainLayout({ 'base.size[0]': '3 1/7 in' })).layout.base.size;
  expect(width).toBe(Math.floor((22 * inch) / 7));
  expect(width * 7).toBeLessThanOrEqual(22 * inch);
});

test.each([
  ['0.35', 3_500],
  ['0,35', 3_500],
  ['12', 120_000],
  ['0.0001', 1],
  ['999999999.9999', 9_999_999_999_999],
])('the price %s is %d ten-thousandths', (price, wanted) => {
  const text = plainLayout({ 'papers.bark.sheets[0].price': price });
  expect(opened(text).layout.papers.get('bark')?.sheets[0]?.price).toBe(wanted);
});

test('the same layout in millimetres: units change only what has none of its own', () => {
  const { layout } = opened(plainLayout({ units: 'mm' }));
  expect(layout.base.size).toEqual({ width: 4.25 * inch, height: 5.5 * inch });
  expect(layout.parts[2]?.extent).toEqual({ by: 'size', width: null, height: 5 * mm });
});

test('limits are allowed themselves', () => {
  const changes = {
    cards: 100_000,
    'base.spare': 100_000,
    'parts[6].count': 10,
    'base.size[0]': '10000 mm',
  };
  expect(opened(plainLayout(changes)).layout.cards).toBe(100_000);
  expect(told(plainLayout({ cards: 1_000, 'parts[6].count': 1_000 }))).toEqual([]);
  expect(told(plainLayout({ cards: 1, 'papers.bark.sheets[0].count': 0, parts: [] }))).toEqual([]);
});

test('what may be left out: a title, and sheets of a paper', () => {
  expect(opened(plainLayout({ title: undefined })).layout.title).toBe('');
  expect(told(plainLayout({ 'papers.bark.sheets': [] }))).toEqual([]);
});

describe('fields of other tools', () => {
  test('may hold anything, anywhere, and are written again', () => {
    const foreign = { deep: [1, { __x: null }], size: 4 };
    const changes = {
      'x-a': foreign,
      'base.x-a': foreign,
      'papers.x-a': foreign,
      'papers.bark.sheets[0].x-a': foreign,
      'parts[1].place.x-a': foreign,
      'parts[1].torn.x-': foreign,
    };
    const { layout, file } = opened(plainLayout(changes));
    expect(layout).toEqual(opened(plainLayout()).layout);
    expect(JSON.parse(writeLayoutFile(file))).toEqual(JSON.parse(plainLayout(changes)));
  });

  test('a paper may have an id that begins with x-', () => {
    const text = plainLayout({ 'papers.x-mas': { sheets: [] }, 'parts[0].paper': 'x-mas' });
    expect(opened(text).layout.papers.get('x-mas')?.name).toBe('x-mas');
    expect(told(plainLayout({ 'papers.x-mas': { sheets: 1 } }))).toEqual(['papers.x-mas.sheets fieldType']);
    expect(told(plainLayout({ 'papers.x-mas': {}, 'parts[0].paper': 'x-mas' }))).toEqual([
      'parts[0].paper paperUnknown',
    ]);
  });
});

test('names that every object has are ids like any other', () => {
  const text = plainLayout({
    'papers.constructor': { sheets: [] },
    'parts[6].id': 'toString',
    'parts[6].paper': ['constructor'],
  });
  expect(opened(text).layout.parts[6]).toMatchObject({ id: 'toString', papers: ['constructor'] });
});

test('a byte order mark is passed over', () => {
  expect(opened(`\uFEFF${plainLayout()}`)).toEqual(opened(plainLayout()));
});

test('a file is written with two spaces a step, short things on a line, and a line end, in its own order', () => {
  const { file } = opened(
    plainLayout({ units: undefined, 'base.size[1]': '5½"' }).replace('{', '{"units":"in",'),
  );
  expect(writeLayoutFile(file)).toMatch(
    /^\{\n {2}"units": "in",\n {2}"cardwright": 1,\n.*\n {4}"size": \["[^"]*", "5½\\""\],\n.*\n\}\n$/s,
  );
});

test('everything that is wrong is told at once, in the order of the file, with the part it is about', () => {
  const text = plainLayout({
    'parts[5].colour': 1,
    'parts[2].on': 'mta',
    'parts[1].size[0]': 2.25,
    'parts[1].id': undefined,
    'papers.meadow.up': 'down',
    'base.size[1]': '-1',
    'base.paper': 'snow',
    cards: 0,
  });
  const read = readLayoutFile(text);
  expect('problems' in read && read.problems.map(({ where, code, part }) => [where, code, part])).toEqual([
    ['cards', 'numberRange', undefined],
    ['base.size[1]', 'lengthNotPositive', undefined],
    ['base.paper', 'paperUnknown', undefined],
    ['papers.meadow.up', 'fieldChoice', undefined],
    ['parts[1].id', 'fieldMissing', undefined],
    ['parts[1].size[0]', 'lengthBareNumber', undefined],
    ['parts[2].on', 'onUnknown', 'strip'],
    ['parts[2].place.rightOf', 'onUnknown', 'strip'],
    ['parts[3].on', 'onUnknown', 'moon'],
    ['parts[5].place[1].below', 'onUnknown', 'dot'],
    ['parts[5].colour', 'fieldUnknown', 'dot'],
  ]);
});

// Work that grows as the square of the text would take hours on these; the time a test may take is the check.
describe('files as long as they may be', () => {
  const many = (count: number, one: (index: number) => string) =>
    Array.from({ length: count }, (_, index) => one(index)).join(',');
  const whole = plainLayout();
  // Long ids that are all alike, and named wrongly as often as there is room.
  const id = (index: number) => `${'i'.repeat(50)}${index}`;
  const farFromAll = (index: number) =>
    `{"id":"${id(index)}","on":"${id(index)}x","paper":"${id(0)}","size":["1","1"],"count":150,"place":[${many(150, (other) => `{"below":"${id(other)}x"}`)}]}`;
  const inside = (fields: string) => `${whole.slice(0, -1)},${fields}}`;

  test.each([
    ['unknown fields', inside(many(300_000, (index) => `"f${index}":1`)), 101],
    ['repeated fields', inside(many(300_000, () => '"cards":1')), 100],
    ['parts', inside('"x":1').replace('"parts":[', `"parts":[${many(300_000, () => '{}')},`), 1],
    [
      'parts all wrong',
      whole.replace('"parts":[', `"parts":[${many(480, () => `{${many(500, (i) => `"a${i}":0`)}}`)},`),
      101,
    ],
    [
      'places all wrong',
      whole.replace('"place":[', `"place":[${many(990, () => `{${many(400, (i) => `"a${i}":0`)}}`)},`),
      101,
    ],
    ['papers of one part', whole.replace('["meadow",', `[${many(600_000, () => '"a"')},`), 1],
    ['one long text', whole.replace('Lantern', 'L'.repeat(4_900_000)), 1],
    ['one long escaped text', whole.replace('Lantern', '\\u0041'.repeat(800_000)), 1],
    ['one long number', whole.replace('"cards":12', `"cards":${'9'.repeat(4_900_000)}`), 2],
    ['one long name', inside(`"${'n'.repeat(4_900_000)}":1`), 1],
    ['one long length', whole.replace('4 1/4 in', '1/'.repeat(2_400_000)), 1],
    ['one long id', whole.replace('"id":"note"', `"id":"${'n'.repeat(4_900_000)}"`), 1],
    ['blanks', `${whole}${' '.repeat(4_900_000)}x`, 1],
    ['lines', `${whole}${'\n'.repeat(4_900_000)}x`, 1],
    ['open brackets', '['.repeat(4_900_000), 1],
    ['words', inside(`"x-a":${'a'.repeat(4_900_000)}`), 1],
    ['unknown neighbours', whole.replace('"parts":[', `"parts":[${many(300, farFromAll)},`), 101],
    ['fields of another tool', inside(`"x-a":[${many(1_200_000, () => '{}')}],"x":1`), 1],
  ])('%s', (_, text, count) => {
    const read = readLayoutFile(text);
    const problems = 'problems' in read ? read.problems : [];
    expect(problems.length).toBe(count);
    expect(Math.max(...problems.map((problem) => fileProblemSentence(problem).length))).toBeLessThan(1_000);
  });
});
