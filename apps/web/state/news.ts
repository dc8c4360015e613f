/** Tells who shows something that is kept that it has changed, in this page and, where the browser can, in the others. */
export interface News {
  tell(): void;
  /** Calls when it has changed; the answer ends that. */
  subscribe(listener: () => void): () => void;
}

/** What of a `BroadcastChannel` is used. */
export type Channel = Pick<BroadcastChannel, 'postMessage' | 'addEventListener'>;

/** What news is told of, as it is said on the channel; pages of other versions hear it too. */
const said = {
  shelf: 'The shelf has changed',
  /** How the person cuts. */
  cutting: 'The cutting has changed',
  /** What the person holds her cards to. */
  standards: 'The standards have changed',
  bench: 'Something was told at a bench',
} as const;

/**
 * News of the shelf, heard in every page. Nothing depends on the channel: it only saves the person a look again. `null`:
 * the browser has none.
 */
export function newsOn(channel: Channel | null): News {
  const { tell, subscribe } = newsFromOthers(channel, 'shelf');
  const own = new Set<() => void>();
  return {
    tell() {
      for (const listener of [...own]) listener();
      tell();
    },
    subscribe(listener) {
      const leave = subscribe(listener);
      own.add(listener);
      return () => {
        own.delete(listener);
        leave();
      };
    },
  };
}

/** News that is heard in the other pages only: this one knows it. */
export function newsFromOthers(channel: Channel | null, about: keyof typeof said): News {
  const listeners = new Set<() => void>();
  channel?.addEventListener('message', ({ data }) => {
    if (data === said[about]) for (const listener of [...listeners]) listener();
  });
  return {
    tell: () => channel?.postMessage(said[about]),
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
