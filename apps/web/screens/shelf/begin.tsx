import { type ReactNode, useState } from 'react';
import { foldSet, settingOf } from '../../../../src/editing/index.ts';
import type { Units } from '../../../../src/measure/index.ts';
import { ChoiceBlank, choicesOf } from '../../form/choiceBlank.tsx';
import { CountBlank } from '../../form/countBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { usualUnits } from '../../messages/usualUnits.ts';
import { goTo } from '../../route.ts';
import { LayoutProvider, useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';
import { problemOf } from '../../state/saving.ts';
import { useWorld } from '../../world.ts';
import { draftOf, heightEdit, markings } from './newSet.ts';
import { StorageProblem, useTell } from './told.tsx';

/** A new set in a sentence with blanks; begun, it stands on the shelf and is opened. */
export function Begin(): ReactNode {
  const { begin } = useMessages().shelf;
  const [draft, setDraft] = useState(() => draftOf(usualUnits(navigator.languages), begin.title, 10));
  const measureIn = (units: Units) => {
    const { title, cards } = draft.getState().history.layout;
    setDraft(draftOf(units, title, cards));
  };
  return (
    <section className="unprinted" aria-labelledby="shelf-begin">
      <h2 id="shelf-begin">{begin.heading}</h2>
      <LayoutProvider value={draft}>
        <NewSet measureIn={measureIn} />
      </LayoutProvider>
    </section>
  );
}

/** Sets of more are not made by hand. */
const mostCards = 100_000;

function NewSet({ measureIn }: { readonly measureIn: (units: Units) => void }): ReactNode {
  const { shelf: says } = useMessages();
  const { begin } = says;
  const { shelf } = useWorld();
  const tell = useTell();
  const draft = useOpenLayoutStore();
  const { file, layout } = useOpenLayout(({ history }) => history);
  const { units, base } = layout;
  const go = async () => {
    tell(null);
    try {
      const { id } = await shelf.add(draft.getState().history.file);
      goTo({ screen: 'card', id });
    } catch (reason) {
      tell({
        isProblem: true,
        says: <StorageProblem problem={problemOf(reason)} says={says.problems.storage} />,
      });
    }
  };
  return (
    <>
      <Sentence
        says={begin.sentence}
        blanks={{
          cards: (
            <CountBlank
              name="cards"
              label={begin.labels.cards}
              value={layout.cards}
              least={1}
              most={mostCards}
              editOf={(cards) => settingOf(file, ['cards'], cards)}
            />
          ),
          title: (
            <TextBlank
              name="title"
              label={begin.labels.title}
              value={layout.title}
              editOf={(title) => settingOf(file, ['title'], title)}
            />
          ),
          width: (
            <LengthBlank
              key={`width ${units}`}
              name="width"
              label={begin.labels.width}
              value={base.size.width}
              marking={markings[units]}
              least={1}
              editOf={(text) => settingOf(file, ['base', 'size', 0], text)}
            />
          ),
          height: (
            <LengthBlank
              key={`height ${units}`}
              name="height"
              label={begin.labels.height}
              value={base.size.height}
              marking={markings[units]}
              least={1}
              editOf={(text) => heightEdit(file, text, units)}
            />
          ),
          fold: (
            <ChoiceBlank
              name="fold"
              label={begin.labels.fold}
              value={base.fold}
              choices={choicesOf(begin.folds)}
              editOf={(fold) => foldSet(file, fold)}
            />
          ),
        }}
      />
      <MeasuredIn value={units} measureIn={measureIn} />
      <button type="button" className="say" onClick={() => void go()}>
        {begin.go}
      </button>
    </>
  );
}

/** The sizes that are usual differ with the units, so other units begin anew with those. */
function MeasuredIn({
  value,
  measureIn,
}: {
  readonly value: Units;
  readonly measureIn: (units: Units) => void;
}): ReactNode {
  const { begin } = useMessages().shelf;
  return (
    <fieldset className="choices measured-in">
      <legend>{begin.measuredIn}</legend>
      {(['in', 'mm'] as const).map((units) => (
        <label key={units}>
          <input
            type="radio"
            name="new-set-units"
            checked={units === value}
            onChange={() => measureIn(units)}
          />
          {begin.units[units]}
        </label>
      ))}
    </fieldset>
  );
}
