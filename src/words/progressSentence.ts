import type { Layout } from '../layout/index.ts';
import type { PlanningProgress } from '../planning/index.ts';
import { costWords } from './costWords.ts';
import { counted } from './count.ts';

/**
 * How far the planning has come, for a line that is shown while one waits: `Meadow: 11 sheets found, at least 10 …`.
 * Where the papers are short it says how many cards are being tried instead.
 */
export function progressSentence(progress: PlanningProgress, layout: Layout): string {
  const { paper, cards, cost, bound, measuredIn } = progress;
  const smaller = cards < layout.cards ? `Trying ${counted(cards, 'card')}. ` : '';
  const name = layout.papers.get(paper)?.name ?? paper;
  return `${smaller}${name}: ${standing()} …`;

  function standing(): string {
    // The sheets are named once.
    const least = costWords(bound, measuredIn).replace(/ sheets?$/, '');
    if (cost === null) return bound > 0 ? `at least ${costWords(bound, measuredIn)}` : 'being planned';
    if (cost <= bound) return `${costWords(cost, measuredIn)}, proved`;
    return `${costWords(cost, measuredIn)} found${bound > 0 ? `, at least ${least}` : ''}`;
  }
}
