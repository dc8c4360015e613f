import { expect, it } from 'vitest';
import type { Json } from '../../../src/files/index.ts';
import { keepingIn } from './keeping.ts';
import { type Channel, newsFromOthers, newsOn } from './news.ts';

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

/** A channel between pages: what one says, all others hear. */
function channels() {
  const pages: ((event: MessageEvent) => void)[][] = [];
  return (): Channel => {
    const own: ((event: MessageEvent) => void)[] = [];
    pages.push(own);
    return {
      postMessage: (data: unknown) => {
        for (const page of pages) if (page !== own) for (const hear of page) hear({ data } as MessageEvent);
      },
      addEventListener: (_: string, listener: unknown) => {
        own.push(listener as (event: MessageEvent) => void);
      },
    };
  };
}

it('news are heard in the page and in the others, and without a channel as well', () => {
  const channel = channels();
  const [one, other, alone] = [newsOn(channel()), newsOn(channel()), newsOn(null)];
  const heard: string[] = [];
  one.subscribe(() => heard.push('one'));
  const leave = other.subscribe(() => heard.push('other'));
  alone.subscribe(() => heard.push('alone'));
  one.tell();
  alone.tell();
  leave();
  one.tell();
  expect(heard).toEqual(['one', 'other', 'alone', 'one']);
});

it('news for others are not heard in the page that tells them, nor by who listens for something else', () => {
  const channel = channels();
  const [mine, yours] = [channel(), channel()];
  const heard: string[] = [];
  newsFromOthers(mine, 'cutting').subscribe(() => heard.push('mine'));
  newsFromOthers(yours, 'cutting').subscribe(() => heard.push('yours'));
  newsFromOthers(yours, 'bench').subscribe(() => heard.push('bench'));
  newsOn(yours).subscribe(() => heard.push('shelf'));
  newsFromOthers(mine, 'cutting').tell();
  newsFromOthers(null, 'cutting').tell();
  expect(heard).toEqual(['yours']);
});
