import type { Axis, Edge, Length, Size } from '../measure/index.ts';

/** How a print may stand: `any` way, `one-way` only upright, `two-way` upright or half round. */
export type Up = 'any' | 'one-way' | 'two-way';

/** What a paper is, as the trade sorts it; any other word is kept as it is and treated as paper. */
export type PaperKind = string;

/**
 * Money for one sheet: a whole number of ten-thousandths of the person's own currency, so that sums are exact.
 */
export type Price = number;

/** `#rrggbb` in small letters, a colour of sRGB (CSS Color Module Level 4, section 5.2). */
export type Colour = string;

/** Sheets of one size of a paper. */
export interface SheetStock {
  /** True size as measured, with the pattern upright. */
  readonly size: Size;
  /** How many are on hand; `null`: as many as needed. */
  readonly count: number | null;
  readonly price: Price | null;
  /** The direction the fibres run, where known: it cautions, it never locks. */
  readonly grain: Axis | null;
  /** Already cut into: costs nothing and is used first. */
  readonly scrap: boolean;
  /**
   * What cannot be used along each edge (a ragged edge, a printed strip): it is cut off first, by a squaring
   * cut, before anything is measured from that edge. Zero where the edge is good.
   */
  readonly margin: Readonly<Record<Edge, Length>>;
}

/** One paper of the stash, with the sheets of it. */
export interface Paper {
  /** Letters, digits, `-` and `_`. */
  readonly id: string;
  /** What people call it; the id where the file gives no name. */
  readonly name: string;
  readonly kind: PaperKind | null;
  /** Grammage in g/m²; worked out where pounds are said. */
  readonly gsm: number | null;
  /** What it is sold as in North America: 80 pounds of `cover`; absent: nothing is said. */
  readonly pounds?: { readonly pounds: number; readonly of: string };
  readonly thickness: Length | null;
  /** The main colour of its front; `null`: nobody said. */
  readonly colour: Colour | null;
  /** The colour inside, where a tear shows it; `null`: nobody said. */
  readonly core: Colour | null;
  /** Whether what lies below it is seen through it. */
  readonly seeThrough: boolean;
  readonly up: Up;
  /** The other side of a double-sided paper, seen when the sheet is turned over about its vertical axis. */
  readonly back: { readonly name: string; readonly up: Up; readonly colour: Colour | null } | null;
  readonly sheets: readonly SheetStock[];
}
