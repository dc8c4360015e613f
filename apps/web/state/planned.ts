import type { Layout } from '../../../src/layout/index.ts';
import type {
  CardSet,
  Plan,
  PlanningProblem,
  PlanningProgress,
  Shortage,
} from '../../../src/planning/index.ts';
import { GivenUp, type Planner } from '../../planner/browserPlanner.ts';

/** How far the planning of a layout has come. */
export type Planned =
  /** Nothing is known yet. */
  | { readonly stage: 'none' }
  /** A size is not known, so there is nothing to plan; the layout's own problems say which. */
  | { readonly stage: 'unknown'; readonly of: Layout }
  /** The plan that is made at once stands (or there is none), and a better one or its proof is looked for. */
  | {
      readonly stage: 'first';
      readonly of: Layout;
      readonly plan: Plan | null;
      readonly progress: PlanningProgress | null;
    }
  /** The plan with its proof, or what is short; `problems` follow a moment later. */
  | {
      readonly stage: 'answered';
      readonly of: Layout;
      readonly answer: Plan | Shortage;
      readonly problems: readonly PlanningProblem[] | null;
    }
  | { readonly stage: 'failed'; readonly of: Layout; readonly message: string };

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
): { plan(set: CardSet): void; close(): void } {
  let control = new AbortController();
  return {
    plan(set) {
      control.abort(new GivenUp('A newer layout took its place.'));
      control = new AbortController();
      const { signal } = control;
      const of = set.layout;
      if (set.arrangement.parts.some(({ cut }) => cut === null)) {
        tell({ stage: 'unknown', of });
        return;
      }
      plannedOnce(planner, set, signal, tell).catch((problem: unknown) => {
        if (signal.aborted || problem instanceof GivenUp) return;
        tell({ stage: 'failed', of, message: problem instanceof Error ? problem.message : String(problem) });
      });
    },
    close: () => control.abort(new GivenUp('The layout was laid away.')),
  };
}

async function plannedOnce(
  planner: Planner,
  set: CardSet,
  signal: AbortSignal,
  tell: (planned: Planned) => void,
): Promise<void> {
  const of = set.layout;
  let first: Plan | null = null;
  const answer = await planner.plan(set, {
    signal,
    onFirst(plan) {
      first = plan;
      tell({ stage: 'first', of, plan, progress: null });
    },
    onProgress: (progress) => tell({ stage: 'first', of, plan: first, progress }),
  });
  tell({ stage: 'answered', of, answer, problems: null });
  const problems = await planner.ask({ name: 'check', set, answer }, { signal });
  tell({ stage: 'answered', of, answer, problems });
}
