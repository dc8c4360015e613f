import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLayoutFile } from '../files/index.ts';
import { arrange, type Layout } from '../layout/index.ts';
import { inch, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { randomLayout } from '../layout/testing/randomLayout.ts';
import { inches, inchesOf, type Length, lengthOfTicks, ticksPerInch } from '../measure/index.ts';
import { sectionOf } from './section.ts';
import { boxGrid } from './testing/boxGrid.ts';

const sectionThrough = (layout: Layout, card = 0) => sectionOf(layout, arrange(layout), card);

/** Thousandths of an inch, as a tick below. */
const thousandths = (count: number): Length => lengthOfTicks(Math.floor((count * ticksPerInch) / 1000));

const thick = (id: string, thickness: Length) => ({ ...paper(id, []), thickness });

/** A layout file of the tests' own sets. */
function setOf(name: string): Layout {
  const read = readLayoutFile(readFileSync(`test/sets/${name}.card.json`, 'utf8'));
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read.layout;
}

describe('ten birthday cards with bees and dots', () => {
  const section = sectionThrough(setOf('bees-and-dots'));

  // Worked by hand: 0.013 twice, coral 0.011 twice, white 0.011 twice, print 0.007, foam 0.0625.
  test('are 0.1395 in thick where the raised sentiment lies over a print', () => {
    expect(inchesOf(section.thickest.thickness).toFixed(4)).toBe('0.1395');
  });

  test('tell what lies there, from the back up', () => {
    expect(section.thickest.layers.map(({ what, part: of }) => `${what} ${of}`)).toEqual([
      'base base',
      'part lining',
      'base base',
      'part mat',
      expect.stringMatching(/^part (upper|lower)$/),
      'foam tag',
      'part tag',
      'part sentiment',
    ]);
    // The layout does not say how thick the foam is.
    expect(section.thickest.estimated).toBe(inch('1/16'));
  });

  test('are thinnest in their bare rim, and uneven', () => {
    expect(section.thinnest.layers.map(({ part: of }) => of)).toEqual(['base', 'base']);
    expect(section.evenness.isUneven).toBe(true);
    // The tag of 3 1/4 x 1 in on a card of 4 1/4 x 5 1/2.
    expect(section.evenness.share).toBeCloseTo(3.25 / (4.25 * 5.5), 9);
  });

  test('take less out of an envelope than their thickness: it goes slanting over the tag', () => {
    // 4 1/4 below, the sentiment's 3 above; at each side the edges of the base, up to the mat with its panel 1/8 in from
    // them, to the tag 1/2 in from them, and to the sentiment.
    const heights = [0.026, 0.055, 0.1285, 0.1395];
    const from = [0, 0.125, 0.5, 0.625];
    const slants = [1, 2, 3].map((at) =>
      Math.hypot(from[at]! - from[at - 1]!, heights[at]! - heights[at - 1]!),
    );
    const side = slants.reduce((total, slant) => total + slant, 0.026);
    const half = (4.25 + 3 + 2 * side) / 2;
    expect(inchesOf(section.round.width)).toBeGreaterThan(4.25);
    expect(inchesOf(section.round.width)).toBeCloseTo(half, 3);
  });
});

// Published thicknesses of such papers, worked by hand: 2 x 0.0115 + 0.0098 + 0.006 + 0.0625 + 0.0098 = 0.1111.
test('a folded base, mat, panel and a die cut on foam are 0.111 in', () => {
  const layout = layoutOf({
    base: [inch('4 1/4'), inch('5 1/2')],
    basePapers: ['cover80'],
    papers: [
      thick('cover80', thousandths(11.5)),
      thick('cover65', thousandths(9.8)),
      thick('print', thousandths(6)),
    ],
    parts: [
      part('mat', { inset: inch('1/8'), papers: ['cover65'] }),
      part('panel', { on: 'mat', inset: inch('1/8'), papers: ['print'] }),
      part('word', { on: 'panel', size: [inches(2), inches(1)], papers: ['cover65'], adhere: 'raised' }),
    ],
  });
  expect(inchesOf(sectionThrough(layout).thickest.thickness)).toBeCloseTo(0.1111, 3);
});

describe('what foam carries', () => {
  const card = (parts: Parameters<typeof layoutOf>[0]['parts']) =>
    layoutOf({
      base: [mm(100), mm(100)],
      fold: 'none',
      units: 'mm',
      basePapers: ['p'],
      papers: [thick('p', mm(0.25))],
      parts: parts!,
    });

  test('is carried over its whole extent, with air where there is no foam below', () => {
    const layout = card([
      part('small', { size: [mm(20), mm(20)], place: { left: mm(10) }, papers: ['p'], adhere: 'raised' }),
      part('long', { on: 'small', size: [mm(60), mm(10)], place: { left: mm(0) }, papers: ['p'] }),
      part('dot', { size: [mm(5), mm(5)], place: { left: mm(60) }, papers: ['p'] }),
    ]);
    const section = sectionThrough(layout);
    // 1.5 mm foam, base, and two papers either at the small part or at the dot, which lies on the carried one.
    expect(section.thickest.thickness).toBe(mm(2.25));
    const carried = sectionThrough({ ...layout, parts: layout.parts.slice(0, 2) });
    expect(carried.levels.map(({ thickness, area }) => [thickness, area / 1600 ** 2])).toEqual([
      [mm(2.25), 200],
      [mm(2), 200 + 400],
      [mm(0.25), 10_000 - 800],
    ]);
  });

  test('a part on two raised ones lies as high as the higher', () => {
    const low = part('low', {
      size: [mm(20), mm(20)],
      place: { left: mm(10) },
      papers: ['p'],
      adhere: 'raised',
      foam: mm(1),
    });
    const high = part('high', {
      size: [mm(20), mm(20)],
      place: { left: mm(50) },
      papers: ['p'],
      adhere: 'raised',
      foam: mm(3),
    });
    const over = part('over', { size: [mm(60), mm(10)], place: { left: mm(10) }, papers: ['p'] });
    const { thickest, levels } = sectionThrough(card([low, high, over]));
    expect(thickest.thickness).toBe(mm(3.75));
    expect(levels.map(({ thickness }) => thickness)).toEqual([mm(3.75), mm(3.5), mm(1.5), mm(0.25)]);
  });

  test('spots of glue raise a little, and what is bought is as thick as is said', () => {
    const button = part('button', { diameter: mm(12), adhere: 'spots', thickness: mm(3) });
    const { thickest } = sectionThrough(card([button]));
    expect(thickest.thickness).toBe(mm(3.55));
    expect(thickest.layers.map(({ what, estimated }) => [what, estimated])).toEqual([
      ['base', false],
      ['spots', true],
      ['part', false],
    ]);
  });

  test('a wrapped band lies twice at its ends', () => {
    const mat = part('mat', { size: [mm(80), mm(80)], papers: ['p'] });
    const band = part('band', {
      on: 'mat',
      size: [mm(110), mm(20)],
      papers: ['p'],
      tuck: { left: mm(15), right: mm(15) },
    });
    const { levels } = sectionThrough(card([mat, band]));
    expect(levels.map(({ thickness, area }) => [thickness, area / 1600 ** 2])).toEqual([
      [mm(1), 2 * 15 * 20],
      [mm(0.75), 50 * 20],
      [mm(0.5), 6400 - 1600],
      [mm(0.25), 3600],
    ]);
  });
});

test('the back is seen from the front: what lies at its left lies behind the right', () => {
  const layout = layoutOf({
    base: [mm(100), mm(80)],
    papers: [thick('p', mm(0.25))],
    basePapers: ['p'],
    parts: [
      part('seal', {
        on: 'back',
        size: [mm(20), mm(20)],
        place: { left: mm(10), top: mm(10) },
        papers: ['p'],
      }),
      part('spot', { size: [mm(20), mm(20)], place: { left: mm(70), top: mm(10) }, papers: ['p'] }),
    ],
  });
  const { thickest } = sectionThrough(layout);
  expect(thickest.layers.map(({ part: of }) => of)).toEqual(['seal', 'base', 'base', 'spot']);
  expect(thickest.at.x).toBe(mm(80));
});

test('a circle on a card covers what a circle covers', () => {
  const layout = layoutOf({
    base: [mm(100), mm(100)],
    fold: 'none',
    basePapers: ['p'],
    papers: [thick('p', mm(0.25))],
    parts: [
      part('moon', { diameter: mm(60), papers: ['p'] }),
      part('sun', { diameter: mm(40), papers: ['p'] }),
    ],
  });
  const { levels, thickest } = sectionThrough(layout);
  const areas = levels.map(({ area }) => area / 1600 ** 2);
  expect(areas[0]).toBeCloseTo(Math.PI * 400, 0);
  expect(areas[1]).toBeCloseTo(Math.PI * (900 - 400), 0);
  expect(thickest.at).toEqual({ x: mm(50), y: mm(50) });
});

// Whole multiples of 1024 ticks, so that no place is narrower than what is passed over.
test('every thickness and its area come out as on a grid along all edges, whatever the pile', () => {
  const papers = { p: mm(0.25), q: mm(0.18), r: mm(0.3) };
  const manners = fc.array(
    fc.tuple(fc.constantFrom('p', 'q', 'r'), fc.constantFrom('flat', 'flat', 'raised')),
    {
      minLength: 8,
      maxLength: 8,
    },
  );
  fc.assert(
    fc.property(randomLayout({ coarse: true, overFixed: false }), manners, (drawn, how) => {
      const layout: Layout = {
        ...drawn,
        units: 'mm',
        base: { ...drawn.base, papers: ['p'] },
        papers: new Map(Object.entries(papers).map(([id, thickness]) => [id, thick(id, thickness)])),
        parts: drawn.parts.map((one, index) => ({
          ...one,
          shape: { kind: 'rectangle' },
          papers: [how[index]![0]],
          adhere: how[index]![1],
        })),
      };
      const arrangement = arrange(layout);
      const { levels, thickest } = sectionOf(layout, arrangement, 0);
      const expected = boxGrid(layout, arrangement, { papers, foam: mm(1.5) });
      expect(new Map(levels.map(({ thickness, area }) => [thickness as number, area]))).toEqual(expected);
      expect(thickest.thickness).toBe(Math.max(...expected.keys()));
    }),
    { numRuns: 300 },
  );
});
