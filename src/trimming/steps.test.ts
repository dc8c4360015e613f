import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CutTree } from '../cutting/index.ts';
import { inches, lengthOfTicks, millimetres, type Size, zero } from '../measure/index.ts';
import { effortOf } from './description.ts';
import type { Step } from './step.ts';
import { type SheetToCut, stepsFor } from './steps.ts';
import { fewestSettings } from './testing/fewestSettings.ts';
import { replayed } from './testing/replayed.ts';
import { enlarged, leavesOf, reversed, sizeOfItem, transposed, treeArbitrary } from './testing/trees.ts';
import { trimmerWith } from './testing/trimmers.ts';

const noMargins = { left: zero, right: zero, top: zero, bottom: zero };

describe('worked by hand', () => {
  test('of orders with as few settings and steps, what has nothing to spare is cut first', () => {
    const roomy = row('width', [piece(30, 40, 0), piece(30, 40, 0), rest(5, 40)]);
    const tight = row('width', [piece(20, 40, 1), piece(20, 40, 1), piece(20, 40, 1)]);
    const { steps } = stepsFor([sheet('roomy-1', roomy), sheet('tight-1', tight)], null);
    expect(steps.map(({ take, set }) => [take, set])).toEqual([
      [['tight-1'], 20],
      [['roomy-1'], 30],
    ]);
  });

  test('seven panels of 2 1/4 x 5 in from a sheet 12 in square, as in the description of the file format', () => {
    const panel = piece(inches(9, 4), inches(5), 0);
    const strip = (panels: number): CutTree =>
      row('width', [...Array<CutTree>(panels).fill(panel), rest(inches(12 * 4 - 9 * panels, 4), inches(5))]);
    const tree = row('height', [strip(5), strip(2), rest(inches(12), inches(2))]);
    const { steps, finished, leftovers, effort, settingsBound } = stepsFor([sheet('meadow-1', tree)], null);

    expect(steps.map(({ take, axis, set, repeat }) => [take, axis, set, repeat])).toEqual([
      [['meadow-1'], 'height', 203_200, 2],
      [['meadow-1a'], 'width', 91_440, 5],
      [['meadow-1b'], 'width', 91_440, 2],
    ]);
    expect(steps[0]).toEqual({
      step: 1,
      take: ['meadow-1'],
      axis: 'height',
      set: 203_200,
      repeat: 2,
      gives: [['meadow-1a', 'meadow-1b']],
      rest: ['meadow-1c'],
    });
    expect(finished.size).toBe(7);
    expect(finished.get('meadow-1a1')).toBe(0);
    expect(leftovers.find(({ id }) => id === 'meadow-1c')).toEqual({
      id: 'meadow-1c',
      size: { width: 487_680, height: 81_280 },
      keep: true,
    });
    // 2 strips, then 5 and 2 panels; each strip is turned once.
    expect(effort).toEqual({ passes: 9, settings: 2, turns: 2 });
    expect(settingsBound).toBe(2);
  });

  const fives = trimmerWith({ marks: millimetres(5), narrowest: millimetres(25) });

  test('ten panels of 125 x 85 mm upright from four A4 sheets: 14 passes', () => {
    const panel = piece(millimetres(125), millimetres(85), 0);
    const tree = (panels: number): CutTree =>
      row('width', [
        row('height', [
          ...Array<CutTree>(panels).fill(panel),
          rest(millimetres(125), millimetres(297 - 85 * panels)),
        ]),
        rest(millimetres(85), millimetres(297)),
      ]);
    const sheets = [3, 3, 3, 1].map((panels, index) => sheet(`print-${index + 1}`, tree(panels)));
    const { steps, finished, effort } = stepsFor(sheets, fives);
    // One cut at 125 on each sheet, then three at 85 on three strips and one on the last: 4 + 9 + 1.
    expect(steps.map(({ take, set, repeat }) => [take.length, set, repeat])).toEqual([
      [4, millimetres(125), 1],
      [3, millimetres(85), 3],
      [1, millimetres(85), 1],
    ]);
    expect(effort).toEqual({ passes: 14, settings: 2, turns: 4 });
    expect(finished.size).toBe(10);
  });

  test('ten mats of 135 x 95 mm from three A4 sheets, four turned and twice three upright: 14 passes', () => {
    const turned = piece(millimetres(95), millimetres(135), 0);
    const upright = piece(millimetres(135), millimetres(95), 0);
    const four = row('height', [
      ...Array<CutTree>(2).fill(row('width', [turned, turned, rest(millimetres(20), millimetres(135))])),
      rest(millimetres(210), millimetres(27)),
    ]);
    const three = row('width', [
      row('height', [upright, upright, upright, rest(millimetres(135), millimetres(12))]),
      rest(millimetres(75), millimetres(297)),
    ]);
    const { steps, effort, settingsBound } = stepsFor(
      [sheet('plain-1', four), sheet('plain-2', three), sheet('plain-3', three)],
      fives,
    );
    // At 135 twice across the first sheet and once along the two others, then everything at 95.
    expect(effort).toEqual({ passes: 2 + 1 + 1 + 4 + 6, settings: 2, turns: 4 });
    expect(settingsBound).toBe(2);
    expect(steps.map(({ set }) => set)).toEqual([135, 135, 95, 95].map((set) => millimetres(set)));
  });

  test('a margin on three sides of a 12 in sheet, then halves', () => {
    const half = piece(inches(47, 8), inches(47, 4), 0);
    const { steps, leftovers, effort } = stepsFor(
      [
        {
          id: 'oak-1',
          size: { width: inches(12), height: inches(12) },
          squaring: { left: inches(1, 4), right: zero, top: inches(1, 8), bottom: inches(1, 8) },
          tree: row('width', [half, half]),
        },
      ],
      null,
    );
    expect(steps.map(({ axis, set, repeat, squares }) => [axis, set, repeat, squares])).toEqual([
      ['height', inches(95, 8), 1, 'top'],
      ['height', inches(47, 4), 1, 'bottom'],
      ['width', inches(47, 4), 1, 'left'],
      ['width', inches(47, 8), 2, undefined],
    ]);
    // Three margins and one cut between the halves; 11 3/4 serves twice; one turn before the left margin.
    expect(effort).toEqual({ passes: 4, settings: 3, turns: 1 });
    expect(leftovers).toEqual([
      { id: 'oak-1b', size: { width: inches(12), height: inches(1, 8) }, keep: false },
      { id: 'oak-1a2', size: { width: inches(12), height: inches(1, 8) }, keep: false },
      { id: 'oak-1a1b', size: { width: inches(1, 4), height: inches(47, 4) }, keep: false },
    ]);
  });

  test('a margin is measured itself where the sheet that stays is off the marks', () => {
    const half = piece(millimetres(207), millimetres(100), 0);
    const { steps, finished, leftovers } = stepsFor(
      [
        {
          id: 'odd-1',
          size: { width: millimetres(212), height: millimetres(200) },
          squaring: { ...noMargins, right: millimetres(5) },
          tree: row('height', [half, half]),
        },
      ],
      fives,
    );
    expect(steps[0]).toMatchObject({
      axis: 'width',
      set: millimetres(5),
      gives: [['odd-1a']],
      rest: ['odd-1b'],
    });
    expect(leftovers).toEqual([
      { id: 'odd-1a', size: { width: millimetres(5), height: millimetres(200) }, keep: false },
    ]);
    expect([...finished.keys()]).toEqual(['odd-1b1', 'odd-1b2']);
  });

  test('one setting twice where two sheets need the same two settings in opposite order', () => {
    const [five, three] = [inches(5), inches(3)];
    const first = row('width', [
      row('height', [piece(five, three, 0), rest(five, inches(2))]),
      rest(inches(1), five),
    ]);
    const second = row('height', [
      row('width', [piece(five, three, 0), rest(inches(1), three)]),
      rest(inches(6), inches(2)),
    ]);
    const { effort, settingsBound } = stepsFor([sheet('a-1', first), sheet('a-2', second)], null);
    expect(effort.settings).toBe(3);
    expect(settingsBound).toBe(3);
  });

  test('a sheet that is a finished piece needs no step', () => {
    const { steps, finished, leftovers, effort } = stepsFor([sheet('whole-1', piece(10, 20, 4))], null);
    expect(steps).toEqual([]);
    expect([...finished]).toEqual([['whole-1', 4]]);
    expect(leftovers).toEqual([]);
    expect(effort).toEqual({ passes: 0, settings: 0, turns: 0 });
  });

  test('no pass between waste and waste, however the tree has it', () => {
    const tree = row('width', [
      row('width', [piece(5, 10, 0), rest(1, 10)]),
      row('height', [rest(2, 4), rest(2, 6)]),
      rest(3, 10),
    ]);
    const { effort, leftovers } = stepsFor([sheet('w-1', tree)], null);
    expect(effort.passes).toBe(1);
    expect(leftovers).toEqual([{ id: 'w-1b', size: { width: 6, height: 10 }, keep: false }]);
  });

  // The chocolate-bar puzzle of recreational mathematics (from memory): m x n squares take m n - 1 breaks.
  test('four by six squares take 23 passes', () => {
    const tree = row('height', Array<CutTree>(6).fill(row('width', Array<CutTree>(4).fill(piece(1, 1, 0)))));
    expect(stepsFor([sheet('bar-1', tree)], null).effort).toEqual({ passes: 23, settings: 1, turns: 6 });
  });

  test('a row told as three thousand cuts within cuts is one step', () => {
    let tree: CutTree = piece(10, 10, 0);
    for (let count = 1; count < 3000; count += 1) tree = row('width', [piece(10, 10, 0), tree]);
    const { steps, effort } = stepsFor([sheet('long-1', tree)], null);
    expect(steps).toHaveLength(1);
    expect(effort).toEqual({ passes: 2999, settings: 1, turns: 0 });
  });

  test('steps may go on from another paper’s', () => {
    const tree = row('width', [piece(4, 5, 0), rest(6, 5)]);
    expect(stepsFor([sheet('b-1', tree)], null, { firstStep: 12 }).steps[0]?.step).toBe(12);
  });
});

