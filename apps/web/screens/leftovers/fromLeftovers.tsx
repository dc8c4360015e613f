import type { ReactNode } from 'react';
import { usedSheets } from '../../../../src/editing/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Plan } from '../../../../src/planning/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import {
  extraSentences,
  fromLeftoversSentences,
  keptSentences,
  otherUsesSentence,
} from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { useLeftovers } from '../../state/leftovers.ts';
import { planOf } from '../../state/planned.ts';
import { ExtrasForm } from './extrasForm.tsx';
import { Restock } from './restock.tsx';

/** What is made of the leftovers, what else could be, and the stash once the set is cut; once the plan is proved. */
export default function FromLeftovers(): ReactNode {
  const planned = useOpenLayout((state) => state.planned);
  const plan = planOf(planned);
  if (planned.stage !== 'answered' || plan === null) return null;
  return <OfPlan layout={planned.of} plan={plan} trimmer={planned.by.trimmer} />;
}

function OfPlan({
  layout,
  plan,
  trimmer,
}: {
  readonly layout: Layout;
  readonly plan: Plan;
  readonly trimmer: Trimmer | null;
}): ReactNode {
  const { leftovers } = useMessages().papers;
  const uses = useLeftovers(layout, plan, trimmer);
  if (plan.papers.size === 0) return null;
  const showing = { units: layout.units, glyphs: 'printed' } as const;
  const others = uses === null ? null : otherUsesSentence(uses, layout, showing);
  return (
    <section className="from-leftovers">
      <h3>{leftovers.heading}</h3>
      {uses === null ? (
        <p>{leftovers.looking}</p>
      ) : (
        <>
          <ul lang="en">
            {[
              ...fromLeftoversSentences(layout, plan),
              ...extraSentences(uses, layout, showing),
              ...(others === null ? [] : [others]),
              ...keptSentences(uses, layout, showing),
            ].map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <ExtrasForm />
          <p>{leftovers.about}</p>
          <Restock of={layout} used={usedSheets(plan)} kept={uses.kept} />
        </>
      )}
    </section>
  );
}
