import { type ReactNode, useState } from 'react';
import { kitOfferTaken } from '../../../../src/editing/index.ts';
import type { KitOffer, KitReport } from '../../../../src/kits/index.ts';
import {
  fileProblemSentence,
  kitOfferSentence,
  kitProblemSentence,
  kitShortSentences,
} from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useKit, useOpenKit, useShowing } from './kitContext.ts';

/** What would spoil the kit, with the names of its layouts. */
export function Wrong(): ReactNode {
  const { kit: says } = useMessages();
  const report = useOpenKit((state) => state.report);
  const showing = useShowing();
  const sentences = problemSentences(report, 'error', showing);
  if (sentences.length === 0) return null;
  return (
    <section className="notice" aria-labelledby="kit-wrong">
      <h2 id="kit-wrong">{says.headings.wrong}</h2>
      <ul lang="en">
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}

/** The sentences of the problems of that severity, each once. */
export function problemSentences(
  report: KitReport,
  wanted: 'error' | 'caution',
  showing: ReturnType<typeof useShowing>,
): readonly string[] {
  const own = report.problems.filter(({ problem }) => problem.severity === wanted);
  return [...new Set(own.map((problem) => kitProblemSentence(problem, report, showing)))];
}

/** What is short, and what would help: each offer is taken with a tap. */
export function Short(): ReactNode {
  const { kit: says } = useMessages();
  const report = useOpenKit((state) => state.report);
  const history = useOpenKit((state) => state.history);
  const showing = useShowing();
  const store = useKit();
  const [refused, setRefused] = useState<string | null>(null);
  const { planned } = report;
  if (planned?.shortage == null) return null;
  const take = (offer: KitOffer) => {
    const problems = store.make(kitOfferTaken(history.file, history.kit, offer));
    setRefused(problems === null ? null : problems.map(fileProblemSentence).join(' '));
  };
  return (
    <section aria-labelledby="kit-short">
      <div className="notice">
        <h2 id="kit-short">{says.headings.short}</h2>
        <ul lang="en">
          {kitShortSentences(planned, report.bags, showing).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </div>
      <h2>{says.headings.offers}</h2>
      <ol className="offers">
        {planned.offers.map((offer, index) => {
          const sentence = kitOfferSentence(offer, report, showing);
          return (
            <li key={sentence}>
              <span lang="en">{sentence}</span>{' '}
              <button type="button" className="say" onClick={() => take(offer)}>
                {says.take(index + 1)}
              </button>
            </li>
          );
        })}
      </ol>
      <p role="alert" lang="en">
        {refused}
      </p>
    </section>
  );
}
