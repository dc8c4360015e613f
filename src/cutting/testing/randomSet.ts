import type { CuttingTask, Item } from '../index.ts';
import { chance } from './chance.ts';

/** A set of up to five kinds from letter sheets and scraps, in eighths of an inch; the same for the same seed. */
export function randomSet(seed: number): CuttingTask {
  const int = chance(seed);
  const items = Array.from({ length: int(1, 5) }, (): Item => {
    return { width: int(8, 44), height: int(8, 44), need: int(1, 14), turns: int(0, 1) === 1 };
  });
  const scraps = Array.from({ length: int(0, 2) }, () => ({
    width: int(16, 60),
    height: int(16, 60),
    count: 1,
    cost: 0,
  }));
  const sheets = [
    { width: 68, height: 88, count: int(0, 3) === 0 ? 2 : null, cost: 7 },
    ...(int(0, 1) === 0 ? [{ width: 96, height: 96, count: null, cost: 11 }] : []),
    ...scraps,
  ];
  const step = int(0, 3) === 0 ? 4 : null;
  return {
    items,
    sheets,
    limits: { step, longest: int(0, 3) === 0 ? 80 : null, reach: int(0, 3) === 0 ? 36 : null },
  };
}
