import { sharedName } from './build.ts';
import type { NotTaken, SaidToWorker } from './messages.ts';

/**
 * How far the page itself is kept in this browser. `asked`: not known yet. `being kept`: its files are on their way.
 * `kept`: it opens and works without a network. `not kept`: it could not be, at this visit. `cannot`: the browser
 * keeps no pages, or none from a plain http address.
 */
export type PageKept = 'asked' | 'being kept' | 'kept' | 'not kept' | 'cannot';

export interface OfflineState {
  readonly kept: PageKept;
  /** The file for want of which the page is not kept; `null`: not known, or none. */
  readonly missing: string | null;
  /** Whether a build other than that of this page is kept and waits to be loaded. */
  readonly isNewer: boolean;
}

/** What the page is without its host. */
export interface Offline {
  state(): OfflineState;
  /** Calls when the state has changed; the answer ends that. */
  subscribe(listener: () => void): () => void;
  /**
   * Loads the page again, in its newer build; other pages go on in theirs. `unsaved`: not done, since something would
   * be lost by it.
   */
  loadNewer(): Promise<'loading' | 'unsaved'>;
  /** Looks whether the host has a newer build. */
  lookAgain(): void;
}

/** What a page is to this. */
export interface PageWorld {
  /** Those that answer for hosts in this browser, where it has any. */
  readonly container: ServiceWorkerContainer | undefined;
  readonly locks: Pick<LockManager, 'request'> | undefined;
  /** Where the script of the worker is. */
  readonly worker: URL;
  /** The address of the folder of the page, with the slash at its end. */
  readonly folder: string;
  /** The name of the build that the page is of. */
  readonly build: string;
  /** When the page has all that its first screen needs, so that nothing is kept waiting by this. */
  readonly loaded: Promise<unknown>;
  /** Whether something would be lost if the page were loaded again. */
  isUnsaved(): boolean;
  reload(): void;
}

/** Has the browser keep the page, and knows how far that has come. */
export function offlineOf(page: PageWorld): Offline {
  const listeners = new Set<() => void>();
  let state: OfflineState = { kept: 'asked', missing: null, isNewer: false };
  let registration: ServiceWorkerRegistration | null = null;
  const { container, locks } = page;
  if (container === undefined) become({ kept: 'cannot' });
  else begin(container).catch(() => become({ kept: 'not kept' }));

  async function begin(workers: ServiceWorkerContainer): Promise<void> {
    workers.addEventListener('message', ({ data }: MessageEvent<NotTaken>) => {
      if (state.kept !== 'kept') become({ missing: data.missing });
    });
    workers.addEventListener('controllerchange', look);
    // The files of a build stay while a page holds this; it ends with the page, however that ends.
    void locks?.request(sharedName(page.folder, page.build), { mode: 'shared' }, () => {
      say(workers.controller, 'here');
      return new Promise(() => {});
    });
    await page.loaded;
    registration = await workers.register(page.worker, { updateViaCache: 'none' });
    registration.addEventListener('updatefound', watch);
    watch();
  }

  /** Looks again with each stage that a worker on its way comes to. */
  function watch(): void {
    registration?.installing?.addEventListener('statechange', look);
    look();
  }

  function look(): void {
    if (registration === null) return;
    const { installing, waiting, active } = registration;
    const isComing = installing !== null || waiting !== null;
    become({ kept: active !== null ? 'kept' : isComing ? 'being kept' : 'not kept' });
    const newest = waiting ?? active;
    if (newest === null) return;
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => {
      port1.close();
      become({ isNewer: data !== page.build });
    };
    say(newest, 'which build', port2);
  }

  function become(change: Partial<OfflineState>): void {
    const next = { ...state, ...change };
    if (next.kept === state.kept && next.missing === state.missing && next.isNewer === state.isNewer) return;
    state = next;
    for (const listener of [...listeners]) listener();
  }

  return {
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async loadNewer() {
      if (page.isUnsaved()) return 'unsaved';
      const waiting = registration?.waiting ?? null;
      if (waiting !== null) await tookOver(waiting);
      // Something may have been done meanwhile.
      if (page.isUnsaved()) return 'unsaved';
      page.reload();
      return 'loading';
    },
    lookAgain() {
      // Without a network there is no telling, and the next time will do.
      registration?.update().catch(() => {});
    },
  };
}

/** When the worker serves in place of the one before, or has given way to another. */
function tookOver(waiting: ServiceWorker): Promise<void> {
  return new Promise((resolve) => {
    const hear = () => {
      if (waiting.state === 'activated' || waiting.state === 'redundant') resolve();
    };
    waiting.addEventListener('statechange', hear);
    say(waiting, 'take over');
    hear();
  });
}

function say(worker: ServiceWorker | null, said: SaidToWorker, ...ports: MessagePort[]): void {
  worker?.postMessage(said, ports);
}
