import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLayoutFile } from '../files/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { inch, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { randomLayout } from '../layout/testing/randomLayout.ts';
import { areaOf, type Region, squareInches, squareMillimetres, union } from '../shape/index.ts';
import { secondEngine } from '../shape/testing/secondEngine.ts';
import { bordersShown, gapsShown } from './edgesShown.ts';
import { paperShown } from './paperShown.ts';
import { type Shown, shownOn } from './shown.ts';

const shownIn = (layout: Layout, card = 0) => shownOn(layout, arrange(layout), card);

function piece(shown: readonly Shown[], id: string, number = 0): Shown {
  const found = shown.find((one) => one.part === id && one.piece === number && one.face === 'base');
  if (found === undefined) throw new Error(`nothing is seen of ${id}`);
  return found;
}

const inches = (region: Region) => squareInches(areaOf(region));

describe('areas by closed formulas', () => {
  test('a mat round a panel is a frame: whole less what lies on it', () => {
    const shown = shownIn(
      layoutOf({
        base: [inch('4 1/4'), inch('5 1/2')],
        parts: [part('mat', { inset: inch('1/8') }), part('panel', { on: 'mat', inset: inch('1/8') })],
      }),
    );
    expect(inches(piece(shown, 'base').open)).toBeCloseTo(4.25 * 5.5 - 4 * 5.25, 12);
    expect(inches(piece(shown, 'mat').open)).toBeCloseTo(4 * 5.25 - 3.75 * 5, 12);
    expect(inches(piece(shown, 'panel').open)).toBeCloseTo(3.75 * 5, 12);
  });

  test('a disc half under a panel shows half, and one that a strip cuts shows a segment', () => {
    const layout = (top: string) =>
      layoutOf({
        base: [inch('6'), inch('6')],
        parts: [
          part('disc', { diameter: inch('4'), place: { left: inch('1'), top: inch('1') } }),
          part('panel', { size: [inch('6'), inch('3')], place: { left: inch('0'), top: inch(top) } }),
        ],
      });
    expect(inches(piece(shownIn(layout('3')), 'disc').open)).toBeCloseTo((Math.PI * 4) / 2, 3);
    // Segment of a circle of radius r above a chord at height h: r² acos(h/r) - h √(r² - h²), h = 1 in.
    const segment = 4 * Math.acos(1 / 2) - Math.sqrt(3);
    expect(inches(piece(shownIn(layout('2')), 'disc').open)).toBeCloseTo(segment, 3);
  });

  test('an oval and a rounded panel', () => {
    const shown = shownIn(
      layoutOf({
        base: [inch('5'), inch('5')],
        parts: [
          part('panel', { shape: { kind: 'rounded', corner: inch('1/2') }, size: [inch('4'), inch('4')] }),
          part('egg', { shape: 'oval', size: [inch('3'), inch('2')] }),
        ],
      }),
    );
    const egg = (Math.PI * 3 * 2) / 4;
    expect(inches(piece(shown, 'egg').open)).toBeCloseTo(egg, 3);
    expect(inches(piece(shown, 'panel').open)).toBeCloseTo(16 - (4 - Math.PI) / 4 - egg, 3);
  });
});

describe('what is seen through', () => {
  const mist = { ...paper('mist', []), seeThrough: true };
  const layout = layoutOf({
    base: [mm(100), mm(100)],
    cards: 3,
    papers: [mist, paper('plain', [])],
    parts: [
      part('panel', { size: [mm(60), mm(60)], papers: ['plain'] }),
      part('band', { size: [mm(100), mm(20)], papers: ['mist', 'plain'] }),
    ],
  });

  test('a vellum band veils what lies under it, a plain one hides it', () => {
    const [first, second] = [shownIn(layout, 0), shownIn(layout, 1)];
    const area = (region: Region) => squareMillimetres(areaOf(region));
    expect(area(piece(first, 'panel').open)).toBe(60 * 40);
    expect(area(piece(first, 'panel').veiled)).toBe(60 * 20);
    expect(area(piece(first, 'base').veiled)).toBe(40 * 20);
    expect(area(piece(second, 'panel').veiled)).toBe(0);
    expect(area(piece(second, 'panel').open)).toBe(60 * 40);
  });

  test('the papers of the set add up card by card', () => {
    const byPaper = new Map(
      paperShown(layout, arrange(layout)).map((one) => [`${one.paper} ${one.side}`, one]),
    );
    const area = (paperSide: string, what: 'open' | 'veiled') =>
      squareMillimetres(byPaper.get(paperSide)![what]);
    // Two cards with a vellum band, one with a plain one; the panel is plain too.
    expect(area('mist front', 'open')).toBe(2 * 100 * 20);
    expect(area('plain front', 'open')).toBe(3 * 60 * 40 + 100 * 20);
    expect(area('plain front', 'veiled')).toBe(2 * 60 * 20);
  });
});

