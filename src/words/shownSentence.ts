import type { BorderShown, BordersShown, FinishedProblem, GapShown, PaperShown } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { type Edge, lengthOfTicks, showLengthWithUnit } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { squareInches, squareMillimetres } from '../shape/index.ts';
import { capital, countedInWords, listed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';
import { placeName } from './tearSentence.ts';

/** What is wrong with what is seen of a part, or with how it holds. */
export function shownProblemSentence(
  { code, part = '', names, numbers }: FinishedProblem,
  layout: Layout,
  showing: Showing,
): string {
  const it = capital(placeName(layout, part));
  const shows = placeName(layout, names.shows ?? '');
  switch (code) {
    case 'vanishes': {
      const hiders = (names.by ?? '').split(' ').map((id) => partName(layout, id));
      return `Nothing of ${placeName(layout, part)} is seen: ${listed(hiders)} together lie over all of it.`;
    }
    case 'noJoin':
      return `${it} lies on nothing: it hangs beside the card.`;
    case 'thinJoin':
      return `${it} rests on what is below it nowhere by as much as ${shown(numbers.needed, showing)}, which glue needs to hold (common practice). Let it lie further on, or give it a larger piece.`;
    default: {
      assert(code === 'sliver', 'Every problem of what shows has its sentence', { code });
      const breadth = shown(numbers.breadth, showing);
      if (names.beside !== undefined)
        return `Only ${breadth} of ${shows} shows between ${placeName(layout, names.beside)} and ${placeName(layout, part)}: it looks like a slip. Let them meet, or leave a gap that is seen.`;
      if (names.edge === 'all')
        return `Only a sliver of ${shows} is seen, ${breadth} at its broadest: it looks like a slip.`;
      return `Only ${breadth} of ${shows} shows ${beside[names.edge as Edge]} ${placeName(layout, part)}: it looks like a slip. Let the edges meet, or leave a border that is seen.`;
    }
  }
}

/**
 * The borders of a piece as they are seen: `Mat leaves 1/8 in of the card front on all four sides.` `null`: other parts
 * lie over or beside it on all sides, so that it has none.
 */
export function bordersSentence(borders: BordersShown, layout: Layout, showing: Showing): string | null {
  const { part, on, edges, nearest } = borders;
  const bed = placeName(layout, on);
  const it = placeName(layout, part);
  const round = edgesDiffer(borders)
    ? ` At the nearest their outlines are ${shown(nearest, showing)} apart.`
    : '';
  const [first] = edgeNames.map((edge) => edges[edge]);
  const areAlike = edgeNames.every((edge) => edges[edge].breadth === first!.breadth && isOpen(edges[edge]));
  if (areAlike && first!.breadth > 0)
    return `${capital(it)} leaves ${shown(first!.breadth, showing)} of ${bed} on all four sides.${round}`;
  if (areAlike && first!.breadth === 0) return `${capital(it)} is flush with ${bed} on all four sides.`;

  // Sides of one breadth are named together; where something else lies beside it there is no border.
  const byBreadth = new Map<string, Edge[]>();
  for (const edge of edgeNames) {
    const { breadth, open } = edges[edge];
    if (breadth > 0 && open < mostlyCovered) continue;
    const told = breadthWords(edges[edge], showing);
    byBreadth.set(told, [...(byBreadth.get(told) ?? []), edge]);
  }
  if (byBreadth.size === 0) return null;
  const said = [...byBreadth].map(([told, of]) =>
    told.replace('{where}', listed(of.map((edge) => at[edge]))),
  );
  return `On ${bed}, ${it} ${listed(said)}.${round}`;
}

/** What shows between two pieces: `Between Upper panel and Lower panel 1/4 in of Mat shows.` */
export function gapSentence(
  { between, breadth, nearest, shows }: GapShown,
  layout: Layout,
  showing: Showing,
): string {
  const [one, other] = between.map(({ part }) => placeName(layout, part));
  const pair = one === other ? `two pieces of ${one}` : `${one} and ${other}`;
  if (breadth === 0) return `${capital(pair)} meet edge to edge.`;
  // What comes later in the pile lies over the gap; the rest is seen in it.
  const place = (id: string) => layout.parts.findIndex((part) => part.id === id);
  const top = Math.max(...between.map(({ part }) => place(part)));
  const named = (over: boolean) =>
    shows
      .filter(({ part, share: seen }) => seen >= 0.005 && place(part) > top === over)
      .map(({ part }) => placeName(layout, part));
  const [first, ...others] = named(false);
  const across = named(true);
  const over =
    across.length === 0 ? '' : `; ${listed(across)} ${across.length === 1 ? 'lies' : 'lie'} across it`;
  if (first === undefined) return `Between ${pair} there is a gap of ${shown(breadth, showing)}${over}.`;
  const peeks =
    others.length === 0 ? '' : `; ${listed(others)} ${others.length === 1 ? 'peeks' : 'peek'} through`;
  const nearer = nearest < breadth ? `, ${shown(nearest, showing)} at the nearest` : '';
  return `Between ${pair} ${shown(breadth, showing)} of ${first} shows${nearer}${peeks}${over}.`;
}

/** How much of a paper the whole set shows: `Meadow print: 90 sq in on the ten cards.` */
export function paperShownSentence(
  { paper, side, open, veiled }: PaperShown,
  layout: Layout,
  showing: Showing,
): string {
  const named = paper === null ? null : layout.papers.get(paper);
  const name =
    named === null || named === undefined
      ? 'What is bought'
      : side === 'back'
        ? (named.back?.name ?? `the back of ${named.name}`)
        : named.name;
  const through = veiled > 0 ? `, and ${area(veiled, showing)} seen through what lies over it` : '';
  return `${capital(name)}: ${area(open, showing)} on the ${countedInWords(layout.cards, 'card')}${through}.`;
}

const edgeNames: readonly Edge[] = ['left', 'right', 'top', 'bottom'];

const at: Readonly<Record<Edge, string>> = {
  left: 'on the left',
  right: 'on the right',
  top: 'at the top',
  bottom: 'at the bottom',
};

const beside: Readonly<Record<Edge, string>> = {
  left: 'left of',
  right: 'right of',
  top: 'above',
  bottom: 'below',
};

/** Whether the outlines come nearer to one another than any two of their edges. */
function edgesDiffer({ edges, nearest }: BordersShown): boolean {
  const least = Math.min(...edgeNames.map((edge) => edges[edge].breadth));
  return least > 0 && nearest < least - 16;
}

function shown(length: number | undefined, { units, glyphs }: Showing): string {
  assert(length !== undefined, 'A problem brings the lengths of its sentence');
  return showLengthWithUnit(lengthOfTicks(length), units, glyphs);
}

/** Areas are for buying and choosing: three figures are more than anyone cuts by. */
function area(squareTicks: number, { units }: Showing): string {
  const value = units === 'in' ? squareInches(squareTicks) : squareMillimetres(squareTicks) / 100;
  const rounded = value === 0 ? 0 : Number(value.toPrecision(3));
  return `${rounded} ${units === 'in' ? 'sq in' : 'cm²'}`;
}

/** A border of which less is seen is no border: something lies beside it. */
const mostlyCovered = 0.4;

function isOpen({ breadth, open }: BorderShown): boolean {
  return breadth <= 0 || open >= 0.995;
}

function breadthWords({ breadth, open }: BorderShown, showing: Showing): string {
  if (breadth < 0) return `hangs over by ${shown(-breadth, showing)} {where}`;
  if (breadth === 0) return 'is flush {where}';
  return `leaves ${shown(breadth, showing)} {where}${isOpen({ breadth, open }) ? '' : ' (partly covered)'}`;
}
