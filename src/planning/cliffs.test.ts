import { beforeAll, describe, expect, test } from 'vitest';
import type { LinearSolver } from '../cutting/index.ts';
import { arrange } from '../layout/index.ts';
import { layoutOf, paper, part } from '../layout/testing/build.ts';
import { inches } from '../measure/index.ts';
import { type Cliff, cliffsOf, enoughFor, type Gain, piecesOf } from './index.ts';
import { Asked, type Case, caseOf, faultsOf } from './testing/asked.ts';
import {
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

function cliffsIn(file: SketchFile): readonly Cliff[] {
  const set = { ...caseOf(file), trimmer: null, solver };
  return cliffsOf(set, enoughFor(set));
}

/** Whether a drawing gains over another what is told of it. */
function gains(gain: Gain, before: Case, after: Case, cards: number): boolean {
  switch (gain.kind) {
    case 'piece':
      return asked.sheetGives(after, gain.piece, gain.stock, gain.from + 1);
    case 'card':
      return asked.comeOut(after, gain.from + 1);
    case 'sheet': {
      const [from, to] = [asked.cost(before, gain.paper, cards), asked.cost(after, gain.paper, cards)];
      if (from === null || to === null) return false;
      return to.cost < from.cost || (to.cost === from.cost && to.sheets < from.sheets);
    }
  }
}

/** What is not so about the numbers of a gain. */
function untrue(gain: Gain, before: Case, after: Case, cards: number): boolean {
  if (!gains(gain, before, after, cards)) return true;
  switch (gain.kind) {
    case 'piece': {
      const gives = (drawn: Case, need: number) => asked.sheetGives(drawn, gain.piece, gain.stock, need);
      return (
        !gives(before, gain.from) ||
        gives(before, gain.from + 1) ||
        !gives(after, gain.to) ||
        gives(after, gain.to + 1)
      );
    }
    case 'card': {
      // Beyond twice as many it is not looked.
      const more = gain.to < 2 * (gain.from + 1) && asked.comeOut(after, gain.to + 1);
      return (
        !asked.comeOut(before, gain.from) ||
        asked.comeOut(before, gain.from + 1) ||
        !asked.comeOut(after, gain.to) ||
        more
      );
    }
    case 'sheet': {
      const [from, to] = [asked.cost(before, gain.paper, cards), asked.cost(after, gain.paper, cards)];
      return from!.sheets !== gain.sheets.from || to!.sheets !== gain.sheets.to;
    }
  }
}

/** Every gain that may be looked for, with what there is to begin with. */
function conceivable(before: Case, enough: number | null): readonly Gain[] {
  const { layout, arrangement } = before;
  const pieces = piecesOf(layout, arrangement).flatMap(({ id, paper }) =>
    layout.papers.get(paper)!.sheets.map((_, stock): Gain => {
      let from = 0;
      while (asked.sheetGives(before, id, stock, from + 1)) from += 1;
      return { kind: 'piece', piece: id, stock, from, to: from + 1 };
    }),
  );
  const papers = [...layout.papers.keys()].map((paper): Gain => {
    return { kind: 'sheet', paper, from: 0, to: 0, sheets: { from: 0, to: 0 } };
  });
  return [
    ...pieces,
    ...papers,
    ...(enough === null ? [] : [{ kind: 'card', from: enough, to: enough + 1 } as const]),
  ];
}

function keyOf(gain: Gain): string {
  if (gain.kind === 'piece') return `piece ${gain.piece} ${gain.stock}`;
  return gain.kind === 'sheet' ? `sheet ${gain.paper}` : 'card';
}

/** The file with every length of a cliff moved by a share of its way. */
function alongTheWay(file: SketchFile, { changes, marks }: Cliff, at: number): SketchFile {
  const inMillimetres = (ticks: number) => `${((ticks * 625) / 1e6).toFixed(7)} mm`;
  return fileWith(
    file,
    new Map(changes.map(({ path, from, to }) => [path, inMillimetres(from + ((to - from) * at) / marks)])),
  );
}

describe('on random small layouts', () => {
  const seeds = Array.from({ length: 10 }, (_, index) => index + 1);

  test('every cliff is even, gains what it says, and gains it with no mark fewer', () => {
    let all = 0;
    const kinds = new Set<string>();
    for (const seed of seeds) {
      const file = smallSketch(seed);
      const before = caseOf(file);
      const enough = asked.most(before);
      const cards = Math.min(before.layout.cards, enough ?? before.layout.cards);
      for (const cliff of cliffsIn(file)) {
        all += 1;
        const shown = `seed ${seed}: ${JSON.stringify(cliff.changes)}`;
        const drawn = new Map(lengthsIn(file).map(({ path, length }) => [path, length * sixtyFourth]));
        for (const { path, from } of cliff.changes) expect(from, shown).toBe(drawn.get(path));
        const after = caseOf(alongTheWay(file, cliff, cliff.marks));
        expect(faultsOf(before, after), shown).toEqual([]);
        const wrong = cliff.gains.filter((gain) => untrue(gain, before, after, cards));
        expect(wrong, shown).toEqual([]);
        for (const gain of cliff.gains) kinds.add(gain.kind);
        for (let marks = 1; marks < cliff.marks; marks += 1) {
          const less = caseOf(alongTheWay(file, cliff, marks));
          if (faultsOf(before, less).length > 0) continue;
          const already = cliff.gains.filter((gain) => gains(gain, before, less, cards));
          expect(already, `${shown} at ${marks}`).toEqual([]);
        }
      }
    }
    expect(all).toBeGreaterThan(20);
    expect([...kinds].sort()).toEqual(['card', 'piece', 'sheet']);
  });

  test('no length that gains by itself within its reach is missed', () => {
    let found = 0;
    const missed: string[] = [];
    for (const seed of seeds) {
      const file = smallSketch(seed);
      const before = caseOf(file);
      const enough = asked.most(before);
      const cards = Math.min(before.layout.cards, enough ?? before.layout.cards);
      const cliffs = cliffsIn(file);
      const wanted = conceivable(before, enough);
      for (const { path, kind, part, length } of lengthsIn(file)) {
        // A size moves by a quarter and 1/2 in at the most, unless it is bought; all else by 1/4 in.
        if (kind === 'size' && file.parts[part]!.paper === null) continue;
        const reach = kind === 'size' ? Math.min(32, Math.floor(length / 4)) : 16;
        for (const sign of [-1, 1]) {
          const seen = new Set<string>();
          for (let marks = 1; 4 * marks <= reach; marks += 1) {
            const to = length + sign * 4 * marks;
            if (to <= 0) break;
            const after = caseOf(fileWith(file, new Map([[path, typed(to)]])));
            // Beyond what is uneven it may look as if nothing was meant to be even.
            if (faultsOf(before, after).length > 0) break;
            for (const gain of wanted) {
              const key = keyOf(gain);
              if (seen.has(key) || !gains(gain, before, after, cards)) continue;
              seen.add(key);
              found += 1;
              const told = cliffs.some(
                ({ changes: [first], marks: fewest, gains: told }) =>
                  first!.path === path &&
                  Math.sign(first!.to - first!.from) === sign &&
                  fewest <= marks &&
                  told.some((other) => keyOf(other) === key),
              );
              if (!told) missed.push(`seed ${seed}: ${path} by ${sign * marks}, ${key}`);
            }
          }
        }
      }
    }
    expect(missed).toEqual([]);
    expect(found).toBeGreaterThan(10);
  });
});

describe('worked by hand', () => {
  test('a gain that more of the same change loses again is found', () => {
    // A panel that fills what a side leaves: 3 of 2 5/8 in come out of 10 1/4 in, 4 of 2 9/16 in. Of sides, 4 of 1 5/16
    // in come out of 5 1/4 in, and 3 of anything wider.
    const t = (sixteenths: number) => typed(4 * sixteenths);
    const sheet = (width: number) => ({
      up: 'one-way',
      sheets: [{ size: [t(width), t(56)] as [string, string], count: 1 }],
    });
    const file: SketchFile = {
      cardwright: 1,
      units: 'in',
      cards: 4,
      base: { size: [t(68), t(60)], fold: 'left', paper: null },
      papers: { bark: sheet(164), meadow: sheet(84) },
      parts: [
        { id: 'side', size: [t(20), t(56)], place: { left: t(2) }, paper: 'meadow' },
        {
          id: 'rest',
          size: ['fill', t(56)],
          place: { rightOf: 'side', gap: t(2), right: t(2) },
          paper: 'bark',
        },
      ],
    };
    const wider = cliffsIn(file).find(
      ({ changes, gains }) =>
        changes.length === 1 &&
        changes[0]!.path === 'parts[0].size[0]' &&
        gains.some(({ kind }) => kind === 'card'),
    );
    expect(wider).toMatchObject({ marks: 1, changes: [{ from: 80 * sixtyFourth, to: 84 * sixtyFourth }] });
    expect(wider!.gains).toContainEqual({ kind: 'card', from: 3, to: 4 });
  });
});

test('the cards that are gained are all that then come out, be they many times as many', () => {
  const size = { width: inches(12), height: inches(3) };
  // A sheet three inches high gives none of three and a sixteenth, and twelve of three.
  const layout = layoutOf({
    cards: 1,
    base: [inches(6), inches(8)],
    fold: 'none',
    papers: [paper('meadow', [{ size, count: 1 }], 'one-way')],
    parts: [part('dot', { size: [inches(1), inches(49, 16)], papers: ['meadow'], adhere: 'raised' })],
  });
  const set = { layout, arrangement: arrange(layout), trimmer: null, solver };
  const enough = enoughFor(set);
  expect(enough.cards).toBe(0);
  const lower = cliffsOf(set, enough).find(
    ({ changes }) => changes[0]!.name === 'height' && changes.length === 1,
  )!;
  expect(lower.gains).toContainEqual({ kind: 'card', from: 0, to: 12 });
});
