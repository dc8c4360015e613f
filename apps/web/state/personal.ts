import type { Json } from '../../../src/files/index.ts';
import { assert } from '../../../src/problem/index.ts';
import type { Shelf } from '../storage/shelf.ts';
import type { News } from './news.ts';

/** What one person says of herself, kept for all layouts among the preferences of a shelf. */
export interface Personal<Name extends string> {
  /** Fulfilled as soon as it is known what was kept, or that nothing can be known of it. */
  readonly known: Promise<void>;
  /** Keeps what was said now, and tells the news once it is kept. */
  keep(name: Name, value: Json): void;
  /** Looks again at what is kept, for it may have been said in another window. */
  lookAgain(): void;
}

/** Where preferences are kept. */
export type PreferenceShelf = Pick<Shelf, 'preference' | 'prefer'>;

/** News that is told to nobody. */
export const noNews: News = { tell: () => {}, subscribe: () => () => {} };

/**
 * Preferences of those names: each is handed to its taker when it is found, and again when other windows tell the news
 * that it was said anew there; `undefined`: nothing was kept. What is the same as before is not handed on.
 */
export function personalIn<Name extends string>(
  shelf: PreferenceShelf,
  news: News,
  takers: Readonly<Record<Name, (kept: Json | undefined) => void>>,
): Personal<Name> {
  const entries = Object.entries<(kept: Json | undefined) => void>(takers).map(([name, take]) => ({
    name,
    take,
    /** What is kept as far as we know, as text. */
    known: '',
    /** How often something was said here, and how much of that is not kept yet. */
    said: 0,
    unkept: 0,
  }));
  const look = async () => {
    const before = entries.map(({ said }) => said);
    const found = await Promise.all(entries.map(({ name }) => shelf.preference(name)));
    for (const [index, entry] of entries.entries()) {
      // What is said while it is looked for holds.
      if (entry.said !== before[index] || entry.unkept !== 0) continue;
      // Much is worked out anew for whatever is taken, so nothing is taken that is the same.
      const kept = found[index];
      const text = kept === undefined ? '' : JSON.stringify(kept);
      if (text === entry.known) continue;
      entry.known = text;
      entry.take(kept);
    }
  };
  const lookAgain = () => void look().catch(() => {});
  news.subscribe(lookAgain);
  return {
    known: look().catch(() => {}),
    keep(name, value) {
      const entry = entries.find((each) => each.name === name);
      assert(entry !== undefined, 'Nothing else is kept here', { name });
      entry.known = JSON.stringify(value);
      entry.said += 1;
      entry.unkept += 1;
      shelf.prefer(name, value).then(
        () => {
          entry.unkept -= 1;
          news.tell();
          // What other windows said meanwhile was passed over.
          lookAgain();
        },
        // What cannot be kept holds as long as the page is open.
        () => {},
      );
    },
    lookAgain,
  };
}
