import { lazy, type ReactNode, Suspense, useMemo, useState } from 'react';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Plan, StepStakes } from '../../../../src/planning/index.ts';
import type { Paper } from '../../../../src/stash/index.ts';
import type { Trimmer } from '../../../../src/trimming/index.ts';
import {
  docketOf,
  effortSentence,
  leftoverSentences,
  planSentence,
  progressSentence,
  type Showing,
  shortageSentences,
  slackSentences,
} from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { addressOf } from '../../route.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { type Planned, planOf } from '../../state/planned.ts';
import { useStakes } from '../../state/stakes.ts';
import { CutFor } from './cutFor.tsx';
import { CuttingSteps } from './cuttingSteps.tsx';
import { EnoughFor } from './enoughFor.tsx';
import { Suit } from './suit.tsx';
import './trimming.css';

const FromLeftovers = lazy(() => import('../leftovers/fromLeftovers.tsx'));

/**
 * How the set is cut: for which trimmer, what the papers are enough for, then paper by paper what it comes to, every
 * setting drawn and said, what is left.
 */
export function TrimmingScreen(): ReactNode {
  const { general } = useMessages();
  const planned = useOpenLayout((state) => state.planned);
  const plan = planOf(planned);
  const layout = 'of' in planned ? planned.of : null;
  // What stands here goes by the trimmer it was planned for, until the next plan.
  const trimmer = 'by' in planned ? planned.by.trimmer : null;
  const stakes = useStakes(layout, planned.stage === 'answered' ? plan : null, trimmer);
  return (
    <>
      <h2>{general.screens.trimming}</h2>
      <StillProving planned={planned} />
      {planned.stage === 'answered' && planned.answer.kind === 'short' ? <Short planned={planned} /> : null}
      <CutFor plan={plan} layout={layout} trimmer={trimmer} />
      <EnoughFor />
      <Suit />
      {plan === null || layout === null ? null : (
        <WholePlan layout={layout} plan={plan} stakes={stakes} trimmer={trimmer} />
      )}
    </>
  );
}

function StillProving({ planned }: { readonly planned: Planned }): ReactNode {
  const { trimming } = useMessages();
  if (planned.stage !== 'first' || planned.plan === null) return null;
  return (
    <p role="status">
      {trimming.proving}{' '}
      {planned.progress === null ? null : (
        <span lang="en">{progressSentence(planned.progress, planned.of)}</span>
      )}
    </p>
  );
}

/** What is short, what limits it, and the nearest that can be done. */
function Short({ planned }: { readonly planned: Extract<Planned, { stage: 'answered' }> }): ReactNode {
  const { trimming } = useMessages();
  const id = useOpenLayout((state) => state.id);
  const { answer, of } = planned;
  if (answer.kind !== 'short') return null;
  const sentences = shortageSentences(answer, of, showingOf(of));
  return (
    <div className="notice">
      <h3>{trimming.short}</h3>
      {sentences.map((sentence) => (
        <p key={sentence} lang="en">
          {sentence}
        </p>
      ))}
      <p className="deeds">
        <a href={addressOf({ screen: 'papers', id })}>{trimming.toPapers}</a>
      </p>
    </div>
  );
}

interface ToCut {
  readonly layout: Layout;
  readonly plan: Plan;
  readonly stakes: readonly StepStakes[];
  readonly trimmer: Trimmer | null;
}

function WholePlan(cut: ToCut): ReactNode {
  const { trimming } = useMessages();
  const { layout, plan } = cut;
  const id = useOpenLayout((state) => state.id);
  const [led, lead] = useState<number | null>(null);
  const papers = [...plan.papers.keys()].flatMap((id) => layout.papers.get(id) ?? []);
  if (papers.length === 0) return <p>{trimming.nothing}</p>;
  return (
    <>
      <p className="deeds">
        <a href={addressOf({ screen: 'bench', id })}>{trimming.toBench}</a>
      </p>
      <p className="reading">
        {trimming.reading} {papers.some(({ up }) => up !== 'any') ? trimming.arrow : null}{' '}
        <span className="unprinted">{trimming.flipBook.about}</span>
      </p>
      {papers.map((paper) => (
        <PaperCut key={paper.id} paper={paper} led={led} lead={lead} {...cut} />
      ))}
      <Suspense fallback={null}>
        <FromLeftovers />
      </Suspense>
    </>
  );
}

/** Everything that is cut from one paper. */
function PaperCut({
  paper,
  layout,
  plan,
  stakes,
  trimmer,
  led,
  lead,
}: ToCut & {
  readonly paper: Paper;
  /** The step that a picture of a row has led to, of whatever paper; `null`: none. */
  readonly led: number | null;
  readonly lead: (step: number | null) => void;
}): ReactNode {
  const { trimming } = useMessages();
  const showing = useMemo(() => showingOf(layout), [layout]);
  const leftovers = leftoverSentences(paper, plan, showing);
  return (
    <section className="paper-cut">
      <h3>
        <span translate="no">{paper.name}</span>
      </h3>
      <div lang="en">
        <p>
          {planSentence(paper, plan)} {effortSentence(paper, plan, trimmer)}
        </p>
        <p className="docket">{docketOf(paper, showing).join(' ')}</p>
        {slackSentences(paper, plan, showing).map((sentence) => (
          <p className="careful" key={sentence}>
            {sentence}
          </p>
        ))}
      </div>
      <CuttingSteps
        paper={paper}
        layout={layout}
        plan={plan}
        stakes={stakes}
        trimmer={trimmer}
        showing={showing}
        led={led}
        lead={lead}
      />
      {leftovers.length === 0 ? null : (
        <>
          <h4>{trimming.left}</h4>
          <p lang="en">{leftovers.join(' ')}</p>
        </>
      )}
    </section>
  );
}

function showingOf({ units }: Layout): Showing {
  return { units, glyphs: 'printed' };
}
