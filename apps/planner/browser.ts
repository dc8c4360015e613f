import { browserPlanner, type Planner } from './browserPlanner.ts';

export {
  type AskOptions,
  GivenUp,
  type Planner,
  PlannerFailure,
  type PlanOptions,
  type Question,
  type QuestionName,
  type Questions,
} from './browserPlanner.ts';

/** A planner over module workers of a browser; `worker` is where their script is, beside this one by default. */
export function planner({ worker = new URL('./webWorker.js', import.meta.url) } = {}): Planner {
  return browserPlanner(worker);
}
