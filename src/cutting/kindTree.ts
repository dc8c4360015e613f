import type { Axis } from '../measure/index.ts';
import { type Block, piecesIn } from './block.ts';
import { cutBlock, keepsLimits } from './blockCutting.ts';
import type { CutTree } from './cutTree.ts';
import { compareWork, type Handwork, handworkOf, type StackWork, stackWork } from './handwork.ts';
import { regridded, stripBlocks } from './strips.ts';
import type { CutLimits, Item } from './task.ts';
import { signature } from './treeBuilding.ts';

/** A tree with its handwork. */
export interface TreeToCut {
  readonly tree: CutTree;
  readonly handwork: Handwork;
}

/**
 * Ways within the limits to cut at least the pieces of a block from the workpiece of a tree, which holds them all:
 * the block without needless cuts, its rows of equal pieces cut the other way first, plain strips; each with the
 * waste beside a row taken off at one go or from every part. Where the limits allow none of these, the tree itself.
 */
export function waysToCut(
  tree: CutTree,
  block: Block,
  items: readonly Item[],
  limits: CutLimits,
): TreeToCut[] {
  const found = new Map<string, CutTree>();
  const { width, height } = tree;
  const add = (way: Block): void => {
    const offer = (trimsTo: (depth: number) => boolean, first: Axis | null = null) => {
      const cut = cutBlock(way, width, height, { limits, trimsTo, first });
      if (keepsLimits(cut, limits)) found.set(signature(cut), cut);
      return cut;
    };
    if (way.kind === 'piece') {
      offer(() => false, 'width');
      offer(() => false, 'height');
      return;
    }
    const { settings } = handworkOf(offer(() => false));
    offer((depth) => settings.has(depth));
    offer(() => true);
  };
  add(block);
  const pieces = piecesIn(block);
  if (pieces.length <= mostPieces) {
    add(regridded(block, 'width'));
    add(regridded(block, 'height'));
    const made = items.map((_, item) => pieces.filter((piece) => piece.item === item).length);
    for (const way of stripBlocks(made, items, tree)) add(way);
  }
  if (found.size === 0) found.set('', tree);
  return [...found.values()].map((cut) => ({ tree: cut, handwork: handworkOf(cut) }));
}

/** Sheets with more pieces are only freed from needless cuts. */
const mostPieces = 300;

/**
 * Chooses one way for each sheet so that the whole stack is light work (`compareWork`): by going over the sheets
 * twice, the frequent ones first, and taking for each what is best beside the others; each for itself when there are
 * more than `mostBeside`.
 */
export function kindest(
  sheets: readonly { readonly times: number; readonly ways: readonly TreeToCut[] }[],
): TreeToCut[] {
  const order = sheets.map((_, index) => index).sort((a, b) => sheets[b]!.times - sheets[a]!.times || a - b);
  const chosen = new Map<number, TreeToCut>();
  const workWith = (index: number, way: TreeToCut) =>
    stackWork(
      [...new Map(sheets.length > mostBeside ? [] : chosen).set(index, way)].map(([sheet, { handwork }]) => {
        return { times: sheets[sheet]!.times, handwork };
      }),
    );
  for (let round = 0; round < 2; round++) {
    for (const index of order) {
      let best: { way: TreeToCut; work: StackWork } | null = null;
      for (const way of sheets[index]!.ways) {
        const work = workWith(index, way);
        if (best === null || compareWork(work, best.work) < 0) best = { way, work };
      }
      chosen.set(index, best!.way);
    }
  }
  return sheets.map((_, index) => chosen.get(index)!);
}

const mostBeside = 40;
