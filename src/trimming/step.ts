import type { Axis, Length, Size } from '../measure/index.ts';

/**
 * One thing to do at the trimmer: set it, take one or more workpieces of one paper and size, and cut `repeat`
 * pieces of length `set` off each along `axis` (`width`: the cut shortens the width). `gives[i]` and `rest[i]`
 * belong to `take[i]`; a rest is `null` when nothing is left, and the last piece then needs no pass.
 * All names are ids of workpieces on the table, each used once.
 */
export interface Step {
  readonly step: number;
  readonly take: readonly string[];
  readonly axis: Axis;
  readonly set: Length;
  readonly repeat: number;
  readonly gives: readonly (readonly string[])[];
  readonly rest: readonly (string | null)[];
}

/** What is left of a sheet when everything is cut. */
export interface Leftover {
  readonly id: string;
  readonly size: Size;
  /** Large enough to go back into the stash. */
  readonly keep: boolean;
}

/** Blade strokes, changes of setting and quarter turns of a run of steps, counted as contract.md says. */
export interface Effort {
  readonly passes: number;
  readonly settings: number;
  readonly turns: number;
}
