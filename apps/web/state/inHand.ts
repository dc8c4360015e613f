import { useDeferredValue, useMemo } from 'react';
import type { InHand } from '../../../src/editing/index.ts';
import type { Layout } from '../../../src/layout/index.ts';
import { inches, type Marking } from '../../../src/measure/index.ts';
import { usualMarks } from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';
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

/**
 * The marks that lengths of the layout are set at: those of the person's trimmer, else the usual ones. A trimmer marked in
 * the other units has no marks for this layout, as its lengths could not be written in them.
 */
export function markingOf({ units }: Pick<Layout, 'units'>, trimmer: Trimmer | null): Marking {
  const own = trimmer?.marks ?? null;
  // Its own marks tell in which units a trimmer is numbered.
  const isOfLayout = own !== null && (own % inches(1, 64) === 0) === (units === 'in');
  return { units, step: isOfLayout ? own : usualMarks({ units }) };
}

/** Those of the open layout. */
export function useMarking(): Marking {
  const layout = useOpenLayout(({ history }) => history.layout);
  const trimmer = useOpenLayout(({ cutting }) => cutting.trimmer);
  return markingOf(layout, trimmer);
}
