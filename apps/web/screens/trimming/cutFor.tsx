import type { ReactNode } from 'react';
import type { Layout } from '../../../../src/layout/index.ts';
import { type KindnessGoal, kindnessOrder, type Plan } from '../../../../src/planning/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { kindnessSentence, sittingsSentence, trimmerSentences } from '../../../../src/words/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useCutting } from '../../state/useCutting.ts';
import { useWorld } from '../../world.ts';
import { TrimmerForm } from './trimmerForm.tsx';

/** For which trimmer the set is cut and what is kind to the person, in a few lines; both can be said there. */
export function CutFor({
  plan,
  layout,
  trimmer,
}: {
  readonly plan: Plan | null;
  readonly layout: Layout | null;
  /** The one that the plan is for. */
  readonly trimmer: Trimmer | null;
}): ReactNode {
  const { trimming } = useMessages();
  const { prefer } = useCutting();
  const sittings = plan === null ? '' : sittingsSentence(plan, trimmer);
  return (
    <section className="cut-for">
      {trimmer === null || layout === null ? (
        <p>{trimming.noTrimmer}</p>
      ) : (
        <p lang="en">{trimmerSentences(trimmer, { units: layout.units, glyphs: 'printed' }).join(' ')}</p>
      )}
      {sittings === '' ? null : (
        <p className="sittings" lang="en">
          {sittings}
        </p>
      )}
      <details>
        <summary>{trimming.trimmer.heading}</summary>
        <TrimmerForm />
      </details>
      <details>
        <summary>{trimming.kindness.heading}</summary>
        <Kindness />
        <p lang="en">{kindnessSentence(prefer)}</p>
      </details>
    </section>
  );
}

/** What counts first where several plans take as few sheets. */
function Kindness(): ReactNode {
  const { kindness } = useMessages().trimming;
  const { cutting } = useWorld();
  const { prefer } = useCutting();
  return (
    <Sentence
      says={kindness.says}
      blanks={{
        goal: (
          <ChoiceBlank<KindnessGoal>
            name="goal"
            label={kindness.label}
            value={prefer[0] ?? kindnessOrder[0]}
            choices={kindnessOrder.map((value) => ({ value, says: kindness.goals[value], own: false }))}
            // The usual order needs no saying.
            onSet={(goal) => cutting.prefer(goal === kindnessOrder[0] ? [] : [goal])}
          />
        ),
      }}
    />
  );
}
