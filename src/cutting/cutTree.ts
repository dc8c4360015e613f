import type { Axis } from '../measure/index.ts';

/**
 * How one workpiece is taken apart by edge-to-edge cuts.
 *
 * Sizes are width then height of the sheet as it stands. A `cut` node's `parts` lie side by side along `axis`,
 * in no particular order but that the last one is what remains when the others have been measured off; their
 * sizes along `axis` add up to the node's, their other size is the node's own. At least two parts.
 * A `piece` is exactly its item's size, exchanged where `turned`. `rest` is what no item comes from.
 */
export type CutTree =
  | {
      readonly kind: 'piece';
      readonly width: number;
      readonly height: number;
      readonly item: number;
      readonly turned: boolean;
    }
  | { readonly kind: 'rest'; readonly width: number; readonly height: number }
  | {
      readonly kind: 'cut';
      readonly width: number;
      readonly height: number;
      readonly axis: Axis;
      readonly parts: readonly CutTree[];
    };
