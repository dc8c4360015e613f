import { readFileSync } from 'node:fs';
import load from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { highsSolver, type LinearSolver } from '../cutting/index.ts';
import { readKitFile } from '../files/index.ts';
import type { Kit } from '../layout/index.ts';
import { planRecord, replayConditions, wantedOf } from '../planning/index.ts';
import { replay } from '../replay/index.ts';
import { bagsList, type KitOffer, type KitReport, kitReport, kitSet, withOffer } from './index.ts';

const text = readFileSync('examples/autumn-afternoon.kit.json', 'utf8');

function kitIn(file: string): Kit {
  const read = readKitFile(file);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read.kit;
}

let solver: LinearSolver;
beforeAll(async () => {
  solver = highsSolver(await load());
});

const reportOf = (kit: Kit): KitReport => kitReport(kit, { trimmer: null, solver });

/** Pieces that plain rows give from a sheet, the piece as it lies or (`turns`) given a quarter turn. */
function inRows(
  [wide, high]: readonly [number, number],
  [w, h]: readonly [number, number],
  turns = false,
): number {
  const rows = Math.floor(wide / w) * Math.floor(high / h);
  return turns ? Math.max(rows, Math.floor(wide / h) * Math.floor(high / w)) : rows;
}

describe('a class of fourteen, with a sample and a spare kit', () => {
  let report: KitReport;
  beforeAll(() => {
    report = reportOf(kitIn(text));
  });

  test('everybody has 19 pieces, 304 in all, and 48 envelopes', () => {
    expect(report.bags).toBe(16);
    expect(report.contents).toHaveLength(1);
    expect(report.contents[0]!.bags).toEqual(Array.from({ length: 16 }, (_, index) => index + 1));
    // 3 bases, 2 of the window, 2 of the path, 6 of the stones, 3 sentiments, 3 inside panels.
    expect(report.contents[0]!.pieces).toBe(3 + 2 + 2 + 6 + 3 + 3);
    expect(report.pieces).toEqual({ inBags: 304, spare: 0 });
    expect(report.envelopes).toBe(48);
    expect(report.problems.filter(({ problem }) => problem.severity === 'error')).toEqual([]);
  });

  test('as many sheets are cut as rows on paper say, and the others stay whole', () => {
    const lists = report.planned!.cuts;
    const sheets = Object.fromEntries(lists.map(({ paper, sheets: count }) => [paper.id, count]));
    const letter = [8.5, 11] as const;
    const pad = [6, 6] as const;
    const rows = (count: number, perSheet: number) => Math.ceil(count / perSheet);
    expect(sheets).toEqual({
      oat: rows(48, inRows(letter, [8.5, 5.5])),
      rust: rows(16, inRows(letter, [3.125, 3.125])),
      pine: rows(16, inRows(letter, [1.625, 5.5])),
      plum: rows(48, inRows(letter, [2, 2])),
      white: rows(48, inRows(letter, [4, 5.25])),
      cream: rows(48, inRows(letter, [3, 0.75])),
      acorns: rows(16, inRows(pad, [2.875, 2.875])),
      furrows: rows(16, inRows(pad, [1.375, 5.25])),
      pebbles: rows(16, inRows(pad, [1.75, 1.75])),
      moss: rows(16, inRows(pad, [1.75, 1.75])),
      dusk: rows(16, inRows(pad, [1.75, 1.75])),
      straw: 0,
    });
    // Counted by hand.
    expect(Object.values(sheets)).toEqual([24, 3, 2, 3, 12, 2, 4, 4, 2, 2, 2, 0]);
    const whole = Object.fromEntries(lists.map(({ paper, whole: count }) => [paper.id, count]));
    expect(whole).toMatchObject({ acorns: 0, furrows: 0, pebbles: 2, moss: 2, dusk: 2, straw: 4 });
    const over = Object.fromEntries(lists.map(({ paper, sizes }) => [paper.id, sizes[0]?.yield?.over]));
    expect(over).toMatchObject({ acorns: 0, furrows: 0, pebbles: 2, moss: 2, dusk: 2 });
  });

  test('the plan comes out when it is followed, and is proved', () => {
    const { set, plan } = report.planned!;
    expect(replay(planRecord(plan!), replayConditions(set.layout, null))).toEqual([]);
    expect([...plan!.papers.values()].every(({ proved }) => proved)).toBe(true);
    const made = new Map<string, number>();
    for (const piece of plan!.finished.values()) made.set(piece, (made.get(piece) ?? 0) + 1);
    for (const { id, need } of plan!.pieces) expect(made.get(id)).toBeGreaterThanOrEqual(need);
  });

  test('the papers are enough for sixteen kits, proved', () => {
    expect(report.planned!.enough).toMatchObject({ cards: 16, proved: true, limit: ['acorns', 'furrows'] });
  });
});

