import type { AdhesiveKind, AdhesiveUse, FoldKind, Opens, PostId } from '../making/index.ts';
import type { Edge, Length, Size, Units } from '../measure/index.ts';
import type { BannerEnd, PathShape } from '../shape/index.ts';
import type { Paper } from '../stash/index.ts';

/** The faces of a card that parts lie on. */
export type Face = 'base' | 'inside' | 'back';

/** `locked`: the piece's width runs along the sheet's width; `free`: the two may be exchanged. */
export type Turn = 'locked' | 'free';

export type Adhere = 'flat' | 'raised' | 'spots';

/** What a part looks like within its seen box, which it fills. */
export type Shape =
  | { readonly kind: 'rectangle' }
  /** Its box is square. */
  | { readonly kind: 'circle' }
  | { readonly kind: 'oval' }
  /** A rectangle whose corners are rounded with this radius, or with half its shorter side where that is less. */
  | { readonly kind: 'rounded'; readonly corner: Length }
  /** A strip whose ends are cut to a shape, so deep; `null`: half of what it measures across there. */
  | {
      readonly kind: 'banner';
      readonly ends: Readonly<Partial<Record<Edge, BannerEnd>>>;
      readonly depth: Length | null;
    }
  /** Any closed outline; inside and outside by the even-odd rule. */
  | { readonly kind: 'outline'; readonly path: PathShape }
  | FoldedShape;

/**
 * What is folded of a strip. `strip` is the strip that is cut, the same as the extent of its part: its longer side is its
 * length, and one that is higher than wide is folded as a level one and then turned by a quarter, right into down.
 */
export type FoldedShape =
  /** Folded back at both ends of a slant; `template` and `slant` (in degrees) as of a `Ribbon`. */
  | {
      readonly kind: 'ribbon';
      readonly template: Length;
      readonly slant: number;
      readonly strip: Size;
    }
  /** Folded flat round a template so many times, as `Loops`. */
  | {
      readonly kind: 'loops';
      readonly template: Length;
      readonly loops: number;
      readonly overlap: Length;
      readonly strip: Size;
    }
  /** Tied in a flat overhand knot. */
  | { readonly kind: 'knot'; readonly strip: Size };

export type ShapeKind = Shape['kind'];

/** How deep the tears of a part go and how broad their core shows; `null`: nobody said. */
export interface Tear {
  readonly least: Length | null;
  readonly usual: Length | null;
  readonly most: Length | null;
  readonly core: Length | null;
}

/** What a thing that is bought measures, where somebody said. */
export interface Bought {
  readonly thickness: Length | null;
  /** Of one piece. */
  readonly grams: number | null;
}

/** The envelope the card goes in. */
export interface Envelope extends Bought {
  /** What people call it; empty where nobody said. */
  readonly name: string;
  /** Closed, from fold to fold. */
  readonly size: Size;
  /** Grammage of its paper in g/m². */
  readonly gsm: number | null;
}

/** What a person says of an adhesive that she uses; `null`: as is usual for its kind. */
export interface AdhesiveSaid {
  readonly kind: AdhesiveKind;
  /** Of a tape or a line of glue, or across a spot or a square. */
  readonly width: Length | null;
  readonly thickness: Length | null;
  /** How far from the edges of a part it stays. */
  readonly inset: Length | null;
  /** How far any point of a part may lie from the nearest of it. */
  readonly span: Length | null;
  /** How much is on a roll. */
  readonly roll: Length | null;
  /** How many are in a pack. */
  readonly pack: number | null;
  /** Minutes until the work can be taken up, and until it holds for good. */
  readonly handle: number | null;
  readonly dry: number | null;
  /** Whether it is seen through paper that is seen through. */
  readonly shows: boolean | null;
}

