import fc from 'fast-check';
import type { Layout, Part } from '../../layout/index.ts';
import { awayFrom, layoutOf, type PartSketch, part } from '../../layout/testing/build.ts';
import { type Length, lengthOfTicks, minus, sum, times } from '../../measure/index.ts';

/** A layout as people draw them, and the same turned about its diagonal. */
export interface Marked {
  readonly layout: Layout;
  readonly turned: Layout;
}

/**
 * Random layouts with every length on marks, of the kinds that are made by hand: mats with even borders, rows of
 * panels that fill them one way or the other with even gaps, torn ones among them, strips and circles that frame nothing.
 */
export function markedLayout(marks: Length): fc.Arbitrary<Marked> {
  const of = (least: number, most: number) =>
    fc.integer({ min: least, max: most }).map((count) => times(marks, count));
  return fc
    .record({
      base: fc.tuple(of(60, 80), of(70, 100)),
      mats: fc.array(of(1, 4), { minLength: 1, maxLength: 3 }),
      byInset: fc.boolean(),
      border: of(1, 5),
      gap: of(1, 6),
      shares: fc.array(fc.integer({ min: 2, max: 9 }), { minLength: 1, maxLength: 4 }),
      fills: fc.boolean(),
      torn: of(2, 8),
      strip: fc.record({ width: of(10, 36), height: of(6, 14), top: of(12, 30) }),
      circle: of(8, 20),
    })
    .map((draft) => ({ layout: drawnFrom(draft, marks, false), turned: drawnFrom(draft, marks, true) }));
}

interface Draft {
  readonly base: readonly [Length, Length];
  readonly mats: readonly Length[];
  readonly byInset: boolean;
  readonly border: Length;
  readonly gap: Length;
  readonly shares: readonly number[];
  readonly fills: boolean;
  readonly torn: Length;
  readonly strip: { readonly width: Length; readonly height: Length; readonly top: Length };
  readonly circle: Length;
}

function drawnFrom(draft: Draft, marks: Length, turned: boolean): Layout {
  const { base, mats, byInset, border, gap, shares, fills, torn, strip, circle } = draft;
  const parts: Part[] = [];
  const way = (across: Length | null, down: Length | null): readonly [Length | null, Length | null] =>
    turned ? [down, across] : [across, down];
  const add = (id: string, sketch: PartSketch) => parts.push(part(id, { papers: ['ivory'], ...sketch }));
  let [across, down] = base;
  for (const [index, inset] of mats.entries()) {
    across = minus(across, times(inset, 2));
    down = minus(down, times(inset, 2));
    const on = index === 0 ? 'base' : `mat${index - 1}`;
    add(`mat${index}`, { on, ...(byInset ? { inset } : { size: way(across, down) }) });
  }
  const on = `mat${mats.length - 1}`;

  // A row of panels down the mat, the last of which takes what is left; its upper edge is torn.
  const room = minus(minus(down, times(border, 2)), times(gap, shares.length - 1));
  const weight = shares.reduce((all, share) => all + share, 0);
  const heights = shares.map((share) => times(marks, Math.floor((room * share) / weight / marks)));
  const [start, end] = turned ? (['left', 'right'] as const) : (['top', 'bottom'] as const);
  for (const [index, height] of heights.entries()) {
    const isLast = index === heights.length - 1;
    const seen = isLast ? minus(room, sum(...heights.slice(0, -1))) : height;
    add(`panel${index}`, {
      on,
      size: way(minus(across, times(border, 2)), isLast && fills ? null : isLast ? sum(seen, torn) : seen),
      place: {
        [start]: index === 0 ? border : awayFrom(`panel${index - 1}`, gap),
        ...(isLast && (fills || index > 0) ? { [end]: border } : {}),
      },
      ...(isLast ? { torn: { [start]: torn } } : {}),
    });
  }

  add('strip', { on, size: way(strip.width, strip.height), place: { [start]: strip.top }, adhere: 'raised' });
  add('circle', { on: 'inside', diameter: circle, place: { [start]: lengthOfTicks(strip.top) } });
  return layoutOf({ base: turned ? [base[1], base[0]] : base, parts });
}
