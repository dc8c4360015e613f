import type { CardSet, Plan, PlanningProgress, Shortage } from '../../src/planning/index.ts';
import { type Job, lane, type StartWorker } from './lane.ts';

/** Plans sets apart from the thread that asks, which stays free for the hand. */
export interface Planner {
  /**
   * The plan of least cost with its proof, or what is short; the same set has the same answer each time.
   *
   * Rejects with the signal's reason where it is aborted, with `GivenUp` where a newer request took its place, and
   * with `PlannerFailure` where the planner itself failed; the next request works all the same.
   */
  plan(set: CardSet, options?: PlanOptions): Promise<Plan | Shortage>;
  /** Ends the workers; whatever is not answered yet is given up. */
  close(): void;
}

export interface PlanOptions {
  /** Gives the request up at once; nothing is called after that. */
  readonly signal?: AbortSignal;
  /** Gives up all that was asked before and is not answered yet; else requests are answered in turn. */
  readonly instead?: boolean;
  /** Told once, before all else: the plan that is made at once, or `null` where there is none. */
  readonly onFirst?: (plan: Plan | null) => void;
  readonly onProgress?: (progress: PlanningProgress) => void;
}

/** The request was given up, for a newer one or because the planner was closed. */
export class GivenUp extends Error {
  override readonly name = 'AbortError';
}

/** The planner itself failed; the message says how. */
export class PlannerFailure extends Error {
  override readonly name = 'PlannerFailure';
}

/**
 * A planner over two workers: one makes first plans and is hardly ever ended, so that it is always quick; the other
 * proves, which may take long, and is ended when the proof is no longer wanted.
 */
export function plannerOver(start: StartWorker): Planner {
  const first = lane(start, { patience: 100 });
  const proof = lane(start);
  const open = new Set<(reason: Error) => void>();
  let requests = 0;
  let isClosed = false;

  const plan = (set: CardSet, options: PlanOptions = {}) =>
    new Promise<Plan | Shortage>((resolve, reject) => {
      const { signal, instead = false, onFirst, onProgress } = options;
      if (instead) giveUpAll('A newer request took its place.');
      requests += 1;
      const id = requests;
      const jobs: Job[] = [
        {
          request: { kind: 'first', id, set },
          answered(answer) {
            if (answer.kind !== 'first') return;
            proof.add(jobs[1]!);
            onFirst?.(answer.plan);
          },
          failed,
        },
        {
          request: { kind: 'plan', id, set },
          answered(answer) {
            if (answer.kind === 'progress') onProgress?.(answer.progress);
            if (answer.kind === 'planned') settle(() => resolve(answer.answer));
          },
          failed,
        },
      ];
      if (isClosed || signal?.aborted) {
        reject(isClosed ? new GivenUp('The planner was closed.') : (signal?.reason as Error));
        return;
      }
      const aborted = () => giveUp(signal?.reason as Error);
      signal?.addEventListener('abort', aborted);
      open.add(giveUp);
      first.add(jobs[0]!);

      function giveUp(reason: Error) {
        settle(() => reject(reason));
        first.drop(jobs[0]!);
        proof.drop(jobs[1]!);
      }
      function failed(reason: string) {
        settle(() => reject(new PlannerFailure(`The planner failed: ${reason}.`)));
      }
      function settle(how: () => void) {
        signal?.removeEventListener('abort', aborted);
        open.delete(giveUp);
        how();
      }
    });

  const giveUpAll = (reason: string) => {
    for (const giveUp of [...open]) giveUp(new GivenUp(reason));
  };

  return {
    plan,
    close() {
      isClosed = true;
      giveUpAll('The planner was closed.');
      first.close();
      proof.close();
    },
  };
}
