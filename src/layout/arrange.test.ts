import { describe, expect, test } from 'vitest';
import { type Length, type Size, zero } from '../measure/index.ts';
import { arrange } from './arrange.ts';
import type { Layout } from './layout.ts';
import { awayFrom, inch, layoutOf, mm, part } from './testing/build.ts';

const a2 = [inch('4 1/4'), inch('5 1/2')] as const;

describe('published ladders and mats', () => {
  // Hobby tutorials HT-2, HT-12 and HT-13: three unrelated authors, the same numbers.
  test('each layer with a 1/8 in visible border is 1/4 in smaller both ways', () => {
    const layers = ['first', 'second', 'third', 'fourth'];
    const layout = layoutOf({
      base: a2,
      parts: layers.map((id, index) => part(id, { on: layers[index - 1] ?? 'base', inset: inch('1/8') })),
    });
    expect(seenSizes(layout)).toEqual([
      size('4', '5 1/4'),
      size('3 3/4', '5'),
      size('3 1/2', '4 3/4'),
      size('3 1/4', '4 1/2'),
    ]);
  });

  // Hobby tutorial HT-1. Its "1/8 mat" is 1/8 in smaller over all: 1/16 in is seen on each side. Hobby tutorial
  // HT-2 calls the 4 x 5 1/4 mat on the A2 card "1/8", which is what is seen; this table calls it "1/4".
  test.each([
    ['3x3', '3', '3', '2 7/8', '2 7/8', '2 3/4', '2 3/4'],
    ['6x6', '6', '6', '5 7/8', '5 7/8', '5 3/4', '5 3/4'],
    ['4-bar', '3 1/2', '4 7/8', '3 3/8', '4 3/4', '3 1/4', '4 5/8'],
    ['A2', '4 1/4', '5 1/2', '4 1/8', '5 3/8', '4', '5 1/4'],
    ['A6', '4 1/2', '6 1/4', '4 3/8', '6 1/8', '4 1/4', '6'],
    ['A7', '5', '7', '4 7/8', '6 7/8', '4 3/4', '6 3/4'],
    ['A8', '5 1/4', '7 7/8', '5 1/8', '7 3/4', '5', '7 5/8'],
    ['A9', '5 1/2', '8 1/2', '5 3/8', '8 3/8', '5 1/4', '8 1/4'],
    ['No. 10', '3 7/8', '9 1/4', '3 3/4', '9 1/8', '3 5/8', '9'],
  ])('mats of the %s card', (_, width, height, ...mats) => {
    const layout = layoutOf({
      base: [inch(width), inch(height)],
      parts: [part('eighth', { inset: inch('1/16') }), part('quarter', { inset: inch('1/8') })],
    });
    expect(seenSizes(layout)).toEqual([size(mats[0], mats[1]), size(mats[2], mats[3])]);
  });

  test('the smaller mats in print', () => {
    // Hobby tutorial HT-10, inward: 3 x 4 -> 2 3/4 x 3 3/4; and HT-18: 2 1/2 x 3 1/2 with 2 1/4 x 3 1/4 on top.
    const inward = (width: string, height: string) =>
      seenSizes(
        layoutOf({ base: [inch(width), inch(height)], parts: [part('top', { inset: inch('1/8') })] }),
      );
    expect(inward('3', '4')).toEqual([size('2 3/4', '3 3/4')]);
    expect(inward('2 1/2', '3 1/2')).toEqual([size('2 1/4', '3 1/4')]);
    // Hobby tutorials HT-10, outward, and HT-15: a layer 1/4 in larger shows 1/8 in round what lies on it.
    expect(inward('2 1/4', '3 1/4')).toEqual([size('2', '3')]);
    expect(inward('2 1/2', '3 1/2')).toEqual([size('2 1/4', '3 1/4')]);
    expect(inward('3 1/4', '1 1/4')).toEqual([size('3', '1')]);
  });

  test('a metric ladder', () => {
    // Hobby tutorial HT-16: 105 x 147 -> 100 x 142 (2.5 mm seen) -> 85 x 127 (10 mm seen, from the card).
    const layout = layoutOf({
      units: 'mm',
      base: [mm(105), mm(147)],
      parts: [part('mat', { inset: mm(2.5) }), part('panel', { inset: mm(10) })],
    });
    expect(seenSizes(layout)).toEqual([
      { width: mm(100), height: mm(142) },
      { width: mm(85), height: mm(127) },
    ]);
  });

  test('a window centred in its frame', () => {
    // Framing shop: frame 14 x 11, opening 9 3/4 x 7 3/4 leaves margins of 2 1/8 and 1 5/8.
    const layout = layoutOf({
      base: [inch('14'), inch('11')],
      parts: [part('window', { size: [inch('9 3/4'), inch('7 3/4')] })],
    });
    expect(borders(layout, 'window')).toEqual({
      left: inch('2 1/8'),
      right: inch('2 1/8'),
      top: inch('1 5/8'),
      bottom: inch('1 5/8'),
    });
  });

  test('the area a border shows', () => {
    // 2b(w + h) - 4b²; A2 with a 1/8 in border: 23.375 - 21 = 2.375 sq in.
    const layout = layoutOf({ base: a2, parts: [part('mat', { inset: inch('1/8') })] });
    const area = ({ width, height }: Size) => (width * height) / inch('1') ** 2;
    expect(area(layout.base.size) - area(seenSizes(layout)[0]!)).toBe(2.375);
  });
});

