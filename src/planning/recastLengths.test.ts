import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arrange,
  checkLayout,
  type Drawn,
  dimensionsOf,
  type Layout,
  sumsOf,
  withLengths,
  worseningFrom,
} from '../layout/index.ts';
import { awayFrom, inch, layoutOf, mm, part } from '../layout/testing/build.ts';
import { randomLayout } from '../layout/testing/randomLayout.ts';
import { inches, type Length, lengthOfTicks, roundTo, times } from '../measure/index.ts';
import { recastLengths } from './recastLengths.ts';
import { type Marked, markedLayout } from './testing/markedLayout.ts';

const drawn = (layout: Layout): Drawn => ({ layout, arrangement: arrange(layout) });

function recastTo(layout: Layout, marks: Length, base = layout.base.size, scales = false): Layout {
  const down = scales
    ? base
    : { width: roundTo(base.width, marks, 'down'), height: roundTo(base.height, marks, 'down') };
  const { lengths } = recastLengths(layout, arrange(layout), { base: down, scales, marks, settable: null });
  return withLengths(layout, new Map([...lengths].map(([path, { length }]) => [path, length])));
}

const reasonsOf = (layout: Layout, marks: Length) =>
  Object.fromEntries(
    [
      ...recastLengths(layout, arrange(layout), {
        base: layout.base.size,
        scales: false,
        marks,
        settable: null,
      }).lengths,
    ].map(([path, { why }]) => [path, why]),
  );

describe('true sizes', () => {
  const card = (sketch: Parameters<typeof part>[1]) =>
    layoutOf({
      base: [inch('4'), inch('5')],
      parts: [part('token', { size: [inch('1 1/4'), inch('1')], ...sketch })],
    });

  it.each([
    ['of what is bought are kept to the tick', { papers: [] }, inch('1 1/4'), 'bought'],
    ['of a die are kept, the piece no smaller', { papers: ['ivory'], dieCut: true }, mm(32), 'die'],
    ['of a stamp are kept, the piece no smaller', { papers: ['ivory'], stamped: true }, mm(32), 'stamp'],
    ['of a plain piece go to the mark that leaves it round borders', { papers: ['ivory'] }, mm(31), 'mark'],
  ] as const)('%s', (_, sketch, width, why) => {
    const layout = card(sketch);
    expect(reasonsOf(layout, mm(1))['parts[0].size[0]']).toBe(why);
    expect(
      dimensionsOf(recastTo(layout, mm(1))).find(({ path }) => path === 'parts[0].size[0]')?.length,
    ).toBe(width);
  });

  it('of what may not move are kept, on the marks only where the trimmer knows no others', () => {
    const still = card({ papers: ['ivory'] });
    const layout = { ...still, parts: still.parts.map((one) => ({ ...one, rooms: 'none' as const })) };
    const widthOn = (settable: Length | null) =>
      recastLengths(layout, arrange(layout), {
        base: layout.base.size,
        scales: false,
        marks: mm(1),
        settable,
      }).lengths.get('parts[0].size[0]');
    expect(widthOn(null)).toEqual({ length: inch('1 1/4'), why: 'fixed' });
    expect(widthOn(mm(5))).toEqual({ length: mm(30), why: 'fixed' });
  });

  it('of a stamp do not hold a piece that frames its card', () => {
    const layout = layoutOf({
      base: [inch('4'), inch('5')],
      parts: [part('panel', { size: [inch('3 3/4'), inch('4 3/4')], stamped: true, papers: ['ivory'] })],
    });
    expect(arrange(recastTo(layout, mm(1))).parts[0]!.seen).toEqual({ width: mm(95), height: mm(121) });
  });
});

