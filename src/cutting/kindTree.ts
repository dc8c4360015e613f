import { type Block, piecesIn } from './block.ts';
import { cutBlock, keepsLimits } from './blockCutting.ts';
import type { CutTree } from './cutTree.ts';
import { type Handwork, handworkOf } from './handwork.ts';
import { regridded, stripBlocks } from './strips.ts';
import type { CutLimits, Item } from './task.ts';
import { signature } from './treeBuilding.ts';

/** A tree with its handwork. */
export interface TreeToCut {
  readonly tree: CutTree;
  readonly handwork: Handwork;
}

/**
 * Ways within the limits to cut at least the pieces of a block from the workpiece of a tree, which holds them all
 * and is one of the ways: the block without needless cuts, its rows of equal pieces cut the other way first, plain
 * strips; each with the waste beside a row taken off at one go or from every part.
 */
export function waysToCut(
  tree: CutTree,
  block: Block,
  items: readonly Item[],
  limits: CutLimits,
): TreeToCut[] {
  const found = new Map([[signature(tree), tree]]);
  const { width, height } = tree;
  const add = (way: Block): void => {
    const offer = (trimsTo: (depth: number) => boolean) => {
      const cut = cutBlock(way, width, height, { limits, trimsTo });
      if (keepsLimits(cut, limits)) found.set(signature(cut), cut);
      return cut;
    };
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
  return [...found.values()].map((cut) => ({ tree: cut, handwork: handworkOf(cut) }));
}

/** Sheets with more pieces are only freed from needless cuts. */
const mostPieces = 300;

/**
 * Chooses one way for each sheet so that the whole stack is kind to cut: few settings in all, then few passes, though
 * a pass more is worth a rest that is larger by a fiftieth of the sheet, then few turns.
 *
 * By going over the sheets twice, the frequent ones first, and taking for each what is best beside the others.
 */
export function kindest(
  sheets: readonly { readonly times: number; readonly ways: readonly TreeToCut[] }[],
): TreeToCut[] {
  const order = sheets.map((_, index) => index).sort((a, b) => sheets[b]!.times - sheets[a]!.times || a - b);
  const chosen: (TreeToCut | null)[] = sheets.map(() => null);
  for (let round = 0; round < 2; round++) {
    for (const index of order) {
      const set = new Set<number>();
      chosen.forEach((other, place) => {
        if (place !== index) for (const size of other?.handwork.settings ?? []) set.add(size);
      });
      chosen[index] = kindestBeside(sheets[index]!.ways, set);
    }
  }
  return chosen.map((way) => way!);
}

function kindestBeside(ways: readonly TreeToCut[], set: ReadonlySet<number>): TreeToCut {
  const graded = ways.map((way) => {
    const { settings, passes, turns, largestRest } = way.handwork;
    const more = [...settings].filter((size) => !set.has(size)).length;
    return { way, more, toil: passes - (50 * largestRest) / (way.tree.width * way.tree.height), turns };
  });
  graded.sort((a, b) => a.more - b.more || a.toil - b.toil || a.turns - b.turns);
  return graded[0]!.way;
}
