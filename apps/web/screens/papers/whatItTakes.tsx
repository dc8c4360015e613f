import type { ReactNode } from 'react';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Plan } from '../../../../src/planning/index.ts';
import type { Paper } from '../../../../src/stash/index.ts';
import { planSentence, shortageSentences, takenOf } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { planOf } from '../../state/planned.ts';

/** What the set takes of a paper by its plan, and what is left; or why there is not enough of it. */
export function WhatItTakes({ paper }: { readonly paper: Paper }): ReactNode {
  const { papers } = useMessages();
  const planned = useOpenLayout((state) => state.planned);
  if (planned.stage === 'none' || planned.stage === 'unknown' || planned.stage === 'failed') return null;
  return (
    <div className="takes">
      <h4>{papers.takes}</h4>
      <Taken paper={paper} layout={planned.of} plan={planOf(planned)} />
      {planned.stage === 'answered' && planned.answer.kind === 'short'
        ? shortOf(planned.answer, paper, planned.of)
        : null}
    </div>
  );

  function shortOf(
    shortage: Parameters<typeof shortageSentences>[0],
    { id }: Paper,
    layout: Layout,
  ): ReactNode {
    const own = shortage.papers.filter((short) => short.paper === id);
    if (own.length === 0) return <p>{papers.othersShort}</p>;
    const showing = { units: layout.units, glyphs: 'printed' } as const;
    // The last sentence is of the whole set, which stands at the head of the page.
    const told = shortageSentences({ ...shortage, papers: own }, layout, showing).slice(0, -1);
    return <p lang="en">{told.join(' ')}</p>;
  }
}

function Taken({
  paper,
  layout,
  plan,
}: {
  readonly paper: Paper;
  readonly layout: Layout;
  readonly plan: Plan | null;
}): ReactNode {
  const { papers } = useMessages();
  const of = layout.papers.get(paper.id);
  if (plan === null || of === undefined) return null;
  if (!plan.papers.has(paper.id)) return <p>{papers.unused}</p>;
  const showing = { units: layout.units, glyphs: 'printed' } as const;
  const whole = of.sheets.flatMap(({ count, scrap }, index) =>
    count === null || scrap ? [] : [{ count, index }],
  );
  const onHand = whole.reduce((sum, { count }) => sum + count, 0);
  const used = plan.sheets.filter(
    ({ paper: id, stock }) => id === paper.id && whole.some(({ index }) => index === stock),
  ).length;
  // Which sizes are cut has to be told only where there are several.
  const taken = takenOf(of, plan, showing);
  return (
    <>
      {taken.length < 2 ? null : <p lang="en">{taken.join(' ')}</p>}
      <p>
        <span lang="en">{planSentence(of, plan)}</span>{' '}
        {onHand === 0 ? null : papers.left(onHand - used, onHand)}
      </p>
    </>
  );
}
