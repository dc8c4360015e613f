import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Adhere, arrange, type Layout, type Part } from '../layout/index.ts';
import { layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { boxRegion, isEmpty, ovalOutline, regionOf } from '../shape/index.ts';
import { secondEngine } from '../shape/testing/secondEngine.ts';
import { holdingOf } from './holding.ts';
import { clearance, isInside, thingsOf, wrongAt } from './testing/holdingGrid.ts';
import { nothingSaid } from './testing/nothingSaid.ts';

const inset = mm(3);
const asks = { inset, foam: mm(1.5), spots: mm(0.3) };

/** Piles of rectangles and ovals, each held in one way or another and some seen through. */
function heldPile(): fc.Arbitrary<Layout> {
  const one = fc.record({
    left: fc.integer({ min: -3, max: 12 }),
    top: fc.integer({ min: -3, max: 12 }),
    width: fc.integer({ min: 2, max: 16 }),
    height: fc.integer({ min: 2, max: 16 }),
    shape: fc.constantFrom<'rectangle' | 'oval'>('rectangle', 'rectangle', 'oval'),
    adhere: fc.constantFrom<Adhere>('flat', 'raised', 'spots'),
    papers: fc.constantFrom(['card'], ['card'], ['vellum'], ['card', 'vellum']),
  });
  const squares = fc.boolean();
  return fc.tuple(fc.array(one, { minLength: 1, maxLength: 4 }), squares).map(([drawn, isSquares]) =>
    layoutOf({
      units: 'mm',
      cards: 2,
      base: [mm(120), mm(120)],
      papers: [paper('card', []), { ...paper('vellum', []), seeThrough: true }],
      ...(isSquares ? { adhesives: { raised: { ...nothingSaid, kind: 'foam-squares' } } } : {}),
      parts: drawn.map(({ left, top, width, height, ...how }, index) =>
        part(`p${index}`, {
          ...how,
          size: [mm(8 * width), mm(8 * height)],
          place: { left: mm(8 * left), top: mm(8 * top) },
        }),
      ),
    }),
  );
}

test('what holds a piece is nowhere seen, and no point of the piece hangs further than is said', () => {
  const seen = { laid: 0, hangs: 0, lacks: 0 };
  fc.assert(
    fc.property(heldPile(), (layout) => {
      const arrangement = arrange(layout);
      const things = thingsOf(layout, arrangement, asks);
      for (const { part: id, by, adhesive, pieces } of holdingOf(layout, arrangement).parts) {
        const [{ laid, hangs, lacks, room }] = pieces as [(typeof pieces)[number]];
        const thing = things.find((each) => each.id === id)!;
        const own = { ...asks, inset: by === 'flat' ? Math.min(inset, quarter(thing)) : inset };
        // A piece that meets what is below it only in a sliver is left to what is said of joins.
        const boxes = laid.map(({ box }) => ({
          ...box,
          left: box.left + thing.x0,
          top: box.top + thing.y0,
        }));
        for (const box of boxes) {
          for (let i = 0; i <= 5; i += 1) {
            for (let j = 0; j <= 5; j += 1) {
              const [x, y] = [box.left + (box.width * i) / 5, box.top + (box.height * j) / 5];
              if (adhesive.form === 'spot' && gap(x, y, box, true) > 0) continue;
              expect(wrongAt(x, y, thing, things, own, 40)).toBe('');
            }
          }
        }
        if (laid.length === 0) {
          seen.lacks += 1;
          expect(lacks).not.toBeNull();
          continue;
        }
        seen.laid += 1;
        let worst = 0;
        for (let i = 0; i <= 40; i += 1) {
          for (let j = 0; j <= 40; j += 1) {
            const x = thing.x0 + ((thing.x1 - thing.x0) * i) / 40;
            const y = thing.y0 + ((thing.y1 - thing.y0) * j) / 40;
            if (!isInside(x, y, thing)) continue;
            worst = Math.max(
              worst,
              Math.min(...boxes.map((box) => gap(x, y, box, adhesive.form === 'spot'))),
            );
          }
        }
        if (hangs === null) expect(worst).toBeLessThanOrEqual(adhesive.span + 24);
        else {
          seen.hangs += 1;
          expect(worst).toBeLessThanOrEqual(hangs + 24);
          expect(worst).toBeGreaterThan(hangs - mm(6));
        }
        // The other engine finds nothing laid outside the room, but for a tick along slanting edges.
        for (const box of laid) {
          const own = { ...boxes[laid.indexOf(box)]! } as typeof box.box;
          const at = adhesive.form === 'spot' ? regionOf(ovalOutline(own)) : boxRegion(own);
          const outside = secondEngine.difference(at, room);
          expect(isEmpty(room)).toBe(false);
          if (outside !== null) expect(outside).toBeLessThan(2 * (box.box.width + box.box.height));
        }
      }
    }),
    { numRuns: 40 },
  );
  expect(seen.laid).toBeGreaterThan(20);
  expect(seen.lacks).toBeGreaterThan(3);
  expect(seen.hangs).toBeGreaterThan(3);
});

function quarter({ x0, x1, y0, y1 }: { x0: number; x1: number; y0: number; y1: number }): number {
  return Math.floor(Math.min(x1 - x0, y1 - y0) / 4) - 8;
}

function gap(
  x: number,
  y: number,
  box: { left: number; top: number; width: number; height: number },
  isRound: boolean,
): number {
  const [right, bottom] = [box.left + box.width, box.top + box.height];
  return isRound
    ? Math.hypot(x - (box.left + right) / 2, y - (box.top + bottom) / 2) - box.width / 2
    : Math.hypot(Math.max(box.left - x, 0, x - right), Math.max(box.top - y, 0, y - bottom));
}

test('the grid itself knows how far a point is from a circle, between the points it first looks at too', () => {
  const circle = { x0: 0, y0: 0, x1: mm(128), y1: mm(128), isOval: true };
  for (const radius of [mm(20), mm(64) - 1, mm(64) + 1, mm(80)]) {
    for (let angle = 0; angle < 7; angle += 0.1) {
      const [x, y] = [mm(64) + radius * Math.cos(angle), mm(64) + radius * Math.sin(angle)];
      expect(Math.abs(clearance(x, y, circle) - (mm(64) - radius))).toBeLessThan(0.5);
    }
  }
});

test('pieces that are turned or moved on the card have what holds them turned and moved with them', () => {
  const drawn = (over: Partial<Parameters<typeof part>[1]>): Part =>
    part('panel', { adhere: 'raised', size: [mm(90), mm(30)], place: { left: mm(5), top: mm(5) }, ...over });
  const held = (one: Part) => {
    const layout = layoutOf({ units: 'mm', base: [mm(120), mm(120)], parts: [one] });
    return holdingOf(layout, arrange(layout)).parts[0]!.pieces[0]!.laid;
  };
  const first = held(drawn({}));
  expect(held(drawn({ place: { left: mm(11), top: mm(47) } }))).toEqual(first);
  const turned = held(drawn({ size: [mm(30), mm(90)] }));
  expect(
    turned.map(({ box }) => ({ left: box.top, top: box.left, width: box.height, height: box.width })),
  ).toEqual(first.map(({ box }) => box));
});
