import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { usualMarks } from '../../../../src/planning/index.ts';
import type { Against, Mend } from '../../mending/messages.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { heldBy } from '../../state/standards.ts';
import { useWorld } from '../../world.ts';

/** All that stands against the layout now, that of its papers once the plan is known. */
export function useAgainst(): readonly Against[] {
  const { against } = useContext(AgainstContext);
  return against;
}

/** What would mend one of them; none until that was looked for. */
export function useMendsOf(against: Against): readonly Mend[] {
  const { mends } = useContext(AgainstContext);
  return mends.get(keyOf(against)) ?? [];
}

/** Tells one that stands against the card from the others. */
export function keyOf({ problem }: Against): string {
  // The same may be wrong along both axes, and only the numbers differ then.
  return JSON.stringify(problem);
}

interface Standing {
  readonly against: readonly Against[];
  readonly mends: ReadonlyMap<string, readonly Mend[]>;
}

const AgainstContext = createContext<Standing>({ against: [], mends: new Map() });

/** How long the hand is left alone before mends are looked for, in milliseconds. */
const restMs = 150;

/** Knows what stands against the layout, and a moment after the last change what would mend it. */
export function AgainstProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const world = useWorld();
  const { mender } = world;
  const standards = useStore(world.standards);
  const inHand = useInHand();
  const layout = useOpenLayout((state) => state.problems);
  const planned = useOpenLayout((state) => state.planned);
  const made = useOpenLayout((state) => state.made);
  const ownMarks = useOpenLayout(({ cutting }) => cutting.trimmer?.marks ?? null);
  const [found, setFound] = useState<Pick<Standing, 'mends'> & { readonly of: unknown }>({
    of: null,
    mends: noMends,
  });
  const against = useMemo(() => {
    const ofPlan = planned.stage === 'answered' ? (planned.problems ?? []) : [];
    return [
      ...layout.map((problem): Against => ({ of: 'layout', problem })),
      ...ofPlan.map((problem): Against => ({ of: 'planning', problem })),
      ...(made.stage === 'told' && made.of === inHand.layout
        ? made.problems.map((problem): Against => ({ of: 'finished', problem }))
        : []),
    ];
  }, [layout, planned, made, inHand.layout]);
  useEffect(() => {
    if (against.length === 0) return;
    let over = false;
    const held = {
      ...heldBy(standards),
      marks: ownMarks ?? usualMarks(inHand.layout),
    };
    const shortage = planned.stage === 'answered' && planned.answer.kind === 'short' ? planned.answer : null;
    const timer = window.setTimeout(() => {
      void mender.mends({ file: inHand.file, against, held, shortage }).then((mends) => {
        if (over || mends === null) return;
        setFound({
          of: inHand,
          mends: new Map(against.map((each, index) => [keyOf(each), mends[index] ?? []])),
        });
      });
    }, restMs);
    return () => {
      over = true;
      window.clearTimeout(timer);
    };
  }, [mender, inHand, against, planned, ownMarks, standards]);
  // What was offered for the layout as it was before would not fit it any more.
  const mends = found.of === inHand ? found.mends : noMends;
  return <AgainstContext value={{ against, mends }}>{children}</AgainstContext>;
}

const noMends: ReadonlyMap<string, readonly Mend[]> = new Map();
