import { createStore, type StoreApi } from 'zustand/vanilla';
import {
  type FileProblem,
  isObject,
  type Json,
  type JsonObject,
  readPostFile,
} from '../../../src/files/index.ts';
import { type DocketAsks, usualRisk } from '../../../src/finished/index.ts';
import type { PostTable } from '../../../src/making/index.ts';
import type { News } from './news.ts';
import { noNews, type PreferenceShelf, personalIn } from './personal.ts';

/** What a person holds her finished cards to, whatever the layout. */
export interface Standards {
  /** In one set of how many something may show at its tears, and she puts up with it; 2 or more. */
  readonly oneSetIn: number;
  /** The table of her own post; `null`: those that are known here. */
  readonly post: { readonly file: JsonObject; readonly table: PostTable } | null;
}

/** As long as nothing is said. */
export const usualStandards: Standards = { oneSetIn: Math.round(1 / usualRisk), post: null };

/** The same as the library asks for it. */
export function heldBy({ oneSetIn, post }: Standards): Omit<DocketAsks, 'marks'> {
  return { wanted: 1 / oneSetIn, ...(post === null ? {} : { tables: [post.table] }) };
}

/** What the person at this page holds her cards to, kept for all layouts, and what she can say of it. */
export interface StandardsStore
  extends Pick<StoreApi<Standards>, 'getState' | 'getInitialState' | 'subscribe'> {
  /** Fulfilled as soon as it is known what was kept, or that nothing can be known of it. */
  readonly known: Promise<void>;
  putUpWith(oneSetIn: number): void;
  /** Cards go by the post of this file from now on; what is wrong with the file, and nothing changes; or `null`. */
  goBy(file: JsonObject): readonly FileProblem[] | null;
  /** Cards go by the posts that are known here. */
  goByKnownPosts(): void;
}

/** The standards as they are kept among the preferences of a shelf; `news` as for how a person cuts. */
export function standardsKeptIn(shelf: PreferenceShelf, news: News = noNews): StandardsStore {
  const store = createStore<Standards>(() => usualStandards);
  const { known, keep } = personalIn(shelf, news, {
    oneSetIn: (kept) => store.setState({ oneSetIn: oneSetInKept(kept) }),
    post: (kept) => store.setState({ post: postKept(kept) }),
  });
  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    known,
    putUpWith(oneSetIn) {
      store.setState({ oneSetIn });
      keep('oneSetIn', oneSetIn);
    },
    goBy(file) {
      const read = readPostFile(JSON.stringify(file));
      if ('problems' in read) return read.problems;
      store.setState({ post: { file, table: read.table } });
      keep('post', file);
      return null;
    },
    goByKnownPosts() {
      store.setState({ post: null });
      keep('post', null);
    },
  };
}

/** What is known of what was kept; a later version may know more. */
function oneSetInKept(kept: Json | undefined): number {
  return typeof kept === 'number' && Number.isInteger(kept) && kept >= 2 && kept <= mostSets
    ? kept
    : usualStandards.oneSetIn;
}

/** Rarer than in one of so many sets is not told apart. */
export const mostSets = 10_000;

function postKept(kept: Json | undefined): Standards['post'] {
  if (kept === undefined || !isObject(kept)) return null;
  const read = readPostFile(JSON.stringify(kept));
  return 'problems' in read ? null : { file: kept, table: read.table };
}
