import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dimensionsOf, type Layout } from '../layout/index.ts';
import {
  inches,
  type Length,
  lengthOfTicks,
  millimetres,
  readLength,
  showLength,
  type Units,
} from '../measure/index.ts';
import type { SheetStock } from '../stash/index.ts';
import { changedFile, type FileChanges } from './changedFile.ts';
import { type Json, valueAt } from './json.ts';
import { readLayoutFile, type SavedLayout, writeLayoutFile } from './layoutFile.ts';
import { drawnAnew } from './testing/drawnAnew.ts';
import { plainLayout, withValues } from './testing/plainLayout.ts';
import { randomFile } from './testing/randomFile.ts';

function opened(text: string): { layout: Layout; file: SavedLayout } {
  const read = readLayoutFile(text);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read;
}

function changed(file: SavedLayout, changes: FileChanges): { layout: Layout; file: SavedLayout } {
  const result = changedFile(file, changes);
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result;
}

/** What stands at some paths of the plain layout once one length there is another. */
function textAt(path: string, length: Length, units?: Units): string | undefined {
  const changes = { lengths: new Map([[path, length]]), ...(units === undefined ? {} : { units }) };
  return changed(opened(plainLayout()).file, changes).layout.typed.get(path);
}

describe('a changed length', () => {
  test.each([
    ['in the units of the file', 'parts[1].size[0]', inches(17, 8), undefined, '2 1/8 in'],
    ['without its unit where it had none', 'parts[2].size[1]', inches(19, 4), undefined, '4 3/4'],
    ['with it where the units of the file change', 'parts[2].size[1]', millimetres(120), 'mm', '120 mm'],
    ['in other units than it had', 'papers.ivory.thickness', inches(1, 64), undefined, '1/64 in'],
    [
      'in the other unit where its own would be rounded',
      'base.size[0]',
      millimetres(105.1),
      undefined,
      '105.1 mm',
    ],
    ['likewise from a bare text', 'parts[2].size[1]', millimetres(105.1), undefined, '105.1 mm'],
    ['likewise in millimetres', 'base.size[0]', inches(17, 64), 'mm', '17/64 in'],
    ['to the tick where both would be', 'base.size[0]', lengthOfTicks(160_001), undefined, '3.93704 in'],
    ['to the tick, however short', 'parts[0].inset', lengthOfTicks(1), undefined, '0.00003 in'],
    ['to the tick, below zero', 'parts[5].place[0].left', lengthOfTicks(-1_601), undefined, '-0.03939 in'],
    ['of a place in a list', 'parts[5].place[1].right', inches(-1, 8), undefined, '-1/8 in'],
    ['of a pair of gaps', 'parts[2].place.gap[1]', inches(1, 8), undefined, '1/8'],
    ['of a room', 'parts[1].room.width[1]', inches(3), undefined, '3 in'],
    ['of a margin', 'papers.meadow.sheets[0].margin.bottom', inches(1), undefined, '1 in'],
  ] as const)('is written %s', (_, path, length, units, text) => {
    expect(textAt(path, length, units)).toBe(text);
  });

  test('of a gap that was left out is put beside its neighbour', () => {
    const below = { id: 'below', on: 'mat', size: ['1 in', '1 in'], paper: null };
    const file = (place: Json) => opened(plainLayout({ 'parts[6]': { ...below, place } })).file;
    const lengths = new Map([['parts[6].place.gap', inches(1, 8)]]);
    const one = changed(file({ below: 'panel', left: '0' }), { lengths });
    expect(valueAt(one.file, ['parts', 6, 'place'])).toEqual({ below: 'panel', left: '0', gap: '1/8 in' });
    const listed = changed(file([{ below: 'panel' }]), { lengths });
    expect(valueAt(listed.file, ['parts', 6, 'place'])).toEqual([{ below: 'panel', gap: '1/8 in' }]);
    expect(() => changedFile(file({ left: '0' }), { lengths })).toThrow('where there is one');
  });

  test('where none stands is a mistake of ours', () => {
    const { file } = opened(plainLayout());
    for (const path of ['parts[2].size[0]', 'parts[9].size[0]', 'title', 'base', 'parts[0].torn.gap'])
      expect(() => changedFile(file, { lengths: new Map([[path, inches(1)]]) }), path).toThrow(
        'where there is one',
      );
  });
});

