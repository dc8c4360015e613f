import type { ReactNode } from 'react';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Severity } from '../../../../src/problem/index.ts';
import {
  editSentence,
  finishedProblemSentence,
  layoutProblemSentence,
  planningProblemSentence,
  type Showing,
} from '../../../../src/words/index.ts';
import type { Against, Mend } from '../../mending/messages.ts';
import { useMessages } from '../../messages/messages.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';
import { keyOf, useAgainst, useMendsOf } from './mends.tsx';

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
  const mends = useMendsOf(against);
  return (
    <>
      <span lang="en">{sentenceOf(against, layout, showing)}</span>
      <MendsLine lead={card.problems.mend} mends={mends.filter(({ sure }) => sure)} />
      <MendsLine lead={card.problems.mayMend} mends={mends.filter(({ sure }) => !sure)} />
      <span className="says">
        {isInHand || part === undefined || part === 'base' ? null : (
          <button type="button" className="say" onClick={() => store.take(part)}>
            {card.pile.takeUp} <span translate="no">{layout.parts.find(({ id }) => id === part)?.name}</span>
          </button>
        )}
      </span>
    </>
  );
}

function sentenceOf(against: Against, layout: Layout, showing: Showing): string {
  switch (against.of) {
    case 'layout':
      return layoutProblemSentence(against.problem, showing);
    case 'planning':
      return planningProblemSentence(against.problem, layout, showing);
    case 'finished':
      return finishedProblemSentence(against.problem, layout, showing);
  }
}

/** Mends of one kind, to tap; what they do is said once for those who see, and with each for those who listen. */
function MendsLine({ lead, mends }: { readonly lead: string; readonly mends: readonly Mend[] }): ReactNode {
  const store = useOpenLayoutStore();
  if (mends.length === 0) return null;
  return (
    <span className="says mends">
      <span aria-hidden="true">{lead}</span>
      {mends.map(({ edit }) => (
        <button
          key={JSON.stringify(edit.changes)}
          type="button"
          className="say"
          onClick={() => store.make(edit)}
        >
          <span className="unseen">{lead} </span>
          <span lang="en">{editSentence(edit.told, 'printed')}</span>
        </button>
      ))}
    </span>
  );
}
