import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type JsonObject, valueAt } from '../files/index.ts';
import type { Axis, Edge } from '../measure/index.ts';
import { editSentence } from '../words/index.ts';
import type { InHand } from './inHand.ts';
import { distanceAt, layingOf, layingsFor, pieceLaid } from './laying.ts';
import { edited, inHandOf, randomInHand } from './testing/handmade.ts';

/** A card with a mat, a panel on it and a tag that lies in some place. */
function card(place: JsonObject): InHand {
  return inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 4,
    base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
    papers: {},
    parts: [
      { id: 'mat', inset: '1/8', paper: null },
      { id: 'panel', on: 'mat', size: ['2', '3'], place: { left: '1/8', top: '1/8' }, paper: null },
      { id: 'tag', name: 'Tag', on: 'mat', size: ['1', '1'], place, paper: null },
    ],
  });
}

const tag = { part: 2, piece: 0 };
const placeOf = (inHand: InHand) => valueAt(inHand.file, ['parts', 2, 'place']);

describe('a piece that is laid another way', () => {
  it('stays where it is, and is measured from there', () => {
    const from = card({ left: '1/4', bottom: '1/2' });
    const lay = (axis: Axis, laying: Parameters<typeof pieceLaid>[3]) => {
      const edit = pieceLaid(from, tag, axis, laying)!;
      return { place: placeOf(edited(from, edit)), told: editSentence(edit.told) };
    };
    expect(lay('width', { how: 'end' })).toEqual({
      place: { right: '2 3/4', bottom: '1/2' },
      told: 'Tag laid from the right.',
    });
    expect(lay('height', { how: 'beyond', part: 'panel' })).toEqual({
      place: { left: '1/4', below: 'panel', gap: '5/8' },
      told: 'Tag laid below panel.',
    });
    expect(lay('width', { how: 'middle' }).place).toEqual({ bottom: '1/2' });
  });

  it('is not laid to several pieces while it is not known where one of them lies', () => {
    const stars = (places: readonly JsonObject[]) =>
      inHandOf({
        cardwright: 1,
        units: 'in',
        cards: 4,
        base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
        papers: {},
        parts: [
          { id: 'mat', inset: '1/8', paper: null },
          // No room is left for it: it is not known how large it is.
          { id: 'band', on: 'mat', inset: '3', paper: null },
          { id: 'star', on: 'mat', size: ['1', '1'], place: places, count: places.length, paper: null },
          { id: 'tag', on: 'mat', size: ['1', '1'], place: { left: '1/4' }, paper: null },
        ],
      });
    const beyond = { how: 'beyond', part: 'star' } as const;
    const last = { part: 3, piece: 0 };
    expect(pieceLaid(stars([{ left: '1/8' }, { left: '2' }]), last, 'width', beyond)).not.toBeNull();
    expect(pieceLaid(stars([{ left: '1/8' }, { rightOf: 'band' }]), last, 'width', beyond)).toBeNull();
  });

  it('of random layouts keeps its box, unless it is laid in the middle, where its borders are alike', () => {
    fc.assert(
      fc.property(
        randomInHand({ coarse: true, overFixed: false }),
        fc.nat(),
        fc.nat(),
        fc.boolean(),
        (inHand, one, other, isAcross) => {
          const { parts } = inHand.arrangement;
          if (parts.length === 0) return;
          const part = one % parts.length;
          const at = { part, piece: 0 };
          const axis: Axis = isAcross ? 'width' : 'height';
          const ways = layingsFor(inHand, at, axis);
          const way = ways[other % ways.length]!;
          const { box, borders } = parts[part]!.pieces[0]!;
          const edit = pieceLaid(inHand, at, axis, way);
          if (edit === null || box === null || borders === null || way.how === 'between') return;
          // A place that a whole list shares is the first piece's; sizes that fill depend on both ends.
          const { extent } = parts[part]!.part;
          if (extent.by === 'size' && extent[axis] === null) return;
          const now = edited(inHand, edit);
          const laid = now.arrangement.parts[part]!.pieces[0]!;
          expect(layingOf(now, at, axis)).toEqual(way);
          const [first, last]: readonly [Edge, Edge] =
            axis === 'width' ? ['left', 'right'] : ['top', 'bottom'];
          if (way.how === 'middle') {
            expect(Math.abs(laid.borders![first] - laid.borders![last])).toBeLessThanOrEqual(1);
          } else expect(laid.box).toEqual(box);
          for (const edge of [first, last]) {
            const distance = distanceAt(now, at, edge);
            if (distance === null || way.how === 'beyond' || way.how === 'before') continue;
            expect(distance.length).toBe(laid.borders![edge]);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('a distance of a place', () => {
  it('is set as it is typed, and a gap for its own axis alone', () => {
    const from = card({ rightOf: 'panel', below: 'panel', gap: '1/8' });
    const across = distanceAt(from, tag, 'left')!;
    expect(across.typed).toBe('1/8');
    const wider = edited(from, across.editOf('1/4 in'));
    expect(placeOf(wider)).toEqual({ rightOf: 'panel', below: 'panel', gap: ['1/4 in', '1/8'] });
    const down = distanceAt(wider, tag, 'top')!;
    expect(placeOf(edited(wider, down.editOf('3/8 in')))).toEqual({
      rightOf: 'panel',
      below: 'panel',
      gap: ['1/4 in', '3/8 in'],
    });
    expect(distanceAt(from, tag, 'right')).toBeNull();
    const edge = distanceAt(card({ left: '1/4' }), tag, 'left')!;
    expect(placeOf(edited(card({ left: '1/4' }), edge.editOf('3/8')))).toEqual({ left: '3/8' });
  });
});
