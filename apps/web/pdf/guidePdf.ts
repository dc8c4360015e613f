import { scriptAddress } from '../scriptAddress.ts';
import guideWorker from './guideWorker.ts?worker&url';
import type { GuideAnswer, GuideAsked } from './messages.ts';

export type { GuideAsked } from './messages.ts';

/** A guide as it is to be saved or printed. */
export interface MadeGuide {
  readonly pdf: Uint8Array<ArrayBuffer>;
  readonly pages: number;
}

/** The guide could not be made: our own code is wrong, or its worker could not be started. */
export class GuideFailure extends Error {
  override readonly name = 'GuideFailure';
}

/**
 * The guide, made in a worker of its own, which is ended when it is done or given up. Rejects with a `GuideFailure`,
 * or with the signal's reason.
 */
export function guidePdf(
  asked: GuideAsked,
  { signal }: { readonly signal?: AbortSignal } = {},
): Promise<MadeGuide> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) {
      reject(signal.reason as Error);
      return;
    }
    const worker = new Worker(scriptAddress(guideWorker), { type: 'module' });
    const settle = (how: () => void) => {
      signal?.removeEventListener('abort', givenUp);
      worker.terminate();
      how();
    };
    const givenUp = () => settle(() => reject(signal?.reason as Error));
    signal?.addEventListener('abort', givenUp);
    worker.addEventListener('message', ({ data }: MessageEvent<GuideAnswer>) =>
      settle(() => (data.kind === 'made' ? resolve(data) : reject(new GuideFailure(data.message)))),
    );
    worker.addEventListener('error', ({ message }) =>
      settle(() =>
        reject(
          new GuideFailure(
            message || 'the browser did not start what draws it; loading the page again may help',
          ),
        ),
      ),
    );
    worker.postMessage(asked);
  });
}