describe('another unit for the file', () => {
  test('is written to what had none', () => {
    const { file, layout } = changed(opened(plainLayout()).file, { units: 'mm' });
    expect(layout.units).toBe('mm');
    expect(layout.typed.get('parts[2].size[1]')).toBe('5 in');
    expect(layout.typed.get('parts[2].place.gap[1]')).toBe('0 in');
    expect(layout.typed.get('papers.meadow.sheets[0].size[0]')).toBe('12 in');
    expect(valueAt(file, ['parts', 2, 'room', 'gap'])).toEqual(['0 in', '1/8 in']);
  });

  test.each([
    ['5¼', '5¼ in'],
    ['5-1/4 ', '5-1/4 in'],
    // A point that ends the text can stand before no unit.
    ['5 1/4.', '5 1/4 in'],
    [`${'0'.repeat(76)}1.5`, '1 1/2 in'],
    ['1 ft 2', null],
    ['5.25"', '5.25"'],
    ['57 mm.', '57 mm.'],
  ])('%s is then %s', (before, after) => {
    const read = readLayoutFile(plainLayout({ 'parts[6].size[1]': before }));
    if (after === null) expect(read).toHaveProperty('problems');
    else if ('file' in read)
      expect(changed(read.file, { units: 'mm' }).layout.typed.get('parts[6].size[1]')).toBe(after);
    else throw new Error('no layout');
  });

  test('papers whose ids look like numbers are papers like any other', () => {
    const text = plainLayout({
      'papers.12': { sheets: [{ size: ['12', '12'], count: 1 }] },
      'base.paper': '12',
    });
    const { layout } = changed(opened(text).file, { units: 'mm' });
    expect(layout.papers.get('12')?.sheets[0]?.size.width).toBe(inches(12));
  });
});

describe('other values', () => {
  const { file, layout } = opened(plainLayout({ 'papers.bark.sheets[0].x-shelf': 3 }));

  test('cards and title', () => {
    const result = changed(file, { cards: 40, title: 'Forty' });
    expect(result.layout).toEqual({ ...layout, cards: 40, title: 'Forty' });
    expect(Object.keys(result.file)).toEqual(Object.keys(file));
    const untitled = opened(plainLayout({ title: undefined })).file;
    expect(Object.keys(changed(untitled, { title: 'Forty' }).file).slice(0, 3)).toEqual([
      'cardwright',
      'title',
      'units',
    ]);
  });

  test('the sheets of a paper: those it had stay as they were typed', () => {
    const had = layout.papers.get('bark')?.sheets ?? [];
    const sheet: SheetStock = {
      size: { width: millimetres(210), height: millimetres(297) },
      count: null,
      price: null,
      grain: 'height',
      scrap: false,
      margin: {
        left: millimetres(5),
        right: lengthOfTicks(0),
        top: lengthOfTicks(0),
        bottom: lengthOfTicks(0),
      },
    };
    const wanted = [sheet, ...had];
    const result = changed(file, { sheets: new Map([['bark', wanted]]) });
    expect(result.layout.papers.get('bark')?.sheets).toEqual(wanted);
    expect(valueAt(result.file, ['papers', 'bark', 'sheets'])).toEqual([
      { size: ['210 mm', '297 mm'], count: null, grain: 'height', margin: { left: '5 mm' } },
      { size: ['12 in', '12 in'], count: 1, margin: '1/16 in', 'x-shelf': 3 },
    ]);
  });

  test.each([
    [0, '0.00'],
    [3_500, '0.35'],
    [120_000, '12.00'],
    [1, '0.0001'],
    [12_340, '1.234'],
    [9_999_999_999_999, '999999999.9999'],
  ])('a price of %d ten-thousandths is written %s', (price, text) => {
    const [first] = layout.papers.get('meadow')?.sheets ?? [];
    const wanted = first === undefined ? [] : [{ ...first, price }];
    const result = changed(file, { sheets: new Map([['meadow', wanted]]) });
    expect(valueAt(result.file, ['papers', 'meadow', 'sheets', 0, 'price'])).toBe(text);
    expect(result.layout.papers.get('meadow')?.sheets).toEqual(wanted);
  });

  test('what no layout may hold is a problem of the file', () => {
    const told = (changes: FileChanges) => {
      const result = changedFile(file, changes);
      return 'problems' in result ? result.problems.map(({ code, where }) => `${where} ${code}`) : [];
    };
    expect(told({ cards: 0 })).toEqual(['cards numberRange']);
    expect(told({ lengths: new Map([['base.room.height[0]', inches(9)]]) })).toEqual([
      'base.room.height roomOrder',
    ]);
    expect(told({ lengths: new Map([['papers.bark.sheets[0].size[0]', inches(1, 8)]]) })).toEqual([
      'papers.bark.sheets[0].margin marginAll',
    ]);
  });
});

