import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { readKitFile, readLayoutFile, readSavedKit, writeKitFile } from '../files/index.ts';
import { kitReport } from '../kits/index.ts';
import { inches } from '../measure/index.ts';
import { testSolver } from '../planning/testing/solver.ts';
import { type KitEdit, kitCounted, kitLengthSet, kitOfferTaken, kitSheetsSet } from './kitEdit.ts';
import { type KitHistory, kitEdited, kitOpened, kitStepped } from './kitHistory.ts';
import { newKit } from './newKit.ts';

const text = readFileSync('examples/autumn-afternoon.kit.json', 'utf8');
let history: KitHistory;
beforeAll(() => {
  const read = readKitFile(text);
  if ('problems' in read) throw new Error('The example is sound');
  const opened = kitOpened({ file: read.file, done: [], undone: [] });
  if ('problems' in opened) throw new Error('The example is sound');
  history = opened;
});

/** The history after an edit, which is also undone, done again and saved. */
function after(before: KitHistory, edit: KitEdit): KitHistory {
  const next = kitEdited(before, edit);
  if ('problems' in next) throw new Error(JSON.stringify(next.problems));
  const back = kitStepped(next, 'undo');
  expect(writeKitFile(back.file)).toBe(writeKitFile(before.file));
  expect(writeKitFile(kitStepped(back, 'redo').file)).toBe(writeKitFile(next.file));
  const saved = readKitFile(writeKitFile(next.file));
  expect('kit' in saved && saved.kit).toEqual(next.kit);
  return next;
}

test('every offer is an edit that is undone and saved, and gives what it says', async () => {
  const solver = await testSolver();
  const more = after(history, kitCounted(history.file, 'seats', 16));
  const report = kitReport(more.kit, { trimmer: null, solver });
  const { offers } = report.planned!;
  expect(offers.length).toBeGreaterThan(8);
  for (const offer of offers) {
    const taken = after(more, kitOfferTaken(more.file, more.kit, offer));
    const short = kitReport(taken.kit, { trimmer: null, solver }).planned!.shortage?.papers ?? [];
    if ('paper' in offer) expect(short.map(({ paper }) => paper)).not.toContain(offer.paper);
    else expect(short).toEqual([]);
  }
}, 240_000);

describe('a length of a layout', () => {
  test('is had by what it lies on where it follows from an inset', () => {
    const wanted = { layout: 'path', part: 'strip', name: 'height', length: inches(5) };
    const edit = kitLengthSet(history.file, history.kit, wanted);
    if ('refused' in edit) throw new Error('A shorter strip may be');
    const { layout } = after(history, edit).kit.layouts[1]!;
    expect(layout.typed.get('parts[0].size[1]')).toBe('5 1/4 in');
  });

  test('is refused where the layout would have errors', () => {
    const wanted = { layout: 'path', part: 'strip', name: 'height', length: inches(23, 4) };
    const edit = kitLengthSet(history.file, history.kit, wanted);
    const refused = 'refused' in edit && edit.refused.why === 'worse' ? edit.refused.problems : [];
    expect(refused.map(({ layout, problem }) => [layout, problem.code])).toContainEqual([
      'path',
      'largerThanCard',
    ]);
  });

  test('is refused where there is none', () => {
    const wanted = { layout: 'path', part: 'strip', name: 'diameter', length: inches(1) };
    expect(kitLengthSet(history.file, history.kit, wanted)).toEqual({ refused: { why: 'none' } });
  });
});

test('what is typed into one blank is one thing to undo, and nothing where it leads back', () => {
  const typed = (before: KitHistory, seats: number, joined: boolean) => {
    const next = kitEdited(before, kitCounted(before.file, 'seats', seats), joined);
    if ('problems' in next) throw new Error(JSON.stringify(next.problems));
    return next;
  };
  const sixteen = typed(typed(history, 1, false), 16, true);
  expect(sixteen.done.map(({ edit }) => edit.told)).toEqual([{ what: 'seats', to: 16 }]);
  const back = kitStepped(sixteen, 'undo');
  expect(writeKitFile(back.file)).toBe(writeKitFile(history.file));
  expect(kitStepped(back, 'redo').file).toEqual(sixteen.file);
  expect(typed(sixteen, 14, true)).toEqual(history);
  // Another opening of the blank is another thing to undo.
  expect(typed(sixteen, 18, false).done).toHaveLength(2);
});

test('sheets are counted', () => {
  const edit = kitSheetsSet(history.file, { paper: 'acorns', stock: 0 }, 5);
  expect(after(history, edit).kit.papers.get('acorns')!.sheets[0]!.count).toBe(5);
});

test('a kit of layouts shares the papers that are the same, and keeps those apart that only have one id', () => {
  const files = ['lantern-walk', 'kite-day', 'button-tin'].map((name) => {
    const read = readLayoutFile(readFileSync(`examples/${name}.card.json`, 'utf8'));
    if ('problems' in read) throw new Error('The examples are sound');
    return read;
  });
  const kit = newKit(
    files.map(({ file }) => file),
    { title: 'All', seats: 9, units: 'in' },
  );
  const read = readSavedKit(kit);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  expect(read.kit.layouts.map(({ id }) => id)).toEqual(['lantern-walk', 'kite-day', 'button-tin']);
  for (const [index, { layout }] of files.entries()) {
    const made = read.kit.layouts[index]!.layout;
    expect(made.cards).toBe(9);
    expect(made.base.size).toEqual(layout.base.size);
    // Of each part the papers by name, in their order.
    const names = (of: typeof layout) =>
      of.parts.map(({ papers }) => papers.map((id) => of.papers.get(id)!.name));
    expect(names(made)).toEqual(names(layout));
    for (const part of made.parts)
      for (const id of part.papers) {
        const { name } = made.papers.get(id)!;
        const own = [...layout.papers.values()].find((paper) => paper.name === name)!;
        expect(made.papers.get(id)!.sheets.map(({ size }) => size)).toEqual(
          own.sheets.map(({ size }) => size),
        );
      }
  }
});
