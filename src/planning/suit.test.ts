import { beforeAll, describe, expect, test } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { chance } from '../cutting/testing/chance.ts';
import { type Suited, type SuitedSizes, suitedSet } from './index.ts';
import { Asked, type Case, caseOf, faultsOf } from './testing/asked.ts';
import {
  type Drawn,
  fileWith,
  lengthsIn,
  type SketchFile,
  sixtyFourth,
  smallSketch,
  typed,
} from './testing/smallLayout.ts';
import { testSolver } from './testing/solver.ts';

let solver: LinearSolver;
let asked: Asked;
beforeAll(async () => {
  solver = await testSolver();
  asked = new Asked(solver);
});

function suitedIn(file: SketchFile, cards: number): Suited {
  return suitedSet({ ...caseOf(file), trimmer: null, solver }, cards);
}

/** A length that has room, and the whole marks of 1/16 in within, in 64ths. */
interface WithRoom extends Drawn {
  readonly values: readonly number[];
}

/** A small layout with room for one to three lengths, and perhaps for a size that follows from others. */
function roomySketch(seed: number): { readonly file: SketchFile; readonly lengths: readonly WithRoom[] } {
  const int = chance(seed + 7_000_000);
  const file = structuredClone(smallSketch(seed));
  const drawn = lengthsIn(file);
  const left = [...drawn];
  const lengths: WithRoom[] = [];
  for (let count = int(1, 3); count > 0 && left.length > 0; count -= 1) {
    const [chosen] = left.splice(int(0, left.length - 1), 1);
    const { path, part, length } = chosen!;
    const least = Math.max(1, length - int(0, 22));
    const most = Math.max(least, length + int(-3, 9));
    const values: number[] = [];
    for (let at = least; at <= most; at += 1) if (at % 4 === 0 || at === length) values.push(at);
    if (values.length === 0) continue;
    giveRoom(file, part, roomNameOf(path), [least, most]);
    lengths.push({ ...chosen!, values });
  }
  // A condition on a size that is no length of its own.
  for (const [index, { inset, size }] of file.parts.entries()) {
    if (inset === undefined && !(Array.isArray(size) && size[0] === 'fill')) continue;
    if (int(1, 2) === 1) continue;
    const { width } = caseOf(file).arrangement.parts[index]!.cut!;
    const at = Math.floor(width / sixtyFourth);
    giveRoom(file, index, 'width', [Math.max(1, at - int(0, 16)), at + int(0, 8)]);
  }
  return { file, lengths };
}

function roomNameOf(path: string): string {
  const field = path.split('.').at(-1)!;
  return field === 'size[0]' ? 'width' : field === 'size[1]' ? 'height' : field;
}

function giveRoom(
  file: SketchFile,
  part: number,
  name: string,
  [least, most]: readonly [number, number],
): void {
  const of = file.parts[part]!;
  of.room = { ...(of.room as object | undefined), [name]: [typed(least), typed(most)] };
}

/** Whether every size is within the room of its part, as `cut` has it. */
function withinRooms(file: SketchFile, { arrangement }: Case): boolean {
  return file.parts.every(({ room }, index) =>
    Object.entries((room ?? {}) as Record<string, [string, string]>).every(([name, bounds]) => {
      if (name !== 'width' && name !== 'height') return true;
      const [least, most] = bounds.map((text) => Number.parseInt(text, 10) * sixtyFourth);
      const cut = arrangement.parts[index]!.cut?.[name];
      return cut !== undefined && least! <= cut && cut <= most!;
    }),
  );
}

interface Found {
  readonly drawn: Case;
  readonly marks: number;
  readonly alike: boolean;
}

/** Every way to draw the layout within its room that is even, borders and gaps following where they must. */
function everyDrawing(file: SketchFile, lengths: readonly WithRoom[]): Found[] {
  const before = caseOf(file);
  const taken = new Set(lengths.map(({ path }) => path));
  const followers = lengthsIn(file).filter(
    ({ kind, path }) => (kind === 'border' || kind === 'gap') && !taken.has(path),
  );
  let choices: (readonly number[])[] = [[]];
  for (const { values } of lengths)
    choices = choices.flatMap((way) => values.map((value) => [...way, value]));
  return choices.flatMap((choice): Found[] => {
    const marks = lengths.reduce((sum, { length }, index) => sum + Math.abs(choice[index]! - length) / 4, 0);
    const chosen = new Map(lengths.map(({ path }, index) => [path, typed(choice[index]!)]));
    const drawings = (ways: Iterable<ReadonlyMap<string, string>>) => {
      const found: Found[] = [];
      for (const way of ways) {
        const drawn = caseOf(fileWith(file, new Map([...chosen, ...way])));
        if (drawn.arrangement.parts.some(({ cut }) => cut === null) || !withinRooms(file, drawn)) continue;
        const faults = faultsOf(before, drawn);
        const alike = faults.length === 0;
        if (alike || faults.every((fault) => fault.endsWith(': all round')))
          found.push({ drawn, marks, alike });
      }
      return found;
    };
    const alone = drawings([new Map()]);
    return alone.some(({ alike }) => alike) ? alone : drawings(waysToFollow(followers));
  });
}

