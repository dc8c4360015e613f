import { type Length, lengthOfTicks, type Size } from '../measure/index.ts';
import { type Crease, type Facet, facetsAlong, radians, type Spot, type Strip } from './foldedStrip.ts';

/** What a strip measures that is tied in a flat overhand knot: a regular pentagon with a tail on either side. */
export interface KnotMeasures {
  /** Of each side of the pentagon; to the nearest tick. */
  readonly side: Length;
  /** The shortest strip that makes the knot, without tails, measured along its centre line; rounded up. */
  readonly least: Length;
  /** What is left for each tail along its centre line, rounded down; negative where the strip is too short. */
  readonly tail: Length;
  /** Where its three creases meet the centre line, from either end; to the nearest tick. */
  readonly creases: readonly [Length, Length, Length];
  /** Between a crease and the edge of the strip. */
  readonly creaseDegrees: number;
}

/**
 * The measures of a pentagon knot.
 *
 * Its strip is four trapezoids on end, whose legs are sides of the pentagon: in widths, a side of 1 / cos 18° = 1.0514622
 * and in all 4 cot 36° = 4 (phi + 1) / sqrt(2 + phi) = 5.5055277, phi = (1 + sqrt 5) / 2 (arXiv:math/0403028).
 */
export function knotMeasures({ width, length }: Strip): KnotMeasures {
  const { each, tail } = partsOf({ width, length });
  const crease = (number: number): Length => lengthOfTicks(Math.round(tail + number * each));
  return {
    side: lengthOfTicks(Math.round(width / Math.cos(radians(18)))),
    least: lengthOfTicks(Math.ceil(4 * each - slack)),
    tail: lengthOfTicks(Math.floor(tail + slack)),
    creases: [crease(1), crease(2), crease(3)],
    creaseDegrees: 72,
  };
}

/**
 * The facets of a pentagon knot from the lowest to the highest, a corner of the pentagon up and its tails aslant
 * downwards to either side. `null` where the strip is too short.
 *
 * The end that was folded last goes through under the first fold, which lies over all, as in a knot that is tied.
 */
export function knotFacets(strip: Strip): readonly Facet[] | null {
  const { each, tail } = partsOf(strip);
  if (tail < -slack) return null;
  const creases: readonly Crease[] = [1, 2, 3].map((count) => ({
    at: tail + count * each,
    degrees: count % 2 === 0 ? 108 : 72,
    goes: 'over',
  }));
  const along = facetsAlong(strip, creases, { x: 0, y: 0, degrees: startDegrees });
  if (along === null) return null;
  const pile = pileOrder.map((index) => along[index]!);
  const all = pile.flatMap(({ corners }) => corners);
  const [left, top] = [Math.min(...all.map(({ x }) => x)), Math.min(...all.map(({ y }) => y))];
  const moved = ({ x, y }: Spot): Spot => ({ x: x - left, y: y - top });
  return pile.map(({ corners, turned }) => ({ corners: corners.map(moved), turned: !turned }));
}

/** The box round a pentagon knot and its tails, rounded up; `null` where the strip is too short. */
export function sizeOfKnot(strip: Strip): Size | null {
  const facets = knotFacets(strip);
  if (facets === null) return null;
  const all = facets.flatMap(({ corners }) => corners);
  return {
    width: lengthOfTicks(Math.ceil(Math.max(...all.map(({ x }) => x)) - slack)),
    height: lengthOfTicks(Math.ceil(Math.max(...all.map(({ y }) => y)) - slack)),
  };
}

/** Which of the four stretches of the strip lies lowest, and which over it. */
const pileOrder = [2, 0, 3, 1] as const;
/** Which way the strip begins to run so that the two tails lean alike. */
const startDegrees = 324;
const slack = 1e-6;

/** The length of one trapezoid along the centre line, and of each tail. */
function partsOf({ width, length }: Strip): { readonly each: number; readonly tail: number } {
  const each = width / Math.tan(radians(36));
  return { each, tail: (length - 4 * each) / 2 };
}
