import { useEffect, useState } from 'react';
import type { Layout } from '../../../src/layout/index.ts';
import type { Cliff, Enough } from '../../../src/planning/index.ts';
import { useWorld } from '../world.ts';
import { useOpenLayout, useOpenLayoutStore } from './layoutContext.ts';

/** What the papers of a layout are enough for, and the small changes that would gain something. */
interface EnoughTold {
  readonly of: Layout;
  readonly enough: Enough;
  readonly cliffs: readonly Cliff[];
}

/**
 * What the papers of the open layout are enough for, asked where it is wanted once the plan of the set is known, and
 * given up when the layout or the way it is cut changes; `null` until it is told.
 */
export function useEnough(isWanted = true): EnoughTold | null {
  const { planner } = useWorld();
  const store = useOpenLayoutStore();
  const planned = useOpenLayout((state) => state.planned);
  const isKnown = planned.stage === 'answered' && planned.problems !== null;
  const of = isKnown ? planned.of : null;
  const by = isKnown ? planned.by : null;
  const [told, setTold] = useState<(EnoughTold & { readonly by: unknown }) | null>(null);
  useEffect(() => {
    if (!isWanted || of === null || by === null) return;
    const control = new AbortController();
    const { arrangement } = store.getState();
    planner.ask({ name: 'enough', set: { layout: of, arrangement, trimmer: by.trimmer } }, control).then(
      (answer) => setTold({ of, by, ...answer }),
      // A newer layout took its place, or the planner failed, which the head of the page tells.
      () => {},
    );
    return () => control.abort();
  }, [isWanted, of, by, planner, store]);
  return told !== null && told.of === of && told.by === by ? told : null;
}