/** Borders and gaps in steps of half a mark, as far as 1/4 in from what was drawn. */
function* waysToFollow(followers: readonly Drawn[]): Generator<ReadonlyMap<string, string>> {
  const [first, ...rest] = followers;
  if (first === undefined) {
    yield new Map();
    return;
  }
  for (const way of waysToFollow(rest)) {
    for (let by = -16; by <= 16; by += 2)
      if (first.length + by > 0) yield new Map([...way, [first.path, typed(first.length + by)]]);
  }
}

describe('on random small layouts', () => {
  test('sizes are the nearest of all that are even and come out, or those that give the most', () => {
    const kinds = new Map<string, number>();
    const wrong: string[] = [];
    for (let seed = 1; seed <= 36; seed += 1) {
      const { file, lengths } = roomySketch(seed);
      const work = lengths.reduce((product, { values }) => product * values.length, 1);
      const followers = lengthsIn(file).filter(({ kind }) => kind === 'border' || kind === 'gap').length;
      if (lengths.length === 0 || work * 17 ** followers > 300) continue;
      const before = caseOf(file);
      const most = asked.most(before);
      const cards = Math.min(60, (most ?? 5) + chance(seed)(0, 3)) || 1;
      const suited = suitedIn(file, cards);
      const all = everyDrawing(file, lengths);
      all.sort((a, b) => a.marks - b.marks);
      const nearest = (among: readonly Found[], of: number) =>
        among.find(({ drawn }) => asked.comeOut(drawn, of)) ?? null;
      const strict = all.filter(({ alike }) => alike);
      const expected = (() => {
        if (all.length === 0) return 'never-even';
        for (const among of [strict, all]) {
          const found = nearest(among, cards);
          if (found !== null) return `${cards} cards at ${found.marks} marks, alike ${among === strict}`;
        }
        const among = strict.length > 0 ? strict : all;
        let fewer = cards - 1;
        while (fewer > 0 && nearest(among, fewer) === null) fewer -= 1;
        return fewer === 0
          ? 'no card'
          : `${fewer} cards at ${nearest(among, fewer)!.marks} marks, alike ${among === strict}`;
      })();
      const told =
        suited.kind !== 'suited'
          ? suited.kind
          : suited.cards === 0
            ? 'no card'
            : `${suited.cards} cards at ${suited.marks} marks, alike ${suited.alike}`;
      if (suited.kind === 'suited') expectPromised(file, suited, `seed ${seed}`);
      const kind = told.replace(/\d+/g, 'n');
      kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
      if (told !== expected) wrong.push(`seed ${seed}: ${told}, not ${expected} of ${cards}`);
    }
    expect(wrong).toEqual([]);
    expect([...kinds.keys()]).toEqual(
      expect.arrayContaining(['n cards at n marks, alike false', 'n cards at n marks, alike true']),
    );
  });
});

/** That the sizes, typed into the file, are what was told of them, and that the plan is one of that set. */
function expectPromised(file: SketchFile, suited: SuitedSizes, shown: string): void {
  const texts = suited.changes.map(({ path, to }) => [path, `${((to * 625) / 1e6).toFixed(7)} mm`] as const);
  const again = caseOf(fileWith(file, new Map(texts)));
  expect(again.arrangement, shown).toEqual(suited.set.arrangement);
  expect(withinRooms(file, again), shown).toBe(true);
  expect(suited.plan?.cards ?? 0, shown).toBe(suited.cards);
  expect(suited.nearest, shown).toBe(true);
  expect(suited.proved, shown).toBe(true);
  const most = asked.most(again);
  if (most !== null) expect(most, shown).toBeGreaterThanOrEqual(suited.cards);
}

