import { describe, expect, it } from 'vitest';
import { unlimited } from '../src/cutting/index.ts';
import { cutsEdgeToEdge, type Laid, packers } from './packers.ts';

const box = (x: number, y: number, width: number, height: number): Laid => ({ x, y, width, height });

describe('edge-to-edge cutting', () => {
  it('takes a grid and rows of unequal pieces apart', () => {
    expect(cutsEdgeToEdge([box(0, 0, 2, 2), box(2, 0, 2, 2), box(0, 2, 2, 2), box(2, 2, 2, 2)])).toBe(true);
    expect(cutsEdgeToEdge([box(0, 0, 5, 3), box(0, 3, 2, 4), box(2, 3, 3, 1)])).toBe(true);
  });

  it('cannot take four pieces round a hole apart, the usual example (encyclopaedia, “Guillotine cutting”)', () => {
    expect(cutsEdgeToEdge([box(0, 0, 2, 1), box(2, 0, 1, 2), box(1, 2, 2, 1), box(0, 1, 1, 2)])).toBe(false);
  });
});

describe('the packers that are compared', () => {
  const task = {
    items: [{ width: 4, height: 3, need: 7, turns: false }],
    sheets: [{ width: 10, height: 10, count: null, cost: 1 }],
    limits: unlimited,
  };
  it.each(Object.entries(packers))('%s lays every piece on sheets of the given size', (_, pack) => {
    const sheets = pack(task);
    expect(sheets.flat()).toHaveLength(7);
    for (const { x, y, width, height } of sheets.flat()) {
      expect([width, height]).toEqual([4, 3]);
      expect(x >= 0 && y >= 0 && x + width <= 10 && y + height <= 10).toBe(true);
    }
  });

  it.each(Object.entries(packers))('%s lays turned pieces so that none overlap', (_, pack) => {
    const turning = { ...task, items: [{ width: 7, height: 3, need: 9, turns: true }] };
    for (const laid of pack(turning)) {
      for (const [index, a] of laid.entries()) {
        expect(a.x + a.width <= 10 && a.y + a.height <= 10).toBe(true);
        for (const b of laid.slice(index + 1)) {
          const apart =
            a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
          expect(apart).toBe(true);
        }
      }
    }
  });
});
