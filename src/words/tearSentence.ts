import {
  type Chance,
  type JoinKind,
  joinBreadth,
  type TearJoin,
  type TearRemedy,
  type Tears,
} from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import {
  type Axis,
  type Length,
  lengthOfTicks,
  roundTo,
  showLength,
  showLengthWithUnit,
  usualMarkings,
} from '../measure/index.ts';
import { chanceWords, riskWords } from './chanceWords.ts';
import { counted, either } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';

/** What is said of one join of a torn edge. */
export interface JoinWords {
  /** `leaf, torn at the bottom, lies 10 mm over navy.` */
  readonly join: string;
  /** How it comes out: `At the deepest tear 7 mm of that is left.` */
  readonly comes: string;
  /** How often it fails, on a card and in the set; empty where it cannot. */
  readonly fails: string;
  /** What would bring that under the wanted risk; empty where it is. */
  readonly remedy: string;
}

/** A join in words, each sentence whole. */
export function joinWords(join: TearJoin, tears: Tears, layout: Layout, showing: Showing): JoinWords {
  const told = toldOf(join, layout, showing);
  return {
    join: joins[join.kind](told),
    comes: outcome(told),
    fails: failure(told, tears),
    remedy: join.remedy === null ? '' : remedySentence(join.remedy, { tears, layout, showing }),
  };
}

/** All that is said of a join, as one paragraph. */
export function tearSentence(join: TearJoin, tears: Tears, layout: Layout, showing: Showing): string {
  const { join: first, comes, fails, remedy } = joinWords(join, tears, layout, showing);
  return [first, comes, fails, remedy].filter((sentence) => sentence !== '').join(' ');
}

/** What holds for a whole set with torn edges: what was taken for granted, and how the chances of it all were found. */
export function tearsSentences({ joins, shows, meets, cards, wanted }: Tears): readonly string[] {
  if (joins.length === 0) return [];
  const said = (chance: Chance, what: string): readonly string[] =>
    chance.chance === 0
      ? []
      : [`With ${counted(cards, 'card')} to a set, ${what} in ${chanceWords(chance, 'set')}.`];
  const drawn = [shows.onCard, meets.onCard].find((chance) => chance.by === 'sampled');
  return [
    ...said(shows.inSet, 'something shows that should not'),
    ...said(meets.inSet, 'edges meet or a border is gone'),
    ...(shows.inSet.chance === 0 && meets.inSet.chance === 0
      ? ['However deep these tears go, nothing shows that should not and no edges meet.']
      : [`Wanted: no more than ${riskWords(wanted, 'set')}.`]),
    'Estimated: each tear is taken at its worst place along the edge, and the tears of all edges and cards as independent of one another.',
    ...(drawn?.by === 'sampled'
      ? [
          `Several joins share tears here: the chance was found by drawing ${drawn.draws} cards (seed ${drawn.seed}).`,
        ]
      : []),
  ];
}

/** What the sentences of a join draw on; lengths with their unit. */
interface Told {
  readonly join: TearJoin;
  readonly part: string;
  readonly other: string;
  readonly shows: string;
  readonly edge: string;
  readonly nominal: string;
  /** Whether what it meets lies above it in the pile. */
  readonly isBelow: boolean;
  /** To which a likely length is rounded. */
  readonly step: Length;
  readonly length: (length: Length) => string;
  readonly range: (least: Length, most: Length) => string;
}

function toldOf(join: TearJoin, layout: Layout, showing: Showing): Told {
  const { units, glyphs } = showing;
  const orderOf = (id: string) => layout.parts.findIndex((part) => part.id === id);
  const length = (of: Length) => showLengthWithUnit(of, units, glyphs);
  return {
    join,
    part: partName(layout, join.part),
    other: placeName(layout, join.against.part),
    shows: placeName(layout, join.shows),
    edge: join.edge,
    nominal: length(join.nominal),
    isBelow: orderOf(join.against.part) > orderOf(join.part),
    step: usualMarkings[units === 'in' ? '1/32 in' : '0.5 mm'].step,
    length,
    range: (least, most) => `${showLength(least, units, glyphs)} to ${length(most)}`,
  };
}

/** A part by its name, a face of the card as people say it. */
export function placeName(layout: Layout, id: string): string {
  return { base: 'the card front', inside: 'the inside', back: 'the back' }[id] ?? partName(layout, id);
}