describe('worked sets', () => {
  test('ten birthday cards: 1/8 + 3 + 1/4 + 1 3/4 + 1/8 = 5 1/4', () => {
    const layout = layoutOf({
      base: a2,
      parts: [
        part('mat', { inset: inch('1/8') }),
        part('bees', {
          on: 'mat',
          size: [inch('3 3/4'), inch('3')],
          place: { top: inch('1/8') },
        }),
        part('dots', {
          on: 'mat',
          size: [null, null],
          place: {
            left: inch('1/8'),
            right: inch('1/8'),
            top: awayFrom('bees', inch('1/4')),
            bottom: inch('1/8'),
          },
        }),
      ],
    });
    const { problems, parts } = arrange(layout);
    expect(problems).toEqual([]);
    expect(parts.map(({ cut }) => cut)).toEqual([
      size('4', '5 1/4'),
      size('3 3/4', '3'),
      size('3 3/4', '1 3/4'),
    ]);
    expect(parts[2]!.pieces[0]!.box).toEqual({
      left: inch('1/4'),
      top: inch('3 1/2'),
      ...size('3 3/4', '1 3/4'),
    });
  });

  test('thank-you cards with torn edges: 3 + 64 + 5 + 30 + 3 = 105', () => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(148), mm(105)],
      fold: 'top',
      parts: [
        part('leaf', { size: [mm(142), mm(72)], torn: { bottom: mm(8) }, place: { top: mm(3) } }),
        part('stripe', {
          size: [mm(142), mm(38)],
          torn: { top: mm(8) },
          place: { top: awayFrom('leaf', mm(5)), bottom: mm(3) },
          lies: 'sideways',
        }),
      ],
    });
    const { problems, parts } = arrange(layout);
    expect(problems).toEqual([]);
    expect(parts.map(({ cut, seen }) => [cut!.height, seen!.height])).toEqual([
      [mm(72), mm(64)],
      [mm(38), mm(30)],
    ]);
    expect(parts[1]!.pieces[0]!.box!.top).toBe(mm(72));
  });

  test('square cards with a ribbon: 3 + 88 + 3 + 32 + 3 = 129', () => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(135), mm(135)],
      parts: [
        part('mat', { inset: mm(3) }),
        part('upper', {
          on: 'mat',
          size: [null, mm(88)],
          place: { left: mm(3), right: mm(3), top: mm(3) },
        }),
        part('lower', {
          on: 'mat',
          size: [null, null],
          place: { left: mm(3), right: mm(3), top: awayFrom('upper', mm(3)), bottom: mm(3) },
        }),
      ],
    });
    expect(seenSizes(layout)).toEqual([
      { width: mm(129), height: mm(129) },
      { width: mm(123), height: mm(88) },
      { width: mm(123), height: mm(32) },
    ]);
  });

  test('sympathy cards: a 140 x 95 mat on half an A4 sheet shows 4 and 5 mm', () => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(148), mm(105)],
      fold: 'top',
      parts: [part('mat', { size: [mm(140), mm(95)] })],
    });
    expect(borders(layout, 'mat')).toEqual({ left: mm(4), right: mm(4), top: mm(5), bottom: mm(5) });
  });
});

