/** Tells who shows the shelf that it has changed, in this page and, where the browser can, in the others. */
export interface News {
  tell(): void;
  /** Calls when the shelf has changed; the answer ends that. */
  subscribe(listener: () => void): () => void;
}

/** What of a `BroadcastChannel` is used. */
export type Channel = Pick<BroadcastChannel, 'postMessage' | 'addEventListener'>;

/** Nothing depends on the channel: it only saves the person a look again. `null`: the browser has none. */
export function newsOn(channel: Channel | null): News {
  const listeners = new Set<() => void>();
  const hear = () => {
    for (const listener of [...listeners]) listener();
  };
  channel?.addEventListener('message', hear);
  return {
    tell() {
      hear();
      channel?.postMessage('The shelf has changed');
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
