import { describe, expect, test } from 'vitest';
import { cropTick } from './cropTick.ts';
import type { Mark, Point } from './mark.ts';
import { frameOf, ringsOf } from './outline.ts';
import { scissors, upArrow } from './sign.ts';
import { plainTypeface } from './testing/plainTypeface.ts';

const pointsOf = (mark: Mark): readonly Point[] => {
  switch (mark.kind) {
    case 'group':
      return mark.marks.flatMap(pointsOf);
    case 'line':
      return [mark.from, mark.to];
    case 'path':
      return ringsOf(mark.path).flat();
    case 'text':
      return [mark.at];
  }
};

describe('signs', () => {
  test.each([upArrow, scissors])('%o stays within its size, and turns about its middle', (sign) => {
    const at = { xPt: 30, yPt: 40 };
    const plain = pointsOf(sign({ at, sizePt: 20 }));
    for (const { xPt, yPt } of plain) {
      expect(Math.abs(xPt - 30)).toBeLessThanOrEqual(10 + 1e-9);
      expect(Math.abs(yPt - 40)).toBeLessThanOrEqual(10 + 1e-9);
    }
    const turned = pointsOf(sign({ at, sizePt: 20, turnDegrees: 180 }));
    const mirrored = frameOf(plain.map(({ xPt, yPt }) => ({ xPt: 60 - xPt, yPt: 80 - yPt })));
    for (const [key, value] of Object.entries(frameOf(turned))) {
      expect(value).toBeCloseTo(mirrored[key as keyof typeof mirrored], 1);
    }
  });

  test('the arrow points up, and with a quarter turn to the right', () => {
    const tip = (turnDegrees: number) => {
      const arrow = upArrow({ at: { xPt: 0, yPt: 0 }, sizePt: 10, turnDegrees });
      return pointsOf(arrow)[3]!;
    };
    expect(tip(0)).toEqual({ xPt: 0, yPt: -5 });
    expect(tip(90).xPt).toBeCloseTo(5, 9);
    expect(tip(90).yPt).toBeCloseTo(0, 9);
  });

  test('the scissors cut to the right: the blades reach further from the middle line there than the rings', () => {
    const frame = frameOf(pointsOf(scissors({ at: { xPt: 0, yPt: 0 }, sizePt: 10 })));
    expect(frame.xPt + frame.widthPt).toBeCloseTo(5, 9);
  });
});

describe('cropTick', () => {
  test.each([
    ['left', -1, 0],
    ['right', 1, 0],
    ['top', 0, -1],
    ['bottom', 0, 1],
  ] as const)('at the %s stands outside the edge and points at its place', (edge, x, y) => {
    const { marks } = cropTick({
      at: { xPt: 50, yPt: 60 },
      edge,
      label: { text: '3 1\u20448', typeface: plainTypeface },
    });
    const [tick, label] = marks;
    expect(tick).toMatchObject({
      from: { xPt: 50 + 2 * x, yPt: 60 + 2 * y },
      to: { xPt: 50 + 12 * x, yPt: 60 + 12 * y },
    });
    expect(label).toMatchObject({ kind: 'text', text: '3 1\u20448' });
    const [, foot] = pointsOf(tick!);
    const [at] = pointsOf(label!);
    expect((at!.xPt - foot!.xPt) * x + (at!.yPt - foot!.yPt) * y).toBeGreaterThan(0);
  });
});
