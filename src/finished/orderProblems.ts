import type { Arrangement, Layout } from '../layout/index.ts';
import { assemblyOrder, type Refusal } from './assemblyOrder.ts';
import type { FinishedProblem } from './check.ts';
import { finishedCodes } from './codes.ts';

/**
 * Why the parts cannot be put on in the order that the layout names, or in any. `names` has the rules that stand against
 * it, numbered from 1: `why1`, `lower1`, `upper1`, `first1` and, of the last of what `first1` has to come before, `last1`.
 */
export function orderProblems(layout: Layout, arrangement: Arrangement): readonly FinishedProblem[] {
  return assemblyOrder(layout, arrangement).refused.map((refusal) => {
    const code = refusal.of === 'order' ? 'orderRefused' : 'orderNone';
    return {
      code,
      severity: finishedCodes[code],
      where: refusal.of === 'order' ? 'order' : 'parts',
      numbers: {},
      names: namesOf(refusal),
    };
  });
}

function namesOf(refusal: Refusal): Readonly<Record<string, string>> {
  const rules = 'rule' in refusal ? [refusal.rule] : refusal.round;
  return Object.fromEntries(
    rules.flatMap(({ why, lower, upper, first, before }, index) => [
      [`why${index + 1}`, why],
      [`lower${index + 1}`, lower],
      [`upper${index + 1}`, upper],
      [`first${index + 1}`, first],
      [`last${index + 1}`, before.at(-1)!],
    ]),
  );
}
