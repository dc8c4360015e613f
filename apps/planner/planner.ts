import type { CardSet, Plan, PlanningProgress, Shortage } from '../../src/planning/index.ts';
import { type Job, type Lane, lane, type StartWorker } from './lane.ts';
import type { Question, QuestionName, Questions, Request } from './messages.ts';

/** Plans sets apart from the thread that asks, which stays free for the hand. */
export interface Planner {
  /**
   * The plan of least cost with its proof, or what is short; the same set has the same answer each time.
   *
   * Rejects with the signal's reason where it is aborted, with `GivenUp` where a newer request took its place, and
   * with `PlannerFailure` where the planner itself failed; the next request works all the same.
   */
  plan(set: CardSet, options?: PlanOptions): Promise<Plan | Shortage>;
  /**
   * Answers a question about a set, in turn with other questions and beside its plan; rejects as `plan` does.
   */
  ask<Name extends QuestionName>(
    question: Question<Name>,
    options?: AskOptions,
  ): Promise<Questions[Name]['tells']>;
  /** Ends the workers; whatever is not answered yet is given up. */
  close(): void;
}

export interface AskOptions {
  /** Gives the request up at once; nothing is called after that. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: PlanningProgress) => void;
}

export interface PlanOptions extends AskOptions {
  /** Gives up all that was asked before and is not answered yet; else requests are answered in turn. */
  readonly instead?: boolean;
  /** Told once, before all else: the plan that is made at once, or `null` where there is none. */
  readonly onFirst?: (plan: Plan | null) => void;
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
 * A planner over workers: one makes first plans and is hardly ever ended, so that it is always quick; one proves,
 * which may take long, and is ended when the proof is no longer wanted; a third, started when it is first needed,
 * answers questions.
 */
export function plannerOver(start: StartWorker): Planner {
  const first = lane(start, { patience: 100 });
  const proof = lane(start);
  let questions: Lane | null = null;
  const open = new Set<(reason: Error) => void>();
  let requests = 0;
  let isClosed = false;

  const giveUpAll = (reason: string) => {
    for (const giveUp of [...open]) giveUp(new GivenUp(reason));
  };

  /** Runs a request until it is settled, failed or given up; `begin` is told its id and says what lanes it is in. */
  const requested = <Told>(
    { signal }: AskOptions,
    begin: (
      id: number,
      ends: { readonly resolve: (told: Told) => void; readonly failed: (reason: string) => void },
    ) => readonly { readonly lane: Lane; readonly job: Job }[],
  ) =>
    new Promise<Told>((resolve, reject) => {
      if (isClosed || signal?.aborted) {
        reject(isClosed ? new GivenUp('The planner was closed.') : (signal?.reason as Error));
        return;
      }
      requests += 1;
      const settle = (how: () => void) => {
        signal?.removeEventListener('abort', aborted);
        open.delete(giveUp);
        how();
      };
      const giveUp = (reason: Error) => {
        settle(() => reject(reason));
        for (const { lane: own, job } of jobs) own.drop(job);
      };
      const aborted = () => giveUp(signal?.reason as Error);
      signal?.addEventListener('abort', aborted);
      open.add(giveUp);
      const jobs = begin(requests, {
        resolve: (told) => settle(() => resolve(told)),
        failed: (reason) => settle(() => reject(new PlannerFailure(`The planner failed: ${reason}.`))),
      });
      const [{ lane: own, job }] = jobs as [{ lane: Lane; job: Job }];
      own.add(job);
    });

  return {
    plan(set, options = {}) {
      const { instead = false, onFirst, onProgress } = options;
      if (instead) giveUpAll('A newer request took its place.');
      return requested<Plan | Shortage>(options, (id, { resolve, failed }) => {
        const later: Job = {
          request: { kind: 'plan', id, set },
          answered(answer) {
            if (answer.kind === 'progress') onProgress?.(answer.progress);
            if (answer.kind === 'planned') resolve(answer.answer);
          },
          failed,
        };
        const now: Job = {
          request: { kind: 'first', id, set },
          answered(answer) {
            if (answer.kind !== 'first') return;
            proof.add(later);
            onFirst?.(answer.plan);
          },
          failed,
        };
        return [
          { lane: first, job: now },
          { lane: proof, job: later },
        ];
      });
    },
    ask<Name extends QuestionName>(question: Question<Name>, options: AskOptions = {}) {
      questions ??= lane(start);
      const own = questions;
      return requested<Questions[Name]['tells']>(options, (id, { resolve, failed }) => {
        const request: Request = { kind: 'question', id, question: question as Question };
        const job: Job = {
          request,
          answered(answer) {
            if (answer.kind === 'progress') options.onProgress?.(answer.progress);
            if (answer.kind === 'told') resolve(answer.told);
          },
          failed,
        };
        return [{ lane: own, job }];
      });
    },
    close() {
      isClosed = true;
      giveUpAll('The planner was closed.');
      first.close();
      proof.close();
      questions?.close();
    },
  };
}
