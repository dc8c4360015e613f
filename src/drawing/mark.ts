/**
 * Drawn things, the same for SVG and PDF: points of 1/72 in, origin at the top left, y downwards.
 * The last mark lies on top.
 */
export type Mark = LineMark | PathMark | TextMark | GroupMark;

export interface Point {
  readonly xPt: number;
  readonly yPt: number;
}

/** An upright rectangle on the page. */
export interface Frame {
  readonly xPt: number;
  readonly yPt: number;
  readonly widthPt: number;
  readonly heightPt: number;
}

/** A pen line; its ends are cut off square at the end points, its corners are mitred. */
export interface Stroke {
  /** `#rrggbb`. */
  readonly colour: string;
  readonly widthPt: number;
  /** Lengths of dashes and gaps in turn; absent: an unbroken line. */
  readonly dashPt?: readonly number[];
  /** How an open line ends; butt when absent. With `round`, a line of no length is a dot as wide as the line. */
  readonly cap?: 'round';
}

export interface LineMark {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
  readonly stroke: Stroke;
}

/** A path of straight lines and cubic curves; filled, stroked or both. */
export interface PathMark {
  readonly kind: 'path';
  readonly path: readonly PathStep[];
  readonly fill?: Fill;
  readonly stroke?: Stroke;
}

export type PathStep =
  | { readonly to: 'move' | 'line'; readonly xPt: number; readonly yPt: number }
  | {
      readonly to: 'curve';
      readonly x1Pt: number;
      readonly y1Pt: number;
      readonly x2Pt: number;
      readonly y2Pt: number;
      readonly xPt: number;
      readonly yPt: number;
    }
  | { readonly to: 'close' };

/** A flat colour, or a paper's hatch over its ground colour so that paper is never told by colour alone. */
export type Fill = { readonly colour: string } | { readonly hatch: Hatch };

/** The family of hatches by which papers are told apart in black; see `hatchFor`. */
export interface Hatch {
  readonly ground: string;
  readonly ink: string;
  readonly pattern: 'plain' | 'lines' | 'crossed' | 'dots' | 'dashes' | 'waves' | 'chevrons' | 'bricks';
  /** Turn of the pattern clockwise, in degrees, so that it turns with its sheet. */
  readonly turnDegrees: number;
  /** Distance of the lines. */
  readonly spacingPt: number;
}

export interface TextMark {
  readonly kind: 'text';
  /** Where the baseline starts, is centred or ends, by `anchor`. */
  readonly at: Point;
  /** One line of text. Fractions are written with U+2044; spaces at the end take no part in anchoring. */
  readonly text: string;
  readonly sizePt: number;
  readonly weight: Weight;
  readonly colour: string;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Turned clockwise about `at`, in degrees; 0 when absent. */
  readonly turnDegrees?: number;
}

/** The two weights of type that pages are set in. */
export type Weight = 'regular' | 'semibold';

/** Marks that belong together, and what they are to someone who listens instead of looks. */
export interface GroupMark {
  readonly kind: 'group';
  readonly marks: readonly Mark[];
  /**
   * Part of the reading structure (PDF tags, SVG roles). Absent: decoration when it stands outside any role or
   * between the items of a list, table or row; else part of its parent's content.
   */
  readonly role?: Role;
  /** What a figure shows, in words; needed for `figure`, whose inner roles are not read. */
  readonly says?: string;
  /** The column or row that a header cell heads; `column` when absent. */
  readonly heads?: 'column' | 'row';
  /** Goes on with the last group of this role on the page before (a list or table broken over pages). */
  readonly continues?: boolean;
  /** Moves the whole group. */
  readonly move?: Point;
  /** Only what lies in this rectangle is seen; moved with the group. */
  readonly clip?: Frame;
}

/** `list` holds `listItem`s, which may begin with a `label`; `table` holds `row`s of `headerCell`s and `cell`s. */
export type Role =
  | 'title'
  | 'heading'
  | 'subheading'
  | 'paragraph'
  | 'list'
  | 'listItem'
  | 'label'
  | 'figure'
  | 'table'
  | 'row'
  | 'headerCell'
  | 'cell';
