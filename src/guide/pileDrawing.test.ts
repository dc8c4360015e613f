import { describe, expect, test } from 'vitest';
import { frameOf } from '../drawing/index.ts';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { arrange, type Face, type Layout } from '../layout/index.ts';
import { lengthOfTicks, millimetres, pointsOf } from '../measure/index.ts';
import { part } from '../words/testing/meadowSet.ts';
import { pileDrawing } from './pileDrawing.ts';
import { fieldSet, hostileSet, tideSet } from './testing/sets.ts';
import { cornersOf, drawnMarks, wordsIn } from './testing/walk.ts';

function drawn(
  layout: Layout,
  {
    face = 'base',
    card = 0,
    widthPt = 480,
    tagsPt = 200,
  }: { face?: Face; card?: number; widthPt?: number; tagsPt?: number } = {},
) {
  return pileDrawing({
    layout,
    arrangement: arrange(layout),
    card,
    face,
    manner: 'coloured',
    typeface: plainTypeface,
    widthPt,
    most: { heightPt: 120, times: 12 },
    tags: { widthPt: tagsPt, leadingPt: 33, sizePt: 13 },
  });
}

describe('pileDrawing', () => {
  test('has a tag for the base and each part of the face, bottom of the pile first', () => {
    const { tags } = drawn(tideSet());
    expect(tags.map(({ part: id, letter, name, paper }) => [id, letter, name, paper])).toEqual([
      ['base', 'A', 'base', 'Sand'],
      ['mat', 'B', 'Mat', 'Sand'],
      ['panel', 'C', 'Panel', 'Tide'],
      ['moon', 'D', 'Moon', null],
      ['strip', 'E', 'Strip', 'Sand'],
    ]);
    expect(drawn(tideSet(), { card: 1 }).tags[2]?.paper).toBe('Shell');
    expect(wordsIn(tags[2]!.words)).toBe('C Panel, Tide');
    for (const [index, { frame }] of tags.entries()) {
      const above = tags[index + 1]?.frame;
      if (above !== undefined) expect(above.yPt + above.heightPt).toBeCloseTo(frame.yPt, 9);
    }
  });

  test('leaves papers out of tags that are narrow, before it shortens a name', () => {
    const words = (tagsPt: number) => drawn(tideSet(), { tagsPt }).tags.map((tag) => wordsIn(tag.words));
    expect(words(200)).toEqual([
      'A Base, Sand',
      'B Mat, Sand',
      'C Panel, Tide',
      'D Moon, bought',
      'E Strip, Sand',
    ]);
    expect(words(95)).toEqual(['A Base', 'B Mat', 'C Panel', 'D Moon', 'E Strip']);
    expect(words(70)).toEqual(expect.arrayContaining([expect.stringContaining('…')]));
  });

  test('shows the inside, and the back with nothing on it', () => {
    expect(drawn(tideSet(), { face: 'inside' }).tags.map(({ part: id }) => id)).toEqual(['base', 'note']);
    expect(drawn(tideSet(), { face: 'back' }).layers.map(({ part: id }) => id)).toEqual(['base']);
  });

  test('a part that the cut misses has its tag and no thread', () => {
    const spots = [5, 100].map((at) =>
      part({
        id: `at-${at}`,
        name: `At ${at}`,
        papers: ['field'],
        extent: { by: 'size', width: millimetres(10), height: millimetres(10) },
        places: [
          {
            across: { start: { from: 'edge', distance: millimetres(at) }, end: null },
            down: { start: { from: 'edge', distance: millimetres(at === 5 ? 5 : 80) }, end: null },
          },
        ],
      }),
    );
    const { tags, layers } = drawn({ ...fieldSet(), parts: spots });
    expect(tags.map(({ isCut }) => isCut)).toEqual([true, true, false]);
    expect(tags[2]?.thread).toEqual([]);
    expect(layers.map(({ part: id }) => id)).toEqual(['base', 'at-5']);
  });

  test('is true along the cut, and all thickness is as many times what it is', () => {
    const layout = tideSet();
    const sand = { ...layout.papers.get('sand')!, thickness: millimetres(0.3) };
    const measured = { ...layout, papers: new Map([...layout.papers, ['sand', sand]]) };
    const { layers, along, thickened } = drawn(measured);
    const framesOf = (id: string) => layers.filter((layer) => layer.part === id).map(({ frame }) => frame);
    const [base, mat, strip] = [framesOf('base')[0]!, framesOf('mat')[0]!, framesOf('strip')[0]!];
    expect(along).toBe('width');
    expect(thickened).toBeGreaterThan(1);
    for (const { heightPt } of [base, mat, strip]) {
      expect(heightPt).toBeCloseTo((0.3 / 25.4) * 72 * thickened, 6);
    }
    // The base is 4 1/4 in wide, the mat 1/8 in inside it on either side.
    expect((mat.xPt - base.xPt) / base.widthPt).toBeCloseTo(0.125 / 4.25, 9);
    expect(mat.widthPt / base.widthPt).toBeCloseTo(4 / 4.25, 9);
    // The mat lies on the base; under the strip is foam of 1/16 in.
    expect(mat.yPt + mat.heightPt).toBeCloseTo(base.yPt, 6);
    const below = framesOf('moon')[0]!;
    expect(below.yPt - (strip.yPt + strip.heightPt)).toBeCloseTo((1 / 16) * 72 * thickened, 6);
    expect(layers.find(({ part: id }) => id === 'strip')?.marks).toHaveLength(1);
  });

  test('nothing stands outside it, whatever things are called', () => {
    for (const widthPt of [300, 480]) {
      for (const layout of [tideSet(), fieldSet(), hostileSet()]) {
        const drawing = drawn(layout, { widthPt });
        const marks = [
          ...drawing.layers.flatMap((layer) => layer.marks),
          ...drawing.tags.flatMap(({ thread, swatch, words }) => [...thread, ...swatch, ...words]),
        ];
        const all = frameOf(drawnMarks(marks).flatMap((mark) => cornersOf(mark, plainTypeface)));
        expect(all.xPt).toBeGreaterThanOrEqual(0);
        expect(all.yPt).toBeGreaterThanOrEqual(0);
        expect(all.xPt + all.widthPt).toBeLessThanOrEqual(drawing.widthPt + 0.01);
        expect(all.yPt + all.heightPt).toBeLessThanOrEqual(drawing.heightPt + 0.01);
      }
    }
  });

  test('a card with nothing on it is its base', () => {
    const { layers, tags, heightPt } = drawn({ ...tideSet(), parts: [] });
    expect(layers).toHaveLength(1);
    expect(tags).toHaveLength(1);
    expect(heightPt).toBeGreaterThanOrEqual(33);
    expect(layers[0]!.frame.widthPt).toBeGreaterThan(pointsOf(lengthOfTicks(1)));
  });
});
