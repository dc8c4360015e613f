import {
  type ArrangedPart,
  type Arrangement,
  arrange,
  checkLayout,
  type Dimension,
  type Drawn,
  dimensionsOf,
  type Layout,
  type LayoutProblem,
  type SumChange,
  sumChanges,
  unseen,
  type Worse,
  withLengths,
  worseningFrom,
} from '../layout/index.ts';
import { takesAllowance } from '../making/index.ts';
import { type Length, roundTo, type Size, zero } from '../measure/index.ts';
import type { SheetStock } from '../stash/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import { usualMarks } from './checkSet.ts';
import { type Conversion, converted } from './conversion.ts';
import { mostCards } from './enough.ts';
import { onMark } from './filledRow.ts';
import type { Piece } from './piece.ts';
import { piecesOf } from './pieces.ts';
import { piecesPerSheet } from './piecesPerSheet.ts';
import type { Plan } from './plan.ts';
import { planSet, type SetToPlan } from './planSet.ts';
import { heldKey, type RecastReason, recastLengths } from './recastLengths.ts';
import { roomsRecast, withRooms } from './recastRooms.ts';
import { suitedRecast } from './recastSuiting.ts';
import { basesTooLarge, papersRecast, type RecastRefusal, type RecastWishes } from './recastWishes.ts';
import type { Shortage } from './shortage.ts';

/** A layout planned again for another base, other units, marks or sheets, with all that changed and why. */
export interface Recast extends Drawn {
  readonly kind: 'recast';
  /** What the lengths were brought to. */
  readonly marks: Length;
  readonly trimmer: Trimmer | null;
  /** Every length of the layout, in its order. */
  readonly lengths: readonly RecastLength[];
  /** How much narrower panels within a folded base are, where that was said and has been brought to a mark. */
  readonly allowance: Change<Length> | null;
  /** The ends of the rooms that are others now, by their paths in the file. */
  readonly rooms: ReadonlyMap<string, Length>;
  /** By the id of a paper, where it has other sheets now. */
  readonly sheets: ReadonlyMap<string, readonly SheetStock[]>;
  /** What became of every border, gap and seen size of the card. */
  readonly effect: readonly SumChange[];
  readonly pieces: readonly RecastPiece[];
  readonly papers: readonly RecastPaper[];
  /** The set as it was drawn, planned without a trimmer unless it had one. */
  readonly before: Plan | Shortage;
  /** The set as it is now, planned. */
  readonly answer: Plan | Shortage;
  /** Whether sizes were moved so that the cards come out, and what came of it. */
  readonly suiting: Suiting;
  /** How many cards come out, also were sizes moved: fewer than asked for where it is `short`. */
  readonly cards: number;
  /** What is worse about it than it was drawn; both empty as a rule. */
  readonly worse: Worse;
  /** What was not wrong as it was drawn. */
  readonly problems: readonly LayoutProblem[];
  /** Ids of stamped and die-cut parts that are smaller now, since their sizes follow from others. */
  readonly squeezed: readonly string[];
  readonly conversion: RecastConversion;
}

/** Wishes that cannot be followed. */
export interface RecastRefused {
  readonly kind: 'refused';
  readonly refusals: readonly RecastRefusal[];
}

/** A length before and after. */
export interface RecastLength extends Omit<Dimension, 'length'> {
  readonly from: Length;
  readonly to: Length;
  readonly why: RecastReason;
}

/** A kind of piece before and after: its cut size, and how many a whole sheet gives of it when nothing else is cut. */
export interface RecastPiece {
  readonly piece: string;
  readonly part: string;
  readonly paper: string;
  readonly size: Change<Size>;
  /** `null`: there is no sheet of the paper. */
  readonly perSheet: Change<number | null>;
}

export interface RecastPaper {
  readonly paper: string;
  /** How many sheets the set takes, `null` where the paper is short. */
  readonly sheets: Change<number | null>;
}

export interface Change<Of> {
  readonly from: Of;
  readonly to: Of;
}

/** `enough`: no size had to move; `suited`: with these that moved all cards come out; `short`: no such sizes were found. */
export type Suiting = 'enough' | 'suited' | 'short';

/** What a conversion of each length by itself would have done. */
export interface RecastConversion extends Conversion {
  readonly pieces: readonly RecastPiece[];
  /** `null`: a size is then unknown, so nothing can be cut. */
  readonly answer: Plan | Shortage | null;
}

/**
 * The layout of a set planned again for what is wished, not converted: borders, gaps and tears stand on the marks and
 * are as even as they were, every row adds up again to the tick (`recastLengths`), and where the papers are then short
 * though they were not, or of the cards that are asked for, sizes move until the cards come out. Or why a wish cannot
 * be followed.
 *
 * `set.trimmer` is what the layout was planned for until now. Without another base, the closed front is brought down
 * to the marks, so that it still fits its envelope and its sheets.
 * Law, tested on random layouts: one that stands on the marks is left as it is when nothing else is asked for.
 */
