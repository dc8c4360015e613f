import { highsSolver, type LinearSolver } from '../../src/cutting/index.ts';
import { planSet, quickSet } from '../../src/planning/index.ts';
import { type Answer, messagesVersion, type Request } from './messages.ts';

/** The end of the line that a worker holds. */
export interface Port {
  post(answer: Answer): void;
  onRequest(heard: (request: Request) => void): void;
}

/** Answers whatever is asked through the port, for as long as the worker lives. */
export function serve(port: Port): void {
  port.onRequest((request) => void answer(request, port));
  port.post({ kind: 'ready', version: messagesVersion });
}

async function answer({ kind, id, set }: Request, port: Port): Promise<void> {
  try {
    if (kind === 'first') {
      port.post({ kind: 'first', id, plan: quickSet(set) });
      return;
    }
    solver ??= openSolver();
    const found = planSet({
      ...set,
      solver: await solver,
      onProgress: (progress) => port.post({ kind: 'progress', id, progress }),
    });
    port.post({ kind: 'planned', id, answer: found });
  } catch (problem) {
    port.post({ kind: 'failed', id, message: problem instanceof Error ? problem.message : String(problem) });
  }
}

/** Loaded when the first proof begins, so that no first answer waits for it. */
let solver: Promise<LinearSolver> | undefined;

async function openSolver(): Promise<LinearSolver> {
  const { default: load } = await import('highs');
  return highsSolver(await load());
}
