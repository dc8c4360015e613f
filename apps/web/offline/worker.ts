import { type Build, sharedName, sharedNamesOf } from './build.ts';
import { keptBuilds } from './keptBuilds.ts';
import type { NotTaken, SaidToWorker } from './messages.ts';

/** The build that this worker was made for, filled in when it is built. */
declare const ownBuild: Build;

/** The little of a browser's service worker that is used here. */
declare const self: {
  readonly registration: {
    readonly scope: string;
    readonly installing: object | null;
    readonly waiting: object | null;
  };
  readonly clients: {
    claim(): Promise<void>;
    matchAll(which: { readonly type: 'window'; readonly includeUncontrolled: true }): Promise<
      readonly {
        readonly url: string;
        readonly frameType: string;
        postMessage(said: NotTaken): void;
      }[]
    >;
  };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', heard: (event: Lasting) => void): void;
  addEventListener(
    type: 'fetch',
    heard: (event: { readonly request: Request; respondWith(answer: Promise<Response>): void }) => void,
  ): void;
  addEventListener(
    type: 'message',
    heard: (event: Lasting & { readonly data: SaidToWorker; readonly ports: readonly MessagePort[] }) => void,
  ): void;
};

interface Lasting {
  /** The worker is not put to sleep before this is over. */
  waitUntil(work: Promise<unknown>): void;
}

/* Keeps one build of the page and answers for its host, so that the page opens and works without a network. */

const folder = self.registration.scope;
const kept = keptBuilds(folder, caches, (address, integrity) =>
  fetch(address, { cache: 'no-cache', integrity }),
);

self.addEventListener('install', (event) => event.waitUntil(taken()));
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'GET' && url.startsWith(folder)) event.respondWith(answer(event.request));
});

self.addEventListener('message', (event) => {
  switch (event.data) {
    case 'which build':
      event.ports[0]?.postMessage(ownBuild.name);
      return;
    case 'take over':
      event.waitUntil(self.skipWaiting());
      return;
    case 'here':
      event.waitUntil(tidied());
      return;
  }
});

/** A build is taken whole, or this worker never comes to serve. */
async function taken(): Promise<void> {
  const missing = await kept.take(ownBuild);
  if (missing === null) return;
  for (const page of await pages()) page.postMessage({ missing });
  throw new Error(`${missing || 'the page itself'} is missing at its host, or is not what it was built as`);
}

async function answer(request: Request): Promise<Response> {
  const { origin, pathname } = new URL(request.url);
  const address = `${origin}${pathname}`.slice(folder.length);
  const found = await kept.find(address === 'index.html' ? '' : address, ownBuild.name);
  return found ?? fetch(request);
}

/** Lets go of the builds that no page is of. */
async function tidied(): Promise<void> {
  // A later build may be kept already, which no page can be of yet.
  if (self.registration.installing !== null || self.registration.waiting !== null) return;
  // Where locks are not known, nobody can say which build a page is of; then all of them stay.
  if ((navigator as Partial<Navigator>).locks === undefined) return;
  const { held = [] } = await navigator.locks.query();
  const names = held.flatMap(({ name = '' }) => (name.startsWith(sharedNamesOf(folder)) ? [name] : []));
  // One that is only just coming has not said yet which build it is of.
  if ((await pages()).length > names.length) return;
  await kept.keepOnly(new Set([...names, sharedName(folder, ownBuild.name)]));
}

async function pages() {
  const all = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  return all.filter(({ url, frameType }) => url.startsWith(folder) && frameType !== 'nested');
}