describe('rules', () => {
  test('an odd tick of a centred part goes to the right and the bottom', () => {
    const layout = layoutOf({
      base: a2,
      parts: [part('odd', { size: [(inch('4') - 1) as Length, (inch('5') - 1) as Length] })],
    });
    const { left, right, top, bottom } = borders(layout, 'odd')!;
    expect([right - left, bottom - top]).toEqual([1, 1]);
  });

  test('an inset part is cut larger by what is torn off it', () => {
    const layout = layoutOf({
      base: a2,
      parts: [part('mat', { inset: inch('1/8'), torn: { right: inch('1/2'), top: inch('1/4') } })],
    });
    const [mat] = arrange(layout).parts;
    expect(mat).toMatchObject({ cut: size('4 1/2', '5 1/2'), seen: size('4', '5 1/4') });
    expect(mat!.pieces[0]!.borders).toEqual(evenly('1/8'));
  });

  test('a circle is inset on a circle all round', () => {
    const layout = layoutOf({
      base: a2,
      parts: [
        part('moon', { diameter: inch('3') }),
        part('ring', { on: 'moon', shape: 'circle', inset: inch('1/8') }),
      ],
    });
    expect(arrange(layout).parts[1]).toMatchObject({
      cut: size('2 3/4', '2 3/4'),
      seen: size('2 3/4', '2 3/4'),
    });
    expect(borders(layout, 'ring')).toEqual(evenly('1/8'));
  });

  test('a part that fills is cut larger by what is torn off it', () => {
    const layout = layoutOf({
      base: a2,
      parts: [
        part('strip', { size: [null, inch('1')], torn: { left: inch('1/4') }, place: { right: inch('1') } }),
      ],
    });
    expect(arrange(layout).parts[0]).toMatchObject({ cut: size('3 1/2', '1'), seen: size('3 1/4', '1') });
  });

  test('a negative distance hangs over', () => {
    const layout = layoutOf({
      base: a2,
      parts: [part('tag', { size: [inch('1'), inch('2')], place: { right: inch('-1/4'), top: zero } })],
    });
    expect(borders(layout, 'tag')).toMatchObject({ right: inch('-1/4'), left: inch('3 1/2'), top: zero });
  });

  test('each piece of a part lies on the piece of its number', () => {
    const across = ['1/8', '2 1/4'].map((left) => ({ left: inch(left), top: inch('1/2') }));
    const layout = layoutOf({
      base: a2,
      parts: [
        part('mats', { size: [inch('1 1/2'), inch('1 1/2')], place: across }),
        part('squares', { on: 'mats', inset: inch('1/8'), count: 2 }),
        part('dots', { on: 'squares', diameter: inch('1/4'), count: 4 }),
      ],
    });
    const [, squares, dots] = arrange(layout).parts;
    expect(squares!.pieces.map(({ box }) => box!.left)).toEqual([inch('1/4'), inch('2 3/8')]);
    expect(dots!.pieces.map(({ onPiece }) => onPiece)).toEqual([0, 1, 0, 1]);
  });

  test('a neighbour of another count is passed on its outermost edge, one of the same count piece by piece', () => {
    const steps = ['1', '2'].map((top, index) => ({ top: inch(top), left: inch(String(index * 2)) }));
    const layout = layoutOf({
      base: a2,
      parts: [
        part('steps', { size: [inch('1'), inch('1/2')], place: steps }),
        part('line', { size: [inch('4'), inch('1/4')], place: { top: awayFrom('steps', inch('1/8')) } }),
        part('caps', {
          size: [inch('1'), inch('1/4')],
          place: steps.map(({ left }) => ({ left, bottom: awayFrom('steps', inch('1/8')) })),
        }),
        part('roof', { size: [inch('4'), inch('1/4')], place: { bottom: awayFrom('caps', zero) } }),
      ],
    });
    const tops = arrange(layout).parts.map(({ pieces }) => pieces.map(({ box }) => box!.top));
    expect(tops).toEqual([
      [inch('1'), inch('2')],
      [inch('2 5/8')],
      [inch('5/8'), inch('1 5/8')],
      [inch('3/8')],
    ]);
  });

  test('a neighbour on another thing is passed where it lies on the card', () => {
    const layout = layoutOf({
      base: a2,
      parts: [
        part('mat', { inset: inch('1/8') }),
        part('panel', {
          on: 'mat',
          size: [inch('2'), inch('2')],
          place: { left: inch('1/8'), top: inch('1/8') },
        }),
        part('tag', {
          size: [null, inch('1')],
          place: { left: awayFrom('panel', inch('1/4')), right: inch('1/4') },
        }),
      ],
    });
    expect(arrange(layout).parts[2]!.pieces[0]!.box).toMatchObject({
      left: inch('2 1/2'),
      width: inch('1 1/2'),
    });
  });

  test('parts inside and on the back have a face of their own', () => {
    const layout = layoutOf({
      base: a2,
      parts: [
        part('verse', { on: 'inside', inset: inch('1/8') }),
        part('mark', { on: 'verse', size: [inch('1'), inch('1')] }),
        part('label', { on: 'back', size: [inch('1'), inch('1/2')], place: { bottom: inch('1/4') } }),
      ],
    });
    expect(arrange(layout).parts.map(({ face }) => face)).toEqual(['inside', 'inside', 'back']);
  });
});