describe('what follows', () => {
  it('a strip over a gap stays over it on another base', () => {
    const layout = layoutOf({
      base: [inch('4'), inch('5 1/4')],
      parts: [
        part('upper', { size: [inch('3 3/4'), inch('3')], place: { top: inch('1/8') } }),
        part('lower', {
          size: [inch('3 3/4'), inch('1 3/4')],
          place: { top: awayFrom('upper', inch('1/4')), bottom: inch('1/8') },
        }),
        part('strip', { size: [inch('3'), inch('1')], place: { top: inch('2 3/4') }, adhere: 'raised' }),
      ].map((one) => ({ ...one, papers: ['ivory'] })),
    });
    const now = arrange(recastTo(layout, mm(1), { width: mm(99), height: mm(142) }, true));
    const [upper, lower, strip] = now.parts.map(({ pieces }) => pieces[0]!.box!);
    const gapMiddle = (upper!.top + upper!.height + lower!.top) / 2;
    expect(Math.abs(strip!.top + strip!.height / 2 - gapMiddle)).toBeLessThanOrEqual(mm(1));
  });

  /** Three mats, each in the middle of the one before, and what lies on the last. */
  const onMats = (mats: readonly (readonly [string, string])[], on: Parameters<typeof part>[]) =>
    layoutOf({
      base: [inch('3 3/4'), inch('4 3/8')],
      parts: [
        ...mats.map(([width, height], index) =>
          part(`mat${index}`, {
            size: [inch(width), inch(height)],
            ...(index === 0 ? {} : { on: `mat${index - 1}` }),
          }),
        ),
        ...on.map(([id, sketch]) => part(id, { on: `mat${mats.length - 1}`, ...sketch })),
      ].map((one) => ({ ...one, papers: ['ivory'] })),
    });

  it('panels keep even borders around them where a raised strip just fits into their gap', () => {
    const layout = onMats(
      [
        ['3 5/8', '4 1/4'],
        ['3 1/2', '4 1/8'],
        ['3 1/4', '3 7/8'],
      ],
      [
        ['upper', { size: [inch('2 3/4'), inch('1 1/8')], place: { top: inch('1/4') } }],
        [
          'lower',
          {
            size: [inch('2 3/4'), inch('2')],
            torn: { top: inch('1/8') },
            place: { top: awayFrom('upper', inch('3/8')), bottom: inch('1/4') },
          },
        ],
        ['strip', { size: [inch('5/8'), inch('3/8')], place: { top: inch('1 3/8') }, adhere: 'raised' }],
      ],
    );
    const now = arrange(recastTo(layout, mm(1)));
    const borders = (id: string) =>
      now.parts.find(({ part: { id: own } }) => own === id)!.pieces[0]!.borders!;
    expect(borders('upper').top).toBe(borders('lower').bottom);
  });

  it('a strip narrower than the panels it lies over stays narrower, and hides none of them', () => {
    const layout = onMats(
      [
        ['3 1/4', '3 7/8'],
        ['3', '3 5/8'],
        ['2 5/8', '3 1/4'],
      ],
      [
        ['upper', { size: [inch('2'), inch('1 1/4')], place: { top: inch('5/16') } }],
        ['middle', { size: [inch('2'), inch('5/8')], place: { top: awayFrom('upper', inch('1/16')) } }],
        [
          'lower',
          {
            size: [inch('2'), inch('5/8')],
            place: { top: awayFrom('middle', inch('1/16')), bottom: inch('5/16') },
          },
        ],
        [
          'strip',
          { size: [inch('1 15/16'), inch('11/16')], place: { top: inch('1 9/16') }, adhere: 'raised' },
        ],
      ],
    );
    const back = recastTo(recastTo(layout, mm(1)), inches(1, 16));
    expect(worseningFrom(drawn(layout))(drawn(back)).wrong).toEqual(new Set());
  });

  it('a strip in line with the panel under it stays in line', () => {
    const layout = layoutOf({
      base: [inch('4 3/16'), inch('5 3/16')],
      parts: [
        part('panel', { size: [inch('3 3/16'), inch('4 3/16')] }),
        part('strip', {
          size: [inch('3 3/16'), inch('5/8')],
          place: { top: inch('1 1/4') },
          adhere: 'raised',
        }),
      ].map((one) => ({ ...one, papers: ['ivory'] })),
    });
    const [panel, strip] = arrange(recastTo(layout, mm(1))).parts;
    expect(strip!.seen!.width).toBe(panel!.seen!.width);
  });

  it('two buttons that lie evenly on a panel still do, with a gap between them', () => {
    const layout = layoutOf({
      base: [inch('2 5/8'), inch('2 1/2')],
      parts: [
        part('button', {
          diameter: inch('3/4'),
          place: [{ left: inch('1/2') }, { right: inch('1/2') }],
          papers: ['ivory'],
          dieCut: true,
        }),
      ],
    });
    const [row] = sumsOf(arrange(recastTo(layout, mm(1))));
    expect(row!.terms.map(({ length }) => length)).toEqual([mm(11), mm(20), mm(4), mm(20), mm(11)]);
  });

  it('a torn panel is cut larger than it is seen by what is torn off it', () => {
    const layout = layoutOf({
      base: [inch('4'), inch('5')],
      parts: [
        part('panel', {
          size: [inch('4 1/4'), inch('4 3/4')],
          place: { left: inch('1/8') },
          torn: { right: inch('1/2') },
        }),
      ].map((one) => ({ ...one, papers: ['ivory'] })),
    });
    const { cut, seen } = arrange(recastTo(layout, mm(1))).parts[0]!;
    expect([cut!.width, seen!.width]).toEqual([mm(108), mm(95)]);
  });

  it('a circle inset on a circle, and one that fills a square, stay round and even', () => {
    const layout = layoutOf({
      base: [inch('5'), inch('5')],
      parts: [
        part('disc', { diameter: inch('4 3/4') }),
        part('ring', { on: 'disc', inset: inch('1/8'), shape: 'circle' }),
      ].map((one) => ({ ...one, papers: ['ivory'] })),
    });
    const now = arrange(recastTo(layout, mm(1)));
    expect(now.parts.map(({ seen }) => seen)).toEqual([
      { width: mm(121), height: mm(121) },
      { width: mm(115), height: mm(115) },
    ]);
  });
});

