import { type ReactNode, useEffect, useState } from 'react';
import { type Edit, mendsOf, planningMendsOf } from '../../../../src/editing/index.ts';
import type { LayoutProblem } from '../../../../src/layout/index.ts';
import { type PlanningProblem, type Shortage, usualMarks } from '../../../../src/planning/index.ts';
import type { Severity } from '../../../../src/problem/index.ts';
import { editSentence, layoutProblemSentence, planningProblemSentence } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';

/** What stands against the card, of its geometry or of its papers. */
export type Against =
  | { readonly of: 'layout'; readonly problem: LayoutProblem }
  | { readonly of: 'planning'; readonly problem: PlanningProblem };

/** All that stands against the layout now, that of its papers once the plan is known. */
export function useAgainst(): readonly Against[] {
  const layout = useOpenLayout((state) => state.problems);
  const planned = useOpenLayout((state) => state.planned);
  const ofPlan = planned.stage === 'answered' ? (planned.problems ?? []) : [];
  return [
    ...layout.map((problem) => ({ of: 'layout' as const, problem })),
    ...ofPlan.map((problem) => ({ of: 'planning' as const, problem })),
  ];
}

/** What stands against the card, in words, each with what would mend it. */
export function Problems({ severity }: { readonly severity: Severity }): ReactNode {
  const { card } = useMessages();
  const told = useAgainst().filter(({ problem }) => problem.severity === severity);
  if (told.length === 0) return null;
  return (
    <section className={severity === 'error' ? 'problems notice' : 'problems'}>
      <h2>{severity === 'error' ? card.problems.heading : card.problems.cautions}</h2>
      <ul>
        {told.map((against) => (
          <li key={keyOf(against)}>
            <ProblemWords against={against} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Tells it from the others. */
export function keyOf({ problem }: Against): string {
  return `${problem.code} ${problem.where} ${JSON.stringify(problem.names)}`;
}

/** One of them in a sentence, with its mends to tap. */
export function ProblemWords({
  against,
  isInHand = false,
}: {
  readonly against: Against;
  /** Whether the part it is about was taken up already. */
  readonly isInHand?: boolean;
}): ReactNode {
  const { card } = useMessages();
  const { layout } = useInHand();
  const store = useOpenLayoutStore();
  const showing = { units: layout.units, glyphs: 'printed' } as const;
  const { part } = against.problem;
  const mends = useMends(against);
  return (
    <>
      <span lang="en">
        {against.of === 'layout'
          ? layoutProblemSentence(against.problem, showing)
          : planningProblemSentence(against.problem, layout, showing)}
      </span>
      <span className="says">
        {mends.map(({ edit, sure }) => (
          <button
            key={JSON.stringify(edit.changes)}
            type="button"
            className="say"
            onClick={() => store.make(edit)}
          >
            {sure ? card.problems.mend : card.problems.mayMend}{' '}
            <span lang="en">{editSentence(edit.told)}</span>
          </button>
        ))}
        {isInHand || part === undefined || part === 'base' ? null : (
          <button type="button" className="say" onClick={() => store.take(part)}>
            {card.pile.takeUp} <span translate="no">{layout.parts.find(({ id }) => id === part)?.name}</span>
          </button>
        )}
      </span>
    </>
  );
}

interface Offered {
  readonly edit: Edit;
  /** Whether it is known to mend it; else the plan will show. */
  readonly sure: boolean;
}

/** How long the hand is left alone before mends are looked for, in milliseconds. */
const restMs = 200;

/** What would mend it, a moment after the layout last changed: each is tried, which takes some time. */
function useMends(against: Against): readonly Offered[] {
  const inHand = useInHand();
  const planned = useOpenLayout((state) => state.planned);
  const [offered, setOffered] = useState<{ readonly of: unknown; readonly mends: readonly Offered[] }>({
    of: null,
    mends: [],
  });
  const shortage: Shortage | null =
    planned.stage === 'answered' && planned.answer.kind === 'short' ? planned.answer : null;
  useEffect(() => {
    const marks = usualMarks(inHand.layout);
    const timer = window.setTimeout(() => {
      const mends =
        against.of === 'layout'
          ? mendsOf(inHand, against.problem, marks).map((edit) => ({ edit, sure: true }))
          : planningMendsOf(inHand, against.problem, { marks, shortage });
      setOffered({ of: inHand, mends });
    }, restMs);
    return () => window.clearTimeout(timer);
    // The problem is made anew with the layout and the plan it is of.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [inHand, against.problem, shortage]);
  // What was offered for the layout as it was before would not fit it any more.
  return offered.of === inHand ? offered.mends : [];
}
