import { type CuttingAnswer, planCuts, type SearchEffort, usualEffort } from '../cutting/index.ts';
import type { Paper } from '../stash/index.ts';
import { paperTask } from './cuttingTask.ts';
import { neverReasons } from './never.ts';
import type { Piece } from './piece.ts';
import type { SetToPlan } from './planSet.ts';

/** The effort of a planner that is asked whether sheets are enough, and not what short ones give instead. */
export const whetherOnly: SearchEffort = { ...usualEffort, partial: false };

/** `no` is proved; `unknown`: no way was found. */
export type Verdict = 'yes' | 'no' | 'unknown';

/** Whether the sheets of a paper give all these pieces; what is needed 0 times is not asked for. */
export function givesAll(
  paper: Paper,
  pieces: readonly Piece[],
  { trimmer, solver }: Pick<SetToPlan, 'trimmer' | 'solver'>,
): Verdict {
  const wanted = pieces.filter(({ need }) => need > 0);
  if (neverReasons(paper, wanted, trimmer).size > 0) return 'no';
  return verdictOf(planCuts(paperTask(paper, wanted, trimmer).task, solver, whetherOnly));
}

function verdictOf(answer: CuttingAnswer): Verdict {
  if (answer.kind === 'plan') return 'yes';
  return answer.proved ? 'no' : 'unknown';
}
