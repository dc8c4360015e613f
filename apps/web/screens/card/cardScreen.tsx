import type { ReactNode } from 'react';
import { settingOf } from '../../../../src/editing/index.ts';
import { usualMarkings } from '../../../../src/measure/index.ts';
import { CountBlank } from '../../form/countBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';

/** The layout and its pile. */
export function CardScreen(): ReactNode {
  const { general } = useMessages();
  const { file, layout } = useOpenLayout(({ history }) => history);
  return (
    <>
      <h2>{general.screens.card}</h2>
      <Sentence
        says="{title}: a set of {cards} cards, {width} wide."
        blanks={{
          title: (
            <TextBlank
              name="title"
              label="title"
              value={layout.title}
              editOf={(v) => settingOf(file, ['title'], v)}
            />
          ),
          cards: (
            <CountBlank
              name="cards"
              label="cards"
              value={layout.cards}
              least={1}
              most={100000}
              editOf={(v) => settingOf(file, ['cards'], v)}
            />
          ),
          width: (
            <LengthBlank
              name="width"
              label="width"
              value={layout.base.size.width}
              marking={usualMarkings['1/16 in']}
              least={1}
              editOf={(v) => settingOf(file, ['base', 'size', 0], v)}
            />
          ),
        }}
      />
    </>
  );
}
