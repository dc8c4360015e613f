import type { ReactNode } from 'react';
import { bordersSentence, gapSentence, ribbonSentences } from '../../../../src/words/index.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';

/** What is seen round a part and between it and others, as it was last worked out. */
export function ShownWords({ part }: { readonly part: string }): ReactNode {
  const made = useOpenLayout((state) => state.made);
  if (made.stage !== 'told') return null;
  const { docket, of } = made;
  const showing = { units: of.units, glyphs: 'printed' } as const;
  const borders = docket.borders.filter((each) => each.part === part);
  const gaps = docket.gaps.filter(({ between }) => between.some((each) => each.part === part));
  // Pieces that lie alike are told once.
  const sentences = new Set([
    ...borders.flatMap((each) => bordersSentence(each, of, showing) ?? []),
    ...gaps.map((each) => gapSentence(each, of, showing)),
    ...docket.ribbons
      .filter((each) => each.part === part)
      .flatMap((each) => ribbonSentences(each, of, showing)),
  ]);
  if (sentences.size === 0) return null;
  return (
    <div className="shown-words" lang="en">
      {[...sentences].map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
