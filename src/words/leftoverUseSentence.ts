import type { Layout } from '../layout/index.ts';
import { type Size, showSize } from '../measure/index.ts';
import type { LeftoverUses, OtherKind, OtherUse, Plan } from '../planning/index.ts';
import { capital, counted, countedInWords, countWord, either, listed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/**
 * What the extras of the layout come to on the leftovers: `Gift tag: four, on a leftover of Plum cardstock, 8 1/2 x 5 in.`
 * and what is short of them.
 */
export function extraSentences(uses: LeftoverUses, layout: Layout, showing: Showing): readonly string[] {
  return (layout.extras ?? []).flatMap(({ name }, index) => {
    const { found, wanted, atMost } = uses.extras[index]!;
    const beds = uses.used.filter(({ places }) => places.some(({ extra }) => extra === index));
    const where = listed(
      beds.map(({ paper, size, places }) => {
        const own = places.filter(({ extra }) => extra === index).length;
        const on = `${paperName(layout, paper)} (${shown(size, showing)})`;
        return beds.length === 1 ? on : `${on}, ${countWord(own)}`;
      }),
    );
    if (found === 0) return [`${capital(name)}: none; no leftover has room for it.`];
    const short =
      wanted !== null && found < wanted
        ? ` That is ${countWord(wanted - found)} short${found < atMost ? '; no more were found, which is no proof that there are none' : ''}.`
        : '';
    return [`${capital(name)}: ${countWord(found)}, from what is left of ${where}.${short}`];
  });
}

/**
 * What else could be had of what is kept, each for itself: `Six more of Star`, `eleven gift tags of 1 1/2 x 3 in`; `null`
 * where nothing could.
 */
export function otherUsesSentence(uses: LeftoverUses, layout: Layout, showing: Showing): string | null {
  if (uses.others.length === 0) return null;
  const words = uses.others.map((use) => otherWords(use, layout, showing));
  return `What is kept could still give ${either(words)}: each for itself, as found, not all of it together.`;
}

/** What goes into the stash: `Back into the stash: one scrap of Plum cardstock, 8 1/2 x 5 in.` */
export function keptSentences(uses: LeftoverUses, layout: Layout, showing: Showing): readonly string[] {
  const papers = [...new Set(uses.kept.map(({ paper }) => paper))];
  return papers.map((paper) => {
    const sizes = new Map<string, number>();
    for (const kept of uses.kept) {
      if (kept.paper !== paper) continue;
      const size = shown(kept.size, showing);
      sizes.set(size, (sizes.get(size) ?? 0) + 1);
    }
    const many = [...sizes.values()].reduce((sum, count) => sum + count, 0);
    const each = listed(
      [...sizes].map(([size, count]) => (count === 1 ? size : `${countWord(count)} of ${size}`)),
    );
    return `Back into the stash: ${countedInWords(many, 'scrap')} of ${paperName(layout, paper)}, ${each}.`;
  });
}

/** What was taken out of the stash: `Taken out: 2 sheets of Plum cardstock.` */
export function takenOutSentences(plan: Plan, layout: Layout): readonly string[] {
  return [...plan.papers].map(
    ([paper, { sheets }]) => `Taken out: ${counted(sheets, 'sheet')} of ${paperName(layout, paper)}.`,
  );
}

function otherWords({ what, part, size, total }: OtherUse, layout: Layout, showing: Showing): string {
  if (part !== null) return `${countWord(total)} more of ${partName(layout, part)}`;
  const [one, many] = kindWords[what];
  return `${countWord(total)} ${total === 1 ? one : many} of ${shown(size, showing)}`;
}

const kindWords = {
  shape: ['shape', 'shapes'],
  tag: ['gift tag', 'gift tags'],
  'inside strip': ['strip across the inside', 'strips across the inside'],
  'envelope lining': ['lining for the back of an envelope', 'linings for the backs of envelopes'],
} as const satisfies Record<OtherKind, readonly [one: string, many: string]>;

function shown(size: Size, { units, glyphs }: Showing): string {
  return showSize(size, units, glyphs);
}

function paperName(layout: Layout, id: string): string {
  return layout.papers.get(id)?.name ?? id;
}
