import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Edge } from '../measure/index.ts';
import { frameOf, rectangle, ringsOf } from './outline.ts';
import { tornOutline } from './tornOutline.ts';

const edges: readonly Edge[] = ['left', 'right', 'top', 'bottom'];
const frame = { xPt: 10, yPt: 20, widthPt: 160, heightPt: 200 };

/** How far a point lies inside each edge of the frame. */
const depths = ({ xPt, yPt }: { xPt: number; yPt: number }): Readonly<Record<Edge, number>> => ({
  left: xPt - 10,
  right: 170 - xPt,
  top: yPt - 20,
  bottom: 220 - yPt,
});

describe('tornOutline', () => {
  test('without a torn edge is the rectangle', () => {
    expect(frameOf(ringsOf(tornOutline(frame, {}, 1))[0]!)).toEqual(frame);
    expect(tornOutline(frame, {}, 1)).toEqual(rectangle(frame));
  });

  test('is the same for a seed and another for another', () => {
    expect(tornOutline(frame, { right: 9 }, 7)).toEqual(tornOutline(frame, { right: 9 }, 7));
    expect(tornOutline(frame, { right: 9 }, 7)).not.toEqual(tornOutline(frame, { right: 9 }, 8));
  });

  test('keeps straight edges straight and torn ones between the edge and their depth', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.subarray([...edges]),
        fc.integer({ min: 1, max: 40 }),
        (seed, torn, depthPt) => {
          const [ring] = ringsOf(
            tornOutline(frame, Object.fromEntries(torn.map((edge) => [edge, depthPt])), seed),
          );
          for (const point of ring!) {
            // Every corner of the outline lies by some edge: on a straight one, or within the tear of a torn one.
            const inside = depths(point);
            expect(Math.min(...Object.values(inside))).toBeGreaterThanOrEqual(-1e-9);
            const near = edges.some((edge) => inside[edge] <= (torn.includes(edge) ? depthPt : 0) + 1e-9);
            expect(near).toBe(true);
          }
          expect(ring!.length).toBeGreaterThanOrEqual(4 + 15 * torn.length);
        },
      ),
    );
  });

  test('never crosses itself', () => {
    fc.assert(
      fc.property(fc.integer(), fc.subarray([...edges]), (seed, torn) => {
        const [ring] = ringsOf(tornOutline(frame, Object.fromEntries(torn.map((edge) => [edge, 12])), seed));
        const count = ring!.length;
        const side = (a: number, b: number, c: number): number => {
          const [p, q, r] = [ring![a % count]!, ring![b % count]!, ring![c % count]!];
          return Math.sign((q.xPt - p.xPt) * (r.yPt - p.yPt) - (q.yPt - p.yPt) * (r.xPt - p.xPt));
        };
        for (let i = 0; i < count; i += 1) {
          for (let j = i + 2; j < count; j += 1) {
            if (i === 0 && j === count - 1) continue;
            const cross =
              side(i, i + 1, j) * side(i, i + 1, j + 1) < 0 && side(j, j + 1, i) * side(j, j + 1, i + 1) < 0;
            expect(cross).toBe(false);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  test('throws on a tear that leaves nothing', () => {
    expect(() => tornOutline(frame, { left: 80 }, 1)).toThrow('A tear leaves a part');
  });
});
