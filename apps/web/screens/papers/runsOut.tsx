import { type ReactNode, useEffect, useState } from 'react';
import type { Layout } from '../../../../src/layout/index.ts';
import { enoughSentences } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';
import { useWorld } from '../../world.ts';

/** What the papers are enough for and which runs out first, asked once the plan of the set is known. */
export function RunsOut(): ReactNode {
  const { papers } = useMessages();
  const { planner } = useWorld();
  const store = useOpenLayoutStore();
  const planned = useOpenLayout((state) => state.planned);
  const [told, setTold] = useState<{ readonly of: Layout; readonly says: readonly string[] } | null>(null);
  const of = planned.stage === 'answered' && planned.problems !== null ? planned.of : null;
  useEffect(() => {
    if (of === null) return;
    const control = new AbortController();
    const { arrangement } = store.getState();
    planner
      .ask({ name: 'enough', set: { layout: of, arrangement, trimmer: null } }, { signal: control.signal })
      .then(
        ({ enough }) => setTold({ of, says: enoughSentences(enough, of) }),
        // A newer layout took its place, or the planner failed, which the head of the page tells.
        () => {},
      );
    return () => control.abort();
  }, [of, planner, store]);
  if (of === null && told === null) return null;
  return (
    <section className="runs-out">
      <h3>{papers.runsOut}</h3>
      {told?.of === of && told !== null ? <p lang="en">{told.says.join(' ')}</p> : <p>{papers.reckoning}</p>}
    </section>
  );
}
