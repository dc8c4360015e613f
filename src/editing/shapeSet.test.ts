import { describe, expect, it } from 'vitest';
import { isObject, type JsonObject, valueAt } from '../files/index.ts';
import { editSentence } from '../words/index.ts';
import { outlineSet, type PlainShape, shapeSet } from './shapeSet.ts';
import { edited, inHandOf } from './testing/handmade.ts';

/* A part of one shape made another: what comes out is worked out by hand, and every edit is undone to the byte. */

const set = (part: JsonObject, more: readonly JsonObject[] = []) =>
  inHandOf({
    cardwright: 1,
    units: 'in',
    cards: 4,
    base: { size: ['5 in', '4 in'], fold: 'left', paper: 'sand' },
    papers: { sand: { sheets: [{ size: ['12 in', '12 in'], count: null }] } },
    parts: [{ id: 'one', paper: 'sand', ...part }, ...more],
  });

/** The fields of the part after the edit but for its id and paper. */
function shaped(part: JsonObject, kind: PlainShape) {
  const inHand = set(part);
  return fieldsOf(edited(inHand, shapeSet(inHand, 0, kind, inHand)));
}

function fieldsOf({ file }: ReturnType<typeof set>): JsonObject {
  const part = valueAt(file, ['parts', 0]);
  if (!isObject(part)) throw new Error('The part is there');
  const { id: _id, paper: _paper, ...rest } = part;
  return rest;
}

describe('a part is given another shape', () => {
  it('with what is usual of it', () => {
    expect(shaped({ size: ['3 in', '2 in'] }, 'rounded')).toEqual({
      size: ['3 in', '2 in'],
      shape: 'rounded',
      corner: '1/4 in',
    });
    expect(shaped({ size: ['3 in', '1/4 in'] }, 'rounded')).toMatchObject({ corner: '1/8 in' });
    expect(shaped({ size: ['3 in', '1 in'] }, 'banner')).toMatchObject({ ends: { right: 'notched' } });
    expect(shaped({ size: ['1 in', '3 in'] }, 'banner')).toMatchObject({ ends: { bottom: 'notched' } });
    expect(shaped({ inset: '1/4 in' }, 'oval')).toEqual({ inset: '1/4 in', shape: 'oval' });
  });

  it('without what only the one before has', () => {
    const torn = { size: ['3 in', '2 in'], torn: { left: '1/4 in' }, tear: { core: '1/16 in' } };
    expect(shaped({ ...torn, tuck: { top: '1/2 in' } }, 'oval')).toEqual({
      size: ['3 in', '2 in'],
      shape: 'oval',
    });
    const banner = { size: ['3 in', '1 in'], shape: 'banner', ends: { left: 'pointed' }, endDepth: '1/4 in' };
    expect(shaped(banner, 'rectangle')).toEqual({ size: ['3 in', '1 in'], shape: 'rectangle' });
  });

  it('a circle by its shorter side and one distance of each two, and back from one', () => {
    const strip = {
      size: ['fill', '1 in'],
      place: { left: '1/4 in', right: '1/8 in', top: '1 in' },
      room: { width: ['3 in', '5 in'], right: ['0 in', '1/4 in'], left: ['0 in', '1/2 in'] },
    };
    expect(shaped(strip, 'circle')).toEqual({
      place: { left: '1/4 in', top: '1 in' },
      diameter: '1 in',
      shape: 'circle',
      room: { left: ['0 in', '1/2 in'] },
    });
    expect(shaped({ shape: 'circle', diameter: '2 in' }, 'rounded')).toEqual({
      size: ['2 in', '2 in'],
      shape: 'rounded',
      corner: '1/4 in',
    });
  });

  it('and is what it was where one shape after another is tried', () => {
    const first = set({ size: ['3 in', '2 in'], torn: { left: '1/4 in' } });
    const second = edited(first, shapeSet(first, 0, 'circle', first));
    const third = edited(second, shapeSet(second, 0, 'rectangle', first));
    expect(fieldsOf(third)).toEqual({ ...fieldsOf(first), shape: 'rectangle' });
  });

  it('and the edit is told as the new shape', () => {
    const inHand = set({ size: ['3 in', '2 in'], name: 'Tag' });
    expect(editSentence(shapeSet(inHand, 0, 'banner', inHand).told)).toBe('Tag: shape banner.');
  });
});

describe('a part is given the outline of a drawing', () => {
  const drawn = { outline: 'M0 0H20L10 50Z', ratio: { width: 20, height: 50 } };
  const outlined = (part: JsonObject) => {
    const inHand = set(part);
    const after = edited(inHand, outlineSet(inHand, 0, drawn));
    return { fields: fieldsOf(after), seen: after.arrangement.parts[0]!.seen! };
  };

  it('as wide as it was and as high as the drawing asks', () => {
    const { fields } = outlined({ size: ['1 in', '3 in'], torn: { left: '1/4 in' } });
    expect(fields).toEqual({ size: ['1 in', '2 1/2 in'], shape: 'outline', outline: drawn.outline });
  });

  it('within its margin, also where it fills or is inset', () => {
    const around = outlined({ size: ['1 1/4 in', '3 in'], margin: '1/8 in' });
    expect(around.fields.size).toEqual(['1 1/4 in', '2 3/4 in']);
    const filling = outlined({
      size: ['fill', 'fill'],
      place: { left: '4 in', top: '1/8 in', bottom: '0 in' },
    });
    expect(filling.fields).toMatchObject({
      size: ['fill', '2 1/2 in'],
      place: { left: '4 in', top: '1/8 in' },
    });
    const inset = outlined({ inset: '1 in' });
    expect(inset.fields).toEqual({ size: ['3 in', '7 1/2 in'], shape: 'outline', outline: drawn.outline });
    for (const { seen } of [around, filling, inset]) expect(seen.height / seen.width).toBeCloseTo(2.5, 4);
  });
});
