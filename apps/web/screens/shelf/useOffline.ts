import { useSyncExternalStore } from 'react';
import type { OfflineState } from '../../offline/offline.ts';
import { useWorld } from '../../world.ts';

/** How far the page itself is kept, and whether a newer version of it is here. */
export function useOffline(): OfflineState {
  const { offline } = useWorld();
  return useSyncExternalStore(offline.subscribe, offline.state);
}
