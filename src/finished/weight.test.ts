import { describe, expect, test } from 'vitest';
import { arrange } from '../layout/index.ts';
import { inch, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { grammageOf } from '../making/index.ts';
import { inches } from '../measure/index.ts';
import { readPath } from '../shape/index.ts';
import { envelopeWeight, weightOf, withItem } from './weight.ts';

const weighing = (id: string, gsm: number) => ({ ...paper(id, []), gsm });
const weigh = (layout: ReturnType<typeof layoutOf>, card = 0) => weightOf(layout, arrange(layout), card);
const gramsOf = (weight: ReturnType<typeof weigh>, part: string, what: string) =>
  weight.items.find((item) => item.part === part && item.what === what)!.grams;

// A printer's page: 29.7 x 21 cm of 80 g/m² weigh 4.99 g, 42 x 29.7 cm of 135 g/m² weigh 16.839 g.
test.each([
  [297, 210, 80, 4.99],
  [420, 297, 135, 16.839],
])('a sheet of %d x %d mm of %d g/m² weighs %d g', (width, height, gsm, grams) => {
  const layout = layoutOf({
    base: [mm(width), mm(height)],
    fold: 'none',
    basePapers: ['p'],
    papers: [weighing('p', gsm)],
  });
  const weight = weigh(layout);
  expect(weight.grams).toBeCloseTo(grams, 2);
  expect(weight.estimated).toBe(0);
});

// 5 1/2 in high and 200 g/m²; the opened base is 8 1/2 in wide, 10 1/2 in, and 11 in less what the flap is narrower.
test.each([
  ['gate', '4 1/4', 8.5],
  ['shutter', '3 1/2', 10.5],
  ['trifold', '3 11/16', 11],
] as const)('a %s weighs as much as its opened base', (fold, width, opened) => {
  const layout = layoutOf({
    base: [inch(width), inch('5 1/2')],
    fold,
    basePapers: ['p'],
    papers: [weighing('p', 200)],
  });
  expect(weigh(layout).grams).toBeCloseTo(opened * 5.5 * 0.0254 ** 2 * 200, 9);
});

// Worked by hand from the exact pound and inch: 6.525 + 2.381 + 1.452 = 10.36 g before adhesives and envelope.
describe('a card of an 80 lb base, a 65 lb mat and a panel of 120 g/m²', () => {
  const layout = layoutOf({
    base: [inch('4 1/4'), inch('5 1/2')],
    basePapers: ['cover80'],
    papers: [
      weighing('cover80', grammageOf(80, 'cover')),
      weighing('cover65', grammageOf(65, 'cover')),
      weighing('print', 120),
    ],
    parts: [
      part('mat', { size: [inches(4), inch('5 1/4')], papers: ['cover65'] }),
      part('panel', { on: 'mat', size: [inch('3 3/4'), inches(5)], papers: ['print'] }),
    ],
  });
  const weight = weigh(layout);

  test('weighs 10.36 g in papers', () => {
    expect(gramsOf(weight, 'base', 'base')).toBeCloseTo(6.525, 3);
    expect(gramsOf(weight, 'mat', 'part')).toBeCloseTo(2.381, 3);
    expect(gramsOf(weight, 'panel', 'part')).toBeCloseTo(1.452, 3);
    expect(weight.grams - weight.estimated).toBeCloseTo(10.36, 2);
  });

  test('and its glue is told as an estimate', () => {
    expect(weight.items.filter(({ estimated }) => estimated).map(({ what }) => what)).toEqual([
      'adhesive',
      'adhesive',
    ]);
    // 10 g/m² under 21 and 18.75 square inches.
    expect(weight.estimated).toBeCloseTo((21 + 18.75) * 0.0254 ** 2 * 10, 6);
  });
});

const frame = readPath('M0 0h10v10h-10z M2 2h6v6h-6z');
if (!frame.ok) throw new Error(frame.code);

test('what is torn off is not weighed, what is tucked behind is, and a circle is a circle', () => {
  const layout = layoutOf({
    base: [mm(100), mm(100)],
    fold: 'none',
    units: 'mm',
    basePapers: ['p'],
    papers: [weighing('p', 200)],
    parts: [
      part('torn', { size: [mm(50), mm(60)], torn: { bottom: mm(10) }, papers: ['p'] }),
      part('band', { size: [mm(110), mm(10)], tuck: { left: mm(15), right: mm(15) }, papers: ['p'] }),
      part('moon', { diameter: mm(40), papers: ['p'], adhere: 'raised', foam: mm(2) }),
      part('frame', {
        size: [mm(50), mm(50)],
        shape: { kind: 'outline', path: frame.path },
        papers: ['p'],
      }),
    ],
  });
  const weight = weigh(layout);
  expect(gramsOf(weight, 'torn', 'part')).toBeCloseTo(0.5, 9);
  expect(gramsOf(weight, 'band', 'part')).toBeCloseTo(0.22, 9);
  expect(gramsOf(weight, 'moon', 'part')).toBeCloseTo((Math.PI * 400 * 200) / 1e6, 4);
  expect(gramsOf(weight, 'frame', 'part')).toBeCloseTo((2500 * 0.64 * 200) / 1e6, 9);
  // Half of the moon lies on 2 mm of foam, 0.12 g in a cubic centimetre.
  expect(gramsOf(weight, 'moon', 'adhesive')).toBeCloseTo(Math.PI * 4 * 0.5 * 0.2 * 0.12, 4);
});

test('bought things weigh what is said, each piece of them; else as paper so thick', () => {
  const layout = layoutOf({
    base: [mm(100), mm(100)],
    fold: 'none',
    units: 'mm',
    basePapers: ['p'],
    papers: [{ ...paper('p', []), thickness: mm(0.25) }],
    parts: [
      part('button', { diameter: mm(10), count: 3, grams: 0.4 }),
      part('word', { size: [mm(50), mm(20)], thickness: mm(0.5) }),
    ],
  });
  const { items } = weigh(layout);
  expect(
    items
      .filter(({ what }) => what !== 'adhesive')
      .map(({ part: of, grams, estimated }) => [of, grams.toFixed(9), estimated]),
  ).toEqual([
    ['base', '2.000000000', true],
    ['button', '1.200000000', false],
    ['word', '0.400000000', true],
  ]);
});

test('papers dealt in turn are weighed card by card', () => {
  const layout = layoutOf({
    base: [mm(100), mm(100)],
    fold: 'none',
    cards: 4,
    basePapers: ['p', 'q'],
    papers: [weighing('p', 100), weighing('q', 300)],
  });
  expect([0, 1, 2, 3].map((card) => weigh(layout, card).grams.toFixed(9))).toEqual(
    [1, 3, 1, 3].map((grams) => grams.toFixed(9)),
  );
});

test('an envelope weighs what is said, else by about the area it is cut from', () => {
  const size = { width: mm(200), height: mm(100) };
  const card = { items: [], grams: 0, estimated: 0 };
  expect(envelopeWeight({ size, gsm: 100, grams: 5 })).toMatchObject({ grams: 5, estimated: false });
  expect(withItem(card, envelopeWeight({ size, gsm: 100, grams: null })).estimated).toBeCloseTo(
    0.02 * 2.4 * 100,
    9,
  );
  expect(envelopeWeight({ size, gsm: null, grams: null }).grams).toBeCloseTo(0.02 * 2.4 * 90, 9);
});
