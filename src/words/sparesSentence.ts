import type { Layout } from '../layout/index.ts';
import { type Size, showSize } from '../measure/index.ts';
import { largestKept, type NextSpare, type PieceSpares, type Plan } from '../planning/index.ts';
import { assert } from '../problem/index.ts';
import type { CostUnit, Paper } from '../stash/index.ts';
import { amount } from './costWords.ts';
import { counted, either, listed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/** What the sentences on spares are about. */
export interface SparesTold {
  readonly layout: Layout;
  readonly plan: Plan;
  /** Of all papers, as `sparesOf` gives them. */
  readonly spares: readonly PieceSpares[];
}

/**
 * The spares that one paper gives for nothing and the price of one more; none where nothing is known:
 * `Spares for nothing: 2 more for Bees panel, 1 pass more.`, `One more Bees panel than that takes another sheet.`
 */
export function sparesSentences(
  paper: Paper,
  { layout, plan, spares }: SparesTold,
  showing: Showing,
): readonly string[] {
  const own = spares.filter((spare) => spare.paper === paper.id);
  const offers = own.filter(({ offered }) => offered > 0);
  const name = ({ piece }: PieceSpares) => {
    const part = plan.pieces.find(({ id }) => id === piece)?.part;
    assert(part !== undefined, 'Spares are of pieces of the plan', { piece });
    return partName(layout, part);
  };
  const measuredIn = plan.papers.get(paper.id)!.measuredIn;
  const offer =
    offers.length === 0
      ? []
      : [
          `Spares for nothing: ${listed(offers.map((spare) => `${spare.offered} more for ${name(spare)}`))}, ${passesWords(offers.at(-1)!.passes)}.`,
        ];
  const last = offers.at(-1);
  const leftover =
    last === undefined ? [] : leftoverChange(largestKept(plan, paper.id), last.leftover, showing);
  // Of the pieces with offers, one more than those; where there are none, what any spare costs.
  const priced = offers.length === 0 ? own : offers;
  const byPrice = new Map<string, string[]>();
  for (const spare of priced) {
    if (spare.next === null) continue;
    const price = priceWords(spare, measuredIn);
    byPrice.set(price, [...(byPrice.get(price) ?? []), name(spare)]);
  }
  const than = offers.length === 0 ? '' : ' than that';
  const prices = [...byPrice].map(([price, names]) => `One more for ${either(names)}${than} ${price}.`);
  return [...offer, ...leftover, ...prices];
}

/** What the spares are cut from: they take the place of a leftover that would be kept. */
function leftoverChange(
  before: Size | null,
  after: Size | null,
  { units, glyphs }: Showing,
): readonly string[] {
  if (before === null || (before.width === after?.width && before.height === after.height)) return [];
  const shown = (size: Size) => showSize(size, units, glyphs);
  return [
    after === null
      ? `They use up what would be kept, ${shown(before)} at the largest.`
      : `The largest leftover is then ${shown(after)}, not ${shown(before)}.`,
  ];
}

/** What was made as spares for nothing, of all papers: `Made as spares, for nothing: 2 more for Bees panel.` */
export function sparesMadeSentence({ layout, plan, spares }: SparesTold): string {
  const made = spares.filter(({ offered }) => offered > 0);
  if (made.length === 0) return 'No spare was found that comes for nothing.';
  const words = made.map(({ piece, offered, paper }) => {
    const part = plan.pieces.find(({ id }) => id === piece)!.part;
    // A part from several papers has spares of each.
    const several = plan.pieces.filter((other) => other.part === part).length > 1;
    const from = several ? ` (${layout.papers.get(paper)!.name})` : '';
    return `${offered} more for ${partName(layout, part)}${from}`;
  });
  return `Made as spares, for nothing: ${listed(words)}.`;
}

function passesWords(passes: number): string {
  if (passes === 0) return 'with no pass more';
  return passes > 0 ? `${counted(passes, 'pass')} more` : `${counted(-passes, 'pass')} fewer`;
}

function priceWords({ next }: PieceSpares, measuredIn: CostUnit): string {
  assert(next !== null, 'A price is said where it is known');
  if (next.kind === 'none')
    return next.proved
      ? 'cannot be had from what there is'
      : 'was not found; that there is none is not proved';
  const sure = next.proved ? '' : ', as far as was found';
  return `${takesWords(next, measuredIn)}${sure}`;
}

function takesWords(
  { cost, sheets, scraps }: Extract<NextSpare, { kind: 'costs' }>,
  measuredIn: CostUnit,
): string {
  const more = (count: number, noun: string) =>
    count < 1 ? [] : [count === 1 ? `another ${noun}` : `${count} more ${noun}s`];
  const taken = [...more(sheets, 'sheet'), ...more(scraps, 'scrap')];
  if (measuredIn === 'price' && cost > 0)
    return `costs ${amount(cost)} more${taken.length === 0 ? '' : `: ${listed(taken)}`}`;
  if (taken.length > 0) return `takes ${listed(taken)}`;
  return cost > 0 ? `takes ${Number(cost.toFixed(1))} square inches of paper more` : 'takes other sheets';
}
