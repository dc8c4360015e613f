import { type Build, sharedName, sharedNamesOf } from './build.ts';

/** The builds of the page that this browser keeps. */
export interface KeptBuilds {
  /** Keeps every file of a build, or none; gives the address of a file that could not be had, `null`: all are kept. */
  take(build: Build): Promise<string | null>;
  /**
   * What is kept at an address of the folder; `undefined`: nothing. The page itself is that of the build named, whole
   * as it was taken. Every other file has its digest in its name, so that a page finds no file there but its own,
   * whichever build is asked.
   */
  find(address: string, name: string): Promise<Response | undefined>;
  /** Lets go of every build but the ones that go by these shared names. */
  keepOnly(names: ReadonlySet<string>): Promise<void>;
}

/** The little of the browser's caches that is used here. */
export interface Caches {
  has(name: string): Promise<boolean>;
  keys(): Promise<readonly string[]>;
  open(name: string): Promise<OneCache>;
  delete(name: string): Promise<boolean>;
}

export interface OneCache {
  match(address: string): Promise<Response | undefined>;
  put(address: string, response: Response): Promise<void>;
}

/**
 * The builds that `caches` keep of a folder, a cache for each. `fetched` gives a file from its host, and rejects where
 * it is not what its digest says.
 */
export function keptBuilds(
  folder: string,
  caches: Caches,
  fetched: (address: string, digest: string) => Promise<Response>,
): KeptBuilds {
  const whole = (address: string) => new URL(address, folder).href;

  return {
    async take({ name, files }) {
      // All of it is there before the first of it is kept.
      const had: (readonly [string, Response])[] = [];
      const missing: string[] = [];
      await Promise.all(
        Object.entries(files).map(async ([address, digest]) => {
          try {
            const response = await fetched(whole(address), digest);
            if (response.ok) had.push([address, unredirected(response)]);
            else missing.push(address);
          } catch {
            missing.push(address);
          }
        }),
      );
      if (missing.length > 0) return missing.sort()[0]!;
      const shared = sharedName(folder, name);
      // A page of this very build may be open, where a host went back to it.
      const wasThere = await caches.has(shared);
      try {
        const cache = await caches.open(shared);
        for (const [address, response] of had) await cache.put(whole(address), response);
      } catch (problem) {
        if (!wasThere) await caches.delete(shared);
        throw problem;
      }
      return null;
    },
    async find(address, name) {
      const own = sharedName(folder, name);
      const others = address === '' ? [] : (await ofFolder()).filter((each) => each !== own);
      for (const each of [own, ...others]) {
        // Opening one that is not there would make it.
        if (!(await caches.has(each))) continue;
        const found = await (await caches.open(each)).match(whole(address));
        if (found !== undefined) return found;
      }
      return undefined;
    },
    async keepOnly(names) {
      for (const each of await ofFolder()) if (!names.has(each)) await caches.delete(each);
    },
  };

  async function ofFolder(): Promise<readonly string[]> {
    return (await caches.keys()).filter((each) => each.startsWith(sharedNamesOf(folder)));
  }
}

/** Browsers take no page from a cache that came by another address than the one asked for. */
function unredirected(response: Response): Response {
  if (!response.redirected) return response;
  const { status, headers } = response;
  return new Response(response.body, { status, headers });
}
