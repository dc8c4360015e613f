import type { Arrangement, Face, Layout } from '../layout/index.ts';
import { chanceForCard, type TearDepth, tearSum } from '../making/index.ts';
import { type Edge, type Length, lengthOfTicks, sum } from '../measure/index.ts';
import { type Chance, chanceInCards, chanceOnCard, failureChance } from './tearChance.ts';
import type { JoinKind, LaidJoin } from './tearJoin.ts';
import { tearJoins } from './tearJoins.ts';
import { type TearRemedy, tearRemedy } from './tearRemedy.ts';

/** What the torn edges of a set may do. */
export interface Tears {
  /** In the order of the pile; pieces of one part that are joined alike make one. */
  readonly joins: readonly TearJoin[];
  /** That a bare spot or a gap shows somewhere on a card, or a tear comes out past what hides it. */
  readonly shows: Risk;
  /** That two edges which should show something between them meet, or a border vanishes. */
  readonly meets: Risk;
  readonly cards: number;
  /** What was wanted at most, for the whole set and each of the two. */
  readonly wanted: number;
}

/** A chance for one card, and that it happens on some card of the set. */
export interface Risk {
  readonly onCard: Chance;
  readonly inSet: Chance;
}

/** A torn edge and what it meets, with how far it goes right and wrong. All lengths are its margin, see `LaidJoin`. */
export interface TearJoin extends Risk {
  readonly kind: JoinKind;
  readonly part: string;
  readonly edge: Edge;
  /** A part, or the face of the card. */
  readonly against: { readonly part: string | Face; readonly edge: Edge };
  readonly shows: string | Face;
  /** How many pieces on a card are joined so. */
  readonly pieces: number;
  /** As the layout has it. */
  readonly nominal: Length;
  /** With every tear as deep as is usual, and at the worst either way; negative where it fails. */
  readonly usual: Length;
  readonly least: Length;
  readonly most: Length;
  /** The middle nine of ten. */
  readonly likely: { readonly least: Length; readonly most: Length };
  /** Of the torn edge, and of the edge that it meets if that is torn as well. */
  readonly tears: readonly { readonly part: string; readonly edge: Edge; readonly tear: TearDepth }[];
  /** What would bring the set under the wanted risk, where it is not. */
  readonly remedy: TearRemedy | null;
}

/** The risk of a set that is wanted where nobody says another: one set in twenty (common practice, no source). */
export const usualRisk = 1 / 20;

/**
 * What becomes of every join of the torn edges of a card, and of the set: as laid, at worst, as a rule, with the
 * chance that it fails and what would bring that under the wanted risk.
 *
 * Tears are independent, so are the cards. The tear counts at its worst place, as if it were one straight line there.
 * Where several joins may fail they share the wanted risk evenly, so that all remedies together bring the set under it.
 */
export function tearsOf(
  layout: Layout,
  arrangement: Arrangement,
  { wanted = usualRisk, marks }: { readonly wanted?: number; readonly marks: Length },
): Tears {
  const { cards } = layout;
  const laid = tearJoins(layout, arrangement);
  const risk = (joins: readonly LaidJoin[]): Risk => {
    const onCard = chanceOnCard(joins);
    return { onCard, inSet: chanceInCards(onCard, cards) };
  };
  const meeting = laid.filter(({ kind }) => isMeeting(kind));
  const showing = laid.filter(({ kind }) => !isMeeting(kind));
  const [shows, meets] = [risk(showing), risk(meeting)];

  /** What one join of one piece may fail with on a card; 1 where the set is well as it is. */
  const allowed = (all: Risk, joins: readonly LaidJoin[]): number => {
    if (all.inSet.chance <= wanted) return 1;
    const failing = joins.filter((join) => failureChance(join) > 0).length;
    return chanceForCard(wanted, cards * Math.max(1, failing));
  };
  const allowedFor = { shows: allowed(shows, showing), meets: allowed(meets, meeting) };
  return {
    joins: alike(laid).map((joins): TearJoin => {
      const [join] = joins as [LaidJoin];
      const spread = tearSum(join.tears);
      const margin = (signed: number) => lengthOfTicks(join.bare + signed);
      return {
        kind: join.kind,
        part: join.torn.part,
        edge: join.torn.edge,
        against: { part: join.against.part, edge: join.against.edge },
        shows: join.shows,
        pieces: joins.length,
        nominal: join.nominal,
        usual: sum(join.bare, ...join.tears.map(({ tear, sign }) => lengthOfTicks(sign * tear.usual))),
        least: margin(spread.least),
        most: margin(spread.most),
        likely: { least: margin(spread.quantile(0.05)), most: margin(spread.quantile(0.95)) },
        tears: join.tears.map(({ of, tear }) => ({ part: of.part, edge: of.edge, tear })),
        ...risk(joins),
        remedy: tearRemedy(join, allowedFor[isMeeting(join.kind) ? 'meets' : 'shows'], {
          arrangement,
          marks,
        }),
      };
    }),
    shows,
    meets,
    cards,
    wanted,
  };
}

/** Whether a failing join of that kind makes edges meet; else it lets something show. */
export function isMeeting(kind: JoinKind): boolean {
  return kind === 'facing' || kind === 'border';
}

/** Joins of the same two parts that differ in nothing but the piece. */
function alike(joins: readonly LaidJoin[]): readonly (readonly LaidJoin[])[] {
  const groups = new Map<string, LaidJoin[]>();
  for (const join of joins) {
    const { kind, torn, against, nominal, shows } = join;
    const key = JSON.stringify([kind, torn.part, torn.edge, against.part, against.edge, nominal, shows]);
    groups.set(key, [...(groups.get(key) ?? []), join]);
  }
  return [...groups.values()];
}
