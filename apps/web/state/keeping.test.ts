import { expect, it } from 'vitest';
import type { Json } from '../../../src/files/index.ts';
import { keepingIn } from './keeping.ts';
import { newsOn } from './news.ts';

function preferences() {
  const kept = new Map<string, Json>();
  return {
    preference: async (name: string) => kept.get(name),
    prefer: async (name: string, value: Json) => void kept.set(name, value),
  };
}

it('the browser is asked once for its promise, however often the page is opened', async () => {
  const shelf = preferences();
  let asked = 0;
  const storage = {
    persisted: async () => asked > 0,
    persist: async () => {
      asked += 1;
      return true;
    },
  };
  const keeping = keepingIn(shelf, storage);
  expect(await keeping.promised()).toBe('not promised');
  await Promise.all([keeping.askOnce(), keeping.askOnce()]);
  await keepingIn(shelf, storage).askOnce();
  expect(asked).toBe(1);
  expect(await keeping.promised()).toBe('promised');
});

it('a browser that cannot be asked, or fails, promises nothing', async () => {
  const none = keepingIn(preferences(), undefined);
  await none.askOnce();
  expect(await none.promised()).toBe('cannot be asked');
  const fail = () => Promise.reject(new Error('Not here'));
  const broken = keepingIn(preferences(), { persisted: fail, persist: fail });
  await broken.askOnce();
  expect(await broken.promised()).toBe('cannot be asked');
});

it('news are heard in the page and in the others, and without a channel as well', () => {
  const heard: string[] = [];
  let other = () => {};
  const one = newsOn({
    postMessage: () => heard.push('sent'),
    addEventListener: (_: string, listener: unknown) => {
      other = listener as () => void;
    },
  });
  const stop = one.subscribe(() => heard.push('heard'));
  one.tell();
  other();
  stop();
  other();
  expect(heard).toEqual(['heard', 'sent', 'heard']);
  const alone = newsOn(null);
  alone.subscribe(() => heard.push('alone'));
  alone.tell();
  expect(heard.at(-1)).toBe('alone');
});