// --- The laws, on random files ---

const ticks = fc.oneof(
  fc.integer({ min: 1, max: 14_000_000 }),
  fc.integer({ min: 1, max: 1_000 }).map((count) => count * 635),
  fc.integer({ min: 1, max: 2_000 }).map((count) => count * 160),
);

/** Other lengths for some of the paths, such that rooms still go up and margins still leave something. */
function otherLengths(layout: Layout): fc.Arbitrary<ReadonlyMap<string, Length>> {
  const paths = [...new Set([...layout.typed.keys(), ...dimensionsOf(layout).map(({ path }) => path)])];
  const some = fc.tuple(
    fc.subarray(paths),
    fc.array(ticks, { minLength: paths.length, maxLength: paths.length }),
  );
  return some.map(
    ([chosen, by]) =>
      new Map(chosen.map((path, index) => [path, lengthOfTicks(otherAt(layout, path, by[index] ?? 1))])),
  );
}

function otherAt(layout: Layout, path: string, by: number): number {
  const reading = readLength(layout.typed.get(path) ?? '0', layout.units);
  const old = reading.ok ? reading.length : 0;
  if (path.includes('.room.')) {
    const positive = /(?:width|height|diameter|inset)\[/.test(path);
    if (path.endsWith('[1]')) return old + by;
    return positive ? Math.max(1, old - by) : old - by;
  }
  if (path.endsWith('.tear.least')) return Math.max(1, old - by);
  if (path.endsWith('.tear.usual')) return old;
  if (path.endsWith('.tear.most')) return old + by;
  if (path.includes('.margin') && path.startsWith('papers')) return by % (old + 1);
  if (path.includes('.sheets[')) return old + by;
  return path.includes('.place') && by % 2 === 0 ? -by : by;
}

function otherSheets(layout: Layout): fc.Arbitrary<ReadonlyMap<string, readonly SheetStock[]>> {
  const length = ticks.map(lengthOfTicks);
  const margin = fc.constantFrom(0, 635, 16, 1).map(lengthOfTicks);
  const of = (sheets: readonly SheetStock[]) => {
    const priced = sheets.some(({ price }) => price !== null);
    const fresh = fc.record<SheetStock>({
      size: fc
        .record({ width: length, height: length })
        .filter(({ width, height }) => Math.min(width, height) > 1_270),
      count: fc.oneof(fc.constant(null), fc.nat(1_000_000)),
      price: priced ? fc.nat(1_000_000) : fc.constant(null),
      grain: fc.constantFrom(null, 'width', 'height'),
      scrap: fc.boolean(),
      margin: fc.oneof(
        fc.record({ left: margin, right: margin, top: margin, bottom: margin }),
        margin.map((each) => ({ left: each, right: each, top: each, bottom: each })),
      ),
    });
    return fc
      .tuple(fc.shuffledSubarray([...sheets]), fc.array(fresh, { maxLength: 2 }))
      .map(([old, more]) => [...more, ...old]);
  };
  return fc
    .subarray([...layout.papers.values()])
    .chain((papers) =>
      fc.tuple(...papers.map(({ id, sheets }) => of(sheets).map((list) => [id, list] as const))),
    )
    .map((entries) => new Map(entries));
}

function optional<Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | undefined> {
  return fc.oneof(value, fc.constant(undefined));
}

const changes = randomFile().chain((random) => {
  const { layout, file } = opened(JSON.stringify(random));
  return fc
    .record({
      lengths: otherLengths(layout),
      units: fc.constantFrom<Units>('in', 'mm'),
      cards: optional(fc.integer({ min: 1, max: 100_000 })),
      title: optional(fc.constantFrom('', 'Another')),
      sheets: fc.oneof(fc.constant(new Map<string, readonly SheetStock[]>()), otherSheets(layout)),
    })
    .map(({ lengths, cards, title, sheets, units }) => ({
      layout,
      file,
      units,
      cards: cards ?? layout.cards,
      title,
      sheets,
      lengths: new Map(
        [...lengths].filter(
          ([path]) => ![...sheets.keys()].some((id) => path.startsWith(`papers.${id}.sheets[`)),
        ),
      ),
    }));
});

test('what is written reads as the layout changed in memory, and all else stays as it was', () => {
  fc.assert(
    fc.property(changes, ({ layout, file, lengths, units, cards, title, sheets }) => {
      const wanted = { lengths, units, cards, sheets, ...(title === undefined ? {} : { title }) };
      const result = changed(file, wanted);
      const again = opened(writeLayoutFile(result.file));
      expect(again).toEqual(result);

      // The layout.
      const drawn = drawnAnew(layout, lengths);
      const papers = new Map(
        [...drawn.papers].map(([id, paper]) => [id, { ...paper, sheets: sheets.get(id) ?? paper.sheets }]),
      );
      expect({ ...again.layout, typed: null }).toEqual({
        ...drawn,
        units,
        cards,
        title: title ?? layout.title,
        papers,
        typed: null,
      });

      // The texts.
      const before: Record<string, Json | undefined> = { units: layout.units, cards: layout.cards };
      for (const [path, length] of lengths) {
        const text = result.layout.typed.get(path);
        const old = layout.typed.get(path);
        before[old === undefined ? gapAt(path, file) : path] = old;
        const shown = showLength(length, units);
        if (text === undefined || shown.startsWith('about')) continue;
        const bare = units === layout.units && old !== undefined && !/[a-z"]/.test(old);
        expect(text).toBe(bare ? shown : `${shown} ${units}`);
      }
      for (const [path, old] of layout.typed) {
        if (lengths.has(path) || [...sheets.keys()].some((id) => path.startsWith(`papers.${id}.sheets[`)))
          continue;
        const bare = !/[a-z"]/.test(old) && units !== layout.units;
        expect(result.layout.typed.get(path)).toBe(bare ? `${old} ${layout.units}` : old);
        before[path] = old;
      }

      // Nothing else, in its order.
      for (const id of sheets.keys()) before[`papers.${id}.sheets`] = valueAt(file, ['papers', id, 'sheets']);
      if (title !== undefined) before.title = file.title;
      expect(JSON.stringify(withValues(plain(result.file), before))).toBe(JSON.stringify(file));
    }),
    { numRuns: 400 },
  );
});

test('without changes the file is the same text', () => {
  fc.assert(
    fc.property(randomFile(), (random) => {
      const { file, layout } = opened(JSON.stringify(random));
      const text = writeLayoutFile(file);
      const had = new Map([...layout.papers].map(([id, { sheets }]) => [id, sheets]));
      for (const none of [{}, { units: layout.units, cards: layout.cards, lengths: new Map(), sheets: had }])
        expect(writeLayoutFile(changed(file, none).file)).toBe(text);
    }),
    { numRuns: 100 },
  );
});

test('another unit alone changes no length, there and back', () => {
  fc.assert(
    fc.property(randomFile(), (random) => {
      const { file, layout } = opened(JSON.stringify(random));
      const there = changed(file, { units: layout.units === 'in' ? 'mm' : 'in' });
      expect({ ...there.layout, typed: null, units: null }).toEqual({ ...layout, typed: null, units: null });
      const back = changed(there.file, { units: layout.units });
      expect({ ...back.layout, typed: null }).toEqual({ ...layout, typed: null });
    }),
    { numRuns: 200 },
  );
});

/** Where a gap that was left out stands in the file: where a list holds one place, inside that. */
function gapAt(path: string, file: SavedLayout): string {
  const index = Number(/^parts\[(\d+)\]\.place\.gap$/.exec(path)?.[1] ?? -1);
  return valueAt(file, ['parts', index, 'place', 0]) === undefined ? path : `parts[${index}].place[0].gap`;
}

/** With the prototypes that copying wants. */
function plain(file: SavedLayout): Json {
  return JSON.parse(JSON.stringify(file)) as Json;
}