/** How the set is made, and how long that takes, as far as a person says; `null`: as is usual. */
export interface MakingSaid {
  /** How many make it; one unless said. */
  readonly helpers: number | null;
  /** How many stations the cards go through; `null`: no line, each makes her share from beginning to end. */
  readonly stations: number | null;
  /** How many cards there is room for where cards lie to dry, at each such place; `null`: as many as come. */
  readonly dryAtOnce: number | null;
  /** Minutes for cutting one piece, for scoring and folding one base and for putting one card into its envelope. */
  readonly cut: number | null;
  readonly score: number | null;
  readonly close: number | null;
}

/** Minutes for one piece of a part, as far as a person says; `null`: as is usual. */
export interface PartMinutes {
  /** For tearing, cutting out, stamping and folding it, all together. */
  readonly ready: number | null;
  /** For putting it on. */
  readonly lay: number | null;
}

/**
 * The layout of a set: base, papers and pile, as the layout file says it and nothing worked out yet.
 * Every reference in it has been checked by `files`: papers exist, `on` and neighbours stand earlier in the pile.
 */
export interface Layout {
  readonly title: string;
  /** The units a length without one is read in, and lengths are shown in unless asked otherwise. */
  readonly units: Units;
  /** How many cards in the set, 1 to 100 000. */
  readonly cards: number;
  readonly base: Base;
  /** In the order of the file. */
  readonly papers: ReadonlyMap<string, Paper>;
  /** The pile, bottom first. */
  readonly parts: readonly Part[];
  readonly envelope: Envelope | null;
  /** Which post the cards are sent by: the id of its table in `making`. */
  readonly post: PostId | null;
  /** What parts are held with, by what it is for; absent: as is usual. */
  readonly adhesives?: Readonly<Partial<Record<AdhesiveUse, AdhesiveSaid>>>;
  /**
   * Ids of parts in the order in which they are to be put on, where the designer says one; parts that are not named find
   * their own turn.
   */
  readonly order?: readonly string[];
  /** How it is made and how long that takes; absent: nothing is said. */
  readonly making?: MakingSaid;
  /** Shortest side of a leftover that goes back into the stash; the usual one unless said. */
  readonly smallestScrap?: Length;
  /** What the leftovers may give beside the cards, in the order in which it is thought of. */
  readonly extras?: readonly Extra[];
  /** Every length as it was typed, by its path in the file (`parts[2].size[0]`), to be shown and saved again. */
  readonly typed: ReadonlyMap<string, string>;
}

export interface Base extends Dealt, Bought {
  /** The closed front. */
  readonly size: Size;
  readonly fold: FoldKind;
  /** Of a fold that opens either way. */
  readonly opens: Opens;
  /** How much panels that lie within others are narrower, where a fold has such; `null`: as is usual. */
  readonly allowance: Length | null;
  /** How far the closed front may move; absent: nothing is said. */
  readonly rooms?: Rooms;
}

/** What is cut from paper and dealt over the cards. */
export interface Dealt {
  /** Ids of the papers dealt to cards 1, 2, 3 … in turn, and round again; empty: bought, not cut. */
  readonly papers: readonly string[];
  readonly side: 'front' | 'back';
  /** `null`: locked on a paper with a direction, free on one without. */
  readonly turn: Turn | null;
  readonly spare: number;
  /** Of what stands for a kit: how many cards are made with it where the layout counts one; 1 when absent. */
  readonly cardsEach?: number;
  /** Cards that are dealt another paper than the list says, counted back from the last; none when absent. */
  readonly instead?: readonly DealtInstead[];
}

/** On so many cards, the last of those that are dealt `paper`, `by` stands in for it. */
export interface DealtInstead {
  readonly paper: string;
  readonly by: string;
  readonly cards: number;
}

