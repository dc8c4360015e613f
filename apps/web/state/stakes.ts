import { useEffect, useState } from 'react';
import { arrange, type Layout } from '../../../src/layout/index.ts';
import type { Plan, StepStakes } from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';
import type { Planner } from '../../planner/browserPlanner.ts';
import { useWorld } from '../world.ts';

/** What is at stake at each step of a plan that begins with nothing cut. */
export function stakesOfPlan(
  planner: Planner,
  {
    layout,
    plan,
    trimmer,
  }: { readonly layout: Layout; readonly plan: Plan; readonly trimmer: Trimmer | null },
  signal?: AbortSignal,
): Promise<readonly StepStakes[]> {
  const set = { layout, arrangement: arrange(layout), trimmer };
  return planner.ask({ name: 'stakes', set, plan }, signal === undefined ? {} : { signal });
}

/** What is at stake at the steps of a plan for a trimmer; none until that is known, and none of no plan. */
export function useStakes(
  layout: Layout | null,
  plan: Plan | null,
  trimmer: Trimmer | null,
): readonly StepStakes[] {
  const { planner } = useWorld();
  const [known, setKnown] = useState<{
    readonly plan: Plan;
    readonly stakes: readonly StepStakes[];
  } | null>(null);
  useEffect(() => {
    if (layout === null || plan === null) return;
    const control = new AbortController();
    stakesOfPlan(planner, { layout, plan, trimmer }, control.signal).then(
      (stakes) => setKnown({ plan, stakes }),
      // The plan is as good without; the planner tells its own failures where the set stands.
      () => undefined,
    );
    return () => control.abort();
  }, [planner, layout, plan, trimmer]);
  return known !== null && known.plan === plan ? known.stakes : none;
}

const none: readonly StepStakes[] = [];
