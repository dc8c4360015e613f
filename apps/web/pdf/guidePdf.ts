import type { Page } from '../../../src/drawing/index.ts';
import { assert } from '../../../src/problem/index.ts';
import { scriptAddress } from '../scriptAddress.ts';
import guideWorker from './guideWorker.ts?worker&url';
import type {
  GuideAnswer,
  GuideAsked,
  GuideLaid,
  GuideMade,
  GuideRequest,
  KitGuideAsked,
} from './messages.ts';

export type { GuideAsked } from './messages.ts';

/** A guide as it is to be saved or printed. */
export type MadeGuide = Pick<GuideMade, 'pdf' | 'pages'>;

/** The guide could not be made: our own code is wrong, or its worker could not be started. */
export class GuideFailure extends Error {
  override readonly name = 'GuideFailure';
}

/**
 * The guide, made in a worker of its own, which is ended when it is done or given up. Rejects with a `GuideFailure`,
 * or with the signal's reason.
 */
export async function guidePdf(of: GuideAsked | KitGuideAsked, signal: AbortSignal): Promise<MadeGuide> {
  const answer = await answered({ kind: 'print', of }, signal);
  assert(answer.kind === 'made', 'A guide to print is made');
  return answer;
}

/** Its pages, as they are printed; made and given up like the guide. */
export async function guidePages(of: GuideAsked, signal: AbortSignal): Promise<readonly Page[]> {
  const answer = await answered({ kind: 'look', of }, signal);
  assert(answer.kind === 'laid', 'A guide to look at is laid out');
  return answer.pages;
}

function answered(request: GuideRequest, signal: AbortSignal): Promise<GuideMade | GuideLaid> {
  return new Promise((resolve, reject) => {
    if (signal.aborted) {
      reject(signal.reason as Error);
      return;
    }
    const worker = new Worker(scriptAddress(guideWorker), { type: 'module' });
    const settle = (how: () => void) => {
      signal.removeEventListener('abort', givenUp);
      worker.terminate();
      how();
    };
    const givenUp = () => settle(() => reject(signal.reason as Error));
    signal.addEventListener('abort', givenUp);
    worker.addEventListener('message', ({ data }: MessageEvent<GuideAnswer>) =>
      settle(() => (data.kind === 'failed' ? reject(new GuideFailure(data.message)) : resolve(data))),
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
    worker.postMessage(request);
  });
}
