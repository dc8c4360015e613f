import type { Arrangement, Layout } from '../layout/index.ts';
import { takesAllowance } from '../making/index.ts';
import type { FinishedProblem } from './check.ts';
import { finishedCodes } from './codes.ts';
import { foldingOf } from './folding.ts';

/**
 * Whether the panels within the base are narrower by less than what lies there is thick.
 *
 * Each sheet that is nested steps out by its thickness (printers' rule of creep), so by less than that the panels
 * within stand against the fold, and the front does not cover them.
 */
export function foldingProblems(layout: Layout, arrangement: Arrangement): readonly FinishedProblem[] {
  if (!takesAllowance(layout.base.fold)) return [];
  const within = foldingOf(layout, arrangement)?.within ?? null;
  if (within === null || within.allowance >= within.thickness) return [];
  const numbers = { allowance: within.allowance, thickness: within.thickness };
  const code = 'allowanceTight';
  return [{ code, severity: finishedCodes[code], where: 'base.allowance', part: 'base', numbers, names: {} }];
}
