import { describe, expect, test } from 'vitest';
import { arrange } from './arrange.ts';
import type { Layout } from './layout.ts';
import { sumsOf } from './sums.ts';
import { awayFrom, inch, layoutOf, mm, part } from './testing/build.ts';

describe('sums', () => {
  test('ten birthday cards, both ways, with the sentiment over the gap in sums of its own', () => {
    const layout = layoutOf({
      base: [inch('4 1/4'), inch('5 1/2')],
      parts: [
        part('mat', { inset: inch('1/8') }),
        part('bees', { on: 'mat', size: [inch('3 3/4'), inch('3')], place: { top: inch('1/8') } }),
        part('dots', {
          on: 'mat',
          size: [inch('3 3/4'), inch('1 3/4')],
          place: { top: awayFrom('bees', inch('1/4')), bottom: inch('1/8') },
        }),
        part('plate', {
          on: 'mat',
          size: [inch('3 1/4'), inch('1')],
          place: { top: inch('2 3/4') },
          adhere: 'raised',
        }),
      ],
    });
    expect(shown(layout, inch('1/8'))).toEqual([
      'base width: 1 + [mat 32] + 1 = 34',
      'base height: 1 + [mat 42] + 1 = 44',
      'mat width: 1 + [bees 30] + 1 = 32',
      'mat width: 3 + [plate 26] + 3 = 32',
      'mat width: 1 + [dots 30] + 1 = 32',
      'mat height: 1 + [bees 24] + 2 + [dots 14] + 1 = 42',
      'mat height: 22 + [plate 8] + 12 = 42',
    ]);
  });

  test('thank-you cards: 3 + 64 + 5 + 30 + 3 = 105', () => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(148), mm(105)],
      parts: [
        part('leaf', { size: [mm(142), mm(72)], torn: { bottom: mm(8) }, place: { top: mm(3) } }),
        part('stripe', { size: [mm(142), mm(38)], torn: { top: mm(8) }, place: { bottom: mm(3) } }),
      ],
    });
    expect(shown(layout, mm(1))).toEqual([
      'base width: 3 + [leaf 142] + 3 = 148',
      'base width: 3 + [stripe 142] + 3 = 148',
      'base height: 3 + [leaf 64] + 5 + [stripe 30] + 3 = 105',
    ]);
  });

  test('square cards: 3 + 88 + 3 + 32 + 3 = 129', () => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(129), mm(129)],
      parts: [
        part('upper', { size: [mm(123), mm(88)], place: { top: mm(3) } }),
        part('lower', { size: [mm(123), mm(32)], place: { top: awayFrom('upper', mm(3)) } }),
      ],
    });
    expect(shown(layout, mm(1))).toContain('base height: 3 + [upper 88] + 3 + [lower 32] + 3 = 129');
  });

  test('a row of squares is one sum across, and pieces of mats keep sums of their own', () => {
    const row = [5, 40, 75].map((left) => ({ left: mm(left) }));
    const layout = layoutOf({
      units: 'mm',
      base: [mm(110), mm(150)],
      parts: [
        part('mats', { size: [mm(30), mm(30)], place: row }),
        part('squares', { on: 'mats', inset: mm(2), count: 3 }),
      ],
    });
    expect(shown(layout, mm(1)).filter((sum) => sum.includes('width'))).toEqual([
      'base width: 5 + [mats 30] + 5 + [mats 30] + 5 + [mats 30] + 5 = 110',
      'mats width: 2 + [squares 26] + 2 = 30',
      'mats width: 2 + [squares 26] + 2 = 30',
      'mats width: 2 + [squares 26] + 2 = 30',
    ]);
  });

  test('an overhang is a negative border', () => {
    const layout = layoutOf({
      units: 'mm',
      base: [mm(100), mm(100)],
      parts: [part('tag', { size: [mm(30), mm(100)], place: { right: mm(-5) } })],
    });
    expect(shown(layout, mm(1))[0]).toBe('base width: 75 + [tag 30] + -5 = 100');
  });
});

/** The sums in a short form, in multiples of `unit`. */
function shown(layout: Layout, unit: number): string[] {
  return sumsOf(arrange(layout)).map(({ on, axis, terms, total }) => {
    const words = terms.map((term) =>
      term.kind === 'size' ? `[${term.part} ${term.length / unit}]` : `${term.length / unit}`,
    );
    return `${on} ${axis}: ${words.join(' + ')} = ${total / unit}`;
  });
}
