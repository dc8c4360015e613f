import type { Axis, Edge, Length, Size } from '../measure/index.ts';

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
  /** What the trimmer's ruler reads for `set`, not positive where it cannot; only where a test cut found it off. */
  readonly dial?: Length;
  /** The length is measured on the other side of the blade; only on such a step. */
  readonly otherSide?: true;
  /** The edge of the sheet whose margin this step cuts off to square it; only on such a step. */
  readonly squares?: Edge;
}

/** What is left of a sheet when everything is cut. */
export interface Leftover {
  readonly id: string;
  readonly size: Size;
  /** Large enough to go back into the stash. */
  readonly keep: boolean;
}

/**
 * The work in a run of steps. `passes`: blade strokes, each sheet counted (a stack of two is two). `settings`:
 * changes of `set`, the first included. `turns`: quarter turns, each workpiece counted once for each step in
 * which its axis differs from the one it was made by; a sheet's first step is free.
 */
export interface Effort {
  readonly passes: number;
  readonly settings: number;
  readonly turns: number;
}

/** Blade strokes of a step when so many equal workpieces lie together at a stroke, at least 1. */
export function strokesOf(step: Step, sheetsAtOnce: number): number {
  return Math.ceil(step.take.length / sheetsAtOnce) * passesOn(step, 0);
}

/** Blade strokes on the workpiece `take[index]`: one for each piece cut off, but none for the last where nothing is left. */
export function passesOn(step: Step, index: number): number {
  return step.rest[index] === null ? step.repeat - 1 : step.repeat;
}
