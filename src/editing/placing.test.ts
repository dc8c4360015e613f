import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Json, type JsonObject, valueAt } from '../files/index.ts';
import { inches, type Length, lengthOfTicks, zero } from '../measure/index.ts';
import { editSentence } from '../words/index.ts';
import type { InHand } from './inHand.ts';
import { pieceMoved, pieceNudged } from './placing.ts';
import { edited, inHandOf, randomInHand } from './testing/handmade.ts';

const sixteenth = inches(1, 16);
const eighth = inches(1, 8);

/** A card with a mat and these parts on it. */
function card(...parts: readonly JsonObject[]): InHand {
  return inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 4,
    base: { size: ['4 1/4', '5 1/2'], fold: 'left', paper: null },
    papers: {},
    parts: [
      { id: 'mat', inset: '1/8', paper: null },
      ...parts.map((part) => ({ on: 'mat', paper: null, ...part })),
    ],
  });
}

const panel = { id: 'panel', size: ['2', '3'] };

/** The place that the last part has after a move of its first piece. */
function placeAfter(before: InHand, across: Length, down: Length, piece = 0): Json | undefined {
  const part = before.layout.parts.length - 1;
  const { edit } = pieceMoved(before, { part, piece }, { across, down });
  return edit === null ? undefined : valueAt(edited(before, edit).file, ['parts', part, 'place']);
}

describe('a piece that is moved', () => {
  it('keeps what it is laid to: edges, neighbours, the middle', () => {
    const place = (typed: JsonObject) => card(panel, { id: 'tag', size: ['1', '1'], place: typed });
    expect(placeAfter(place({ left: '1/4', bottom: '1/2 in' }), eighth, eighth)).toEqual({
      left: '3/8',
      bottom: '3/8 in',
    });
    expect(placeAfter(place({ right: '1/8' }), eighth, zero)).toEqual({ right: '0' });
    expect(placeAfter(place({ right: '1/16' }), eighth, zero)).toEqual({ right: '-1/16' });
    expect(placeAfter(place({ below: 'panel', gap: '1/8' }), zero, eighth)).toEqual({
      below: 'panel',
      gap: '1/4',
    });
    expect(placeAfter(place({ above: 'panel' }), zero, lengthOfTicks(-eighth))).toEqual({
      above: 'panel',
      gap: '1/8',
    });
    expect(placeAfter(place({ left: '1/4', right: '2 3/4' }), eighth, zero)).toEqual({
      left: '3/8',
      right: '2 5/8',
    });
    expect(placeAfter(place({}), zero, eighth)).toEqual({ top: '2 1/4' });
    expect(placeAfter(place({ left: '1 3/8' }), eighth, zero)).toBeUndefined();
    expect(placeAfter(place({ right: '1 3/8' }), lengthOfTicks(-eighth), zero)).toEqual({ right: '1 1/2' });
  });

  it('has two gaps only where they differ', () => {
    const corner = (gap: Json) =>
      card(panel, { id: 'tag', size: ['1/2', '1/2'], place: { rightOf: 'panel', below: 'panel', gap } });
    expect(placeAfter(corner('1/8'), eighth, zero)).toMatchObject({ gap: ['1/4', '1/8'] });
    expect(placeAfter(corner('1/8'), eighth, eighth)).toMatchObject({ gap: '1/4' });
    expect(placeAfter(corner(['1/8', '1/4']), eighth, zero)).toMatchObject({ gap: ['1/4', '1/4'] });
  });

  it('between two neighbours stays laid to the first of them', () => {
    const before = card(
      { id: 'one', size: ['1', '1'], place: { left: '0' } },
      { id: 'two', size: ['1', '1'], place: { right: '0' } },
      { id: 'tag', size: ['1 1/2', '1'], place: { rightOf: 'one', leftOf: 'two', gap: '1/4' } },
    );
    expect(placeAfter(before, eighth, zero)).toEqual({ rightOf: 'one', gap: '3/8' });
  });

  it('moves alone where it has a place of its own or lies on its like, else with the others', () => {
    const listed = card({ ...panel, size: ['1', '1'], count: 2, place: [{ left: '1/4' }, { right: '1/4' }] });
    expect(placeAfter(listed, eighth, zero, 1)).toEqual([{ left: '1/4' }, { right: '1/8' }]);
    const stacked = card({ ...panel, count: 2, place: { left: '1/4' } });
    expect(placeAfter(stacked, eighth, zero, 1)).toEqual([{ left: '1/4' }, { left: '3/8' }]);
    const apart = card(
      { id: 'mats', size: ['1', '1'], count: 2, place: [{ left: '1/4' }, { right: '1/4' }] },
      { id: 'dots', on: 'mats', size: ['1/2', '1/2'], count: 2, place: { left: '1/8' } },
    );
    expect(placeAfter(apart, sixteenth, zero, 1)).toEqual({ left: '3/16' });
  });

  it('takes one along of which it is not known where it lies', () => {
    const beds = (place: JsonObject) =>
      card(
        // No room is left for it: it is not known how large it is.
        { id: 'band', inset: '3' },
        { id: 'beds', size: ['1', '1'], count: 2, place: [{ left: '1/4' }, { rightOf: 'band' }] },
        { id: 'dots', on: 'beds', size: ['1/2', '1/2'], count: 2, place },
      );
    const laid = beds({ left: '1/8' });
    expect(laid.arrangement.parts[3]!.pieces.map(({ box }) => box === null)).toEqual([false, true]);
    // One place for all stays one; of what nothing fixes it is not known from where it would move.
    expect(placeAfter(laid, sixteenth, zero)).toEqual({ left: '3/16' });
    expect(placeAfter(beds({ right: '1/8' }), sixteenth, zero)).toEqual({ right: '1/16' });
    expect(placeAfter(beds({}), sixteenth, zero)).toEqual([{ left: '5/16' }, {}]);
  });

  it('stays where it fills the room or is inset, and says so', () => {
    const filling = card({ id: 'strip', size: ['fill', '1'], place: { left: '1/8', right: '1/8' } });
    const { edit, stays } = pieceMoved(filling, { part: 1, piece: 0 }, { across: eighth, down: eighth });
    expect(stays).toEqual([{ axis: 'width', why: 'fills' }]);
    expect(edit && editSentence(edit.told)).toBe('Strip moved 1/8 in down.');
    expect(pieceMoved(filling, { part: 0, piece: 0 }, { across: eighth, down: zero })).toEqual({
      edit: null,
      stays: [{ axis: 'width', why: 'inset' }],
    });
  });

  it('moves by just that and keeps its size, on random layouts', () => {
    let moves = 0;
    fc.assert(
      fc.property(
        fc.boolean().chain((coarse) => randomInHand({ coarse, overFixed: true })),
        fc.nat(),
        fc.nat(),
        fc.integer({ min: -30_000, max: 30_000 }),
        fc.integer({ min: -30_000, max: 30_000 }),
        (before, anyPart, anyPiece, across, down) => {
          if (before.layout.parts.length === 0) return;
          const part = anyPart % before.layout.parts.length;
          const piece = anyPiece % before.layout.parts[part]!.places.length;
          const by = { across: lengthOfTicks(across), down: lengthOfTicks(down) };
          const { edit, stays } = pieceMoved(before, { part, piece }, by);
          const { box } = before.arrangement.parts[part]!.pieces[piece]!;
          const stopped = (axis: string) => stays.some((stay) => stay.axis === axis);
          if (edit === null) {
            expect((across === 0 || stopped('width')) && (down === 0 || stopped('height'))).toBe(true);
            return;
          }
          const after = edited(before, edit).arrangement.parts[part]!.pieces[piece]!.box;
          expect(after).toEqual({
            left: box!.left + (stopped('width') ? 0 : across),
            top: box!.top + (stopped('height') ? 0 : down),
            width: box!.width,
            height: box!.height,
          });
          moves += 1;
        },
      ),
      { numRuns: 400 },
    );
    expect(moves).toBeGreaterThan(100);
  });
});

