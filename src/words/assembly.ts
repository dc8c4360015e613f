import { type AssemblyStep, adhesiveFor, assemblyOf, foldedMade, isHeldUnder } from '../finished/index.ts';
import {
  type Adhere,
  type ArrangedPart,
  type Arrangement,
  type Dealt,
  type Face,
  isFolded,
  type Layout,
  type Part,
} from '../layout/index.ts';
import { type AdhesiveKind, tearOf } from '../making/index.ts';
import { type Edge, type Length, lengthOfTicks, showLengthWithUnit, showSize } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { BannerEnd } from '../shape/index.ts';
import { adhesiveNames } from './adhesiveWords.ts';
import { capital, countedInWords, listed, numbersListed } from './count.ts';
import { releaseWords, waitWords } from './orderSentence.ts';
import { partName } from './partName.ts';
import { foldingSentences } from './ribbonSentence.ts';
import type { Showing } from './showing.ts';

/** How one part comes onto the card. */
export interface AssemblyWords {
  /** Id of the part. */
  readonly part: string;
  readonly name: string;
  /** What has to have set, and that the card is turned over; empty where nothing is. */
  readonly first: string;
  /** What is done to it first: `Tear ½ in off its right edge.`; empty where nothing is. */
  readonly prepare: string;
  /** `Glue it flat on Mat: ⅛ in from every edge.` */
  readonly lay: string;
  readonly step: AssemblyStep;
}

/** The order of putting a card together, step by step as `assemblyOf` has it. */
export function assemblyWords(
  layout: Layout,
  arrangement: Arrangement,
  showing: Showing,
): readonly AssemblyWords[] {
  const { steps } = assemblyOf(layout, arrangement);
  const holding = adhesiveFor(layout, 'holding');
  const byId = new Map(arrangement.parts.map((arranged) => [arranged.part.id, arranged]));
  return steps.map((step) => {
    const arranged = byId.get(step.part)!;
    return {
      part: step.part,
      name: arranged.part.name,
      first: sentencesOf([waitWords(step, steps, layout), turnWords(step)]),
      prepare: sentencesOf(
        step.readies.map((id) => readyWords(byId.get(id)!, id === step.part, layout, showing)),
      ),
      lay: sentencesOf([
        step.releases.length === 0 ? '' : releaseWords(step.releases, layout),
        layWords(arranged, layout, showing),
        step.carries.length === 0
          ? ''
          : `It goes down with ${listed(step.carries.map((id) => partName(layout, id)))} on it.`,
        step.does === 'wrap'
          ? endsWords(step, layout, adhesiveNames[holding.kind])
          : step.offCard === null
            ? ''
            : `${partName(layout, step.offCard)} is not on the card yet.`,
      ]),
      step,
    };
  });
}