describe('borders and gaps', () => {
  const { layout } = setOf('bees-and-dots');
  const arrangement = arrange(layout);
  const shown = shownOn(layout, arrangement, 0);

  // Worked by hand: 1/8 + 3 + 1/4 + 1 3/4 + 1/8 = 5 1/4, all borders 1/8.
  test('ten birthday cards have borders of 1/8 in everywhere and a gap of 1/4 in', () => {
    const borders = bordersShown(arrangement, shown);
    const of = (id: string) => borders.find((one) => one.part === id)!.edges;
    expect(Object.values(of('mat')).map(({ breadth }) => breadth)).toEqual([
      inch('1/8'),
      inch('1/8'),
      inch('1/8'),
      inch('1/8'),
    ]);
    expect([of('upper').left, of('upper').top, of('lower').bottom]).toEqual(
      ['left', 'top', 'bottom'].map(() => ({ breadth: inch('1/8'), open: 1 })),
    );
    const gap = gapsShown(arrangement, shown).find(({ between }) =>
      between.some(({ part: id }) => id === 'upper'),
    )!;
    expect(gap).toMatchObject({ axis: 'height', breadth: inch('1/4') });
    // A sentiment of 3 in on its mat of 3 1/4 in lies across the gap, which is 3 3/4 in wide.
    expect(gap.shows.map(({ part: id }) => id).slice(0, 2)).toEqual(['sentiment', 'mat']);
    for (const [place, share] of [3, 0.5, 0.25].entries())
      expect(gap.shows[place]!.share).toBeCloseTo(share / 3.75, 9);
  });

  test('outlines may come nearer than their boxes', () => {
    const pair = layoutOf({
      base: [inch('6'), inch('6')],
      parts: [
        part('one', { diameter: inch('2'), place: { left: inch('1/2'), top: inch('1/2') } }),
        part('two', { diameter: inch('2'), place: { left: inch('3'), top: inch('3/2') } }),
      ],
    });
    const drawn = arrange(pair);
    const [gap] = gapsShown(drawn, shownOn(pair, drawn, 0));
    expect(gap!.breadth).toBe(inch('1/2'));
    expect(gap!.nearest / inch('1')).toBeCloseTo(Math.hypot(2.5, 1) - 2, 3);
    const square = layoutOf({
      base: [inch('6'), inch('6')],
      parts: [
        part('moon', { diameter: inch('4') }),
        part('square', { on: 'moon', size: [inch('2'), inch('2')] }),
      ],
    });
    const laid = arrange(square);
    const borders = bordersShown(laid, shownOn(square, laid, 0)).find((one) => one.part === 'square')!;
    expect(borders.edges.left.breadth).toBe(inch('1'));
    expect(borders.nearest / inch('1')).toBeCloseTo(2 - Math.SQRT2, 3);
  });
});

/** Layouts looked at; `CARDWRIGHT_PILES=10000` for the full number. */
const piles = Number(process.env.CARDWRIGHT_PILES ?? 60);

describe('random piles', () => {
  test('open regions are apart and, with what is seen through, cover all: inclusion and exclusion by a second engine', {
    timeout: 3_600_000,
  }, () => {
    fc.assert(
      fc.property(randomLayout({ coarse: false, overFixed: false }), (layout) => {
        const all = shownIn(layout);
        for (const face of ['base', 'inside', 'back'] as const) {
          const shown = all.filter((one) => one.face === face);
          if (shown.length === 0) continue;
          const edges = shown.reduce((total, { region }) => total + lengthRound(region), 1);
          const whole = secondEngine.union(shown.map(({ region }) => region));
          const open = shown.reduce((total, one) => total + areaOf(one.open), 0);
          expect(Math.abs(open - areaOf(union(shown.map((one) => one.open))))).toBeLessThanOrEqual(edges);
          if (whole !== null) expect(Math.abs(open - whole)).toBeLessThanOrEqual(edges);
        }
      }),
      { numRuns: piles },
    );
  });

  test('a point shows the topmost piece that covers it', () => {
    fc.assert(
      fc.property(
        randomLayout({ coarse: false, overFixed: false }),
        fc.array(
          fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
          { minLength: 20, maxLength: 20 },
        ),
        (layout, places) => {
          const { card } = arrange(layout);
          const shown = shownIn(layout).filter(({ face }) => face === 'base');
          for (const [across, down] of places) {
            const at = { x: across * card.width + 0.37, y: down * card.height + 0.61 };
            const covering = shown.filter(({ region }) => holds(region, at));
            const seen = shown.filter(({ open }) => holds(open, at));
            expect(seen.map(nameOf)).toEqual(covering.slice(-1).map(nameOf));
          }
        },
      ),
      { numRuns: piles },
    );
  });
});

const nameOf = ({ part: id, piece: number }: Shown) => `${id} ${number}`;

/** By counting the lines to the right of a point. */
function holds({ rings }: Region, { x, y }: { readonly x: number; readonly y: number }): boolean {
  const crossings = rings.flatMap((ring) =>
    ring.filter((from, index) => {
      const to = ring[(index + 1) % ring.length]!;
      return from.y > y !== to.y > y && from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x) > x;
    }),
  );
  return crossings.length % 2 === 1;
}

function lengthRound({ rings }: Region): number {
  return rings.reduce(
    (total, ring) =>
      total +
      ring.reduce((sum, from, index) => {
        const to = ring[(index + 1) % ring.length]!;
        return sum + Math.hypot(to.x - from.x, to.y - from.y);
      }, 0),
    0,
  );
}

function setOf(name: string) {
  const read = readLayoutFile(readFileSync(`test/sets/${name}.card.json`, 'utf8'));
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read;
}
