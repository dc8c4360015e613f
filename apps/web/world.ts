import { createContext, useContext, useEffect, useState } from 'react';
import type { Planner } from '../planner/browserPlanner.ts';
import type { Mender } from './mending/mender.ts';
import type { Offline } from './offline/offline.ts';
import type { Benches } from './state/benches.ts';
import type { CuttingStore } from './state/cutting.ts';
import type { Desk } from './state/desk.ts';
import type { Keeping } from './state/keeping.ts';
import type { News } from './state/news.ts';
import type { StandardsStore } from './state/standards.ts';
import type { KitShelf } from './storage/kits.ts';
import type { Shelf } from './storage/shelf.ts';

/** What the page does in the world: where things are kept, who plans, what time it is. */
export interface World {
  readonly shelf: Shelf;
  readonly kits: KitShelf;
  readonly news: News;
  readonly keeping: Keeping;
  readonly planner: Planner;
  readonly mender: Mender;
  readonly desk: Desk;
  readonly offline: Offline;
  readonly cutting: CuttingStore;
  readonly standards: StandardsStore;
  readonly benches: Benches;
  /** Whether anything is kept in this browser beyond the life of the page. */
  readonly isKept: Promise<boolean>;
  /** Milliseconds since 1970. */
  now(): number;
  /** An id that was never there before. */
  newId(): string;
}

const WorldContext = createContext<World | null>(null);

export const WorldProvider = WorldContext.Provider;

/** The world of the page. */
export function useWorld(): World {
  const world = useContext(WorldContext);
  if (world === null) throw new Error('The page is shown within its world');
  return world;
}

/** Whether anything is kept in this browser beyond the life of the page; `true` until it is known. */
export function useIsKept(): boolean {
  const { isKept } = useWorld();
  const [is, setIs] = useState(true);
  useEffect(() => {
    void isKept.then(setIs);
  }, [isKept]);
  return is;
}
