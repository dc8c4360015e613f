import type { Layout } from '../layout/index.ts';
import type { Plan } from '../planning/index.ts';
import { countedInWords, listed } from './count.ts';
import { partName } from './partName.ts';

/**
 * Of which papers a plan cuts the parts that come from leftovers, and for how many cards new paper is taken all the same:
 * `Tag is cut from leftovers: of Ivory cardstock for cards 1 to 4, of Plum cardstock for card 5.`
 */
export function fromLeftoversSentences(layout: Layout, { dealt }: Plan): readonly string[] {
  return [...(dealt ?? [])].map(([part, runs]) => {
    const name = partName(layout, part);
    const paperName = (id: string) => layout.papers.get(id)?.name ?? id;
    let before = 0;
    const of = runs.map(({ paper, cards }) => {
      before += cards;
      const which = cards === 1 ? `card ${before}` : `cards ${before - cards + 1} to ${before}`;
      return `of ${paperName(paper)} for ${which}`;
    });
    const whole = runs.length === 1 ? `of ${paperName(runs[0]!.paper)}` : listed(of);
    const beyond = runs.filter((run) => run.beyond > 0);
    if (beyond.length === 0) return `${name} is cut from leftovers: ${whole}; no sheet is taken for it.`;
    const more = beyond.map((run) => `${countedInWords(run.beyond, 'card')} of ${paperName(run.paper)}`);
    const none = runs.every((run) => run.beyond === run.cards);
    return none
      ? `${name} was to be cut from leftovers, but none is enough for it: it takes new paper, ${whole}.`
      : `${name} is cut from leftovers: ${whole}. For ${listed(more)} they are not enough: these take new paper.`;
  });
}
