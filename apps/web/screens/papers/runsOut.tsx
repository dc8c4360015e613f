import type { ReactNode } from 'react';
import { enoughSentences } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useEnough } from '../../state/enough.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';

/** What the papers are enough for and which runs out first, asked once the plan of the set is known. */
export function RunsOut(): ReactNode {
  const { papers } = useMessages();
  const stage = useOpenLayout(({ planned }) => planned.stage);
  const told = useEnough();
  if (told === null && stage !== 'answered') return null;
  return (
    <section className="runs-out">
      <h3>{papers.runsOut}</h3>
      {told === null ? (
        <p>{papers.reckoning}</p>
      ) : (
        <p lang="en">{enoughSentences(told.enough, told.of).join(' ')}</p>
      )}
    </section>
  );
}
