import { assert } from '../problem/index.ts';
import type { CutTree } from './cutTree.ts';
import { measurable } from './measuring.ts';
import { nothing, type Recipe } from './recipe.ts';
import type { SheetGrid } from './sheetGrid.ts';

/**
 * The tree of a whole sheet as a recipe for the grid of its kind. Its sizes need not be positions of the grid; of
 * the parts of a cut at most one that is no rest cannot be measured off.
 */
export function recipeOfTree(tree: CutTree, grid: SheetGrid): Recipe {
  if (tree.kind === 'rest') return nothing;
  if (tree.kind === 'piece') {
    const { item, turned } = tree;
    const placement = grid.placements.findIndex((p) => p.item === item && p.turned === turned);
    assert(placement >= 0, 'a piece was placed that does not fit its sheet', { item, turned });
    return { kind: 'piece', placement };
  }
  const { axis, parts, width, height } = tree;
  const filled = parts.filter((part) => part.kind !== 'rest');
  const measured = filled.filter((part) => measurable(part[axis], grid.limits));
  const last = filled.find((part) => !measurable(part[axis], grid.limits));
  assert(filled.length - measured.length <= 1, 'two parts cannot be measured off', { axis });
  let along = tree[axis] - measured.reduce((sum, part) => sum + part[axis], 0);
  const before = (part: CutTree, second: Recipe): Recipe => ({
    kind: 'split',
    axis,
    width: axis === 'width' ? along : width,
    height: axis === 'height' ? along : height,
    set: part[axis],
    first: recipeOfTree(part, grid),
    second,
  });
  let recipe: Recipe = nothing;
  if (last !== undefined) recipe = along === last[axis] ? recipeOfTree(last, grid) : before(last, nothing);
  for (const part of measured.reverse()) {
    along += part[axis];
    recipe = along === part[axis] ? recipeOfTree(part, grid) : before(part, recipe);
  }
  return recipe;
}
