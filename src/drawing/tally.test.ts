import { describe, expect, test } from 'vitest';
import type { LineMark } from './mark.ts';
import { tallyStrokes } from './tally.ts';

const strokesOf = (count: number) =>
  tallyStrokes({ xPt: 10, yPt: 50 }, count).marks.marks.filter(
    (mark): mark is LineMark => mark.kind === 'line',
  );
const isUpright = (line: LineMark) => line.from.xPt === line.to.xPt;

describe('tallyStrokes', () => {
  test.each([0, 1, 4, 5, 6, 10, 13])('draws %i strokes, every fifth across', (count) => {
    const strokes = strokesOf(count);
    expect(strokes).toHaveLength(count);
    expect(strokes.filter((line) => !isUpright(line))).toHaveLength(Math.floor(count / 5));
  });

  test('crosses with the fifth exactly the four before it', () => {
    const strokes = strokesOf(10);
    const crossed = (bar: LineMark) =>
      strokes.filter((line) => isUpright(line) && line.from.xPt > bar.from.xPt && line.from.xPt < bar.to.xPt);
    expect(crossed(strokes[4]!)).toEqual(strokes.slice(0, 4));
    expect(crossed(strokes[9]!)).toEqual(strokes.slice(5, 9));
  });

  test('tells how far it reaches', () => {
    for (let count = 1; count <= 20; count += 1) {
      const right = Math.max(...strokesOf(count).flatMap((line) => [line.from.xPt, line.to.xPt]));
      const { widthPt } = tallyStrokes({ xPt: 10, yPt: 50 }, count);
      expect(10 + widthPt - right).toBeGreaterThanOrEqual(-1e-9);
      expect(10 + widthPt - right).toBeLessThan(2);
    }
  });

  test('counts whole things only', () => {
    expect(() => tallyStrokes({ xPt: 0, yPt: 0 }, 1.5)).toThrow('Tally strokes count whole things');
  });
});