describe('what cannot be worked out', () => {
  test('a sum that is off is named with its terms, and the part is laid by its start', () => {
    const layout = layoutOf({
      base: a2,
      parts: [
        part('mat', { inset: inch('1/8') }),
        part('bees', { on: 'mat', size: [inch('3 3/4'), inch('3')], place: { top: inch('1/8') } }),
        part('dots', {
          on: 'mat',
          size: [inch('3 3/4'), inch('2')],
          place: { top: awayFrom('bees', inch('1/4')), bottom: inch('1/8') },
        }),
      ],
    });
    const { problems, parts } = arrange(layout);
    expect(problems).toEqual([
      {
        code: 'sumOff',
        severity: 'error',
        where: 'parts[2].place',
        part: 'dots',
        numbers: {
          term1: inch('1/8'),
          term2: inch('3'),
          term3: inch('1/4'),
          term4: inch('2'),
          term5: inch('1/8'),
          room: inch('5 1/4'),
          difference: inch('1/4'),
        },
        names: { name: 'dots', on: 'mat', axis: 'height' },
      },
    ]);
    expect(parts[2]!.cut).toEqual(size('3 3/4', '2'));
    expect(parts[2]!.pieces[0]!.borders!.bottom).toBe(inch('-1/8'));
  });

  test('the chain is named from the other end too', () => {
    const layout = layoutOf({
      base: a2,
      parts: [
        part('low', { size: [inch('4'), inch('2')], place: { bottom: inch('1/4') } }),
        part('high', {
          size: [inch('4'), inch('3')],
          place: { top: inch('1/4'), bottom: awayFrom('low', inch('1/8')) },
        }),
      ],
    });
    expect(arrange(layout).problems[0]!.numbers).toEqual({
      term1: inch('1/4'),
      term2: inch('3'),
      term3: inch('1/8'),
      term4: inch('2'),
      term5: inch('1/4'),
      room: inch('5 1/2'),
      difference: inch('1/8'),
    });
  });

  test('a sum agrees within a tick for each length that was read, and no further', () => {
    const off = (ticks: number) =>
      arrange(
        layoutOf({
          base: [(inch('4 1/4') + ticks) as Length, inch('5 1/2')],
          parts: [
            part('mat', { size: [inch('4'), inch('5')], place: { left: inch('1/8'), right: inch('1/8') } }),
          ],
        }),
      ).problems.length;
    // Four lengths: the card, two borders and the mat.
    expect([-5, -4, 0, 4, 5].map(off)).toEqual([1, 0, 0, 0, 1]);
  });

  test.each([
    ['noRoom', part('a', { size: [null, inch('1')], place: { left: inch('4'), right: inch('1/4') } })],
    ['insetTooLarge', part('a', { inset: inch('2 1/8') })],
    [
      'tornAway',
      part('a', { size: [inch('1'), inch('1')], torn: { left: inch('1/2'), right: inch('1/2') } }),
    ],
    [
      'roomsDiffer',
      part('a', { size: [null, inch('1')], place: [{ left: inch('1') }, { left: inch('2') }] }),
    ],
  ])('%s leaves the part and what is laid by it unknown, and the rest stands', (code, broken) => {
    const layout = layoutOf({
      base: a2,
      parts: [
        broken,
        part('below', { size: [inch('1'), inch('1')], place: { left: awayFrom('a', zero) } }),
        part('upon', { on: 'a', inset: inch('1/8') }),
        part('apart', { size: [inch('1'), inch('1')] }),
      ],
    });
    const { problems, parts } = arrange(layout);
    expect(problems.map((problem) => [problem.code, problem.part])).toEqual([[code, 'a']]);
    expect(parts.map(({ cut }) => cut !== null)).toEqual([false, true, false, true]);
    expect(parts.map(({ pieces }) => pieces[0]!.box !== null)).toEqual([false, false, false, true]);
  });

  test('a neighbour on another face is named once', () => {
    const layout = layoutOf({
      base: a2,
      parts: [
        part('verse', { on: 'inside', inset: inch('1/8') }),
        part('tag', {
          size: [inch('1'), inch('1')],
          place: { left: awayFrom('verse', zero), top: awayFrom('verse', zero) },
        }),
      ],
    });
    const { problems, parts } = arrange(layout);
    expect(problems.map(({ code, names }) => [code, names])).toEqual([
      ['neighbourElsewhere', { name: 'tag', neighbour: 'verse', face: 'base', neighbourFace: 'inside' }],
    ]);
    expect(parts[1]).toMatchObject({ cut: size('1', '1'), pieces: [{ box: null }] });
  });
});

function size(width: string, height: string): Size {
  return { width: inch(width), height: inch(height) };
}

function evenly(border: string) {
  const all = inch(border);
  return { left: all, right: all, top: all, bottom: all };
}

function seenSizes(layout: Layout): (Size | null)[] {
  return arrange(layout).parts.map(({ seen }) => seen);
}

function borders(layout: Layout, id: string) {
  return arrange(layout).parts.find((arranged) => arranged.part.id === id)!.pieces[0]!.borders;
}
