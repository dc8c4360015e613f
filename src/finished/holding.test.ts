import { expect, test } from 'vitest';
import { arrange } from '../layout/index.ts';
import { inch, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { holdingOf } from './holding.ts';
import { nothingSaid } from './testing/nothingSaid.ts';

// Worked by hand: 60 x 20 less 3 all round is 54 x 14; squares of 12 stand a millimetre in, one at each end.
test('squares of 12 mm under a bow of 60 x 20 stay 3 in from its edges, two to a card and twenty to ten', () => {
  const layout = layoutOf({
    units: 'mm',
    cards: 10,
    base: [mm(135), mm(135)],
    adhesives: {
      raised: {
        ...nothingSaid,
        kind: 'foam-squares',
        width: mm(12),
        thickness: mm(2),
        inset: mm(3),
        pack: 16,
      },
    },
    parts: [part('bow', { size: [mm(60), mm(20)], adhere: 'raised' })],
  });
  const { parts, needs } = holdingOf(layout, arrange(layout));
  const { laid, hangs, lacks } = parts[0]!.pieces[0]!;
  expect(laid.map(({ box }) => box)).toEqual([
    { left: mm(3), top: mm(4), width: mm(12), height: mm(12) },
    { left: mm(45), top: mm(4), width: mm(12), height: mm(12) },
  ]);
  expect({ hangs, lacks }).toEqual({ hangs: null, lacks: null });
  expect(needs).toMatchObject([{ use: 'raised', card: { count: 2 }, set: { count: 20 }, toHave: 2 }]);
});

// A mat of 3 1/4 x 1 with a border of 1/8: 3 in of tape 1/2 in wide down its middle; ten of them take 30 in.
test('a sentiment on its mat is held by one strip of foam along its middle', () => {
  const layout = layoutOf({
    cards: 10,
    base: [inch('4 1/4'), inch('5 1/2')],
    parts: [part('mat', { size: [inch('3 1/4'), inch('1')], adhere: 'raised' })],
  });
  const { parts, needs } = holdingOf(layout, arrange(layout));
  expect(parts[0]!.pieces[0]!.laid).toEqual([
    {
      box: { left: inch('1/8'), top: inch('1/4'), width: inch('3'), height: inch('1/2') },
      along: 'width',
    },
  ]);
  expect(needs).toMatchObject([
    { use: 'raised', card: { length: inch('3') }, set: { length: inch('30') }, toHave: 1 },
  ]);
});

test('under vellum adhesive lies only where something that is not seen through lies over it', () => {
  const circle = (over: readonly ReturnType<typeof part>[]) =>
    layoutOf({
      units: 'mm',
      base: [mm(100), mm(100)],
      papers: [paper('card', []), { ...paper('vellum', []), seeThrough: true }],
      parts: [part('circle', { diameter: mm(60), papers: ['vellum'], adhere: 'spots' }), ...over],
    });
  const bare = circle([]);
  expect(holdingOf(bare, arrange(bare)).parts[0]!.pieces[0]).toMatchObject({ laid: [], lacks: 'cover' });
  const label = circle([
    part('label', { on: 'circle', size: [mm(40), mm(16)], papers: ['card'], adhere: 'flat' }),
  ]);
  const { laid, hangs } = holdingOf(label, arrange(label)).parts[0]!.pieces[0]!;
  // The label lies from 10 to 50 across and from 22 to 38 down on the circle.
  for (const { box } of laid) {
    expect(box.left).toBeGreaterThanOrEqual(mm(10));
    expect(box.left + box.width).toBeLessThanOrEqual(mm(50));
    expect(box.top).toBeGreaterThanOrEqual(mm(22));
    expect(box.top + box.height).toBeLessThanOrEqual(mm(38));
  }
  expect(laid.length).toBeGreaterThan(0);
  // Its top is 22 from the label, with spots that can stand no nearer than that.
  expect(hangs).toBeGreaterThanOrEqual(mm(22));
});

test('a strip too narrow for foam has none, and one that hangs over the card is said to', () => {
  const layout = layoutOf({
    units: 'mm',
    base: [mm(100), mm(100)],
    parts: [
      part('twig', { size: [mm(50), mm(8)], adhere: 'raised' }),
      part('flag', { size: [mm(80), mm(20)], place: { left: mm(60), top: mm(5) }, adhere: 'raised' }),
    ],
  });
  const [twig, flag] = holdingOf(layout, arrange(layout)).parts;
  expect(twig!.pieces[0]).toMatchObject({ laid: [], lacks: 'room', breadth: mm(2) });
  // It hangs over by 40.
  expect(flag!.pieces[0]!.hangs).toBeGreaterThanOrEqual(mm(40));
  expect(flag!.pieces[0]!.hangs).toBeLessThan(mm(42));
});

test('the ends of a band are taped behind, half on the band and half on its mat', () => {
  const layout = layoutOf({
    units: 'mm',
    base: [mm(135), mm(135)],
    parts: [
      part('mat', { inset: mm(3) }),
      part('ribbon', { on: 'mat', size: [mm(159), mm(20)], tuck: { left: mm(15), right: mm(15) } }),
    ],
  });
  const { parts, needs } = holdingOf(layout, arrange(layout));
  expect(parts[1]!.pieces[0]).toMatchObject({ laid: [], lacks: null });
  expect(parts[1]!.pieces[0]!.ends.map(({ box }) => box)).toEqual([
    { left: mm(9), top: 0, width: mm(12), height: mm(20) },
    { left: mm(108), top: 0, width: mm(12), height: mm(20) },
  ]);
  expect(needs.find(({ use }) => use === 'holding')).toMatchObject({ card: { length: mm(40), count: 2 } });
});