describe('two more seats', () => {
  let report: KitReport;
  let kit: Kit;
  beforeAll(() => {
    kit = kitIn(text.replace('"seats": 14', '"seats": 16'));
    report = reportOf(kit);
  });

  test('the window and the path are two short each, the stones have exactly enough', () => {
    const short = report.planned!.shortage!;
    expect(
      short.papers.map(({ paper, missing, missingProved }) => [paper, [...missing], missingProved]),
    ).toEqual([
      ['acorns', [['window.panel/acorns', 2]], true],
      ['furrows', [['path.strip/furrows', 2]], true],
    ]);
    expect(short.nearest).toMatchObject({ cards: 16, proved: true });
    const over = report.planned!.cuts.map(({ paper, sizes }) => [paper.id, sizes[0]?.yield?.over]);
    expect(Object.fromEntries(over)).toMatchObject({ pebbles: 0, moss: 0, dusk: 0 });
  });

  const offers = (kind: KitOffer['kind'], paper: string) =>
    report.planned!.offers.filter(
      (offer) => offer.kind === kind && 'paper' in offer && offer.paper === paper,
    );

  test('the print that nothing is cut from is offered first for two panels, and for two strips', () => {
    expect(offers('standIn', 'acorns')[0]).toMatchObject({
      by: 'straw',
      instead: [{ layout: 'window', part: 'panel', cards: 2 }],
    });
    expect(offers('standIn', 'furrows')[0]).toMatchObject({
      by: 'straw',
      instead: [{ layout: 'path', cards: 2 }],
    });
  });

  test('a strip 1 1/8 in wide with its borders as they were gives five of a sheet, twenty in all', () => {
    const found = offers('sizes', 'furrows').flatMap((offer) => (offer.kind === 'sizes' ? offer.pieces : []));
    const wanted = { width: (9 * 40_640) / 8, height: (21 * 40_640) / 4 };
    expect(found).toContainEqual({ part: 'strip', size: wanted, perSheet: 5, inAll: 20 });
    expect(inRows([6, 6], [1.125, 5.25])).toBe(5);
    // Whatever is offered is small enough for five in a row, and what is one mark larger is not.
    for (const { size } of found) expect(Math.floor((6 * 40_640) / size.width)).toBe(5);
    expect(inRows([6, 6], [1.25, 5.25])).toBe(4);
    // A panel as large as a quarter of the sheet could only be smaller by far.
    expect(offers('sizes', 'acorns')).toEqual([]);
  });

  test('each offer that is taken gives what its paper is short of, and one gives all', () => {
    for (const offer of report.planned!.offers) {
      const after = reportOf(withOffer(kit, offer));
      const stillShort = (after.planned!.shortage?.papers ?? []).map(({ paper }) => paper);
      if (offer.kind === 'together' || offer.kind === 'fewer') expect(stillShort).toEqual([]);
      else expect(stillShort).toEqual(['acorns', 'furrows'].filter((paper) => paper !== offer.paper));
    }
    expect(report.planned!.offers.map(({ kind }) => kind)).toContain('together');
    expect(report.planned!.offers.at(-1)).toEqual({ kind: 'fewer', bags: 16, proved: true });
  });

  test('the bags that have another print are told apart', () => {
    const offer = report.planned!.offers.find(({ kind }) => kind === 'standIn')!;
    const bags = bagsList(withOffer(kit, offer));
    expect(bags.map(({ bags: numbers }) => numbers.length)).toEqual([16, 2]);
    expect(bags[1]!.bags).toEqual([17, 18]);
    expect(bags[1]!.layouts[0]!.pieces.find(({ part }) => part === 'panel')!.paper).toBe('straw');
  });
});