/** Anything laid on the card. */
export interface Part extends Dealt, Bought {
  readonly id: string;
  /** What people call it; the id where the file gives no name. */
  readonly name: string;
  /** A face of the card, or the id of a part that stands earlier in the pile. */
  readonly on: string;
  readonly shape: Shape;
  readonly extent: Extent;
  /** How much is torn off each edge after cutting; zero where the edge is cut. */
  readonly torn: Readonly<Record<Edge, Length>>;
  /** What is known of its tears; `null` where nothing is. */
  readonly tear: Tear | null;
  /** How much of it goes round each edge of what it lies on, and behind; zero where none does. */
  readonly tuck: Readonly<Record<Edge, Length>>;
  /** What is left all round when its shape is cut out. */
  readonly margin: Length;
  /** Whether its shape is cut out of the piece with a die. */
  readonly dieCut: boolean;
  /** Whether the piece is stamped. */
  readonly stamped: boolean;
  /** One for each piece of the part on a card; its length is the part's `count`. */
  readonly places: readonly Place[];
  /** `sideways`: the print lies on its side on the card. */
  readonly lies: 'upright' | 'sideways';
  readonly adhere: Adhere;
  /** How high foam raises it; `null`: as is usual, where it is raised. */
  readonly foam: Length | null;
  /** How long one piece of it takes; absent: nothing is said. */
  readonly minutes?: PartMinutes;
  /** How far its lengths may move; absent: nothing is said. */
  readonly rooms?: Rooms;
  /**
   * Cut from what the other pieces leave, of its papers in their order whichever has leftovers; absent: from sheets, its
   * papers dealt over the cards.
   */
  readonly from?: 'leftovers';
  /** As a plan has found it, in the order of the cards: `papers` is then one for each card. Only where it is from leftovers. */
  readonly settled?: readonly DealtRun[];
}

/** Cards that follow one another and have a part of one paper. */
export interface DealtRun {
  readonly paper: string;
  readonly cards: number;
  /** The last of these cards, so many, that no leftover is enough for: their pieces take a new sheet. */
  readonly beyond: number;
}

/** A small thing that is no part of a card, wanted of what is left over: a tag, a punched shape. */
export interface Extra {
  readonly name: string;
  readonly shape: Shape;
  /** What it measures when it is cut out. */
  readonly size: Size;
  /** What is left all round when its shape is cut out. */
  readonly margin: Length;
  /** `null`: as many as there are. */
  readonly count: number | null;
  /** Ids of the papers it may be of; empty: of any. */
  readonly papers: readonly string[];
  /** As of a part. */
  readonly turn: Turn | null;
}

/** From `least` to `most`, both included: what a length may be. */
export interface Room {
  readonly least: Length;
  readonly most: Length;
}

/**
 * The lengths that may have room: `width` and `height` are of the size that is cut (of the closed front, for a
 * base), also where that size follows from an inset or a place; `gap` is that to its neighbours, the last four
 * are distances of its place. All but these and `gap` are positive.
 */
export type RoomName =
  | 'width'
  | 'height'
  | 'diameter'
  | 'inset'
  | 'gap'
  | 'left'
  | 'right'
  | 'top'
  | 'bottom';

/** `none`: nothing may move; a length that is not named has no room of its own. */
export type Rooms = 'none' | Readonly<Partial<Record<RoomName, Room>>>;

/** How a part comes by its size. */
export type Extent =
  /** The size that is cut; `null` on an axis: it fills what its place leaves free (seen size). */
  | { readonly by: 'size'; readonly width: Length | null; readonly height: Length | null }
  /** The seen size of what it lies on, less twice the inset. */
  | { readonly by: 'inset'; readonly inset: Length }
  /** A circle's. */
  | { readonly by: 'diameter'; readonly diameter: Length };

/** Where one piece lies; an axis with nothing named is centred. */
export interface Place {
  readonly across: Span;
  readonly down: Span;
}

/**
 * What fixes a piece along one axis. `start` is its left or top edge, `end` its right or bottom edge.
 * `null`: nothing does. An end that is fixed by a distance is measured from the seen edge of what it lies on
 * (negative: an overhang); one fixed by a neighbour stands `gap` away from that neighbour's nearer seen edge.
 */
export interface Span {
  readonly start: Anchor | null;
  readonly end: Anchor | null;
}

export type Anchor =
  | { readonly from: 'edge'; readonly distance: Length }
  | { readonly from: 'part'; readonly part: string; readonly gap: Length };
