import type { Answer, Request } from './messages.ts';
import { type Planner, plannerOver } from './planner.ts';

export type { Question, QuestionName, Questions } from './messages.ts';
export { type AskOptions, GivenUp, type Planner, PlannerFailure, type PlanOptions } from './planner.ts';

/** The little of a browser that is used here. */
declare const Worker: new (
  url: URL,
  options: { readonly type: 'module' },
) => {
  postMessage(request: Request): void;
  terminate(): void;
  addEventListener(type: 'message', heard: (event: { readonly data: Answer }) => void): void;
  addEventListener(type: 'error', heard: (event: { readonly message?: string }) => void): void;
};

/** A planner over module workers of a browser, whose script is `webWorker`, wherever it was put. */
export function browserPlanner(worker: URL): Planner {
  return plannerOver(({ answer, broken }) => {
    const own = new Worker(worker, { type: 'module' });
    own.addEventListener('message', ({ data }) => answer(data));
    own.addEventListener('error', ({ message }) => {
      own.terminate();
      broken(message ?? 'its worker could not be started');
    });
    return {
      post: (request) => own.postMessage(request),
      end: () => own.terminate(),
      // A page ends when it is closed, whatever its workers do.
      busy: () => undefined,
    };
  });
}