describe('what is our own mistake', () => {
  test.each([
    ['all waste', row('width', [rest(1, 3), rest(2, 3)]), null, 'cut for a piece'],
    ['one part', row('width', [piece(1, 3, 0)]), null, 'at least two parts'],
    ['parts that do not fill', row('width', [piece(1, 3, 0), rest(1, 3)], 3), null, 'fill their workpiece'],
    [
      'two parts off the marks',
      row('width', [piece(3, 9, 0), piece(4, 9, 0)]),
      { marks: 5 },
      'off the marks',
    ],
    ['a cut too long', row('width', [piece(5, 9, 0), rest(4, 9)]), { longest: 8 }, 'no longer than'],
    ['a strip too narrow', row('width', [piece(5, 9, 0), rest(4, 9)]), { narrowest: 6 }, 'can hold'],
  ] as const)('%s', (_, tree, limits, says) => {
    const trimmer = limits === null ? null : trimmerWith(limits);
    expect(() => stepsFor([sheet('x-1', tree)], trimmer)).toThrow(says);
  });

  test('a tree larger than its squared sheet, and one id twice', () => {
    const tree = row('width', [piece(5, 9, 0), rest(4, 9)]);
    const margin = { ...sheet('x-1', tree), squaring: { ...noMargins, left: lengthOfTicks(1) } };
    expect(() => stepsFor([margin], null)).toThrow('as large as its sheet');
    expect(() => stepsFor([sheet('x-1', tree), sheet('x-1', tree)], null)).toThrow('used once');
  });
});

