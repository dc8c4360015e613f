import { expect, it } from 'vitest';
import { sharedName } from './build.ts';
import { type Caches, keptBuilds } from './keptBuilds.ts';

const folder = 'http://craft.home.arpa/our/cards/';
const other = 'http://craft.home.arpa/our/';

/** Caches that forget nothing, and can be told to be full. */
class Drawer implements Caches {
  readonly caches = new Map<string, Map<string, Response>>();
  room = Number.POSITIVE_INFINITY;

  async has(name: string): Promise<boolean> {
    return this.caches.has(name);
  }
  async keys(): Promise<readonly string[]> {
    return [...this.caches.keys()];
  }
  async delete(name: string): Promise<boolean> {
    return this.caches.delete(name);
  }
  async open(name: string) {
    const held = this.caches.get(name) ?? new Map<string, Response>();
    this.caches.set(name, held);
    return {
      match: async (address: string) => held.get(address)?.clone(),
      put: async (address: string, response: Response) => {
        if (this.room === 0) throw new Error('no more room');
        this.room -= 1;
        held.set(address, response);
      },
    };
  }
}

/** A host with these files; a digest here is the very text of a file. */
function host(files: Readonly<Record<string, string>>) {
  return async (address: string, digest: string): Promise<Response> => {
    const text = files[address];
    if (text === undefined) return new Response('no such file', { status: 404 });
    if (text !== digest) throw new TypeError('not what its digest says');
    return new Response(text);
  };
}

const first = { name: 'first', files: { '': 'page 1', 'assets/index-1.js': 'script 1' } };
const second = { name: 'second', files: { '': 'page 2', 'assets/index-2.js': 'script 2' } };
const hosted = (build: { readonly files: Readonly<Record<string, string>> }) =>
  host(Object.fromEntries(Object.entries(build.files).map(([address, text]) => [folder + address, text])));

it('a build is kept whole, and answers for its files', async () => {
  const kept = keptBuilds(folder, new Drawer(), hosted(first));
  expect(await kept.find('', 'first')).toBeUndefined();
  expect(await kept.take(first)).toBeNull();
  expect(await (await kept.find('', 'first'))?.text()).toBe('page 1');
  expect(await (await kept.find('assets/index-1.js', 'first'))?.text()).toBe('script 1');
  expect(await kept.find('assets/index-2.js', 'first')).toBeUndefined();
});

it.each([
  ['missing', { [folder]: 'page 1' }],
  ['of another build', { [folder]: 'page 1', [`${folder}assets/index-1.js`]: 'script 2' }],
])('nothing of a build is kept while a file of it is %s', async (_, files) => {
  const drawer = new Drawer();
  expect(await keptBuilds(folder, drawer, host(files)).take(first)).toBe('assets/index-1.js');
  expect(await drawer.keys()).toEqual([]);
});

it('nothing of a build is kept where there is no room for all of it, and what was kept stays', async () => {
  const drawer = new Drawer();
  await keptBuilds(folder, drawer, hosted(first)).take(first);
  drawer.room = 1;
  const kept = keptBuilds(folder, drawer, hosted(second));
  await expect(kept.take(second)).rejects.toThrow('no more room');
  expect(await drawer.keys()).toEqual([sharedName(folder, 'first')]);
  expect(await (await kept.find('', 'first'))?.text()).toBe('page 1');
});

it('the page itself is that of the build asked for; a page of an earlier one still finds its files', async () => {
  const drawer = new Drawer();
  await keptBuilds(folder, drawer, hosted(first)).take(first);
  const kept = keptBuilds(folder, drawer, hosted(second));
  await kept.take(second);
  expect(await (await kept.find('', 'second'))?.text()).toBe('page 2');
  expect(await (await kept.find('assets/index-1.js', 'second'))?.text()).toBe('script 1');
  await kept.keepOnly(new Set([sharedName(folder, 'second')]));
  expect(await kept.find('assets/index-1.js', 'second')).toBeUndefined();
  expect(await (await kept.find('assets/index-2.js', 'second'))?.text()).toBe('script 2');
});

it('a page in another folder of the host is left alone', async () => {
  const drawer = new Drawer();
  const theirs = keptBuilds(
    other,
    drawer,
    host({ [other]: 'page 1', [`${other}assets/index-1.js`]: 'script 1' }),
  );
  await theirs.take(first);
  const kept = keptBuilds(folder, drawer, hosted(second));
  await kept.take(second);
  expect(await kept.find('assets/index-1.js', 'second')).toBeUndefined();
  await kept.keepOnly(new Set());
  expect(await drawer.keys()).toEqual([sharedName(other, 'first')]);
});
