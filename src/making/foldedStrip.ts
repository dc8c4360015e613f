import { assert } from '../problem/index.ts';

/** A place in the plane of the work in ticks, not rounded: x to the right, y downwards. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A straight strip before it is folded, in ticks. */
export interface Strip {
  readonly width: number;
  readonly length: number;
}

/** A line that a strip is folded along, from edge to edge. */
export interface Crease {
  /** Where it meets the centre line of the strip that lies flat, in ticks from the end that the strip begins with. */
  readonly at: number;
  /**
   * From the direction in which the strip runs on to the crease, more than 0 and less than 180, the way that turns
   * right into down, seen on the side of the strip that is up before anything is folded.
   */
  readonly degrees: number;
  /** Whether the rest of the strip goes over all that has been folded, or under it. */
  readonly goes: 'over' | 'under';
}

/** What of a folded strip lies flat between two creases. */
export interface Facet {
  readonly corners: readonly Spot[];
  /** Whether it shows the side of the strip that was down before anything was folded. */
  readonly turned: boolean;
}

/** Where the centre line of a strip begins and which way it runs, 0 to the right and 90 down. */
export interface Start extends Spot {
  readonly degrees: number;
}

/**
 * The facets of a folded strip from the lowest to the highest; `null` where a crease runs off the strip's end or
 * meets the one before it.
 *
 * A flat fold is a mirror, so a strip that runs in direction p and is folded along a crease in direction a leaves in
 * direction 2a - p, other side up: each facet comes from the sum of all turns before it, in closed form (the folds act
 * as mirrors for rays along the strip, arXiv:2010.04188, introduction).
 */
export function foldedStrip(
  strip: Strip,
  creases: readonly Crease[],
  start: Start = { x: 0, y: 0, degrees: 0 },
): readonly Facet[] | null {
  const facets = facetsAlong(strip, creases, start);
  if (facets === null) return null;
  const pile: Facet[] = [];
  for (const [index, facet] of facets.entries()) {
    if (index > 0 && creases[index - 1]!.goes === 'under') pile.unshift(facet);
    else pile.push(facet);
  }
  return pile;
}

/** The facets one after another along the strip; `null` as above. */
export function facetsAlong(
  { width, length }: Strip,
  creases: readonly Crease[],
  start: Start,
): readonly Facet[] | null {
  // Where each crease, and each end, meets the two edges of the flat strip: half a width before and after the centre.
  const cuts = [
    { before: 0, after: 0 },
    ...creases.map(({ at, degrees }) => {
      assert(degrees > 0 && degrees < 180, 'A crease crosses its strip', { degrees });
      const lean = width / 2 / Math.tan(radians(degrees));
      return { before: at - lean, after: at + lean };
    }),
    { before: length, after: length },
  ];
  if (cuts.some((cut, index) => index > 0 && meets(cuts[index - 1]!, cut))) return null;

  let direction = start.degrees;
  let hand = 1;
  let along = 0;
  let origin: Spot = start;
  return cuts.slice(1).map((end, index) => {
    if (index > 0) {
      const { at, degrees } = creases[index - 1]!;
      origin = placed(origin, direction, hand, { along: at - along, across: 0 });
      direction += 2 * hand * degrees;
      hand = -hand;
      along = at;
    }
    const begin = cuts[index]!;
    const corner = (at: number, side: 1 | -1) =>
      placed(origin, direction, hand, { along: at - along, across: (side * width) / 2 });
    return {
      corners: [
        corner(begin.before, -1),
        corner(end.before, -1),
        corner(end.after, 1),
        corner(begin.after, 1),
      ],
      turned: hand < 0,
    };
  });
}

/** Whether a crease comes before the one that it should follow, by more than arithmetic can have moved it. */
function meets(first: Cut, second: Cut): boolean {
  return first.before > second.before + 1e-6 || first.after > second.after + 1e-6;
}

interface Cut {
  readonly before: number;
  readonly after: number;
}

function placed(
  origin: Spot,
  degrees: number,
  hand: number,
  { along, across }: { readonly along: number; readonly across: number },
): Spot {
  const [cos, sin] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
  return {
    x: origin.x + along * cos - hand * across * sin,
    y: origin.y + along * sin + hand * across * cos,
  };
}

/** Degrees as radians. */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
