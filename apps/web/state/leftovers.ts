import { useEffect, useState } from 'react';
import { arrange, type Layout } from '../../../src/layout/index.ts';
import type { LeftoverUses, Plan } from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';
import { useWorld } from '../world.ts';

/** What the leftovers of a plan can still give; `null` until that is told. */
export function useLeftovers(layout: Layout, plan: Plan, trimmer: Trimmer | null): LeftoverUses | null {
  const { planner } = useWorld();
  const [told, setTold] = useState<{ readonly plan: Plan; readonly uses: LeftoverUses } | null>(null);
  useEffect(() => {
    const control = new AbortController();
    planner
      .ask({ name: 'leftovers', set: { layout, arrangement: arrange(layout), trimmer }, plan }, control)
      .then(
        (uses) => setTold({ plan, uses }),
        // A newer plan took its place, or the planner failed, which the head of the page tells.
        () => {},
      );
    return () => control.abort();
  }, [planner, layout, plan, trimmer]);
  return told !== null && told.plan === plan ? told.uses : null;
}
