import type { CuttingTask } from '../index.ts';
import { chance } from './chance.ts';

/** A task of up to four kinds on small sheets of up to three, with any limits; never more than 20 units a side. */
export function smallTask(seed: number): CuttingTask {
  const int = chance(seed);
  const step = int(0, 2) === 0 ? int(2, 4) : null;
  const longest = int(0, 2) === 0 ? int(6, 18) : null;
  const items = Array.from({ length: int(1, 4) }, () => ({
    width: int(1, 8),
    height: int(1, 8),
    need: int(1, 12),
    turns: int(0, 1) === 1,
  }));
  const sheets = Array.from({ length: int(1, 3) }, () => ({
    width: int(6, 20),
    height: int(6, 20),
    count: int(0, 1) === 0 ? null : int(1, 4),
    cost: int(0, 9),
  }));
  const reach = int(0, 3) === 0 ? int(4, 12) : null;
  return { items, sheets, limits: { step, longest, reach } };
}
