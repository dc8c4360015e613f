import type { FinishedCode, FinishedProblem } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { closedProblemSentence } from './closedProblem.ts';
import { foldingProblemSentence } from './foldSentence.ts';
import { holdingProblemSentence } from './holdingSentence.ts';
import { orderProblemSentence } from './orderSentence.ts';
import type { Showing } from './showing.ts';
import { shownProblemSentence } from './shownSentence.ts';
import { tearProblemSentence } from './tearProblem.ts';
import { timeProblemSentence } from './timeProblem.ts';

/** What is wrong with the finished card, in one or two sentences. */
export function finishedProblemSentence(problem: FinishedProblem, layout: Layout, showing: Showing): string {
  return sentences[problem.code](problem, layout, showing);
}

type SentenceOf = (problem: FinishedProblem, layout: Layout, showing: Showing) => string;

const sentences = {
  vanishes: shownProblemSentence,
  noJoin: shownProblemSentence,
  thinJoin: shownProblemSentence,
  sliver: shownProblemSentence,
  noRoomToHold: holdingProblemSentence,
  glueShows: holdingProblemSentence,
  hangsFar: holdingProblemSentence,
  orderRefused: orderProblemSentence,
  orderNone: orderProblemSentence,
  tearShows: tearProblemSentence,
  tearMayShow: tearProblemSentence,
  tearMeets: tearProblemSentence,
  allowanceTight: foldingProblemSentence,
  envelopeTooSmall: closedProblemSentence,
  envelopeTight: closedProblemSentence,
  notPosted: closedProblemSentence,
  postedHigher: closedProblemSentence,
  stationsEmpty: timeProblemSentence,
  roomToDryShort: timeProblemSentence,
  longWait: timeProblemSentence,
  stationWaits: timeProblemSentence,
} as const satisfies Record<FinishedCode, SentenceOf>;
