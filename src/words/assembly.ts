import type { Adhere, ArrangedPart, Arrangement, Dealt, Face, Layout, Part } from '../layout/index.ts';
import { type Edge, type Length, lengthOfTicks, showLengthWithUnit, showSize } from '../measure/index.ts';
import { capital, countedInWords, listed, numbersListed } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/** How one part comes onto the card. */
export interface AssemblyWords {
  /** Id of the part. */
  readonly part: string;
  readonly name: string;
  /** `Tear ½ in off its right edge.`; empty where nothing is torn. */
  readonly tear: string;
  /** `Glue it flat on Mat: ⅛ in from every edge.` */
  readonly lay: string;
}

/** The order of putting a card together: the pile, bottom first, the front before the inside and the back. */
export function assemblyWords(
  layout: Layout,
  arrangement: Arrangement,
  showing: Showing,
): readonly AssemblyWords[] {
  const faces: readonly Face[] = ['base', 'inside', 'back'];
  return faces.flatMap((face) =>
    arrangement.parts
      .filter((part) => part.face === face)
      .map((arranged) => ({
        part: arranged.part.id,
        name: arranged.part.name,
        tear: tearWords(arranged, showing),
        lay: layWords(arranged, layout, showing),
      })),
  );
}

/**
 * Which card of the set gets which of several papers: `Meadow on cards 1, 3 and 5; Bark on cards 2, 4 and 6`;
 * `''` where one paper serves all or none is cut.
 */
export function dealtWords(dealt: Dealt, layout: Layout): string {
  const kinds = [...new Set(dealt.papers)];
  if (kinds.length < 2) return '';
  const nameOf = (id: string) => layout.papers.get(id)?.name ?? id;
  if (layout.cards > mostCardsNamed) {
    return `${listed(dealt.papers.map(nameOf))} in turn, card after card`;
  }
  const cards = Array.from({ length: layout.cards }, (_, card) => card);
  return kinds
    .flatMap((kind) => {
      const own = cards.filter((card) => dealt.papers[card % dealt.papers.length] === kind);
      if (own.length === 0) return [];
      return [
        `${nameOf(kind)} on ${own.length === 1 ? 'card' : 'cards'} ${numbersListed(own.map((card) => card + 1))}`,
      ];
    })
    .join('; ');
}

const mostCardsNamed = 24;

function tearWords({ part, seen }: ArrangedPart, showing: Showing): string {
  const edges = (['left', 'right', 'top', 'bottom'] as const).filter((edge) => part.torn[edge] > 0);
  if (edges.length === 0) return '';
  const tears = edges.map(
    (edge) => `${showLengthWithUnit(part.torn[edge], showing.units, showing.glyphs)} off its ${edge} edge`,
  );
  const left = seen === null ? '' : `; ${showSize(seen, showing.units, showing.glyphs)} stays to be seen`;
  return `Tear ${listed(tears)}${left}.`;
}

function layWords({ part, face, pieces }: ArrangedPart, layout: Layout, showing: Showing): string {
  const onto = groundName(part, face, layout);
  const placed = pieces.map(({ borders }) => (borders === null ? '' : placeWords(borders, showing)));
  const one = pieces.length === 1;
  const how = `${adhereWords[part.adhere](one ? 'it' : 'them', onto)}${showingWords(part, layout)}`;
  if (one) return `${how}${placed[0] === '' ? '' : `: ${placed[0]}`}.`;
  const each = placed.map((place, index) => `the ${ordinal(index + 1)} ${place}`);
  return `${capital(countedInWords(pieces.length, 'piece'))}. ${how}: ${each.join('; ')}.`;
}

/** Which side of the paper shows and how its print lies, where that can be got wrong. */
function showingWords(part: Part, layout: Layout): string {
  const papers = part.papers.flatMap((id) => layout.papers.get(id) ?? []);
  const doubleSided = papers.find((paper) => paper.back !== null);
  const front = papers.length === 1 ? doubleSided?.name : undefined;
  const side = part.side === 'back' ? doubleSided?.back?.name : front;
  const words = [
    ...(side === undefined ? [] : [`${side} side up`]),
    ...(part.lies === 'sideways' ? ['its print sideways'] : []),
  ];
  return words.length === 0 ? '' : `, ${words.join(', ')}`;
}

const adhereWords = {
  flat: (it, onto) => `Glue ${it} flat on ${onto}`,
  raised: (it, onto) => `Raise ${it} on foam tape over ${onto}`,
  spots: (it, onto) => `Hold ${it} with glue spots on ${onto}`,
} as const satisfies Record<Adhere, (it: string, onto: string) => string>;

const faceNames = {
  base: 'the front of the base',
  inside: 'the inside',
  back: 'the back',
} as const satisfies Record<Face, string>;

function groundName(part: Part, face: Face, layout: Layout): string {
  return part.on === face ? faceNames[face] : partName(layout, part.on);
}

/** Where a piece lies by what is seen around it: in as few distances as say it all. */
function placeWords(borders: Readonly<Record<Edge, Length>>, showing: Showing): string {
  const shown = (edge: Edge) => showLengthWithUnit(borders[edge], showing.units, showing.glyphs);
  const even = (one: Edge, other: Edge) => Math.abs(borders[one] - borders[other]) <= 1;
  const sides = even('left', 'right');
  const ends = even('top', 'bottom');
  if (sides && ends && even('left', 'top')) {
    return borders.left === 0 ? 'edge to edge' : `${shown('left')} from every edge`;
  }
  const across = sides ? `${shown('left')} from left and right` : nearer('left', 'right');
  const down = ends ? `${shown('top')} from top and bottom` : nearer('top', 'bottom');
  return `${across}, ${down}`;

  function nearer(one: Edge, other: Edge): string {
    const edge = borders[one] <= borders[other] ? one : other;
    if (borders[edge] < 0) {
      const over = showLengthWithUnit(lengthOfTicks(-borders[edge]), showing.units, showing.glyphs);
      return `${over} over the ${edge} edge`;
    }
    return borders[edge] === 0 ? `along the ${edge} edge` : `${shown(edge)} from the ${edge}`;
  }
}

function ordinal(number: number): string {
  return ordinals[number - 1] ?? `${number}th`;
}

const ordinals = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
];
