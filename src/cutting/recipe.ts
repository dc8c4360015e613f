import type { Axis } from '../measure/index.ts';

/**
 * How the workpiece of one grid cell is taken apart, in the grid's own sizes: a cut tree before the waste is
 * told to its place.
 */
export type Recipe =
  | { readonly kind: 'nothing' }
  /** Index into the grid's placements. */
  | { readonly kind: 'piece'; readonly placement: number }
  | {
      readonly kind: 'split';
      readonly axis: Axis;
      /** Size of the workpiece in the grid; the true one may be larger. */
      readonly width: number;
      readonly height: number;
      /** What is measured off along `axis`. */
      readonly set: number;
      readonly first: Recipe;
      readonly second: Recipe;
    };

export const nothing: Recipe = { kind: 'nothing' };