describe('random trees', () => {
  const shape = { depth: 4, parts: 4, marks: 1, variety: 6, tidy: false };
  const sizes = fc.record({
    width: fc.integer({ min: 4, max: 40 }),
    height: fc.integer({ min: 4, max: 40 }),
  });
  const trees = fc.array(
    sizes.chain((size) => treeArbitrary(size, shape)),
    { minLength: 1, maxLength: 5 },
  );

  test('give exactly their pieces, each id once, and the effort of an independent recount', () => {
    fc.assert(
      fc.property(trees, fc.nat(3), (all, copies) => {
        const sheets = all.flatMap((tree, index) =>
          Array.from({ length: 1 + copies }, (_, copy) => sheet(`p-${index * 10 + copy}`, tree)),
        );
        const { steps, finished, leftovers, effort, settingsBound } = stepsFor(sheets, null);
        const { table, ...count } = replayed(steps, sheets);
        expect(effort).toEqual({ passes: count.passes, settings: count.settings, turns: count.turns });
        expect(settingsBound).toBeLessThanOrEqual(effort.settings);
        expect(steps.map(({ step }) => step)).toEqual(steps.map((_, index) => index + 1));

        // Nothing else lies on the table, and everything has its size.
        expect(table.size).toBe(finished.size + leftovers.length);
        for (const [id, item] of finished) expect(table.get(id)).toEqual(sizeOfItem(item));
        for (const { id, size } of leftovers) expect(table.get(id)).toEqual([size.width, size.height]);
        const wanted = sheets.flatMap(({ tree }) => piecesOf(tree)).sort((a, b) => a - b);
        expect([...finished.values()].sort((a, b) => a - b)).toEqual(wanted);

        // A pass makes one thing two (the chocolate-bar puzzle again).
        expect(effort.passes).toBe(table.size - sheets.length);

        // No step could have been joined to an earlier one of the same run at one setting.
        for (const run of runsOf(steps)) {
          const alike = run.map(({ take, axis, repeat, rest: left }) => {
            return `${axis} ${repeat} ${left[0] === null} ${sizeTaken(steps, sheets, take[0]!)}`;
          });
          expect(new Set(alike).size).toBe(alike.length);
        }
      }),
      { numRuns: 250 },
    );
  });

  test('keep to the marks, and never measure off what is off them', () => {
    const marked = { ...shape, marks: 5, variety: 3 };
    fc.assert(
      fc.property(
        fc.array(
          sizes.chain(({ width, height }) => treeArbitrary({ width: width * 3, height: height * 3 }, marked)),
          { minLength: 1, maxLength: 4 },
        ),
        (all) => {
          const sheets = all.map((tree, index) => sheet(`m-${index}`, tree));
          const { steps, effort, finished } = stepsFor(sheets, trimmerWith({ marks: 5 }));
          expect(steps.filter(({ set }) => set % 5 !== 0)).toEqual([]);
          const { table, passes } = replayed(steps, sheets);
          expect(effort.passes).toBe(passes);
          for (const [id, item] of finished) expect(table.get(id)).toEqual(sizeOfItem(item));
        },
      ),
      { numRuns: 200 },
    );
  });

  test('transposed trees give the transposed steps', () => {
    fc.assert(
      fc.property(trees, (all) => {
        const upright = stepsFor(
          all.map((tree, index) => sheet(`t-${index}`, tree)),
          null,
        );
        const lying = stepsFor(
          all.map((tree, index) => sheet(`t-${index}`, transposed(tree))),
          null,
        );
        expect(lying.steps).toEqual(
          upright.steps.map((step) => ({ ...step, axis: step.axis === 'width' ? 'height' : 'width' })),
        );
        expect(lying.effort).toEqual(upright.effort);
      }),
      { numRuns: 200 },
    );
  });

  test('a finer unit gives the same steps, and the order of parts and sheets no other effort', () => {
    fc.assert(
      fc.property(trees, fc.integer({ min: 2, max: 9 }), (all, times) => {
        const plain = stepsFor(
          all.map((tree, index) => sheet(`u-${index}`, tree)),
          null,
        );
        const large = stepsFor(
          all.map((tree, index) => sheet(`u-${index}`, enlarged(tree, times))),
          null,
        );
        expect(large.steps).toEqual(plain.steps.map((step) => ({ ...step, set: step.set * times })));
        const other = stepsFor(
          [...all].reverse().map((tree, index) => sheet(`u-${index}`, reversed(tree))),
          null,
        );
        const { settings, ...sure } = plain.effort;
        expect(other.effort).toMatchObject(sure);
        if (settings === plain.settingsBound) expect(other.effort.settings).toBeGreaterThanOrEqual(settings);
        if (settings === other.settingsBound) expect(other.effort.settings).toBe(settings);
      }),
      { numRuns: 200 },
    );
  });

  test('small ones have the fewest settings of all orders of single cuts', () => {
    const small = { depth: 3, parts: 2, marks: 1, variety: 4, tidy: true };
    const size = fc.record({ width: fc.integer({ min: 4, max: 9 }), height: fc.integer({ min: 4, max: 9 }) });
    const some = fc.array(
      size.chain((sheetSize) => treeArbitrary(sheetSize, small)),
      { minLength: 1, maxLength: 3 },
    );
    let harder = 0;
    fc.assert(
      fc.property(some, (all) => {
        fc.pre(all.flatMap(leavesOf).length <= 11);
        const sheets = all.map((tree, index) => sheet(`s-${index}`, tree));
        const { effort, settingsBound, steps } = stepsFor(sheets, null);
        expect(effort.settings).toBe(fewestSettings(all));
        expect(settingsBound).toBe(effort.settings);
        // At once: the same cuts, in an order that may have more settings, and says no more than it knows.
        const quick = stepsFor(sheets, null, { quick: true });
        expect({ ...quick.effort, settings: 0 }).toEqual({ ...effort, settings: 0 });
        expect(quick.effort.settings).toBeGreaterThanOrEqual(effort.settings);
        expect(quick.settingsBound).toBeLessThanOrEqual(effort.settings);
        if (new Set(steps.map(({ set }) => set)).size < effort.settings) harder += 1;
      }),
      { numRuns: 300 },
    );
    // The cases are not all of the easy kind in which each setting is set once.
    expect(harder).toBeGreaterThan(0);
  });
});

