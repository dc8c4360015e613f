import { assert } from '../problem/index.ts';
import { replay } from '../replay/index.ts';
import type { CardSet } from './cardSet.ts';
import type { Piece } from './piece.ts';
import type { Plan } from './plan.ts';
import { type CutPaper, type PlannedPaper, plannedPaper } from './plannedPaper.ts';
import { planRecord, replayConditions } from './planRecord.ts';
import { dealingOf } from './settling.ts';

/**
 * The plan of a set whose papers have all been cut, paper after paper, with steps for the hand; replayed before it
 * is returned, and an assertion fails when it does not come out. With `quick` the steps are in the first good order
 * that is found.
 */
export function assembledPlan(
  set: Pick<CardSet, 'layout' | 'trimmer'>,
  pieces: readonly Piece[],
  papers: readonly CutPaper[],
  { quick = false } = {},
): Plan {
  const planned: PlannedPaper[] = [];
  let firstStep = 1;
  for (const cut of papers) {
    const paper = plannedPaper(set, cut, { firstStep, quick });
    firstStep += paper.steps.length;
    planned.push(paper);
  }
  return joinedPlan(set, pieces, planned);
}

/**
 * The plan that is made of its papers' shares, with the steps in the order of their numbers; replayed as above.
 * With `numberedOn` the numbers need not begin at 1 and may leave some out.
 */
export function joinedPlan(
  { layout, trimmer }: Pick<CardSet, 'layout' | 'trimmer'>,
  pieces: readonly Piece[],
  papers: readonly PlannedPaper[],
  { numberedOn = false } = {},
): Plan {
  const plan: Plan = {
    kind: 'plan',
    cards: layout.cards,
    pieces,
    sheets: papers.flatMap(({ sheets }) => sheets),
    steps: papers.flatMap(({ steps }) => steps).sort((a, b) => a.step - b.step),
    finished: new Map(papers.flatMap(({ finished }) => [...finished])),
    leftovers: papers.flatMap(({ leftovers }) => leftovers),
    papers: new Map(papers.map(({ paper, outcome }) => [paper, outcome])),
    ...dealingOf(layout),
  };
  const faults = replay(planRecord(plan), { ...replayConditions(layout, trimmer), numberedOn });
  assert(faults.length === 0, 'A plan comes out when it is followed', { faults: faults.slice(0, 5) });
  return plan;
}
