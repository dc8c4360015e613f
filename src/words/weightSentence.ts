import type { Closed, WeightItem } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { counted, listed } from './count.ts';
import { partName } from './partName.ts';
import { gramsWords } from './postFault.ts';
import type { Showing } from './showing.ts';

/** What a card and the set weigh without envelopes, and what of that is estimated. */
export function weightSentences(closed: Closed, layout: Layout, showing: Showing): readonly string[] {
  const { weight, setGrams } = closed;
  const whose = Math.abs(setGrams - weight.grams * layout.cards) > 0.05 ? 'The heaviest card' : 'One card';
  const told = `${whose} weighs about ${gramsWords(weight.grams, showing)} without its envelope, the set of ${counted(layout.cards, 'card')} about ${gramsWords(setGrams, showing)}.`;
  if (weight.estimated === 0) return [told];
  const things = listed(estimatedWords(weight.items, layout));
  const share = weight.estimated / weight.grams;
  const much =
    share > 0.995
      ? 'all of that'
      : share < 0.005
        ? 'hardly any of that'
        : `${gramsWords(weight.estimated, showing)} of that`;
  return [told, `Estimated, ${much}: ${things}. The areas are exact.`];
}

function estimatedWords(items: readonly WeightItem[], layout: Layout): readonly string[] {
  const estimated = items.filter((item) => item.estimated);
  const things = estimated
    .filter(({ what }) => what !== 'adhesive')
    .map(({ part }) => (part === 'base' ? 'the base' : partName(layout, part)));
  return estimated.some(({ what }) => what === 'adhesive') ? [...things, 'adhesives'] : things;
}
