import type { ReactNode } from 'react';
import { newScraps, restocked, type UsedSheets } from '../../../../src/editing/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import type { KeptLeftover } from '../../../../src/planning/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';

/** Brings the stash up to date once a set is cut, in one step that can be undone. */
export function Restock({
  of,
  used,
  kept,
}: {
  /** The layout that was cut; only while it is the one in hand. */
  readonly of: Layout;
  readonly used: UsedSheets;
  readonly kept: readonly KeptLeftover[];
}): ReactNode {
  const { leftovers } = useMessages().papers;
  const { file, layout } = useInHand();
  const store = useOpenLayoutStore();
  const restock = () => store.make(restocked(file, layout, { used, scraps: newScraps(of, kept) }));
  return (
    <div className="doings">
      <button type="button" className="say" onClick={restock}>
        {leftovers.restock}
      </button>
    </div>
  );
}
