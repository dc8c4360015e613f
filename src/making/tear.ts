import { type Length, lengthOfTicks, millimetres, sum } from '../measure/index.ts';
import { assert } from '../problem/index.ts';

/**
 * How deep a tear goes at its worst place along one edge of one piece, measured from the cut edge: least, usual, most.
 *
 * A tear wanders; of the whole line only that place counts here, and the chance that it lies at a depth falls in a
 * straight line from the usual depth to the least and to the most (a triangular distribution). Nobody has measured
 * hand tears, so three depths that a person can name are all that is asked of her. Tears are independent of one
 * another, from edge to edge and from card to card. Always 0 <= least <= usual <= most.
 */
export interface TearDepth {
  readonly least: Length;
  readonly usual: Length;
  readonly most: Length;
}

/** What is said of a tear; `null`: nothing is. */
export interface TearSaid {
  readonly least: Length | null;
  readonly usual: Length | null;
  readonly most: Length | null;
}

/**
 * The depth of a tear for which `allowance` was reckoned: what was said, and for the rest the allowance as the usual
 * depth and a quarter of the usual to either side, 1 mm at the least (common practice, no source). Where what was said
 * leaves no room for a usual one between its least and its most, the nearer of these is the usual one.
 */
export function tearOf(allowance: Length, said: TearSaid | null): TearDepth {
  const least = said?.least ?? null;
  const most = said?.most ?? null;
  const wanted = said?.usual ?? allowance;
  const usual = lengthOfTicks(Math.max(least ?? 0, Math.min(wanted, most ?? wanted)));
  const wander = lengthOfTicks(Math.max(millimetres(1), Math.round(usual / 4)));
  return {
    least: least ?? lengthOfTicks(Math.max(0, usual - wander)),
    usual,
    most: most ?? sum(usual, wander),
  };
}

/** Whether it always goes to the same depth. */
export function isSure({ least, most }: TearDepth): boolean {
  return least === most;
}

/**
 * The density of the depth at `at` ticks, per tick: 2 (x - least) / ((most - least) (usual - least)) up to the usual
 * depth and 2 (most - x) / ((most - least) (most - usual)) from there on. Not for a tear that is sure.
 */
export function tearDensity(tear: TearDepth, at: number): number {
  const { least, usual, most } = tear;
  assert(least < most, 'A tear that is sure has no density', { ...tear });
  if (at < least || at > most) return 0;
  if (at < usual) return (2 * (at - least)) / ((most - least) * (usual - least));
  if (at > usual) return (2 * (most - at)) / ((most - least) * (most - usual));
  return 2 / (most - least);
}

/** The chance that the tear is not deeper than `at` ticks: the density, integrated. */
export function tearWithin(tear: TearDepth, at: number): number {
  const { least, usual, most } = tear;
  if (at >= most) return 1;
  if (at < least) return 0;
  if (at <= usual) return usual === least ? 0 : (at - least) ** 2 / ((most - least) * (usual - least));
  return 1 - (most - at) ** 2 / ((most - least) * (most - usual));
}

/** The depth in ticks, not always whole, that the tear does not pass with that chance: `tearWithin` turned round. */
export function tearQuantile(tear: TearDepth, chance: number): number {
  assert(chance >= 0 && chance <= 1, 'A chance is between 0 and 1', { chance });
  const { least, usual, most } = tear;
  const whole = most - least;
  if (chance * whole <= usual - least) return least + Math.sqrt(chance * whole * (usual - least));
  return most - Math.sqrt((1 - chance) * whole * (most - usual));
}
