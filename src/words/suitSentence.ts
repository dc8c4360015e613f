import { dimensionsOf, type Layout } from '../layout/index.ts';
import { showLengthWithUnit } from '../measure/index.ts';
import type { Suited, SuitedSizes } from '../planning/index.ts';
import { capital, counted } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';
import { changeWords, effectSentences, isBorder } from './sizeChange.ts';

/**
 * Sizes that suit the sheets, as sentences: whether the cards come out, which lengths change and what becomes of the
 * card, and how sure it is that nothing nearer does. `layout` is the one that was drawn.
 */
export function suitSentences(
  suited: Suited,
  layout: Layout,
  asked: number,
  showing: Showing,
): readonly string[] {
  switch (suited.kind) {
    case 'no-room':
      return [
        'No length of this layout has room to move. Give a part "room" in the file, or name one: --room "panel width 2 in to 2 1/2 in".',
      ];
    case 'no-mark': {
      const mark = showLengthWithUnit(suited.mark, showing.units, showing.glyphs);
      return [`${lengthAt(suited.path, layout)}: no whole mark of ${mark} lies in its room.`];
    }
    case 'never-even':
      return [
        suited.proved
          ? 'No sizes within this room keep borders and gaps even. Give room to what lies beside or below as well.'
          : 'No sizes within this room that keep borders and gaps even were found; not all were looked at.',
      ];
    case 'suited':
      return sizesSentences(suited, layout, asked, showing);
  }
}

/** `Panel, width`: a length by its path in the file. */
function lengthAt(path: string, layout: Layout): string {
  const found = dimensionsOf(layout).find((dimension) => dimension.path === path);
  if (found === undefined) return path;
  return `${found.part === 'base' ? 'The base' : capital(partName(layout, found.part))}, ${found.name}`;
}

function sizesSentences(
  { cards, proved, nearest, alike, changes, effect }: SuitedSizes,
  layout: Layout,
  asked: number,
  showing: Showing,
): readonly string[] {
  const sure = proved ? '; that is proved' : ', as far as was found';
  const lead =
    cards === asked
      ? changes.length === 0
        ? `${capital(counted(cards, 'card'))} come out with the sizes as they were drawn.`
        : `${capital(counted(cards, 'card'))} come out with these sizes:`
      : cards === 0
        ? `No sizes within this room give one card${sure}.`
        : `No sizes within this room give ${asked} cards${sure}. The most is ${counted(cards, 'card')}, ${changes.length === 0 ? 'with the sizes as they were drawn.' : 'with these sizes:'}`;
  if (changes.length === 0 || cards === 0) return [lead];
  const sizes = changes.filter(({ name }) => !isBorder(name));
  return [
    lead,
    ...sizes.map((change) => `  ${capital(changeWords(change, layout, showing))}.`),
    ...effectSentences(effect, sizes, layout, showing).map((sentence) => `  ${sentence}`),
    ...(alike
      ? []
      : [
          '  Borders are even left and right, top and bottom, but no longer the same all round: no sizes in this room that give so many are.',
        ]),
    nearest
      ? 'No sizes within this room that do are nearer to what was drawn.'
      : 'Whether nearer sizes do is not proved.',
  ];
}

/** What stands in the way of a room that was asked for, or `null`. */
export function roomRefusal(
  { part, name }: { readonly part: string; readonly name: string },
  names: readonly string[],
  layout: Layout,
): string | null {
  if (names.length === 0) {
    const parts = ['base', ...layout.parts.map(({ id }) => id)].join(', ');
    return `“${part}” is no part of this layout; it has ${parts}.`;
  }
  return names.includes(name)
    ? null
    : `${capital(part === 'base' ? 'the base' : partName(layout, part))} has no ${name} that could be given room; it has ${names.join(', ')}.`;
}
