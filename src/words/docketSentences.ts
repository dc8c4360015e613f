import type { Docket } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { envelopeSentences } from './envelopeSentence.ts';
import { foldingSentences } from './foldSentence.ts';
import { holdingSentences } from './holdingSentence.ts';
import { orderSentences } from './orderSentence.ts';
import { postSentences } from './postSentence.ts';
import { ribbonSentences } from './ribbonSentence.ts';
import { sectionSentences } from './sectionSentence.ts';
import type { Showing } from './showing.ts';
import { bordersSentence, gapSentence, paperShownSentence } from './shownSentence.ts';
import { tearingAdvice } from './tearAdvice.ts';
import { tearSentence, tearsSentences } from './tearSentence.ts';
import { weightSentences } from './weightSentence.ts';

/** One matter of a docket: its heading, and what is said of it. */
export interface DocketMatter {
  readonly heading: string;
  readonly says: readonly string[];
}

/** A docket in sentences, matter by matter, but its time (`timeMatter`); a matter of which there is nothing to say is left out. */
export function docketSentences(docket: Docket, layout: Layout, showing: Showing): readonly DocketMatter[] {
  const { folding, borders, gaps, papers, tears, ribbons, assembly, holding, closed, postings } = docket;
  const matters: readonly DocketMatter[] = [
    {
      heading: 'What shows',
      // Pieces of one part that are laid alike are told once.
      says: [
        ...new Set([
          ...borders.flatMap((one) => bordersSentence(one, layout, showing) ?? []),
          ...gaps.map((gap) => gapSentence(gap, layout, showing)),
        ]),
      ],
    },
    { heading: 'Fold', says: foldingSentences(folding, layout, showing) },
    {
      heading: 'Paper that is seen',
      says: papers.map((paper) => paperShownSentence(paper, layout, showing)),
    },
    {
      heading: 'Torn edges',
      says:
        tears.joins.length === 0
          ? []
          : [
              ...new Set(tears.joins.map((join) => tearSentence(join, tears, layout, showing))),
              ...tearsSentences(tears),
              ...tearingAdvice(),
            ],
    },
    { heading: 'Ribbon', says: ribbons.flatMap((made) => ribbonSentences(made, layout, showing)) },
    { heading: 'Held together', says: holdingSentences(holding, layout, showing) },
    { heading: 'Order of assembly', says: orderSentences(assembly, layout) },
    { heading: 'Closed', says: sectionSentences(closed.section, layout, showing) },
    { heading: 'Weight', says: weightSentences(closed, layout, showing) },
    { heading: 'Envelope', says: envelopeSentences(closed, layout, showing) },
    ...postings.map((posting) => ({
      heading: `By post: ${posting.table.country}`,
      says: postSentences(posting, layout, showing),
    })),
  ];
  return matters.filter(({ says }) => says.length > 0);
}
