import type { Layout } from '../layout/index.ts';
import type { Plan, Shortage } from '../planning/index.ts';
import { counted, countedInWords, listed } from './count.ts';

/**
 * Where the set stands, in a line: `Enough for 12 cards: 2 sheets of Meadow and 3 of Ivory; no plan takes fewer.`
 *
 * `isLast`: nothing better is looked for any more.
 */
export function standsSentence(
  layout: Layout,
  answer: Plan | Shortage,
  { isLast }: { readonly isLast: boolean },
): string {
  return answer.kind === 'plan' ? planned(layout, answer, isLast) : short(layout, answer);
}

function planned(layout: Layout, plan: Plan, isLast: boolean): string {
  const cards = counted(plan.cards, 'card');
  if (plan.papers.size === 0) return `${cards}: nothing has to be cut.`;
  const used = [...plan.papers].map(([id, { sheets }], index) => {
    const name = layout.papers.get(id)?.name ?? id;
    return index === 0 ? `${counted(sheets, 'sheet')} of ${name}` : `${sheets} of ${name}`;
  });
  return `Enough for ${cards}: ${listed(used)}; ${sureness(plan, isLast)}.`;
}

function sureness(plan: Plan, isLast: boolean): string {
  const outcomes = [...plan.papers.values()];
  const least = outcomes.some(({ measuredIn }) => measuredIn === 'price') ? 'costs less' : 'takes fewer';
  if (outcomes.every(({ proved }) => proved)) return `no plan ${least}`;
  return isLast ? `it is not proved that no plan ${least}` : `whether a plan ${least} is being worked out`;
}

function short(layout: Layout, { papers, nearest }: Shortage): string {
  const wanting = papers.map(({ paper, missing }) => {
    const pieces = [...missing.values()].reduce((total, count) => total + count, 0);
    return `${layout.papers.get(paper)?.name ?? paper} is ${countedInWords(pieces, 'piece')} short`;
  });
  const nearby =
    nearest.cards === 0
      ? 'They do not give even one card.'
      : `They are enough for ${counted(nearest.cards, 'card')}${nearest.proved ? ' and no more' : ''}.`;
  return `Not enough for ${counted(layout.cards, 'card')}: ${listed(wanting)}. ${nearby}`;
}
