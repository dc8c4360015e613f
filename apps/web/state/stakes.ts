import { useEffect, useMemo, useState } from 'react';
import { arrange, type Layout } from '../../../src/layout/index.ts';
import { type Plan, planRecord, type StepStakes, untouchedTable } from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';
import type { Planner } from '../../planner/browserPlanner.ts';
import { useWorld } from '../world.ts';
import type { Making } from './benchState.ts';

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
  return planner.ask(
    { name: 'stakes', set, plan, onTable: untouchedTable },
    signal === undefined ? {} : { signal },
  );
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

/** What is at stake at the steps of the plan that is cut at the bench; `null` until that is known. */
export function useStakesAt(making: Making): readonly StepStakes[] | null {
  const { planner } = useWorld();
  // The plan is read anew with everything that is noted; only another plan is asked about.
  const { plan } = making.tallied.inHand;
  const cut = useMemo(() => JSON.stringify(planRecord(plan)), [plan]);
  const [asked, setAsked] = useState({ cut, making });
  if (asked.cut !== cut) setAsked({ cut, making });
  const [known, setKnown] = useState<{ readonly cut: string; readonly stakes: readonly StepStakes[] } | null>(
    null,
  );
  useEffect(() => {
    const control = new AbortController();
    const { set, tallied } = asked.making;
    planner.ask({ name: 'stakes', set, ...tallied.inHand }, control).then(
      (stakes) => setKnown({ cut: asked.cut, stakes }),
      () => {
        // The lines are as good without.
        if (!control.signal.aborted) setKnown({ cut: asked.cut, stakes: none });
      },
    );
    return () => control.abort();
  }, [planner, asked]);
  return known !== null && known.cut === cut ? known.stakes : null;
}

const none: readonly StepStakes[] = [];
