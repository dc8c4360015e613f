import { lazy, type ReactNode, Suspense, useState } from 'react';
import { docketSentences } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { HeldTo } from './heldTo.tsx';

/** It is much, and not asked every day. */
const TimeOfSet = lazy(() => import('./timeOfSet.tsx'));

/** What the cards will be like once they are made, matter by matter; each opens below its heading. */
export default function DocketOfSet(): ReactNode {
  const { card } = useMessages();
  const made = useOpenLayout((state) => state.made);
  const [isTiming, setTiming] = useState(false);
  if (made.stage === 'none') return null;
  return (
    <section className="docket-of-set">
      <h2>{card.docket.heading}</h2>
      {made.stage === 'failed' ? (
        <p role="alert">{card.docket.failed}</p>
      ) : (
        docketSentences(made.docket, made.of, { units: made.of.units, glyphs: 'printed' }).map(
          ({ heading, says }) => (
            <details key={heading}>
              <summary lang="en">{heading}</summary>
              <ul lang="en">
                {says.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            </details>
          ),
        )
      )}
      {made.stage === 'failed' ? null : (
        <details onToggle={(event) => setTiming(event.currentTarget.open)}>
          <summary>{card.time.heading}</summary>
          {isTiming ? (
            <Suspense>
              <TimeOfSet docket={made.docket} layout={made.of} />
            </Suspense>
          ) : null}
        </details>
      )}
      <details>
        <summary>{card.heldTo.heading}</summary>
        <HeldTo />
      </details>
    </section>
  );
}