export function recast(set: SetToPlan, wishes: RecastWishes): Recast | RecastRefused {
  const { layout } = set;
  const units = wishes.units ?? layout.units;
  const trimmer = wishes.trimmer === undefined ? set.trimmer : wishes.trimmer;
  const marks = wishes.marks ?? trimmer?.marks ?? usualMarks({ units });
  const { papers, refusals } = papersRecast(layout, wishes.sheets ?? []);
  const wrong = [...refusals, ...wishRefusals(wishes)];
  if (wrong.length > 0) return { kind: 'refused', refusals: wrong };

  const base = wishes.base ?? {
    width: roundTo(layout.base.size.width, marks, 'down'),
    height: roundTo(layout.base.size.height, marks, 'down'),
  };
  if (base.width <= 0 || base.height <= 0)
    return { kind: 'refused', refusals: [{ code: 'baseUnderMark', size: layout.base.size, marks }] };

  // Geometry first: the papers say afterwards whether it can be cut.
  const settable = trimmer?.marks ?? null;
  const scales = wishes.base !== undefined;
  const target = { base, scales, marks, settable };
  const { lengths: drawnAnew, unfilled } = recastLengths(layout, set.arrangement, target);
  const lengths = new Map([...drawnAnew].map(([path, { length }]) => [path, length]));
  const rooms = roomsRecast(set, withLengths(layout, lengths), marks);
  const allowance = allowanceRecast(layout, marks);
  const asked = {
    ...layout,
    units,
    papers,
    cards: wishes.cards ?? layout.cards,
    base: { ...layout.base, allowance: allowance === null ? layout.base.allowance : allowance.to },
  };
  const recastLayout = withRooms(withLengths(asked, lengths), rooms);
  const arrangement = arrange(recastLayout);
  const unknown = arrangement.parts.filter(
    (arranged) => !isKnown(arranged) || unfilled.has(arranged.part.id),
  );
  const late: readonly RecastRefusal[] = [
    ...basesTooLarge(recastLayout),
    ...(unknown.length > 0
      ? [{ code: 'nothingLeft' as const, size: base, parts: unknown.map(({ part }) => part.id) }]
      : []),
  ];
  if (late.length > 0) return { kind: 'refused', refusals: late };

  const before = planSet(set);
  const asDrawn = planSet({ ...set, layout: recastLayout, arrangement, trimmer });
  const suits =
    asDrawn.kind === 'plan'
      ? null
      : suitedRecast(
          { ...set, layout: recastLayout, arrangement, trimmer: withMarks(trimmer, marks) },
          asDrawn,
          marks,
        );
  const moved = suits?.lengths ?? new Map<string, Length>();
  // Places that follow what lies around them follow sizes that moved.
  const held = heldSizes(withLengths(recastLayout, moved), moved);
  const placed =
    moved.size === 0 ? drawnAnew : recastLengths(layout, set.arrangement, { ...target, held }).lengths;
  const following = [...placed].filter(([path, { why }]) => why === 'follows' && !moved.has(path));
  const followed = new Map(following);
  const suitedLayout = withLengths(
    recastLayout,
    new Map([...moved, ...following.map(([path, { length }]) => [path, length] as const)]),
  );
  const drawn = { layout: suitedLayout, arrangement: arrange(suitedLayout) };
  const answer = moved.size === 0 ? asDrawn : planSet({ ...set, ...drawn, trimmer });
  return {
    kind: 'recast',
    ...drawn,
    marks,
    trimmer,
    lengths: dimensionsOf(layout).map(({ length: from, ...about }) => {
      const { length: to, why } = followed.get(about.path) ?? drawnAnew.get(about.path)!;
      const suited = moved.get(about.path);
      return {
        ...about,
        from,
        ...(suited === undefined ? { to, why } : { to: suited, why: 'suits' as const }),
      };
    }),
    allowance,
    rooms,
    sheets: new Map(
      [...papers].flatMap(([id, paper]) => (paper === layout.papers.get(id) ? [] : [[id, paper.sheets]])),
    ),
    effect: sumChanges(set.arrangement, drawn.arrangement),
    pieces: piecesRecast(set, { ...drawn, trimmer }),
    papers: papersRecastFrom(before, answer),
    before,
    answer,
    suiting: asDrawn.kind === 'plan' ? 'enough' : answer.kind === 'plan' ? 'suited' : 'short',
    cards: Math.max(suits?.cards ?? 0, answer.kind === 'plan' ? answer.cards : answer.nearest.cards),
    worse: worseningFrom(set)(drawn),
    problems: newProblems(set, drawn),
    squeezed: squeezedIn(set.arrangement, drawn.arrangement),
    conversion: conversionOf(set, { asked, base: wishes.base ?? null, marks, trimmer }),
  };
}

/** The allowance of a base that was said, brought to a mark but never to nothing; `null` where it stays. */
function allowanceRecast({ base }: Layout, marks: Length): Change<Length> | null {
  const { allowance: from } = base;
  if (from === null || !takesAllowance(base.fold)) return null;
  const to = onMark(from, marks);
  return to === from ? null : { from, to };
}

