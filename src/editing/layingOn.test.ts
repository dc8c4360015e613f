import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type JsonObject, valueAt } from '../files/index.ts';
import { editSentence } from '../words/index.ts';
import type { InHand } from './inHand.ts';
import { partLaidOn } from './layingOn.ts';
import { edited, inHandOf, randomInHand } from './testing/handmade.ts';

function card(parts: readonly JsonObject[], fold = 'left'): InHand {
  return inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 4,
    base: { size: ['4 1/4', '5 1/2'], fold, paper: null },
    papers: {},
    parts: parts.map((part) => ({ paper: null, ...part })),
  });
}

const mat = { id: 'mat', size: ['4', '5'], place: { left: '1/8', top: '1/8' } };
const tag = { id: 'tag', size: ['1', '1'] };

function laid(before: InHand, index: number, on: string): JsonObject {
  const result = partLaidOn(before, index, on);
  if ('refused' in result) throw new Error(result.refused);
  return valueAt(edited(before, result.edit).file, ['parts', index]) as JsonObject;
}

describe('a part that is laid on another', () => {
  it('stays where it is seen: its distances are those from there', () => {
    const at = (place: JsonObject) => laid(card([mat, { ...tag, place }]), 1, 'mat');
    expect(at({ left: '1/2', top: '1/4' })).toMatchObject({ on: 'mat', place: { left: '3/8', top: '1/8' } });
    expect(at({ right: '1/2' }).place).toEqual({ right: '3/8', top: '2 1/8' });
    expect(at({ left: '1 5/8', top: '2 1/8' }).place).toEqual({ left: '1 1/2', top: '2' });
    const strip = { id: 'strip', size: ['fill', '1'], place: { top: '1/8' } };
    expect(laid(card([mat, strip]), 1, 'mat').place).toEqual({ left: '-1/8', right: '-1/8', top: '0' });
  });

  it('keeps its neighbours on the same face and gives them up on another', () => {
    const before = card([
      mat,
      { ...tag, place: { rightOf: 'mat', gap: '-2', top: '1/4' }, room: { gap: ['-2', '0'] } },
    ]);
    expect(laid(before, 1, 'mat').place).toEqual({ rightOf: 'mat', gap: '-2', top: '1/8' });
    const inside = laid(before, 1, 'inside');
    expect(inside).toMatchObject({ on: 'inside', place: { left: '2 1/8', top: '1/4' } });
    expect(inside).not.toHaveProperty('room');
  });

  it('takes what lies on it along, and frees what was laid to it', () => {
    const before = card([
      tag,
      { id: 'dot', on: 'tag', size: ['1/4', '1/4'], place: { left: '1/8' } },
      { id: 'side', size: ['1/2', '1/2'], place: { rightOf: 'dot', gap: '1/2', top: '0' } },
    ]);
    const result = partLaidOn(before, 0, 'back');
    if ('refused' in result) throw new Error(result.refused);
    const after = edited(before, result.edit);
    expect(after.arrangement.parts.map(({ face }) => face)).toEqual(['back', 'back', 'base']);
    expect(valueAt(after.file, ['parts', 2, 'place'])).toEqual({ left: '2 1/2', top: '0' });
    expect(editSentence(result.edit.told)).toBe('Tag: lies on the back instead of the front.');
  });

  it('is inset there instead, if that leaves something of it', () => {
    const inset = { id: 'inner', inset: '1/8' };
    expect(laid(card([mat, inset]), 1, 'mat')).toMatchObject({ on: 'mat', inset: '1/8' });
    expect(partLaidOn(card([tag, { id: 'inner', inset: '1/2' }]), 1, 'tag')).toEqual({
      refused: 'too small',
    });
    const moon = { id: 'moon', shape: 'circle', diameter: '2' };
    const ring = { id: 'ring', on: 'moon', shape: 'circle', inset: '1/8', room: { inset: ['1/8', '1/4'] } };
    const freed = laid(card([mat, moon, ring]), 2, 'mat');
    expect(freed).toMatchObject({ on: 'mat', diameter: '1 3/4' });
    expect(freed).not.toHaveProperty('inset');
  });

  it('is refused where it cannot lie', () => {
    const before = card([tag, mat], 'none');
    const refused = (index: number, on: string) => {
      const result = partLaidOn(before, index, on);
      return 'refused' in result ? result.refused : null;
    };
    expect(refused(0, 'mat')).toBe('later');
    expect(refused(0, 'tag')).toBe('itself');
    expect(refused(0, 'base')).toBe('already');
    expect(refused(0, 'nothing')).toBe('unknown');
    expect(refused(0, 'inside')).toBe('no inside');
    expect(refused(0, 'back')).toBeNull();
    // Its neighbour has no size, so where it lies across is not known; another is laid to it down.
    const lost = card([
      tag,
      { id: 'none', on: 'tag', inset: '1/2' },
      { id: 'half', on: 'tag', size: ['1/2', '1/2'], place: { rightOf: 'none', top: '0' } },
      { id: 'other', on: 'tag', size: ['1/4', '1/4'], place: { above: 'half' } },
    ]);
    expect(partLaidOn(lost, 2, 'base')).toEqual({ refused: 'unknown' });
  });

  it('is seen where it was, with all that lies on it, on random layouts', () => {
    let laidSo = 0;
    fc.assert(
      fc.property(
        randomInHand({ coarse: false, overFixed: true }),
        fc.nat(),
        fc.nat(),
        (before, any, other) => {
          const { parts } = before.layout;
          if (parts.length === 0) return;
          const index = any % parts.length;
          const beds = ['base', 'inside', 'back', ...parts.map(({ id }) => id)];
          const result = partLaidOn(before, index, beds[other % beds.length]!);
          if ('refused' in result) return;
          const after = edited(before, result.edit);
          if (parts[index]!.extent.by === 'inset') return;
          const boxes = ({ arrangement }: InHand) =>
            arrangement.parts.flatMap(({ pieces }) => pieces.map(({ box }) => box));
          const now = boxes(after);
          for (const [at, box] of boxes(before).entries()) if (box !== null) expect(now[at]).toEqual(box);
          laidSo += 1;
        },
      ),
      { numRuns: 500 },
    );
    expect(laidSo).toBeGreaterThan(40);
  });
});
