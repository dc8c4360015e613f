import { describe, expect, test } from 'vitest';
import { circle, frameOf, polygon, polyline, rectangle, ringsOf, roundedRectangle } from './outline.ts';

describe('outlines', () => {
  test('of a rectangle go clockwise from its top left corner', () => {
    expect(rectangle({ xPt: 1, yPt: 2, widthPt: 3, heightPt: 4 })).toEqual([
      { to: 'move', xPt: 1, yPt: 2 },
      { to: 'line', xPt: 4, yPt: 2 },
      { to: 'line', xPt: 4, yPt: 6 },
      { to: 'line', xPt: 1, yPt: 6 },
      { to: 'close' },
    ]);
  });

  test('of a circle keep its radius to 0.03 % (the known error of four cubic curves, 0.0273 %)', () => {
    const [ring] = ringsOf(circle({ xPt: 10, yPt: 20 }, 100));
    const radii = ring!.map(({ xPt, yPt }) => Math.hypot(xPt - 10, yPt - 20));
    expect(Math.min(...radii)).toBeGreaterThanOrEqual(100 - 1e-9);
    expect(Math.max(...radii)).toBeLessThan(100.03);
    expect(frameOf(ring!)).toEqual({ xPt: -90, yPt: -80, widthPt: 200, heightPt: 200 });
  });

  test('of a rounded rectangle keep to its frame, the radius cut down to half the shorter side', () => {
    const frame = { xPt: 0, yPt: 0, widthPt: 40, heightPt: 10 };
    const [ring] = ringsOf(roundedRectangle(frame, 99));
    expect(frameOf(ring!)).toEqual(frame);
    expect(ring![0]).toEqual({ xPt: 5, yPt: 0 });
  });

  test('are open or closed', () => {
    const points = [
      { xPt: 0, yPt: 0 },
      { xPt: 1, yPt: 0 },
      { xPt: 0, yPt: 1 },
    ];
    expect(polygon(points)).toEqual([...polyline(points), { to: 'close' }]);
    expect(ringsOf([...polygon(points), ...polygon(points)])).toEqual([points, points]);
  });

  test('have a frame even when there are no points', () => {
    expect(frameOf([])).toEqual({ xPt: 0, yPt: 0, widthPt: 0, heightPt: 0 });
  });

  test('begin with a move', () => {
    expect(() => ringsOf([{ to: 'line', xPt: 0, yPt: 0 }])).toThrow('A path begins with a move');
  });
});