/** A trimmer of those marks, so that sizes are looked for on no others; `trimmer` itself where these are its own. */
function withMarks(trimmer: Trimmer | null, marks: Length): Trimmer {
  const any = { measuringSide: null, otherSide: null };
  const plain: Trimmer = {
    name: '',
    marks,
    longest: null,
    narrowest: null,
    reach: any,
    correction: zero,
    measuringEdge: 'left',
    hand: 'right',
    sheetsAtOnce: 1,
    cutsPerSitting: null,
  };
  return trimmer === null ? plain : { ...trimmer, marks };
}

/** The marks lengths are brought to where nothing else is said: 1/16 in or 1 mm (common practice, no source). */

/** The seen sizes of the parts of which a size moved. */
function heldSizes(layout: Layout, moved: ReadonlyMap<string, Length>): ReadonlyMap<string, Length> {
  const parts = new Set(
    dimensionsOf(layout).flatMap(({ path, part, kind }) =>
      kind === 'size' && moved.has(path) ? [part] : [],
    ),
  );
  return new Map(
    arrange(layout).parts.flatMap(({ part: { id }, seen }) =>
      seen === null || !parts.has(id)
        ? []
        : [
            [heldKey(id, 'width'), seen.width],
            [heldKey(id, 'height'), seen.height],
          ],
    ),
  );
}

function wishRefusals({ marks, cards, base }: RecastWishes): readonly RecastRefusal[] {
  const refusals: RecastRefusal[] = [];
  if (marks !== undefined && marks <= 0) refusals.push({ code: 'noMarks', marks });
  if (cards !== undefined && !(Number.isInteger(cards) && cards >= 1 && cards <= mostCards))
    refusals.push({ code: 'noCards', cards, most: mostCards });
  if (base !== undefined && (base.width <= 0 || base.height <= 0))
    refusals.push({ code: 'noSize', size: base, of: 'base' });
  return refusals;
}

function newProblems(before: Drawn, after: Drawn): readonly LayoutProblem[] {
  const keyOf = ({ code, where }: LayoutProblem) => `${code} ${where}`;
  const known = new Set(checkLayout(before.layout, before.arrangement).map(keyOf));
  return checkLayout(after.layout, after.arrangement).filter((problem) => !known.has(keyOf(problem)));
}

function squeezedIn(before: Arrangement, after: Arrangement): readonly string[] {
  return before.parts.flatMap(({ part, seen }, index) => {
    const now = after.parts[index]!.seen;
    if ((!part.stamped && !part.dieCut) || seen === null || now === null) return [];
    return now.width < seen.width - unseen || now.height < seen.height - unseen ? [part.id] : [];
  });
}

/** The pieces of both, in their order; what only one of them has is left out. */
function piecesRecast(
  before: Drawn & { readonly trimmer: Trimmer | null },
  after: Drawn & { readonly trimmer: Trimmer | null },
): readonly RecastPiece[] {
  const now = new Map(piecesOf(after.layout, after.arrangement).map((piece) => [piece.id, piece]));
  return piecesOf(before.layout, before.arrangement).flatMap((piece) => {
    const other = now.get(piece.id);
    if (other === undefined) return [];
    const { id, part, paper } = piece;
    return [
      {
        piece: id,
        part,
        paper,
        size: { from: piece.size, to: other.size },
        perSheet: { from: perSheet(piece, before), to: perSheet(other, after) },
      },
    ];
  });
}

/** How many a whole sheet gives, the first that is listed and no scrap. */
function perSheet(
  piece: Piece,
  { layout, trimmer }: { readonly layout: Layout; readonly trimmer: Trimmer | null },
): number | null {
  const sheet = layout.papers.get(piece.paper)!.sheets.find(({ scrap }) => !scrap);
  return sheet === undefined ? null : piecesPerSheet(piece, sheet, trimmer).count;
}

function papersRecastFrom(before: Plan | Shortage, after: Plan | Shortage): readonly RecastPaper[] {
  const papers = new Set([...before.pieces, ...after.pieces].map(({ paper }) => paper));
  return [...papers].map((paper) => ({
    paper,
    sheets: { from: sheetsOf(before, paper), to: sheetsOf(after, paper) },
  }));
}

function sheetsOf(answer: Plan | Shortage, paper: string): number | null {
  return answer.kind === 'plan' ? (answer.papers.get(paper)?.sheets ?? 0) : null;
}

function conversionOf(
  set: SetToPlan,
  {
    asked,
    base,
    marks,
    trimmer,
  }: {
    readonly asked: Pick<Layout, 'units' | 'papers' | 'cards'>;
    readonly base: Size | null;
    readonly marks: Length;
    readonly trimmer: Trimmer | null;
  },
): RecastConversion {
  const conversion = converted(set, { base, marks, asked });
  const { layout, arrangement } = conversion;
  if (!arrangement.parts.every(isKnown)) return { ...conversion, pieces: [], answer: null };
  const drawn = { layout, arrangement, trimmer };
  return { ...conversion, pieces: piecesRecast(set, drawn), answer: planSet({ ...set, ...drawn }) };
}

function isKnown({ cut }: ArrangedPart): boolean {
  return cut !== null && cut.width > 0 && cut.height > 0;
}
