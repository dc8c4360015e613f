import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type JsonObject, valueAt } from '../files/index.ts';
import { checkLayout } from '../layout/index.ts';
import { bottomOf, rightOf } from '../measure/index.ts';
import { partDuplicated } from './duplicate.ts';
import type { InHand } from './inHand.ts';
import { newPart, type PartKind } from './newPart.ts';
import { edited, inHandOf, randomInHand } from './testing/handmade.ts';

function card(parts: readonly JsonObject[], units = 'in'): InHand {
  const size = units === 'in' ? ['4 1/4', '5 1/2'] : ['105', '148'];
  return inHandOf({
    cardwright: 1,
    units,
    cards: 4,
    base: { size, fold: 'left', paper: null },
    papers: { moss: { sheets: [] } },
    parts: parts.map((part) => ({ paper: null, ...part })),
  });
}

const kinds: readonly PartKind[] = ['mat', 'panel', 'strip', 'circle', 'sentiment'];

describe('a new part', () => {
  const made = (before: InHand, kind: PartKind, on = 'base', name = 'New one') =>
    valueAt(edited(before, newPart(before, { name, on, paper: 'moss', kind })).file, [
      'parts',
      before.layout.parts.length,
    ]);

  it('has a round size, or follows the border that the layout uses most', () => {
    const mat = { id: 'mat', inset: '3/16' };
    expect(made(card([]), 'mat')).toEqual({
      id: 'new-one',
      name: 'New one',
      on: 'base',
      inset: '1/8',
      paper: 'moss',
    });
    expect(made(card([mat]), 'mat', 'mat')).toMatchObject({ inset: '3/16' });
    expect(made(card([], 'mm'), 'mat')).toMatchObject({ inset: '3' });
    expect(made(card([mat]), 'strip', 'mat')).toMatchObject({
      size: ['fill', '1'],
      place: { left: '3/16', right: '3/16' },
    });
    expect(made(card([]), 'panel')).toMatchObject({ size: ['2 3/4', '3 1/2'] });
    expect(made(card([]), 'circle')).toMatchObject({ shape: 'circle', diameter: '2' });
    expect(made(card([]), 'sentiment')).toMatchObject({ size: ['2 1/2', '3/4'], stamped: true });
    expect(made(card([], 'mm'), 'panel')).toMatchObject({ size: ['70', '95'] });
  });

  it('has an id of its own, made of its name', () => {
    expect(made(card([{ id: 'moon', inset: '1/8' }]), 'panel', 'base', 'Moon')).toMatchObject({
      id: 'moon-2',
    });
    expect(made(card([]), 'panel', 'base', 'Été à la mer!')).toMatchObject({ id: 'ete-a-la-mer' });
    expect(made(card([]), 'panel', 'base', 'Base')).toMatchObject({ id: 'base-2' });
    expect(made(card([]), 'panel', 'base', '花')).toMatchObject({ id: 'part' });
  });

  it('goes on whatever it lies on, in the middle of it, on random layouts', () => {
    let fitted = 0;
    fc.assert(
      fc.property(
        randomInHand({ coarse: false, overFixed: false }),
        fc.constantFrom(...kinds),
        fc.nat(),
        (before, kind, any) => {
          const beds = ['base', ...before.layout.parts.map(({ id }) => id)];
          const on = beds[any % beds.length]!;
          const after = edited(before, newPart(before, { name: 'N', on, paper: null, kind }));
          const { pieces, part } = after.arrangement.parts.at(-1)!;
          for (const { box, under, borders } of pieces) {
            if (under === null) continue;
            // Nothing is inset on two ticks, a thousandth of a millimetre: then the layout's checks say so.
            if (kind === 'mat' && Math.min(under.width, under.height) < 3) continue;
            expect(box, JSON.stringify(under)).not.toBeNull();
            expect(Math.min(...Object.values(borders!))).toBeGreaterThanOrEqual(0);
            expect(Math.abs(borders!.left - borders!.right)).toBeLessThanOrEqual(1);
            expect(Math.abs(borders!.top - borders!.bottom)).toBeLessThanOrEqual(1);
            const about = checkLayout(after.layout, after.arrangement).filter(
              ({ part: id }) => id === part.id,
            );
            expect(about.filter(({ code }) => code === 'overPartEdge' || code === 'largerThanPart')).toEqual(
              [],
            );
            fitted += 1;
          }
        },
      ),
      { numRuns: 200 },
    );
    expect(fitted).toBeGreaterThan(100);
  });
});

describe('a part that is doubled', () => {
  const doubled = (before: InHand, index = 0) =>
    valueAt(edited(before, partDuplicated(before, index)).file, ['parts', index + 1]);

  it('lies beside the first and is laid to it', () => {
    expect(
      doubled(card([{ id: 'tag', name: 'Tag', size: ['1', '1'], place: { left: '1/8', top: '1/4' } }])),
    ).toEqual({
      id: 'tag-2',
      name: 'Tag 2',
      size: ['1', '1'],
      place: { top: '1/4', rightOf: 'tag', gap: '1/8' },
      paper: null,
    });
    expect(doubled(card([{ id: 'tag', size: ['1', '1'], place: { right: '1/4' } }]))).toMatchObject({
      place: { leftOf: 'tag', gap: '1/4' },
    });
    expect(doubled(card([{ id: 'band', size: ['fill', '1'] }]))).toMatchObject({
      size: ['fill', '1'],
      place: { below: 'band', gap: '1/8' },
    });
  });

  it('lies on the first, a border further, where there is no room beside it', () => {
    expect(doubled(card([{ id: 'mat', inset: '1/8' }]))).toMatchObject({
      size: ['4', '5 1/4'],
      place: { left: '1/4', top: '1/4' },
    });
  });

  it('of several pieces is moved as they lie', () => {
    const place = [{ left: '1/8' }, { left: '1 1/4' }];
    const double = doubled(card([{ id: 'dots', size: ['1', '1'], count: 2, place }]));
    expect(double).toMatchObject({ count: 2 });
    expect(valueAt(double!, ['place', 0])).toMatchObject({ left: '1/8', top: '3 3/8' });
  });

  it('is as large and leaves the file sound, on random layouts', () => {
    fc.assert(
      fc.property(randomInHand({ coarse: false, overFixed: true }), fc.nat(), (before, any) => {
        if (before.layout.parts.length === 0) return;
        const index = any % before.layout.parts.length;
        const after = edited(before, partDuplicated(before, index));
        const [first, second] = after.arrangement.parts.slice(index, index + 2);
        expect(second!.seen).toEqual(first!.seen);
        const [one] = first!.pieces;
        const [other] = second!.pieces;
        if (one!.box === null || other!.box === null) return;
        expect([other!.box.left, other!.box.top]).not.toEqual([one!.box.left, one!.box.top]);
        const within = Math.min(...Object.values(other!.borders!)) >= 0;
        if (within && first!.pieces.length === 1)
          expect(rightOf(other!.box) + bottomOf(other!.box)).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
  });
});
