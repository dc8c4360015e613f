import type { CostUnit } from '../stash/index.ts';
import { counted } from './count.ts';

/** A cost with what it counts: `11 sheets`, `14.20`, `288.5 square inches`. A bound may lie between two sheets. */
export function costWords(cost: number, measuredIn: CostUnit): string {
  switch (measuredIn) {
    case 'price':
      return amount(cost);
    case 'sheets':
      return counted(Math.ceil(cost - 1e-6), 'sheet');
    case 'square inches':
      return `${Number(cost.toFixed(1))} square inches`;
  }
}

/** Money in the person's own currency, which the program does not know. */
export function amount(cost: number): string {
  return cost.toFixed(Math.abs(cost * 100 - Math.round(cost * 100)) < 1e-6 ? 2 : 4);
}