test('a hundred sheets of forty settings are ordered in a moment, with an honest bound', () => {
  const lengths = Array.from({ length: 40 }, (_, index) => 200 + ((index * 37) % 101));
  const sheets = Array.from({ length: 100 }, (_, index) => {
    const [a, b, c] = [0, 7, 19].map((shift) => lengths[(index * 3 + shift) % 40]!) as [
      number,
      number,
      number,
    ];
    const strip = row('height', [piece(a, b, 0), piece(a, c, 1), rest(a, 1000 - b - c)]);
    return sheet(`big-${index}`, row('width', [strip, strip, rest(1000 - 2 * a, 1000)]));
  });
  const { effort, settingsBound, steps } = stepsFor(sheets, null);
  expect(replayed(steps, sheets).settings).toBe(effort.settings);
  expect(settingsBound).toBeGreaterThanOrEqual(new Set(steps.map(({ set }) => set)).size);
  expect(effort.settings).toBeGreaterThanOrEqual(settingsBound);
  expect(effortOf(steps)).toEqual(effort);
});

function sheet(id: string, tree: CutTree): SheetToCut {
  const size: Size = { width: lengthOfTicks(tree.width), height: lengthOfTicks(tree.height) };
  return { id, size, squaring: noMargins, tree };
}

function piece(width: number, height: number, item: number): CutTree {
  return { kind: 'piece', width, height, item, turned: false };
}

function rest(width: number, height: number): CutTree {
  return { kind: 'rest', width, height };
}

/** A cut whose size follows from its parts, unless `length` says otherwise. */
function row(axis: 'width' | 'height', parts: readonly CutTree[], length?: number): CutTree {
  const along = length ?? parts.reduce((total, part) => total + part[axis], 0);
  const { width, height } = parts[0]!;
  return { kind: 'cut', width, height, [axis]: along, axis, parts };
}

function piecesOf(tree: CutTree): readonly number[] {
  return leavesOf(tree).flatMap((leaf) => (leaf.kind === 'piece' ? [leaf.item] : []));
}

function runsOf(steps: readonly Step[]): readonly (readonly Step[])[] {
  const runs: Step[][] = [];
  for (const step of steps) {
    if (runs.at(-1)?.[0]?.set === step.set) runs.at(-1)!.push(step);
    else runs.push([step]);
  }
  return runs;
}

function sizeTaken(steps: readonly Step[], sheets: readonly SheetToCut[], id: string): string {
  const at = steps.findIndex(({ take }) => take.includes(id));
  return replayed(steps.slice(0, at), sheets).table.get(id)!.join();
}
