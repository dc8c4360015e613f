import type { CutTree } from '../cutting/index.ts';
import type { Length, Size } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { effortOf } from './description.ts';
import { smallestUseful } from './leftover.ts';
import { settingOrder } from './order.ts';
import { type Squaring, squaredSize, squaringCuts } from './squaring.ts';
import type { Effort, Leftover, Step } from './step.ts';
import { Table } from './table.ts';
import type { Trimmer } from './trimmer.ts';
import { type Workpiece, Workpieces } from './workpiece.ts';

/** One sheet and what is to become of it. */
export interface SheetToCut {
  /** Id on the table, as `meadow-1`; no other sheet's id begins with it and goes on with a letter. */
  readonly id: string;
  /** The true sheet, with its margins. */
  readonly size: Size;
  /** Margins to be cut off first. */
  readonly squaring: Squaring;
  /** How the squared sheet is taken apart; whole ticks; holds at least one piece. */
  readonly tree: CutTree;
}

/** The cutting of one paper, ready for the hand. */
export interface Trimming {
  readonly steps: readonly Step[];
  /** Id on the table → index of the item it is, sheet after sheet. */
  readonly finished: ReadonlyMap<string, number>;
  /** Sheet after sheet; squaring margins too, which are never kept. */
  readonly leftovers: readonly Leftover[];
  readonly effort: Effort;
  /** No order of measuring off these parts has fewer settings; equal to `effort.settings` where that is proved. */
  readonly settingsBound: number;
}

export interface TrimmingOptions {
  /** Number of the first step; 1 unless given. */
  readonly firstStep?: number;
  /** Shortest side of a leftover that is kept; `smallestUseful` unless given. */
  readonly smallest?: Length;
  /** Takes the first good order of settings, for an answer at once; false unless given. */
  readonly quick?: boolean;
}

/**
 * The steps that cut some sheets of one paper, equal workpieces that are cut alike in one step, ordered for
 * few changes of setting.
 *
 * What is measured off and what remains: the parts of a row are measured off by length; its leftover remains,
 * or, where a part cannot be set on the trimmer, that part. Squaring margins come first, each in a pass of its
 * own. The number of passes and quarter turns follows from the trees and does not depend on the order.
 *
 * Throws where a tree asks for what the trimmer cannot do: a planner given `cutLimitsOf`, pieces that are
 * `wideEnough` and sheets that it `canSquare` make no such tree.
 */
export function stepsFor(
  sheets: readonly SheetToCut[],
  trimmer: Trimmer | null,
  { firstStep = 1, smallest = smallestUseful, quick = false }: TrimmingOptions = {},
): Trimming {
  const kinds = new Workpieces(trimmer);
  const table = new Table(trimmer, smallest);
  for (const [index, sheet] of sheets.entries()) {
    table.lay(workpieceOf(sheet, trimmer, kinds), sheet.id, index);
  }
  const order = settingOrder(new Set(table.kindsToCut()), kinds, { quick });
  const steps: Step[] = [];
  for (const set of order.settings) {
    for (let round = table.nextRound(set); round !== null; round = table.nextRound(set)) {
      steps.push(table.cut(round, kinds, firstStep + steps.length));
    }
  }
  return { steps, ...table.outcome(), effort: effortOf(steps), settingsBound: order.bound };
}

function workpieceOf(sheet: SheetToCut, trimmer: Trimmer | null, kinds: Workpieces): Workpiece {
  const { id, size, squaring, tree } = sheet;
  const squared = squaredSize(size, squaring);
  assert(
    tree.width === squared.width && tree.height === squared.height,
    'A cut tree is as large as its sheet',
    {
      id,
      squared,
      tree: { width: tree.width, height: tree.height },
    },
  );
  const workpiece = kinds.ofTree(tree);
  assert(workpiece.kind === 'to cut' || workpiece.becomes !== 'leftover', 'A sheet is cut for a piece', {
    id,
  });
  const cuts = squaringCuts(size, squaring, trimmer, workpiece.kind === 'to cut' ? workpiece.axis : null);
  assert(cuts !== null, 'The trimmer can cut the margins off', { id, size, squaring });
  return cuts.reduceRight((inside, cut) => kinds.withMargin(cut, inside), workpiece);
}
