import { expect, it } from 'vitest';
import { type Offline, offlineOf } from './offline.ts';

/** A worker that knows its build, and takes over when it is told to. */
class FakeWorker extends EventTarget {
  state = 'installed';
  readonly said: unknown[] = [];

  constructor(readonly build: string) {
    super();
  }
  postMessage(said: unknown, [port]: readonly MessagePort[] = []): void {
    this.said.push(said);
    port?.postMessage(this.build);
    if (said !== 'take over') return;
    this.state = 'activated';
    this.dispatchEvent(new Event('statechange'));
  }
}

/** A page of the build `first` in a browser whose workers these are. */
function pageWith(
  workers: {
    readonly installing?: FakeWorker;
    readonly waiting?: FakeWorker;
    readonly active?: FakeWorker;
  } | null,
) {
  const world = { isUnsaved: false, reloads: 0 };
  const registration = Object.assign(new EventTarget(), {
    installing: null,
    waiting: null,
    active: null,
    update: async () => {},
    ...workers,
  });
  const container = Object.assign(new EventTarget(), {
    controller: null,
    register: async () => {
      if (workers === null) throw new TypeError('there is no such script');
      return registration;
    },
  });
  const offline = offlineOf({
    // The little of it that is used; the rest of the browser's own no test can make.
    container: container as unknown as ServiceWorkerContainer,
    locks: undefined,
    worker: new URL('http://craft.home.arpa/offline.js'),
    folder: 'http://craft.home.arpa/',
    build: 'first',
    loaded: Promise.resolve(),
    isUnsaved: () => world.isUnsaved,
    reload: () => {
      world.reloads += 1;
    },
  });
  return { offline, world, registration, container };
}

/** Waits until the state is so. */
async function becomes(offline: Offline, state: Partial<ReturnType<Offline['state']>>): Promise<void> {
  await expect.poll(offline.state).toMatchObject(state);
}

it('a browser that keeps no pages is told apart from one that failed to', async () => {
  const none = offlineOf({
    container: undefined,
    locks: undefined,
    worker: new URL('http://craft.home.arpa/offline.js'),
    folder: 'http://craft.home.arpa/',
    build: 'first',
    loaded: Promise.resolve(),
    isUnsaved: () => false,
    reload: () => {},
  });
  expect(none.state().kept).toBe('cannot');
  await becomes(pageWith(null).offline, { kept: 'not kept' });
});

it('a page is being kept until its worker serves, and knows which file was missing', async () => {
  const coming = new FakeWorker('first');
  const { offline, registration, container } = pageWith({ installing: coming });
  await becomes(offline, { kept: 'being kept' });
  container.dispatchEvent(Object.assign(new Event('message'), { data: { missing: 'assets/a.js' } }));
  Object.assign(registration, { installing: null });
  coming.dispatchEvent(new Event('statechange'));
  expect(offline.state()).toEqual({ kept: 'not kept', missing: 'assets/a.js', isNewer: false });
  Object.assign(registration, { active: coming });
  container.dispatchEvent(new Event('controllerchange'));
  expect(offline.state().kept).toBe('kept');
});

it('the build that is kept last is newer where it is not that of the page', async () => {
  await becomes(pageWith({ active: new FakeWorker('first') }).offline, { kept: 'kept', isNewer: false });
  const waiting = pageWith({ active: new FakeWorker('first'), waiting: new FakeWorker('second') });
  await becomes(waiting.offline, { kept: 'kept', isNewer: true });
  // Another window has it already.
  await becomes(pageWith({ active: new FakeWorker('second') }).offline, { isNewer: true });
  // This page came from the host, past an older one that is kept.
  const ahead = pageWith({ active: new FakeWorker('older'), waiting: new FakeWorker('first') });
  await becomes(ahead.offline, { kept: 'kept', isNewer: false });
});

it('a newer build takes over and is loaded when it is asked for, and not while something is unsaved', async () => {
  const second = new FakeWorker('second');
  const { offline, world } = pageWith({ active: new FakeWorker('first'), waiting: second });
  await becomes(offline, { isNewer: true });
  world.isUnsaved = true;
  expect(await offline.loadNewer()).toBe('unsaved');
  expect(second.said).not.toContain('take over');
  expect(world.reloads).toBe(0);
  world.isUnsaved = false;
  expect(await offline.loadNewer()).toBe('loading');
  expect(second.said).toContain('take over');
  expect(world.reloads).toBe(1);
});

it('what is done while a newer build takes over keeps the page from being loaded again', async () => {
  const second = new FakeWorker('second');
  const { offline, world } = pageWith({ active: new FakeWorker('first'), waiting: second });
  await becomes(offline, { isNewer: true });
  second.addEventListener('statechange', () => {
    world.isUnsaved = true;
  });
  expect(await offline.loadNewer()).toBe('unsaved');
  expect(world.reloads).toBe(0);
});
