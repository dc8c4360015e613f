import { useDeferredValue, useMemo } from 'react';
import type { InHand } from '../../../src/editing/index.ts';
import type { Layout } from '../../../src/layout/index.ts';
import type { Marking } from '../../../src/measure/index.ts';
import { usualMarks } from '../../../src/planning/index.ts';
import { useOpenLayout } from './layoutContext.ts';

/** The open layout as edits want it; the same as long as nothing was done. */
export function useInHand(): InHand {
  const history = useOpenLayout((state) => state.history);
  const arrangement = useOpenLayout((state) => state.arrangement);
  return useMemo(() => ({ file: history.file, layout: history.layout, arrangement }), [history, arrangement]);
}

/**
 * The same a moment later: after a change it is the one before for as long as it takes until the page has answered the
 * hand. For what is much to draw and need not be in that frame; edits are made from `useInHand`, or the store, only.
 */
export function useInHandLater(): InHand {
  return useDeferredValue(useInHand());
}

/** The marks that lengths of the layout are set at. */
export function markingOf(layout: Layout): Marking {
  return { units: layout.units, step: usualMarks(layout) };
}
