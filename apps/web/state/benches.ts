import type { BenchLog } from '../storage/bench.ts';
import { type BenchStore, benchOf } from './bench.ts';
import type { News } from './news.ts';
import type { SavingWorld } from './saving.ts';

/** The benches of all layouts, each as it stands on this page. */
export interface Benches {
  /** The bench of a layout; the same as long as the page is open, so that nothing told there is left behind. */
  at(document: string): BenchStore;
  /** Whether something that was told is not on the disk yet. */
  isUnsaved(): boolean;
  /** Looks again at what is kept, and tries again to keep what could not be. */
  lookAgain(): void;
}

/** The benches that a log tells of; `news` of other windows, where there is any, has them looked at again. */
export function benchesIn(log: BenchLog, world: SavingWorld, news: News): Benches {
  const open = new Map<string, BenchStore>();
  const lookAgain = () => {
    for (const bench of open.values()) bench.lookAgain();
  };
  news.subscribe(lookAgain);
  return {
    at(document) {
      const there = open.get(document);
      if (there !== undefined) {
        there.lookAgain();
        return there;
      }
      const bench = benchOf(log, document, world, news);
      open.set(document, bench);
      return bench;
    },
    isUnsaved: () => [...open.values()].some((bench) => !bench.getState().isKept),
    lookAgain,
  };
}