function sentencesOf(sentences: readonly string[]): string {
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

/** What is done to a part while it lies by itself; another than the one that is put on is named. */
function readyWords(arranged: ArrangedPart, isOwn: boolean, layout: Layout, showing: Showing): string {
  const words = sentencesOf([
    arranged.part.stamped ? 'Stamp it, and let the ink dry before any glue comes near.' : '',
    shapeWords(arranged, layout, showing),
    tearWords(arranged, showing),
  ]);
  return isOwn || words === '' ? words : `${arranged.part.name}: ${words}`;
}

/** That the card is turned over for it; what else is turned over, is with the laying. */
function turnWords({ turned, face, does }: AssemblyStep): string {
  if (turned !== 'base' || does === 'wrap') return '';
  return face === 'back' ? 'Turn the card over on its face.' : 'Turn the card over again.';
}

/** What holds the ends of a band, behind what it goes round. */
function endsWords({ turned, onto }: AssemblyStep, layout: Layout, tape: string): string {
  const what = turned === 'base' ? 'the card' : partName(layout, turned ?? onto);
  return `Turn ${what} over, hold the ends with ${tape}, and turn it back.`;
}

/**
 * Which card of the set gets which of several papers: `Meadow on cards 1, 3 and 5; Bark on cards 2, 4 and 6`;
 * `''` where one paper serves all or none is cut.
 */
export function dealtWords(dealt: Dealt, layout: Layout): string {
  const kinds = [...new Set(dealt.papers)];
  if (kinds.length < 2) return '';
  const nameOf = (id: string) => layout.papers.get(id)?.name ?? id;
  if (layout.cards > mostCardsNamed && dealt.papers.length >= layout.cards) {
    // One for each card: told as they follow one another.
    const starts = dealt.papers.flatMap((paper, card) => (dealt.papers[card - 1] === paper ? [] : [card]));
    return starts
      .map((from, index) => {
        const to = starts[index + 1] ?? layout.cards;
        return `${nameOf(dealt.papers[from]!)} on ${to - from === 1 ? `card ${to}` : `cards ${from + 1} to ${to}`}`;
      })
      .join('; ');
  }
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

/** How its piece, which is cut as a rectangle, comes by its shape; empty where it is a rectangle. */
function shapeWords({ part, seen }: ArrangedPart, layout: Layout, showing: Showing): string {
  const folded = foldedMade(part);
  if (folded !== null) return foldingSentences(folded, layout, showing).join(' ');
  const length = (of: Length) => showLengthWithUnit(of, showing.units, showing.glyphs);
  const by = part.dieCut ? ' with the die' : '';
  const size = seen === null ? '' : ` of ${showSize(seen, showing.units, showing.glyphs)}`;
  const margin = part.margin > 0 ? `; ${length(part.margin)} stays all round it` : '';
  const { shape } = part;
  assert(!isFolded(shape), 'What is folded has been told');
  switch (shape.kind) {
    case 'rectangle':
      return part.margin > 0 ? `Cut it out${by}${margin}.` : '';
    case 'circle':
      return part.margin > 0 || part.dieCut
        ? `Cut a circle${seen === null ? '' : ` of ${length(seen.width)}`} out${by}${margin}.`
        : '';
    case 'oval':
      return `Cut an oval${size} out${by}${margin}.`;
    case 'rounded':
      return `Round its corners with a radius of ${length(shape.corner)}${by}${margin}.`;
    case 'banner':
      return `${(['left', 'right', 'top', 'bottom'] as const)
        .flatMap((edge) => {
          const end = shape.ends[edge];
          if (end === undefined) return [];
          const deep = shape.depth === null ? '' : `, ${length(shape.depth)} deep`;
          return [`Cut its ${edge} end ${endWords[end]}${deep}.`];
        })
        .join(' ')}${part.margin > 0 ? ` ${capital(`${length(part.margin)} stays all round it.`)}` : ''}`;
    case 'outline':
      return `Cut it out along its outline${size}${by}${margin}.`;
  }
}

const endWords = {
  notched: 'in to a notch',
  pointed: 'to a point',
  slanted: 'aslant',
} as const satisfies Record<BannerEnd, string>;

function tearWords({ part, seen }: ArrangedPart, showing: Showing): string {
  const edges = edgeNames.filter((edge) => part.torn[edge] > 0);
  if (edges.length === 0) return '';
  const shown = (length: Length) => showLengthWithUnit(length, showing.units, showing.glyphs);
  const tears = edges.map((edge) => {
    const off = `${shown(part.torn[edge])} off its ${edge} edge`;
    if (part.tear === null) return off;
    const { least, most } = tearOf(part.torn[edge], part.tear);
    return `${off}, no less than ${shown(least)} and no more than ${shown(most)}`;
  });
  const left = seen === null ? '' : `; ${showSize(seen, showing.units, showing.glyphs)} stays to be seen`;
  return `Tear ${listed(tears)}${left}.`;
}

function layWords({ part, face, pieces }: ArrangedPart, layout: Layout, showing: Showing): string {
  const onto = groundName(part, face, layout);
  const placed = pieces.map(({ borders }) => (borders === null ? '' : placeWords(borders, showing)));
  const one = pieces.length === 1;
  const foam =
    part.foam === null ? '' : ` of ${showLengthWithUnit(part.foam, showing.units, showing.glyphs)}`;
  const it = one ? 'it' : 'them';
  const held = isHeldUnder(part)
    ? adhereWords[part.adhere]({ it, onto, foam, kind: adhesiveFor(layout, part.adhere).kind })
    : `Wrap ${it} round ${onto}`;
  const how = `${held}${showingWords(part, layout)}${tuckWords(part, showing)}`;
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

/** What of a band goes round and behind. */
function tuckWords(part: Part, showing: Showing): string {
  const tucks = edgeNames.flatMap((edge) =>
    part.tuck[edge] > 0
      ? [`${showLengthWithUnit(part.tuck[edge], showing.units, showing.glyphs)} round the ${edge} edge`]
      : [],
  );
  return tucks.length === 0 ? '' : `, ${listed(tucks)} and behind`;
}

const edgeNames: readonly Edge[] = ['left', 'right', 'top', 'bottom'];

interface Held {
  readonly it: string;
  readonly onto: string;
  /** How high, where that is said. */
  readonly foam: string;
  readonly kind: AdhesiveKind;
}

const adhereWords = {
  flat: ({ it, onto, kind }) =>
    kind === 'double-sided-tape'
      ? `Lay ${it} flat on ${onto} with ${adhesiveNames[kind]}`
      : `Glue ${it} flat on ${onto}`,
  raised: ({ it, onto, foam, kind }) => `Raise ${it} on ${adhesiveNames[kind]}${foam} over ${onto}`,
  spots: ({ it, onto }) => `Hold ${it} with glue spots on ${onto}`,
} as const satisfies Record<Adhere, (held: Held) => string>;

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
