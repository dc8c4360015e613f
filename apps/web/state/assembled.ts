import { useEffect, useMemo, useState } from 'react';
import type { Questions } from '../../planner/messages.ts';
import { useWorld } from '../world.ts';
import type { Making } from './benchState.ts';

type Assembled = Questions['assembly']['tells'];

/** How the cards at the bench are put together and what holds their parts; `null` until that is known. */
export function useAssembled({ file, set }: Making): Assembled | null {
  const { planner } = useWorld();
  // The set is read anew with everything that is noted; only another layout is asked about.
  const layout = useMemo(() => JSON.stringify(file), [file]);
  const [asked, setAsked] = useState({ layout, set });
  if (asked.layout !== layout) setAsked({ layout, set });
  const [known, setKnown] = useState<{ readonly layout: string; readonly told: Assembled } | null>(null);
  useEffect(() => {
    const control = new AbortController();
    planner.ask({ name: 'assembly', set: asked.set }, control).then(
      (told) => setKnown({ layout: asked.layout, told }),
      // The lines are as good without their plates.
      () => {},
    );
    return () => control.abort();
  }, [planner, asked]);
  return known !== null && known.layout === layout ? known.told : null;
}
