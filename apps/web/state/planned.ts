import type { Layout } from '../../../src/layout/index.ts';
import type {
  CardSet,
  Plan,
  PlanningProblem,
  PlanningProgress,
  Shortage,
} from '../../../src/planning/index.ts';
import { GivenUp, type Planner } from '../../planner/browserPlanner.ts';
import type { Cutting } from './cutting.ts';

/** How far the planning of a layout has come: `of` that very layout, for how the person cuts (`by`). */
export type Planned =
  /** Nothing is known yet. */
  | { readonly stage: 'none' }
  /** A size is not known, so there is nothing to plan; the layout's own problems say which. */
  | { readonly stage: 'unknown'; readonly of: Layout; readonly by: Cutting }
  /** The plan that is made at once stands (or there is none), and a better one or its proof is looked for. */
  | {
      readonly stage: 'first';
      readonly of: Layout;
      readonly by: Cutting;
      readonly plan: Plan | null;
      readonly progress: PlanningProgress | null;
    }
  /** The plan with its proof, or what is short; `problems` follow a moment later. */
  | {
      readonly stage: 'answered';
      readonly of: Layout;
      readonly by: Cutting;
      readonly answer: Plan | Shortage;
      readonly problems: readonly PlanningProblem[] | null;
    }
  | {
      readonly stage: 'failed';
      readonly of: Layout;
      readonly by: Cutting;
      readonly message: string;
    };

export const notPlanned: Planned = { stage: 'none' };

/** The plan that is known, be it proved or not; `null`: none. */
export function planOf(planned: Planned): Plan | null {
  if (planned.stage === 'first') return planned.plan;
  return planned.stage === 'answered' && planned.answer.kind === 'plan' ? planned.answer : null;
}

/** Plans one set after another, each in place of the one before, and tells `tell` how far that has come. */
export function planWith(
  planner: Planner,
  tell: (planned: Planned) => void,
): {
  plan(made: Pick<CardSet, 'layout' | 'arrangement'>, by: Cutting): void;
  close(): void;
} {
  let control = new AbortController();
  return {
    plan(made, by) {
      control.abort(new GivenUp('A newer layout took its place.'));
      control = new AbortController();
      const { signal } = control;
      const of = made.layout;
      if (made.arrangement.parts.some(({ cut }) => cut === null)) {
        tell({ stage: 'unknown', of, by });
        return;
      }
      plannedOnce(planner, { made, by }, signal, tell).catch((problem: unknown) => {
        if (signal.aborted || problem instanceof GivenUp) return;
        const message = problem instanceof Error ? problem.message : String(problem);
        tell({ stage: 'failed', of, by, message });
      });
    },
    close: () => control.abort(new GivenUp('The layout was laid away.')),
  };
}

async function plannedOnce(
  planner: Planner,
  { made, by }: { readonly made: Pick<CardSet, 'layout' | 'arrangement'>; readonly by: Cutting },
  signal: AbortSignal,
  tell: (planned: Planned) => void,
): Promise<void> {
  const of = made.layout;
  const { trimmer, prefer } = by;
  const set: CardSet = { ...made, trimmer, prefer };
  let first: Plan | null = null;
  const answer = await planner.plan(set, {
    signal,
    onFirst(plan) {
      first = plan;
      tell({ stage: 'first', of, by, plan, progress: null });
    },
    onProgress: (progress) => tell({ stage: 'first', of, by, plan: first, progress }),
  });
  tell({ stage: 'answered', of, by, answer, problems: null });
  const problems = await planner.ask({ name: 'check', set, answer }, { signal });
  tell({ stage: 'answered', of, by, answer, problems });
}
