import type { Layout } from '../layout/index.ts';
import { showSize } from '../measure/index.ts';
import type { Cliff, Enough, Gain } from '../planning/index.ts';
import { amount } from './costWords.ts';
import { capital, counted, listed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';
import { changeWords, effectSentences } from './sizeChange.ts';

/**
 * What the papers are enough for: the cards, how sure that is, what runs out first, and what each paper by itself is
 * enough for.
 */
export function enoughSentences(enough: Enough, layout: Layout): readonly string[] {
  const { cards, proved, limit, papers } = enough;
  if (papers.size === 0) return ['Nothing is cut for this set: everything in it is bought.'];
  if (cards === null)
    return ['Enough for as many cards as you like: of every paper there are as many sheets as needed.'];
  const name = (id: string) => layout.papers.get(id)!.name;
  const spares = [layout.base, ...layout.parts].some(({ spare }) => spare > 0) ? ' with all the spares' : '';
  const sure = proved ? 'and no more; that is proved' : 'as far as was found; whether for more is not proved';
  const others = [...papers].filter(([id]) => !limit.includes(id));
  const alone = others.map(([id, of]) => {
    const most = of.cards === null ? 'as many as you like' : `${of.cards}${of.proved ? '' : ' or more'}`;
    return `${name(id)} for ${most}`;
  });
  return [
    cards === 0
      ? `Not enough for one card${spares}${proved ? '; that is proved' : ', as far as was found'}.`
      : `Enough for ${counted(cards, 'card')}${spares}, ${sure}.`,
    ...(limit.length > 0 ? [`What runs out first: ${listed(limit.map(name))}.`] : []),
    ...(alone.length > 0 ? [`The others are enough by themselves: ${listed(alone)}.`] : []),
  ];
}

/**
 * A small change of sizes with what it gains and what becomes of the card: `Upper panel 2 15/16 in high instead of 3:
 * a sheet of Bees gives 12 of Upper panel instead of 9, and the papers are enough for 10 cards instead of 9. …`
 */
export function cliffSentence({ changes, gains, effect }: Cliff, layout: Layout, showing: Showing): string {
  const [main, ...followers] = changes;
  // Borders and gaps that follow are told with the effect.
  const said = [
    main!,
    ...followers.filter(({ name }) => name === 'width' || name === 'height' || name === 'diameter'),
  ];
  const words = listed(said.map((change) => changeWords(change, layout, showing)));
  const gained = gains.map((gain) => gainWords(gain, layout, showing));
  const effects = effectSentences(effect, said, layout, showing);
  return `${capital(words)}: ${listed(gained)}. ${effects.join(' ')}`;
}

function gainWords(gain: Gain, layout: Layout, showing: Showing): string {
  switch (gain.kind) {
    case 'piece': {
      const [part, paperId] = gain.piece.split('/') as [string, string];
      const paper = layout.papers.get(paperId)!;
      const sheet = paper.sheets[gain.stock]!;
      const size = paper.sheets.length > 1 ? ` (${showSize(sheet.size, showing.units, showing.glyphs)})` : '';
      return `a ${sheet.scrap ? 'scrap' : 'sheet'} of ${paper.name}${size} gives ${gain.to} of ${partName(layout, part)} instead of ${gain.from}`;
    }
    case 'sheet': {
      const paper = layout.papers.get(gain.paper)!;
      const { from, to } = gain.sheets;
      if (to < from) return `the set takes ${counted(to, 'sheet')} of ${paper.name} instead of ${from}`;
      const priced = paper.sheets.some(({ price }) => price !== null);
      return priced
        ? `${paper.name} costs ${amount(gain.to)} instead of ${amount(gain.from)}`
        : `the set takes ${Number(gain.to.toFixed(1))} square inches of ${paper.name} instead of ${Number(gain.from.toFixed(1))}`;
    }
    case 'card':
      return `the papers are enough for ${counted(gain.to, 'card')} instead of ${gain.from}`;
  }
}
