import { StrictMode, startTransition } from 'react';
import { createRoot } from 'react-dom/client';
import { browserPlanner } from '../planner/browserPlanner.ts';
import plannerWorker from '../planner/webWorker.ts?worker&url';
import { App } from './app.tsx';
import './look/page.css';
import './look/form.css';
import { mender } from './mending/mender.ts';
import { english } from './messages/english/english.ts';
import { MessagesContext } from './messages/messages.ts';
import { offlineOf } from './offline/offline.ts';
import { scriptAddress } from './scriptAddress.ts';
import { benchesIn } from './state/benches.ts';
import { cuttingKeptIn } from './state/cutting.ts';
import { deskBefore } from './state/desk.ts';
import { keepingIn } from './state/keeping.ts';
import { newsFromOthers, newsOn } from './state/news.ts';
import { standardsKeptIn } from './state/standards.ts';
import { benchIn } from './storage/bench.ts';
import { databaseNamed } from './storage/database.ts';
import { beginFreshLog } from './storage/freshLog.ts';
import { keptOrNot } from './storage/keptOrNot.ts';
import { kitsIn } from './storage/kits.ts';
import { databaseInMemory } from './storage/memory.ts';
import { shelfIn } from './storage/shelf.ts';
import { WorldProvider } from './world.ts';

const now = () => Date.now();
const later = (milliseconds: number, what: () => void) => {
  const timer = window.setTimeout(what, milliseconds);
  return () => window.clearTimeout(timer);
};
const newId = () =>
  crypto
    .getRandomValues(new Uint32Array(4))
    .reduce((id, part) => id + part.toString(36).padStart(7, '0'), '');

const channel = 'BroadcastChannel' in window ? new BroadcastChannel('cardwright') : null;
const news = newsOn(channel);
const database = keptOrNot(
  {
    has: () => Boolean((window as Partial<typeof globalThis>).indexedDB),
    database: databaseNamed('cardwright', beginFreshLog),
  },
  databaseInMemory,
);
const { isKept } = database;
const shelf = shelfIn(database, newId, news.tell);
const kits = kitsIn(database, newId, news.tell);
// Pages over plain http are given none of it.
const keeping = keepingIn(shelf, (navigator as Partial<Navigator>).storage);
const stopAsking = news.subscribe(() => {
  stopAsking();
  void keeping.askOnce();
});
const workers = browserPlanner(scriptAddress(plannerWorker));
const cutting = cuttingKeptIn(shelf, newsFromOthers(channel, 'cutting'));
const standards = standardsKeptIn(shelf, newsFromOthers(channel, 'standards'));
const desk = deskBefore({ shelf, planner: workers, cutting, standards }, { later, newId });
const benches = benchesIn(benchIn(database, news.tell), { later, newId }, newsFromOthers(channel, 'bench'));

/** Whether something is on the shelf that goes with the page. */
let goesWithPage = false;
void isKept.then((isSo) => {
  if (!isSo)
    news.subscribe(() => {
      goesWithPage = true;
    });
});

// Every step is saved at once, so something is unsaved only after a failure, or within the same blink.
const isUnsaved = () => goesWithPage || desk.isUnsaved() || benches.isUnsaved();
window.addEventListener('beforeunload', (event) => {
  if (isUnsaved()) event.preventDefault();
});

/** The build that the page is of; it has no name where it is not built but developed. */
const build = document.querySelector<HTMLMetaElement>('meta[name=build]')?.content ?? '';
const loaded = new Promise((resolve) => {
  if (document.readyState === 'complete') resolve(undefined);
  else window.addEventListener('load', resolve, { once: true });
});
// Pages over plain http have neither workers that answer for hosts nor locks.
const { serviceWorker, locks }: Partial<Navigator> = navigator;
const offline = offlineOf({
  container: build === '' ? undefined : serviceWorker,
  locks,
  worker: scriptAddress('./offline.js'),
  folder: new URL('.', document.baseURI).href,
  build,
  loaded,
  isUnsaved,
  reload: () => window.location.reload(),
});
const world = {
  shelf,
  kits,
  news,
  keeping,
  planner: workers,
  mender: mender(),
  desk,
  benches,
  cutting,
  standards,
  offline,
  isKept,
  now,
  newId,
};

document.addEventListener('visibilitychange', () => {
  if (document.visibilityState !== 'visible') return;
  desk.saveAgain();
  // Browsers without a channel tell no news.
  benches.lookAgain();
  cutting.lookAgain();
  offline.lookAgain();
});

// `?pseudo` shows the page in the language that nobody speaks, for the tests of the catalogue.
const messages = new URLSearchParams(window.location.search).has('pseudo')
  ? (await import('./messages/pseudo.ts')).pseudoMessages()
  : english;

// Nothing is there yet that would have to answer, so it is drawn bit by bit.
startTransition(() =>
  createRoot(document.getElementById('page')!).render(
    <StrictMode>
      <WorldProvider value={world}>
        <MessagesContext value={messages}>
          <App />
        </MessagesContext>
      </WorldProvider>
    </StrictMode>,
  ),
);