const joins = {
  over: ({ join, part, other, edge, nominal, isBelow }) => {
    if (join.against.edge === join.edge)
      return `${other} lies hidden under ${part}, ${nominal} in from its torn ${edge}.`;
    return isBelow
      ? `What ends under the torn ${edge} of ${part} is hidden by ${other} as far as ${nominal} in.`
      : `${part}, torn at the ${edge}, lies ${nominal} over ${other}.`;
  },
  under: ({ part, other, edge, nominal }) =>
    `${other} hides the torn ${edge} of ${part} and lies ${nominal} over it.`,
  beyond: ({ part, other, edge, nominal }) => `${other} reaches ${nominal} past the torn ${edge} of ${part}.`,
  facing: ({ part, other, edge, nominal, shows }) =>
    `Between the torn ${edge} of ${part} and ${other}, ${nominal} of ${shows} is reckoned to show.`,
  border: ({ part, other, edge, nominal, isBelow, shows }) =>
    isBelow
      ? `${other} lies ${nominal} within the torn ${edge} of ${part}.`
      : `Beyond the torn ${edge} of ${part}, a border of ${nominal} of ${shows} is reckoned.`,
} as const satisfies Record<JoinKind, (told: Told) => string>;

function outcome({ join, shows, part, other, step, length, range }: Told): string {
  const { kind, least, most, likely } = join;
  if (kind === 'facing' || kind === 'border') {
    const from = lengthOfTicks(Math.max(0, least));
    if (least === most) return '';
    const usually = range(
      lengthOfTicks(Math.max(from, roundTo(likely.least, step, 'down'))),
      lengthOfTicks(Math.min(most, roundTo(likely.most, step, 'up'))),
    );
    const whole = range(from, most);
    return `It comes out at ${whole}${usually === whole ? '' : `, nine times in ten at ${usually}`}.`;
  }
  if (least >= 0) {
    const left = least === 0 ? 'nothing' : length(least);
    if (kind === 'over' && least > 0 && least < joinBreadth)
      return `At the deepest tear ${left} of that is left, less than the ${length(joinBreadth)} that glue needs to hold there (common practice).`;
    return kind === 'beyond'
      ? `At the shallowest tear ${left} of that is left.`
      : `At the deepest tear ${left} of that is left.`;
  }
  const bare = length(lengthOfTicks(-least));
  return kind === 'beyond'
    ? `A shallow tear lets ${part} come out past ${other}, by ${bare} at the worst.`
    : `A deeper tear lets ${shows} show there, ${bare} of it at the worst.`;
}

function failure({ join }: Told, { cards }: Tears): string {
  if (join.onCard.chance === 0) return '';
  const happens = {
    over: 'That happens',
    under: 'That happens',
    beyond: 'That happens',
    facing: 'They meet',
    border: 'Nothing of it is left',
  }[join.kind];
  const onCard = chanceWords(join.onCard, 'card');
  const inSet = chanceWords(join.inSet, 'set');
  return `${happens} on ${onCard}; with ${counted(cards, 'card')}, that is ${inSet}.`;
}

function remedySentence(
  { more, resized, torn }: TearRemedy,
  { tears, layout, showing }: { readonly tears: Tears; readonly layout: Layout; readonly showing: Showing },
): string {
  const { units, glyphs } = showing;
  const length = (of: Length) => showLengthWithUnit(of, units, glyphs);
  const ways = [
    ...resized.map(({ part, axis, to }) => `${partName(layout, part)} cut ${length(to)} ${wide[axis]}`),
    ...(torn === null ? [] : [evenTears(torn, layout, showing)]),
  ];
  const wanted = riskWords(tears.wanted, 'set');
  return `For no more than ${wanted}: ${length(more)} more room${ways.length === 0 ? '' : `, by ${either(ways)}`}.`;
}

const wide: Readonly<Record<Axis, string>> = { width: 'wide', height: 'high' };

function evenTears(
  torn: NonNullable<TearRemedy['torn']>,
  layout: Layout,
  { units, glyphs }: Showing,
): string {
  const length = (of: Length) => showLengthWithUnit(of, units, glyphs);
  const range = (least: Length, most: Length) => `${showLength(least, units, glyphs)} to ${length(most)}`;
  const depths = torn.map(({ tear }) =>
    tear.least === tear.most ? `exactly ${length(tear.least)} deep` : `${range(tear.least, tear.most)} deep`,
  );
  if (depths.every((depth) => depth === depths[0])) {
    return `${torn.length === 1 ? 'a tear' : 'tears'} ${depths[0]}`;
  }
  return torn.map(({ part }, index) => `a tear of ${partName(layout, part)} ${depths[index]}`).join(' with ');
}
