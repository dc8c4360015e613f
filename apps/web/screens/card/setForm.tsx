import { lazy, type ReactNode, Suspense } from 'react';
import { settingOf, together } from '../../../../src/editing/index.ts';
import { type Path, valueAt } from '../../../../src/files/index.ts';
import { CountBlank } from '../../form/countBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { PapersBlank } from '../../form/papersBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { BoughtForm } from './boughtForm.tsx';
import { FoldBlank, FoldingForm } from './foldingForm.tsx';
import { SendingForm } from './sendingForm.tsx';

// Folded as a rule: loaded once the card is shown.
const HoldingForm = lazy(() => import('./holdingForm.tsx'));

/** The set and its base in words. */
export function SetForm(): ReactNode {
  const { card } = useMessages();
  const { file, layout } = useInHand();
  const marking = useMarking();
  const side = (axis: 'width' | 'height', label: string) => {
    const path: Path = ['base', 'size', axis === 'width' ? 0 : 1];
    const typed = valueAt(file, path);
    return (
      <LengthBlank
        name={axis}
        label={label}
        value={layout.base.size[axis]}
        typed={typeof typed === 'string' ? typed : undefined}
        marking={marking}
        least={1}
        editOf={(text) => settingOf(file, path, text)}
      />
    );
  };
  return (
    <section aria-label={card.setHeading}>
      <h2>{card.setHeading}</h2>
      <Sentence
        says={card.set}
        blanks={{
          title: (
            <TextBlank
              name="title"
              label={card.blanks.title}
              value={layout.title}
              editOf={(title) => settingOf(file, ['title'], title)}
            />
          ),
          cards: (
            <CountBlank
              name="cards"
              label={card.blanks.cards}
              value={layout.cards}
              least={1}
              most={100_000}
              editOf={(cards) => settingOf(file, ['cards'], cards)}
            />
          ),
          width: side('width', card.blanks.baseWidth),
          height: side('height', card.blanks.baseHeight),
          fold: <FoldBlank />,
          paper: (
            <PapersBlank
              name="paper"
              label={card.blanks.basePaper}
              layout={layout}
              papers={layout.base.papers}
              editOf={(paper) =>
                together(
                  settingOf(file, ['base', 'paper'], paper),
                  // What is cut from paper is as thick and heavy as that.
                  ...(paper === null ? [] : ['thickness', 'grams']).map((field) =>
                    settingOf(file, ['base', field], undefined),
                  ),
                )
              }
            />
          ),
        }}
      />
      <FoldingForm />
      {layout.base.papers.length === 0 ? (
        <BoughtForm says={card.readyMade.base} path={['base']} bought={layout.base} />
      ) : null}
      <Suspense fallback={null}>
        <HoldingForm />
      </Suspense>
      <SendingForm />
    </section>
  );
}
