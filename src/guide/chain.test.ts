import { expect, test } from 'vitest';
import { frameOf } from '../drawing/index.ts';
import { plainTypeface } from '../drawing/testing/plainTypeface.ts';
import { inches, inchesOf, type Length, zero } from '../measure/index.ts';
import { chainOf } from './chain.ts';
import { cornersOf, drawnMarks } from './testing/walk.ts';

const stops: readonly Length[] = [
  zero,
  inches(1, 8),
  inches(1, 4),
  inches(3, 8),
  inches(2),
  inches(4),
  inches(33, 8),
  inches(17, 4),
];

test.each(['bottom', 'left'] as const)(
  'numbers of a chain at the %s stand apart and within its reach',
  (side) => {
    const { marks, reachPt } = chainOf({
      stops,
      scale: 0.75,
      side,
      edgePt: 0,
      row: 0,
      typeface: plainTypeface,
      number: (length) => String(inchesOf(length)),
    });
    const texts = drawnMarks(marks).filter(({ mark }) => mark.kind === 'text');
    expect(texts).toHaveLength(stops.length - 1);
    const total = texts.reduce((sum, { mark }) => sum + (mark.kind === 'text' ? Number(mark.text) : 0), 0);
    expect(total).toBe(4.25);
    const boxes = texts.map((text) => frameOf(cornersOf(text, plainTypeface)));
    for (const [index, one] of boxes.entries()) {
      const away = side === 'bottom' ? one.yPt + one.heightPt : -one.xPt;
      expect(away).toBeLessThanOrEqual(reachPt + 0.5);
      for (const other of boxes.slice(index + 1)) {
        const apart =
          one.xPt + one.widthPt <= other.xPt ||
          other.xPt + other.widthPt <= one.xPt ||
          one.yPt + one.heightPt <= other.yPt ||
          other.yPt + other.heightPt <= one.yPt;
        expect(apart, JSON.stringify([one, other])).toBe(true);
      }
    }
  },
);