describe('random kits', () => {
  /** Numerical Recipes' linear congruential generator. */
  const chance = (seed: number) => {
    let state = seed;
    return (below: number) => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return Math.floor((state / 2 ** 32) * below);
    };
  };

  test.each(Array.from({ length: 60 }, (_, seed) => seed + 1))(
    'seed %i: bags, pieces and a count card by card agree',
    (seed) => {
      const below = chance(seed);
      const papers = ['moss', 'rust', 'straw'];
      const some = () => {
        const list = Array.from({ length: 1 + below(4) }, () => papers[below(3)]!);
        return list.length === 1 ? list[0]! : list;
      };
      const [seats, teacher, spare] = [1 + below(5), below(3), below(3)];
      const bags = seats + teacher + spare;
      const layouts = Array.from({ length: 1 + below(3) }, (_, index) => ({
        id: `layout${index}`,
        each: 1 + below(3),
        parts: Array.from({ length: 1 + below(3) }, (_, part) => ({
          id: `part${part}`,
          paper: some(),
          size: ['2 in', '1 in'],
          count: 1 + below(3),
          spare: below(4),
        })),
      }));
      const instead = layouts.flatMap(({ id, parts }) => {
        const [{ id: part, paper }] = parts as [(typeof parts)[number]];
        const from = typeof paper === 'string' ? paper : paper[0]!;
        const by = papers.find((other) => other !== from)!;
        return below(2) === 0 ? [] : [{ layout: id, part, paper: from, by, cards: 1 + below(4) }];
      });
      const sheets = { sheets: [{ size: ['12 in', '12 in'], count: null }] };
      const kit = kitIn(
        JSON.stringify({
          cardwright_kit: 1,
          units: 'in',
          seats,
          teacher,
          spare,
          papers: Object.fromEntries(papers.map((id) => [id, sheets])),
          layouts: layouts.map(({ id, each, parts }) => ({
            id,
            each,
            layout: {
              cardwright: 1,
              units: 'in',
              cards: 1,
              base: { size: ['4 in', '5 in'], fold: 'left', paper: 'moss' },
              papers: {},
              parts,
            },
          })),
          instead,
        }),
      );

      // Card by card, from what the file says.
      const counted = new Map<string, number>();
      const perBag = Array.from({ length: bags }, () => new Map<string, number>());
      const add = (into: Map<string, number>, key: string, count: number) =>
        into.set(key, (into.get(key) ?? 0) + count);
      for (const { id, each, parts } of layouts) {
        for (const { id: part, paper, count, spare: more } of [
          { id: 'base', paper: 'moss', count: 1, spare: 0 },
          ...parts,
        ]) {
          const list = typeof paper === 'string' ? [paper] : paper;
          const dealt: string[] = [];
          while (dealt.length < bags * each) dealt.push(...list);
          dealt.length = bags * each;
          for (const one of instead) {
            if (one.layout !== id || one.part !== part) continue;
            const where = dealt.flatMap((name, card) => (name === one.paper ? [card] : [])).slice(-one.cards);
            for (const card of where) dealt[card] = one.by;
          }
          dealt.forEach((name, card) => {
            add(counted, `${id}.${part}/${name}`, count);
            add(perBag[Math.floor(card / each)]!, `${id}.${part}/${name}`, count);
          });
          for (let extra = 0; extra < more; extra += 1)
            add(counted, `${id}.${part}/${list[extra % list.length]}`, 1);
        }
      }
      const pieces = wantedOf(kitSet(kit, null)!);
      expect(Object.fromEntries(pieces.map(({ id, need }) => [id, need]))).toEqual(
        Object.fromEntries(counted),
      );
      const told = bagsList(kit);
      expect(told.flatMap(({ bags: numbers }) => numbers).sort((a, b) => a - b)).toEqual(
        Array.from({ length: bags }, (_, bag) => bag + 1),
      );
      for (const { bags: numbers, layouts: content } of told) {
        const own = content.flatMap(({ layout: { id }, pieces: kinds }) =>
          kinds.map(({ part, paper, count }) => [`${id}.${part}/${paper}`, count] as const),
        );
        for (const bag of numbers)
          expect(Object.fromEntries(own)).toEqual(Object.fromEntries(perBag[bag - 1]!));
      }
    },
  );
});
