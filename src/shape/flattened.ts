import { wound } from './arithmetic.ts';
import { isConvex } from './convex.ts';
import type { Contour, Outline, Segment } from './outline.ts';
import { type Point, pointNear } from './point.ts';
import { type Region, regionOfRings, ringArea } from './region.ts';
import { evenOddRegion } from './ringsRegion.ts';

/**
 * What an outline covers, its curves as chords: no chord is further than 4 ticks (2.5 µm) from the true line, and
 * every end of a segment is a corner. What overlaps an odd number of times is covered.
 */
export function regionOf(outline: Outline): Region {
  return filled(outline, evenOddRegion);
}

/** As `regionOf`, but with what its contours go round in all once or more, holes only where they go against each other. */
export function woundRegionOf(outline: Outline): Region {
  return filled(outline, wound);
}

function filled(outline: Outline, fill: (rings: readonly (readonly Point[])[]) => Region): Region {
  const rings = outline.contours.map(flattened).filter((ring) => ring.length > 2);
  const [ring, other] = rings;
  if (ring !== undefined && other === undefined && isConvex(ring)) {
    return regionOfRings([ringArea(ring) > 0 ? ring : ring.toReversed()]);
  }
  return fill(rings);
}

/** Chords may be that far from their curve before their ends are rounded to whole ticks, which adds at most √½. */
const chordTicks = 3.25;

function flattened({ from, segments }: Contour): Point[] {
  const ring = [from];
  let at = from;
  for (const segment of segments) {
    for (const point of along(at, segment)) {
      const last = ring.at(-1)!;
      if (point.x !== last.x || point.y !== last.y) ring.push(point);
    }
    at = segment.to;
  }
  const last = ring.at(-1)!;
  if (ring.length > 1 && last.x === from.x && last.y === from.y) ring.pop();
  return ring;
}

/** The corners on a segment behind its start, its end the last. */
function along(from: Point, segment: Segment): Point[] {
  switch (segment.kind) {
    case 'line':
      return [segment.to];
    case 'curve':
      return alongCurve(from, segment);
    case 'quarter':
      return alongQuarter(from, segment);
  }
}

/**
 * Evenly along the parameter. A chord of a curve over a step h of its parameter is at most h²/8 · max |B″| from it, and
 * the second derivative of a cubic is at most 6 times the greater second difference of its four points (the remainder of
 * linear interpolation; the second derivative runs straight between its ends).
 */
function alongCurve(from: Point, { first, second, to }: Segment & { kind: 'curve' }): Point[] {
  const bend = 6 * Math.max(secondDifference(from, first, second), secondDifference(first, second, to));
  const steps = Math.max(1, Math.ceil(Math.sqrt(bend / (8 * chordTicks))));
  const points: Point[] = [];
  for (let step = 1; step < steps; step += 1) {
    const t = step / steps;
    const s = 1 - t;
    const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    points.push(
      pointNear(
        a * from.x + b * first.x + c * second.x + d * to.x,
        a * from.y + b * first.y + c * second.y + d * to.y,
      ),
    );
  }
  points.push(to);
  return points;
}

function secondDifference(one: Point, middle: Point, other: Point): number {
  return Math.hypot(one.x - 2 * middle.x + other.x, one.y - 2 * middle.y + other.y);
}

/**
 * Evenly along the angle. An ellipse is a circle of its longer half axis pressed flat, which brings nothing further
 * apart, so the arrow of a chord over an angle a is at most that half axis times 1 - cos(a/2).
 */
function alongQuarter(from: Point, { corner, to }: Segment & { kind: 'quarter' }): Point[] {
  const towards = { x: corner.x - from.x, y: corner.y - from.y };
  const back = { x: to.x - corner.x, y: to.y - corner.y };
  const longer = Math.max(Math.hypot(towards.x, towards.y), Math.hypot(back.x, back.y));
  const angle = 2 * Math.acos(Math.max(0, 1 - chordTicks / longer));
  const steps = Math.max(1, Math.ceil(Math.PI / 2 / angle));
  const points: Point[] = [];
  for (let step = 1; step < steps; step += 1) {
    const turn = (Math.PI / 2) * (step / steps);
    const [forward, aside] = [Math.sin(turn), 1 - Math.cos(turn)];
    points.push(
      pointNear(from.x + forward * towards.x + aside * back.x, from.y + forward * towards.y + aside * back.y),
    );
  }
  points.push(to);
  return points;
}
