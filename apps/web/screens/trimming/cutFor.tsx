import { type ReactNode, useState } from 'react';
import type { Layout } from '../../../../src/layout/index.ts';
import { type KindnessGoal, kindnessOrder, type Plan } from '../../../../src/planning/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import { kindnessSentence, sittingsSentence, trimmerSentences } from '../../../../src/words/index.ts';
import { type Choice, ChoiceBlank } from '../../form/choiceBlank.tsx';
import { Sentence, useOpening } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useCutting } from '../../state/useCutting.ts';
import { useWorld } from '../../world.ts';
import { preferring } from './preferring.ts';
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

/** What counts first where several plans take as few sheets, then what counts next; one blank more than is said. */
function Kindness(): ReactNode {
  const { kindness } = useMessages().trimming;
  const { prefer } = useCutting();
  // What counts last follows from the others.
  const blanks = Math.min(Math.max(prefer.length, 1) + 1, kindnessOrder.length - 1);
  const places = kindnessOrder.slice(0, blanks).map((_, place) => place);
  return (
    <Sentence
      says={kindness.says(places.map((place) => `{${goalName(place)}}`))}
      blanks={Object.fromEntries(
        places.map((place) => [goalName(place), <GoalBlank key={goalName(place)} place={place} />]),
      )}
    />
  );
}

function goalName(place: number): string {
  return `goal ${place + 1}`;
}

/** What counts at that place, counted from 0. */
function GoalBlank({ place }: { readonly place: number }): ReactNode {
  const { kindness } = useMessages().trimming;
  const { cutting } = useWorld();
  const { prefer } = useCutting();
  const { open } = useOpening();
  const said = prefer.length === 0 ? usualFirst : prefer;
  // The arrow keys go through all choices: each is made of what was said when the blank was opened.
  const [before, setBefore] = useState(said);
  if (open !== goalName(place) && before !== said) setBefore(said);
  return (
    <ChoiceBlank<KindnessGoal | 'usual'>
      name={goalName(place)}
      label={kindness.label(place + 1)}
      value={said[place] ?? 'usual'}
      choices={choicesAt(place, before, { ...kindness.goals, usual: kindness.usual })}
      onSet={(goal) => cutting.prefer(preferring(before, place, goal))}
    />
  );
}

const usualFirst: readonly KindnessGoal[] = [kindnessOrder[0]];

/** What may stand at a place: a goal that no place before has, and behind the first that nothing more is said. */
function choicesAt(
  place: number,
  said: readonly KindnessGoal[],
  words: Readonly<Record<KindnessGoal | 'usual', string>>,
): readonly Choice<KindnessGoal | 'usual'>[] {
  const before = said.slice(0, place);
  const goals = kindnessOrder.filter((goal) => !before.includes(goal));
  const values: readonly (KindnessGoal | 'usual')[] = place === 0 ? goals : [...goals, 'usual'];
  return values.map((value) => ({ value, says: words[value], own: false }));
}
