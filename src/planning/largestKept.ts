import type { Size } from '../measure/index.ts';
import type { Plan } from './plan.ts';

/**
 * The largest leftover of a paper that a plan keeps, by area; of equal ones the first in the order of cutting;
 * `null`: it keeps none.
 */
export function largestKept(plan: Plan, paper: string): Size | null {
  const own = new Set(plan.sheets.filter((sheet) => sheet.paper === paper).map(({ id }) => id));
  for (const { take, gives, rest } of plan.steps) {
    if (!take.some((id) => own.has(id))) continue;
    for (const id of [...gives.flat(), ...rest]) if (id !== null) own.add(id);
  }
  const kept = plan.leftovers.filter(({ id, keep }) => keep && own.has(id)).map(({ size }) => size);
  return kept.reduce<Size | null>(
    (largest, size) => (largest === null || areaOf(size) > areaOf(largest) ? size : largest),
    null,
  );
}

function areaOf({ width, height }: Size): number {
  return width * height;
}
