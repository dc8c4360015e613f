import type { ReactNode } from 'react';
import type { Severity } from '../../../../src/problem/index.ts';
import { layoutProblemSentence, planningProblemSentence } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayout, useOpenLayoutStore } from '../../state/layoutContext.ts';

/** What stands against the card, in words, each with what would mend it. */
export function Problems({ severity }: { readonly severity: Severity }): ReactNode {
  const { card } = useMessages();
  const { layout } = useInHand();
  const store = useOpenLayoutStore();
  const geometry = useOpenLayout((state) => state.problems);
  const planned = useOpenLayout((state) => state.planned);
  const showing = { units: layout.units, glyphs: 'printed' } as const;
  const ofPlan = planned.stage === 'answered' ? (planned.problems ?? []) : [];
  const told = [
    ...geometry
      .filter((problem) => problem.severity === severity)
      .map((problem) => ({
        key: `${problem.code} ${problem.where}`,
        part: problem.part,
        says: layoutProblemSentence(problem, showing),
      })),
    ...ofPlan
      .filter((problem) => problem.severity === severity)
      .map((problem) => ({
        key: `${problem.code} ${problem.where}`,
        part: problem.part,
        says: planningProblemSentence(problem, layout, showing),
      })),
  ];
  if (told.length === 0) return null;
  return (
    <section className={severity === 'error' ? 'problems notice' : 'problems'}>
      <h2>{severity === 'error' ? card.problems.heading : card.problems.cautions}</h2>
      <ul>
        {told.map(({ key, says, part }) => (
          <li key={key}>
            <span lang="en">{says}</span>{' '}
            {part === undefined || part === 'base' ? null : (
              <button type="button" className="say" onClick={() => store.take(part)}>
                {card.pile.takeUp}
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
