import { describe, expect, it } from 'vitest';
import { arrange, type FoldedShape, type Layout } from '../layout/index.ts';
import { inch, layoutOf, mm, paper, part } from '../layout/testing/build.ts';
import { type Length, ticksPerMillimetre } from '../measure/index.ts';
import { paperShown } from './paperShown.ts';
import { ribbonsMade } from './ribbons.ts';
import { sectionOf } from './section.ts';
import { weightOf } from './weight.ts';

const strip = { width: inch('7'), height: inch('1/2') };
const ribbon: FoldedShape = { kind: 'ribbon', template: inch('3'), slant: 20, strip };

const layout: Layout = layoutOf({
  base: [inch('5'), inch('5')],
  papers: [
    {
      ...paper('plum', [], 'any'),
      gsm: 100,
      thickness: mm(0.1),
      back: { name: 'Dots', up: 'any', colour: null },
    },
  ],
  parts: [part('ribbon', { size: [strip.width, strip.height], shape: ribbon, papers: ['plum'] })],
});

/** A plain band wrapped round the card or a mat. */
const banded = (tuck: Length, on = 'base') =>
  layoutOf({
    units: 'mm',
    base: [mm(135), mm(135)],
    papers: [{ ...paper('leaf', []), thickness: mm(0.3) }],
    parts: [
      part('mat', { size: [mm(129), mm(129)], papers: ['leaf'] }),
      part('band', {
        on,
        size: [mm((on === 'base' ? 135 : 129) + (2 * tuck) / ticksPerMillimetre), mm(20)],
        tuck: { left: tuck, right: tuck },
        papers: ['leaf'],
      }),
    ],
  });

describe('what is folded of a strip, on the finished card', () => {
  it('weighs what is cut, not what is seen', () => {
    const [, own] = weightOf(layout, arrange(layout), 0).items;
    // 7 by 1/2 in of 100 g/m2.
    expect(own).toMatchObject({ part: 'ribbon', estimated: false });
    expect(own!.grams).toBeCloseTo(7 * 0.5 * 0.0254 ** 2 * 100, 5);
  });

  it('is twice as thick where it lies over itself', () => {
    const { thickest } = sectionOf(layout, arrange(layout), 0);
    expect(thickest.layers.slice(-2)).toMatchObject([
      { what: 'part', part: 'ribbon', thickness: mm(0.1) },
      { what: 'fold', part: 'ribbon', thickness: mm(0.1) },
    ]);
  });

  it('shows both sides of its paper: the middle whole, of the tails what it leaves', () => {
    const shown = new Map(
      paperShown(layout, arrange(layout)).map(({ paper: id, side, open }) => [`${id} ${side}`, open]),
    );
    const square = inch('1') ** 2;
    const [middle, overlap] = [(3 / Math.cos(Math.PI / 9)) * 0.5, 0.5 ** 2 / 2 / Math.sin(Math.PI / 9)];
    expect(shown.get('plum front')! / square).toBeCloseTo(middle, 3);
    // Two tails, less the triangle that the middle hides of each: half the rhombus of two strips that cross.
    expect(shown.get('plum back')! / square).toBeCloseTo(3.5 - middle - 2 * overlap, 3);
  });
});

describe('bands', () => {
  it('lie over themselves behind, or lack something', () => {
    const thick = mm(1.5);
    const made = (tuck: Length, on?: string) =>
      ribbonsMade(banded(tuck, on), arrange(banded(tuck, on)), thick);
    // 2 x (135 + 1.5) + 10 = 283: 135 in front, 74 behind at either end.
    expect(made(mm(74))).toEqual([
      {
        kind: 'band',
        part: 'band',
        on: 'base',
        axis: 'width',
        behind: [mm(74), mm(74)],
        across: mm(135),
        thickness: thick,
        overlap: mm(10),
      },
    ]);
    // Round a mat of 0.3 mm, 15 mm at either end: 129 + 0.6 - 30 are missing.
    expect(made(mm(15), 'mat')).toMatchObject([{ on: 'mat', overlap: mm(-99.6) }]);
  });
});
