import { Worker } from 'node:worker_threads';
import type { Answer } from './messages.ts';
import { type Planner, plannerOver } from './planner.ts';

export type { Question, QuestionName, Questions } from './messages.ts';
export { type AskOptions, GivenUp, type Planner, PlannerFailure, type PlanOptions } from './planner.ts';

/** A planner over worker threads of Node. Idle, it does not keep the process from ending. */
export function planner({ worker = new URL('./nodeWorker.js', import.meta.url) } = {}): Planner {
  return plannerOver(({ answer, broken }) => {
    const thread = new Worker(worker);
    thread.on('message', (message: Answer) => answer(message));
    thread.on('error', (error) => broken(error.message));
    thread.on('exit', (code) => broken(`its worker ended with ${code}`));
    return {
      post: (request) => thread.postMessage(request),
      end: () => void thread.terminate(),
      busy: (busy) => (busy ? thread.ref() : thread.unref()),
    };
  });
}
