import type { Docket, FinishedProblem } from '../../../src/finished/index.ts';
import type { Layout } from '../../../src/layout/index.ts';
import type { CardSet } from '../../../src/planning/index.ts';
import { GivenUp, type Planner } from '../../planner/browserPlanner.ts';
import type { Cutting } from './cutting.ts';
import { heldBy, type Standards } from './standards.ts';

/** What the cards will be like once they are made, as far as that is known: `of` that very layout. */
export type Made =
  /** Nothing is known yet, or a size is not known. */
  | { readonly stage: 'none' }
  | {
      readonly stage: 'told';
      readonly of: Layout;
      readonly docket: Docket;
      readonly problems: readonly FinishedProblem[];
    }
  | { readonly stage: 'failed'; readonly of: Layout; readonly message: string };

export const notMade: Made = { stage: 'none' };

/** Has the docket of one set after another worked out, away from the hand; the one before stands until the next. */
export function madeWith(
  planner: Pick<Planner, 'ask'>,
  tell: (made: Made) => void,
): {
  work(
    set: Pick<CardSet, 'layout' | 'arrangement'>,
    by: { readonly cutting: Cutting; readonly standards: Standards },
  ): void;
  close(): void;
} {
  let control = new AbortController();
  return {
    work(set, { cutting: { trimmer, prefer }, standards }) {
      control.abort(new GivenUp('A newer layout took its place.'));
      control = new AbortController();
      const { signal } = control;
      const of = set.layout;
      if (set.arrangement.parts.some(({ cut }) => cut === null)) {
        tell(notMade);
        return;
      }
      const question = {
        name: 'docket',
        set: { ...set, trimmer, prefer },
        by: heldBy(standards),
      } as const;
      planner.ask(question, { signal }).then(
        ({ docket, problems }) => tell({ stage: 'told', of, docket, problems }),
        (problem: unknown) => {
          if (signal.aborted || problem instanceof GivenUp) return;
          const message = problem instanceof Error ? problem.message : String(problem);
          tell({ stage: 'failed', of, message });
        },
      );
    },
    close: () => control.abort(new GivenUp('The layout was laid away.')),
  };
}
