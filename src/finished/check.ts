import type { Arrangement, Layout } from '../layout/index.ts';
import type { Problem } from '../problem/index.ts';
import { closedProblems } from './closedProblems.ts';
import type { FinishedCode } from './codes.ts';
import type { DocketAsks } from './docket.ts';
import { foldingProblems } from './foldingProblems.ts';
import { holdingProblems } from './holdingProblems.ts';
import { orderProblems } from './orderProblems.ts';
import { shownProblems } from './shownProblems.ts';
import { tearProblems } from './tearProblems.ts';
import { tearsOf } from './tears.ts';
import { timeProblems } from './timeProblems.ts';

/** Something that is wrong with the card once it is made. */
export type FinishedProblem = Problem<FinishedCode>;

/**
 * What would be wrong with the finished cards, as far as layout and papers tell. It is held to what its
 * docket is. `finishedCodes` lists what is looked for.
 */
export function checkFinished(
  layout: Layout,
  arrangement: Arrangement,
  asks: DocketAsks,
): readonly FinishedProblem[] {
  return [
    ...shownProblems(layout, arrangement),
    ...orderProblems(layout, arrangement),
    ...holdingProblems(layout, arrangement),
    ...tearProblems(layout, tearsOf(layout, arrangement, asks)),
    ...foldingProblems(layout, arrangement),
    ...closedProblems(layout, arrangement, asks.tables),
    ...timeProblems(layout, arrangement),
  ];
}