describe('a piece that is nudged', () => {
  it('comes to the next mark of what its place is measured by', () => {
    const nudged = (typed: JsonObject, towards: 'left' | 'right' | 'top' | 'bottom', marks = sixteenth) => {
      const before = card(panel, { id: 'tag', size: ['1', '1'], place: typed });
      const { edit } = pieceNudged(before, { part: 2, piece: 0 }, towards, marks);
      return valueAt(edited(before, edit!).file, ['parts', 2, 'place']);
    };
    expect(nudged({ left: '1/4' }, 'right')).toEqual({ left: '5/16' });
    expect(nudged({ left: '0.3' }, 'right')).toEqual({ left: '5/16' });
    expect(nudged({ left: '0.3' }, 'left')).toEqual({ left: '1/4' });
    expect(nudged({ right: '1/4' }, 'right')).toEqual({ right: '3/16' });
    expect(nudged({ right: '0.3' }, 'left')).toEqual({ right: '5/16' });
    expect(nudged({ below: 'panel', gap: '1/8' }, 'top')).toEqual({ below: 'panel', gap: '1/16' });
    expect(nudged({}, 'bottom')).toEqual({ top: '2 3/16' });
    expect(nudged({ left: '1/4' }, 'right', inches(1, 8))).toEqual({ left: '3/8' });
  });

  it('is told as one where it is nudged again and again', () => {
    const before = card(panel);
    const { edit } = pieceNudged(before, { part: 1, piece: 0 }, 'left', sixteenth);
    expect(editSentence(edit!.told)).toBe('Panel moved 1/16 in to the left.');
  });
});
