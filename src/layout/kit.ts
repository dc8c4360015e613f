import type { Units } from '../measure/index.ts';
import type { Paper } from '../stash/index.ts';
import type { Layout } from './layout.ts';

/**
 * A class or a working party: everybody makes the same cards of several layouts, each from a bag of pieces that are cut
 * ready from shared sheets. As the kit file says it, and nothing worked out yet.
 */
export interface Kit {
  readonly title: string;
  /** The units a length without one is read in, and lengths are shown in unless asked otherwise. */
  readonly units: Units;
  /** Bags for those who sit down to make the cards. */
  readonly seats: number;
  /** Bags of which the teacher's samples are made. */
  readonly teacher: number;
  /** Bags beyond those, in case. */
  readonly spare: number;
  /** The shared papers: in every layout they stand for the papers of the same ids. */
  readonly papers: ReadonlyMap<string, Paper>;
  /** In the order of the file, at least one. */
  readonly layouts: readonly KitLayout[];
  /** Whether a bag has an envelope for each of its cards. */
  readonly envelopes: boolean;
  /** What is bought and put in each bag besides. */
  readonly bought: readonly KitThing[];
  readonly instead: readonly KitInstead[];
}

/** One of the layouts that a kit is for. */
export interface KitLayout {
  /** Letters, digits, `-` and `_`; no two of a kit have the same. */
  readonly id: string;
  /** How many cards of it are made from one bag. */
  readonly each: number;
  /** With the shared papers in it, and as many cards as all the bags together make. */
  readonly layout: Layout;
}

/** Something that is bought and counted into bags. */
export interface KitThing {
  readonly name: string;
  /** How many are in each bag. */
  readonly each: number;
  /** How many more to have at hand for the whole class. */
  readonly spare: number;
}

/** On so many cards of a layout, the last that would have it, another paper stands in for one that is short. */
export interface KitInstead {
  /** Id of the layout. */
  readonly layout: string;
  /** Id of the part in that layout; `base` for its base. */
  readonly part: string;
  readonly paper: string;
  readonly by: string;
  readonly cards: number;
}

/** How many bags there are in all. */
export function bagsOf({ seats, teacher, spare }: Pick<Kit, 'seats' | 'teacher' | 'spare'>): number {
  return seats + teacher + spare;
}
