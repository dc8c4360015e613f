import { scriptAddress } from '../scriptAddress.ts';
import mendsWorker from './mendsWorker.ts?worker&url';
import type { Mend, MendsAnswer, MendsAsked } from './messages.ts';

/** Looks for what would mend a layout, apart from the thread that serves the hand. */
export interface Mender {
  /** The mends of each that stands against the layout; `null` where a newer request took its place. */
  mends(asked: Omit<MendsAsked, 'id'>): Promise<readonly (readonly Mend[])[] | null>;
}

/** A mender over one worker, which is started when it is first needed; only the last request is answered. */
export function mender(): Mender {
  let worker: Worker | null = null;
  let last = 0;
  let settle: ((answer: MendsAnswer | null) => void) | null = null;
  const started = (): Worker => {
    const own = new Worker(scriptAddress(mendsWorker), { type: 'module' });
    own.addEventListener('message', ({ data }: MessageEvent<MendsAnswer>) => {
      if (data.id === last) settle?.(data);
    });
    // A mend is an offer: where it cannot be looked for, none is made, and the next request starts anew.
    own.addEventListener('error', () => {
      own.terminate();
      worker = null;
      settle?.(null);
    });
    return own;
  };
  return {
    mends(asked) {
      settle?.(null);
      last += 1;
      worker ??= started();
      worker.postMessage({ ...asked, id: last } satisfies MendsAsked);
      return new Promise((resolve) => {
        settle = (answer) => {
          settle = null;
          resolve(answer?.mends ?? null);
        };
      });
    },
  };
}