describe('worked by hand', () => {
  const inch = (text: string) => `${text} in`;
  /** Two panels on a mat, the upper one from a sheet that is 1/16 in under its name. */
  const trap = (room: object): SketchFile => ({
    cardwright: 1,
    units: 'in',
    cards: 10,
    base: { size: [inch('4 1/4'), inch('5 1/2')], fold: 'left', paper: null },
    papers: {
      bees: { up: 'one-way', sheets: [{ size: [inch('11 15/16'), inch('11 15/16')], count: 1 }] },
      dots: { up: 'any', sheets: [{ size: [inch('12'), inch('12')], count: 1 }] },
    },
    parts: [
      { id: 'mat', inset: inch('1/8'), paper: null },
      {
        id: 'upper',
        on: 'mat',
        size: [inch('3 3/4'), inch('3')],
        place: { top: inch('1/8') },
        paper: 'bees',
        ...room,
      },
      {
        id: 'lower',
        on: 'mat',
        size: [inch('3 3/4'), inch('1 3/4')],
        place: { below: 'upper', gap: inch('1/4'), bottom: inch('1/8') },
        paper: 'dots',
      },
    ],
  });
  const inTicks = (sixteenths: number) => sixteenths * 4 * sixtyFourth;

  test('a panel 1/16 in lower and a gap that much wider make ten of what gave nine', () => {
    const suited = suitedIn(trap({ room: { height: [inch('2 3/4'), inch('3')] } }), 10);
    expect(suited).toMatchObject({
      kind: 'suited',
      cards: 10,
      proved: true,
      nearest: true,
      alike: true,
      marks: 1,
    });
    if (suited.kind !== 'suited') return;
    expect(suited.changes.map(({ path, to }) => [path, to])).toEqual([
      ['parts[1].size[1]', inTicks(47)],
      ['parts[2].place.gap', inTicks(5)],
    ]);
    // 11 15/16 = 4 x 2 15/16 + 3/16: four rows of three.
    const [upper] = suited.plan!.pieces;
    expect(upper).toMatchObject({
      id: 'upper/bees',
      size: { width: inTicks(60), height: inTicks(47) },
      need: 10,
    });
  });

  test('it is well as it was where as many come out as are asked for', () => {
    const suited = suitedIn(trap({ room: { height: [inch('2 3/4'), inch('3')] } }), 9);
    expect(suited).toMatchObject({
      kind: 'suited',
      cards: 9,
      marks: 0,
      changes: [],
      alike: true,
      nearest: true,
    });
  });

  test('where the room is not enough it says how many come out, and that no more can', () => {
    // Twelve a sheet at the least height, but not thirteen: 5 x 2 3/4 = 13 3/4.
    const suited = suitedIn(trap({ room: { height: [inch('2 3/4'), inch('3')] } }), 13);
    expect(suited).toMatchObject({ kind: 'suited', cards: 12, proved: true, nearest: true, marks: 1 });
  });

  test('what was drawn outside its room comes into it', () => {
    const suited = suitedIn(trap({ room: { height: [inch('2 3/4'), inch('2 7/8')] } }), 1);
    expect(suited).toMatchObject({ kind: 'suited', cards: 1, marks: 2, alike: true });
  });

  test('room for the size of an inset is a condition on its inset', () => {
    const file = trap({});
    const inset = { id: 'mat', inset: inch('1/8'), paper: 'bees' };
    // A mat of 4 x 5 1/4 in comes out four times; of 3 7/8 x 5 1/8 in, six times: 3 x 3 7/8 = 11 5/8.
    const [mat] = [{ ...inset, room: { inset: [inch('1/16'), inch('1/4')] } }];
    const set = { ...file, parts: [mat] };
    expect(suitedIn(set, 6)).toMatchObject({ kind: 'suited', cards: 6, marks: 1 });
    const kept = { ...mat, room: { ...mat.room, width: [inch('3 15/16'), inch('5')] } };
    expect(suitedIn({ ...file, parts: [kept] }, 6)).toMatchObject({
      kind: 'suited',
      cards: 4,
      proved: true,
      marks: 0,
    });
  });
});

describe('where there is nothing to find', () => {
  const panel = (part: object, count: number | null = 1): SketchFile => ({
    cardwright: 1,
    units: 'in',
    cards: 4,
    base: { size: ['4 in', '4 in'], fold: 'left', paper: null },
    papers: { bark: { up: 'any', sheets: [{ size: ['12 in', '12 in'], count }] } },
    parts: [{ id: 'panel', size: ['3 in', '3 in'], paper: 'bark', ...part }],
  });

  test('it says that nothing has room', () => {
    for (const room of [{}, { room: 'none' }, { room: {} }])
      expect(suitedIn(panel(room), 4).kind).toBe('no-room');
  });

  test('it says in the room of which length there is no whole mark', () => {
    const room = { width: ['2 33/64 in', '2 35/64 in'], height: ['2 in', '3 in'] };
    expect(suitedIn(panel({ room }), 4)).toMatchObject({ kind: 'no-mark', path: 'parts[0].size[0]' });
  });

  test('it says that no sizes within the room are even', () => {
    const room = { left: ['1/4 in', '3/8 in'], right: ['1/2 in', '1/2 in'] };
    const place = { left: '1/2 in', right: '1/2 in' };
    expect(suitedIn(panel({ size: ['fill', '3 in'], place, room }), 4)).toMatchObject({ kind: 'never-even' });
  });

  test('it says that not one card comes out of no sheets', () => {
    const room = { width: ['2 in', '3 in'], height: ['2 in', '3 in'] };
    expect(suitedIn(panel({ room }, 0), 4)).toMatchObject({
      kind: 'suited',
      cards: 0,
      proved: true,
      plan: null,
    });
  });

  test('it leaves as it is what is bought or from as many sheets as needed', () => {
    const room = { width: ['2 in', '3 in'], height: ['2 in', '3 in'] };
    for (const file of [panel({ room, paper: null }), panel({ room }, null)])
      expect(suitedIn(file, 400)).toMatchObject({
        kind: 'suited',
        cards: 400,
        marks: 0,
        changes: [],
        proved: true,
      });
  });
});
