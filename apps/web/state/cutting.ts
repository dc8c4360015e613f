import { createStore, type StoreApi } from 'zustand/vanilla';
import {
  type FileProblem,
  isList,
  isObject,
  type Json,
  type JsonObject,
  readTrimmerFile,
} from '../../../src/files/index.ts';
import { type KindnessGoal, kindnessOrder } from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';
import type { News } from './news.ts';
import { noNews, type PreferenceShelf, personalIn } from './personal.ts';

/** How a person cuts, whatever the layout: every plan on the page is made for that. */
export interface Cutting {
  /** `null`: none was said. */
  readonly trimmer: Trimmer | null;
  /** What makes a plan kind to cut, what counts most first; as in `CardSet`. */
  readonly prefer: readonly KindnessGoal[];
}

/** As long as nothing is said. */
export const nothingSaid: Cutting = { trimmer: null, prefer: [] };

/** How a person cuts, with her trimmer as it was said. */
export interface CuttingSaid extends Cutting {
  /** The trimmer file, also while plans go by no trimmer; `null`: none was ever said. */
  readonly file: JsonObject | null;
}

/** How the person at this page cuts, kept for all layouts, and what she can say of it. */
export interface CuttingStore
  extends Pick<StoreApi<CuttingSaid>, 'getState' | 'getInitialState' | 'subscribe'> {
  /** Fulfilled as soon as it is known what was kept, or that nothing can be known of it. */
  readonly known: Promise<void>;
  /** Plans go by the trimmer of this file from now on; what is wrong with the file, and nothing changes; or `null`. */
  say(file: JsonObject): readonly FileProblem[] | null;
  /** Plans go by no trimmer from now on; the one that was said is kept. */
  layAside(): void;
  prefer(goals: readonly KindnessGoal[]): void;
  /** Looks again at what is kept, for it may have been said in another window. */
  lookAgain(): void;
}

/**
 * How the person cuts, as it is kept among the preferences of a shelf. What is said is told as `news` once it is kept, and
 * what other windows said is taken up when they tell it.
 */
export function cuttingKeptIn(shelf: PreferenceShelf, news: News = noNews): CuttingStore {
  const store = createStore<CuttingSaid>(() => ({ ...nothingSaid, file: null }));
  const { known, keep, lookAgain } = personalIn(shelf, news, {
    trimmer: (kept) => store.setState(trimmerKept(kept)),
    kindness: (kept) => store.setState({ prefer: goalsKept(kept) }),
  });
  return {
    getState: store.getState,
    getInitialState: store.getInitialState,
    subscribe: store.subscribe,
    known,
    say(file) {
      const read = readTrimmer(file);
      if ('problems' in read) return read.problems;
      store.setState({ trimmer: read.trimmer, file });
      keep('trimmer', { file, inUse: true });
      return null;
    },
    layAside() {
      const { file } = store.getState();
      store.setState({ trimmer: null });
      keep('trimmer', { file, inUse: false });
    },
    prefer(goals) {
      store.setState({ prefer: goals });
      keep('kindness', [...goals]);
    },
    lookAgain,
  };
}

function readTrimmer(file: JsonObject): ReturnType<typeof readTrimmerFile> {
  return readTrimmerFile(JSON.stringify(file));
}

/** What is known of what was kept; a later version may know more. */
function trimmerKept(kept: Json | undefined): Pick<CuttingSaid, 'trimmer' | 'file'> {
  const none = { trimmer: null, file: null };
  if (kept === undefined || !isObject(kept)) return none;
  const { file = null, inUse } = kept;
  if (!isObject(file)) return none;
  const read = readTrimmer(file);
  if ('problems' in read) return none;
  return { trimmer: inUse === true ? read.trimmer : null, file };
}

function goalsKept(kept: Json | undefined): readonly KindnessGoal[] {
  if (kept === undefined || !isList(kept)) return [];
  return kept.flatMap((goal) => kindnessOrder.find((known) => known === goal) ?? []);
}