describe('laws', () => {
  it('a layout that stands on the marks is left as it is', () => {
    fc.assert(
      fc.property(randomLayout({ coarse: true, overFixed: false }), (layout) => {
        fc.pre(arrange(layout).parts.every(({ cut }) => cut !== null));
        const marks = lengthOfTicks(1_024);
        const base = {
          width: roundTo(layout.base.size.width, marks, 'down'),
          height: roundTo(layout.base.size.height, marks, 'down'),
        };
        const based = { ...layout, base: { ...layout.base, size: base } };
        fc.pre(arrange(based).parts.every(({ cut }) => cut !== null));
        const isOnMark = (length: number) => length % marks === 0;
        fc.pre(arrange(based).parts.every(({ cut }) => isOnMark(cut!.width) && isOnMark(cut!.height)));
        const { lengths } = recastLengths(based, arrange(based), {
          base,
          scales: false,
          marks,
          settable: null,
        });
        for (const { path, length } of dimensionsOf(based))
          expect([path, lengths.get(path)?.length]).toEqual([path, length]);
      }),
      { numRuns: 300 },
    );
  });

  const isSound = ({ layout, arrangement }: Drawn, marks: Length) => {
    expect(arrangement.problems).toEqual([]);
    for (const { part: one, cut } of arrangement.parts) {
      expect([one.id, cut!.width % marks, cut!.height % marks]).toEqual([one.id, 0, 0]);
    }
    for (const row of sumsOf(arrangement))
      expect(row.terms.reduce((all, { length }) => all + length, 0)).toBe(row.total);
    // What frames nothing may lie halfway between marks where it lies in the middle.
    for (const { kind, length, part: id } of dimensionsOf(layout))
      if (kind !== 'size') expect(length % (/circle|strip/.test(id) ? marks / 2 : marks)).toBe(0);
  };
  const worse = (before: Layout, after: Layout) => {
    const { uneven, wrong } = worseningFrom(drawn(before))(drawn(after));
    return [...uneven, ...wrong];
  };

  it('there and back all borders stay even, every sum holds, every cut size falls on a mark, nothing hangs over', () => {
    fc.assert(
      fc.property(markedLayout(inches(1, 16)), ({ layout }: Marked) => {
        fc.pre(checkLayout(layout, arrange(layout)).every(({ severity }) => severity !== 'error'));
        const metric = recastTo(layout, mm(1));
        isSound(drawn(metric), mm(1));
        expect(worse(layout, metric)).toEqual([]);
        const back = recastTo(metric, inches(1, 16));
        isSound(drawn(back), inches(1, 16));
        expect(worse(layout, back)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('on any other base too', () => {
    fc.assert(
      fc.property(
        markedLayout(inches(1, 16)),
        fc.integer({ min: 90, max: 160 }),
        fc.integer({ min: 100, max: 210 }),
        ({ layout }, width, height) => {
          const now = recastTo(layout, mm(1), { width: mm(width), height: mm(height) }, true);
          const base = now.base.size;
          const target = { base, scales: true, marks: mm(1), settable: null };
          fc.pre(recastLengths(layout, arrange(layout), target).unfilled.size === 0);
          fc.pre(arrange(now).parts.every(({ cut }) => cut !== null));
          isSound(drawn(now), mm(1));
          expect([...worseningFrom(drawn(layout))(drawn(now)).uneven]).toEqual([]);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('turned about its diagonal the answer turns with it', () => {
    fc.assert(
      fc.property(markedLayout(inches(1, 16)), ({ layout, turned }: Marked) => {
        const [one, other] = [arrange(recastTo(layout, mm(1))), arrange(recastTo(turned, mm(1)))];
        expect(other.parts.map(({ cut }) => [cut!.height, cut!.width])).toEqual(
          one.parts.map(({ cut }) => [cut!.width, cut!.height]),
        );
      }),
      { numRuns: 100 },
    );
  });
});

it('rounds nothing to nothing, however coarse the marks', () => {
  const layout = layoutOf({
    base: [mm(145), mm(105)],
    parts: [part('mat', { inset: mm(1), papers: ['ivory'] })],
  });
  expect(arrange(recastTo(layout, mm(5))).parts[0]!.seen).toEqual({
    width: mm(135),
    height: times(mm(95), 1),
  });
});
