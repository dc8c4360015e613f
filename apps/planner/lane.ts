import { type Answer, messagesVersion, type Request } from './messages.ts';

/** A worker that runs, wherever it does. */
export interface RunningWorker {
  post(request: Request): void;
  /** Ends it at once, whatever it is doing. */
  end(): void;
  /** Whether it has work to do, for which the process must go on. */
  busy(busy: boolean): void;
}

/** What a worker that was started is heard by. */
export interface Hearing {
  answer(answer: Answer): void;
  /** The worker has come to an end that nobody asked for; nothing more is heard of it. */
  broken(reason: string): void;
}

export type StartWorker = (hearing: Hearing) => RunningWorker;

/** Something to be asked of a worker, and who is told. */
export interface Job {
  readonly request: Request;
  /** Told all that is found; all but `progress` is the last that is told. */
  answered(answer: Exclude<Answer, { kind: 'ready' | 'failed' }>): void;
  failed(reason: string): void;
}

/** A worker that does one job after another. */
export interface Lane {
  add(job: Job): void;
  /** Gives up a job: nothing more is told of it, and the next need not wait for it. */
  drop(job: Job): void;
  close(): void;
}

/**
 * A worker that is started ahead of its first job, does one job after another, and is started anew where it breaks
 * or what it does is given up.
 *
 * `patience`, in milliseconds: how long a job that was given up may go on before its worker is ended, for jobs
 * that are mostly over sooner than a worker starts.
 */
export function lane(start: StartWorker, { patience = 0 } = {}): Lane {
  const waiting: Job[] = [];
  let worker: RunningWorker | null = null;
  let isReady = false;
  let isClosed = false;
  let current: Job | null = null;
  let dropped: Job | null = null;

  const begin = () => {
    isReady = false;
    const own: RunningWorker = start({
      answer: (answer) => {
        if (own === worker) heard(answer);
      },
      broken: (reason) => {
        if (own === worker) broken(reason);
      },
    });
    worker = own;
    own.busy(waiting.length > 0);
  };

  const end = () => {
    worker?.end();
    worker = null;
    current = null;
  };

  const restart = () => {
    end();
    if (!isClosed) begin();
  };

  const next = () => {
    if (current !== null || isClosed) return;
    if (worker === null) begin();
    if (!isReady) {
      worker?.busy(waiting.length > 0);
      return;
    }
    current = waiting.shift() ?? null;
    worker?.busy(current !== null);
    if (current !== null) worker?.post(current.request);
  };

  const heard = (answer: Answer) => {
    if (answer.kind === 'ready') {
      if (answer.version !== messagesVersion) {
        broken('it is of another version than the program that asks it; load the page again');
        return;
      }
      isReady = true;
      next();
      return;
    }
    const job = current;
    if (job === null || answer.id !== job.request.id) return;
    const isTold = job !== dropped;
    if (answer.kind === 'failed') {
      // What our own mistake has left behind in there is not known.
      restart();
      if (isTold) job.failed(answer.message);
      return;
    }
    if (answer.kind !== 'progress') current = null;
    if (isTold) job.answered(answer);
    if (answer.kind !== 'progress') next();
  };

  const broken = (reason: string) => {
    // One that did not even start would not start for the others either.
    const failed = isReady ? [current] : waiting.splice(0);
    // Only one that did some work is started again at once; for any other the next job tries.
    if (current !== null) restart();
    else end();
    for (const job of failed) if (job !== null && job !== dropped) job.failed(reason);
  };

  begin();
  return {
    add(job) {
      waiting.push(job);
      next();
    },
    drop(job) {
      const place = waiting.indexOf(job);
      if (place >= 0) waiting.splice(place, 1);
      if (job !== current || job === dropped) return;
      dropped = job;
      const giveUp = () => {
        if (current === job) restart();
      };
      if (patience > 0) setTimeout(giveUp, patience);
      else giveUp();
    },
    close() {
      isClosed = true;
      waiting.length = 0;
      end();
    },
  };
}
