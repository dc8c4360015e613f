import type { Face } from '../layout/index.ts';
import type { TearDepth } from '../making/index.ts';
import type { Edge, Length } from '../measure/index.ts';

/**
 * How a torn edge meets something else. `over`: it lies over a part below it, whose own edge it has to hide.
 * `under`: a part on top hides it. `beyond`: the same, seen from the other side, where a shallow tear comes out past
 * the part on top. `facing`: another edge faces it across what shows between them. `border`: a part and the edge of
 * what it lies on.
 */
export type JoinKind = 'over' | 'under' | 'beyond' | 'facing' | 'border';

/** An edge of one piece of a part; of a face of the card where `part` is `base`, `inside` or `back`. */
export interface EdgeOf {
  readonly part: string;
  readonly piece: number;
  readonly edge: Edge;
}

/** A tear that a join depends on, and which way: with `sign` 1 a deeper tear leaves more of its margin. */
export interface JoinTear {
  readonly of: EdgeOf;
  readonly tear: TearDepth;
  readonly sign: 1 | -1;
}

/**
 * One join of one torn edge on the card: its margin is what may be lost before it fails. That is how far the one lies
 * over the other (`over`, `under`, `beyond`), or how much shows between the two (`facing`, `border`).
 */
export interface LaidJoin {
  readonly kind: JoinKind;
  /** The torn edge it is told of. */
  readonly torn: EdgeOf;
  /** The edge that it meets. */
  readonly against: EdgeOf;
  /** What comes to light where the join fails, or is seen between the two edges: a part or a face. */
  readonly shows: string | Face;
  /** The margin as the layout has it, with every tear as deep as was reckoned. */
  readonly nominal: Length;
  /** The margin if nothing at all were torn off: nominal = bare + the signed tears as reckoned. */
  readonly bare: Length;
  readonly tears: readonly JoinTear[];
  /** How much of the torn edge is so. */
  readonly along: Length;
}
