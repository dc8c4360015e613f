// Its parts by themselves: all of it at once brings a page triangulation and more that nobody asks for.
import { ClipType, FillRule, PathType } from 'clipper2-ts/dist/Core.js';
import { Clipper64, type PolyPath64, PolyTree64 } from 'clipper2-ts/dist/Engine.js';
import { ClipperOffset, EndType, JoinType } from 'clipper2-ts/dist/Offset.js';
import type { Length } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Point } from './point.ts';
import { areaOf, type Region, regionOfRings } from './region.ts';

/**
 * The only file that knows the library of polygon arithmetic. Three of its ways are met here, once: it rounds what is
 * no whole number and answers nothing to what is no number, without a word, so every corner is looked at; and it lets
 * rings of opposite direction cancel each other, so only regions, whose direction is known, are combined by it.
 *
 * Corners where edges cross are rounded to whole ticks, each by at most half a tick along x and y.
 */
type Rings = readonly (readonly Point[])[];

/** What rings of any direction that may cross cover, filled even-odd. */
export function evenOdd(rings: Rings): Region {
  return combined(ClipType.Union, FillRule.EvenOdd, rings, []);
}

/** What rings that may cross go round in all once or more, either way: filled by the rule named nonzero. */
export function wound(rings: Rings): Region {
  return combined(ClipType.Union, FillRule.NonZero, rings, []);
}

/** What any of the regions covers. */
export function unionByArithmetic(regions: readonly Region[]): Region {
  return combined(
    ClipType.Union,
    FillRule.NonZero,
    regions.flatMap(({ rings }) => rings),
    [],
  );
}

/** What both cover. */
export function intersectionByArithmetic(one: Region, other: Region): Region {
  return combined(ClipType.Intersection, FillRule.NonZero, one.rings, other.rings);
}

/** What `from` covers and `taken` does not. */
export function differenceByArithmetic(from: Region, taken: Region): Region {
  return combined(ClipType.Difference, FillRule.NonZero, from.rings, taken.rings);
}

/**
 * The region with each edge moved outwards by `by`, or inwards where it is negative; edges meet in mitred corners.
 * A corner sharper than 29° is cut off square, at that distance or further from its tip.
 */
export function offsetByArithmetic(region: Region, by: Length): Region {
  const offset = new ClipperOffset(longestMitre);
  offset.addPaths(taken(region.rings), JoinType.Miter, EndType.Polygon);
  const found: { x: number; y: number }[][] = [];
  offset.execute(by, found);
  // Straightened, and in a known direction, by one more union.
  return combined(ClipType.Union, FillRule.Positive, given(found), []);
}

/** The connected pieces of a region, each with its holes. Pieces that meet in a corner alone are two. */
export function islandsByArithmetic(region: Region): Region[] {
  const clipper = new Clipper64();
  clipper.preserveCollinear = false;
  clipper.addPaths(taken(region.rings), PathType.Subject);
  const tree = new PolyTree64();
  assert(clipper.execute(ClipType.Union, FillRule.NonZero, tree), 'The arithmetic of regions has an answer');
  const islands: Region[] = [];
  const gather = (outside: PolyPath64) => {
    for (const island of childrenOf(outside)) {
      const holes = childrenOf(island);
      islands.push(regionOfRings(given([island, ...holes].map((path) => path.poly ?? []))));
      holes.forEach(gather);
    }
  };
  gather(tree);
  // Of a shape of a few ticks, rounding may leave a ring of no area.
  return islands.filter((island) => areaOf(island) > 0);
}

/** A mitre reaches at most that many times the distance moved: a corner of 2 · asin(1/4) = 29°. */
const longestMitre = 4;

function combined(kind: ClipType, rule: FillRule, subjects: Rings, clips: Rings): Region {
  const clipper = new Clipper64();
  clipper.preserveCollinear = false;
  clipper.addPaths(taken(subjects), PathType.Subject);
  if (clips.length > 0) clipper.addPaths(taken(clips), PathType.Clip);
  const found: { x: number; y: number }[][] = [];
  assert(clipper.execute(kind, rule, found), 'The arithmetic of regions has an answer', { kind });
  return regionOfRings(given(found));
}

function taken(rings: Rings): { x: number; y: number }[][] {
  return rings.map((ring) =>
    ring.map(({ x, y }) => {
      assert(Number.isSafeInteger(x) && Number.isSafeInteger(y), 'A corner is on whole ticks', { x, y });
      return { x, y };
    }),
  );
}

function given(paths: readonly (readonly { x: number; y: number }[])[]): Point[][] {
  // Adding 0 makes 0 of -0.
  return paths.map((path) => path.map(({ x, y }) => ({ x: x + 0, y: y + 0 }) as Point));
}

function childrenOf(path: PolyPath64): PolyPath64[] {
  return Array.from({ length: path.count }, (_, index) => path.child(index));
}
