import { describe, expect, test } from 'vitest';
import type { Edge } from '../measure/index.ts';
import { dimensionDistancePt, dimensionLine } from './dimension.ts';
import type { GroupMark, LineMark, PathMark, Point, TextMark } from './mark.ts';
import { ringsOf } from './outline.ts';
import { plainTypeface } from './testing/plainTypeface.ts';

const mm = 72 / 25.4;
const at = (xPt: number, yPt: number): Point => ({ xPt, yPt });
const linesOf = (group: GroupMark) => group.marks.filter((mark): mark is LineMark => mark.kind === 'line');
const headsOf = (group: GroupMark) => group.marks.filter((mark): mark is PathMark => mark.kind === 'path');
const textOf = (group: GroupMark) => group.marks.find((mark): mark is TextMark => mark.kind === 'text')!;
const bottom = (toX: number, more: Partial<Parameters<typeof dimensionLine>[0]> = {}) =>
  dimensionLine({
    from: at(100, 50),
    to: at(100 + toX, 50),
    side: 'bottom',
    label: '2 1\u20444',
    typeface: plainTypeface,
    ...more,
  });

describe('dimensionLine', () => {
  // Teaching notes that follow ASME Y14.5: first line 10 mm (3/8 in) off the object, next ones 6 mm (1/4 in) apart.
  test('stands 10 mm off the object, and 6 mm further for each row', () => {
    expect(dimensionDistancePt(0)).toBeCloseTo(10 * mm, 12);
    expect(dimensionDistancePt(2)).toBeCloseTo(22 * mm, 12);
    const [, , line] = linesOf(bottom(200, { row: 1 }));
    expect(line!.from.yPt).toBeCloseTo(50 + 16 * mm, 9);
  });

  // The same notes: a visible gap of about 1/16 in (1.5 mm) between the outline and the extension line.
  test('leaves a gap of 1.5 mm before its extension lines and runs them past the line', () => {
    const [first, second] = linesOf(bottom(200));
    expect(first!.from.xPt).toBe(100);
    expect(first!.from.yPt).toBeCloseTo(50 + 1.5 * mm, 9);
    expect(second!.from.xPt).toBe(300);
    expect(first!.to.yPt).toBeGreaterThan(50 + 10 * mm + 1);
  });

  // ISO practice and the same notes: arrowheads three times as long as wide; their tips are what is measured.
  test('has slender arrowheads whose tips lie on the measured points', () => {
    const heads = headsOf(bottom(200)).map((head) => ringsOf(head.path)[0]!);
    expect(heads.map(([tip]) => tip!.xPt)).toEqual([100, 300]);
    const [tip, upper, lower] = heads[0]!;
    expect((upper!.xPt - tip!.xPt) / (lower!.yPt - upper!.yPt)).toBeCloseTo(3, 9);
    expect(heads[1]![1]!.xPt).toBeLessThan(300);
  });

  test('breaks the line for its number, with room on both sides', () => {
    const group = bottom(200);
    const [, , before, after] = linesOf(group);
    const text = textOf(group);
    const half = plainTypeface.widthPt(text.text, text.sizePt, 'regular') / 2;
    expect(before!.from.xPt).toBe(100);
    expect(after!.to.xPt).toBe(300);
    expect(text.at.xPt).toBe(200);
    expect(before!.to.xPt).toBeLessThan(200 - half);
    expect(after!.from.xPt).toBeGreaterThan(200 + half);
    // The middle of the figures stands on the line.
    expect(text.at.yPt - (plainTypeface.capHeight * text.sizePt) / 2).toBeCloseTo(before!.from.yPt, 9);
  });

  test('runs unbroken under a number that stands over it', () => {
    const group = bottom(200, { number: 'over' });
    expect(linesOf(group)).toHaveLength(3);
    expect(textOf(group).at.yPt).toBeLessThan(linesOf(group)[2]!.from.yPt);
  });

  test('points inwards from outside where the ends lie near each other, the number beyond', () => {
    const group = bottom(9);
    const heads = headsOf(group).map((head) => ringsOf(head.path)[0]!);
    expect(heads[0]![1]!.xPt).toBeLessThan(100);
    expect(heads[1]![1]!.xPt).toBeGreaterThan(109);
    const text = textOf(group);
    expect(text.at.xPt - plainTypeface.widthPt(text.text, text.sizePt, 'regular') / 2).toBeGreaterThan(
      Math.max(...linesOf(group).map((line) => line.to.xPt)),
    );
  });

  test('ends in bars where asked', () => {
    const group = bottom(200, { ends: 'bars' });
    expect(headsOf(group)).toHaveLength(0);
    const bar = linesOf(group).at(-1)!;
    expect((bar.from.xPt + bar.to.xPt) / 2).toBe(300);
  });

  test('is the same when its points are exchanged', () => {
    const there = dimensionLine({
      from: at(0, 0),
      to: at(90, 4),
      side: 'top',
      label: '1',
      typeface: plainTypeface,
    });
    const back = dimensionLine({
      from: at(90, 4),
      to: at(0, 0),
      side: 'top',
      label: '1',
      typeface: plainTypeface,
    });
    expect(back).toEqual(there);
  });

  test.each<[Edge, (point: Point) => number, number]>([
    ['top', (point) => point.yPt, 40 - 10 * mm],
    ['bottom', (point) => point.yPt, 60 + 10 * mm],
    ['left', (point) => point.xPt, 20 - 10 * mm],
    ['right', (point) => point.xPt, 200 + 10 * mm],
  ])('on the %s starts from the outer of its points', (side, away, expected) => {
    const group = dimensionLine({
      from: at(20, 40),
      to: at(200, 60),
      side,
      label: '1',
      typeface: plainTypeface,
    });
    const tips = headsOf(group).map((head) => ringsOf(head.path)[0]![0]!);
    for (const tip of tips) expect(away(tip)).toBeCloseTo(expected, 9);
  });

  test('turns the number of an upright line to be read from the right, where asked', () => {
    const upright = {
      from: at(0, 0),
      to: at(0, 100),
      side: 'left',
      label: '12',
      typeface: plainTypeface,
    } as const;
    expect(textOf(dimensionLine({ ...upright, turned: true })).turnDegrees).toBe(-90);
    expect(textOf(dimensionLine(upright)).turnDegrees).toBeUndefined();
  });
});
