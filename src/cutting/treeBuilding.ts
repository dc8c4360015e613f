import type { Axis } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { turnedAxis } from './block.ts';
import type { CutTree } from './cutTree.ts';
import { measurable, stripsOf } from './measuring.ts';
import type { Recipe } from './recipe.ts';
import type { Placement, SheetGrid } from './sheetGrid.ts';
import type { CutLimits } from './task.ts';

/** The cut tree of a recipe, in true sizes, tidied by `tidied`. */
export function treeOf(grid: SheetGrid, recipe: Recipe): CutTree {
  const { limits } = grid;
  const { longest } = limits;

  const workpiece = (part: Recipe, width: number, height: number): CutTree => {
    if (part.kind === 'nothing') return { kind: 'rest', width, height };
    if (part.kind === 'piece') return shaved(grid.placements[part.placement]!, width, height);
    const along = part.axis;
    const across = along === 'width' ? height : width;
    const inGrid = along === 'width' ? part.height : part.width;
    if (longest !== null && across > longest && inGrid <= longest) {
      // Only what is waste makes the cut too long: off with it first.
      const other = turnedAxis(along);
      return cutTo(other, inGrid, width, height, (w, h) => workpiece(part, w, h));
    }
    const length = along === 'width' ? width : height;
    if (!measurable(part.set, limits)) {
      assert(part.second.kind === 'nothing', 'what cannot be set was to be measured off', { set: part.set });
      return cutTo(along, part.set, width, height, (w, h) => workpiece(part.first, w, h));
    }
    const first = sized(along, part.set, width, height, (w, h) => workpiece(part.first, w, h));
    if (part.set === length) return first;
    const second = sized(along, length - part.set, width, height, (w, h) => workpiece(part.second, w, h));
    return { kind: 'cut', width, height, axis: along, parts: [first, second] };
  };

  /** Cuts off what is more than `size`; what is kept is measured off where it can be, else what is over, in strips. */
  const cutTo = (
    axis: Axis,
    size: number,
    width: number,
    height: number,
    kept: (width: number, height: number) => CutTree,
  ): CutTree => {
    const length = axis === 'width' ? width : height;
    const tree = sized(axis, size, width, height, kept);
    if (size === length) return tree;
    const rests = restsOf(
      axis,
      measurable(size, limits) ? [length - size] : over(length - size),
      width,
      height,
    );
    const parts = measurable(size, limits) ? [tree, ...rests] : [...rests, tree];
    return { kind: 'cut', width, height, axis, parts };
  };

  const shaved = (placement: Placement, width: number, height: number): CutTree => {
    const { item, turned } = placement;
    const done: CutTree = { kind: 'piece', width: placement.width, height: placement.height, item, turned };
    const allows = (across: number) => longest === null || across <= longest;
    const widthFirst = (w: number, h: number) =>
      cutTo('width', placement.width, w, h, (w1, h1) =>
        cutTo('height', placement.height, w1, h1, () => done),
      );
    const heightFirst = (w: number, h: number) =>
      cutTo('height', placement.height, w, h, (w1, h1) =>
        cutTo('width', placement.width, w1, h1, () => done),
      );
    const canWidthFirst =
      (width === placement.width || allows(height)) &&
      (height === placement.height || allows(placement.width));
    const canHeightFirst =
      (height === placement.height || allows(width)) &&
      (width === placement.width || allows(placement.height));
    // The first cut takes the waste off at full length: let that be the larger waste.
    const more = (width - placement.width) * height >= (height - placement.height) * width;
    assert(canWidthFirst || canHeightFirst, 'the piece cannot be cut out', { placement, width, height });
    return canWidthFirst && (more || !canHeightFirst)
      ? widthFirst(width, height)
      : heightFirst(width, height);
  };

  const over = (length: number): readonly number[] => {
    const strips = stripsOf(length, limits);
    assert(strips !== null, 'waste was to be measured off that cannot be', { length, limits });
    return strips;
  };

  return tidied(workpiece(recipe, grid.sheetWidth, grid.sheetHeight), limits);
}

/**
 * The same pieces from the same cuts with less to do: successive cuts along one axis become one node, waste comes
 * together in one rest at the end, equal parts lie next to each other, larger before smaller.
 *
 * A part that cannot be measured off comes last, and then the waste is measured, in strips that can be.
 */
export function tidied(tree: CutTree, limits: CutLimits): CutTree {
  if (tree.kind !== 'cut') return tree;
  const { axis, width, height } = tree;
  const flat = tree.parts
    .map((part) => tidied(part, limits))
    .flatMap((part) => (part.kind === 'cut' && part.axis === axis ? part.parts : [part]));
  const rests = flat.filter((part) => part.kind === 'rest');
  const useful = flat.filter((part) => part.kind !== 'rest');
  if (useful.length === 0) return { kind: 'rest', width, height };
  const restSize = rests.reduce((sum, part) => sum + part[axis], 0);
  const fixedLast = useful.filter((part) => !measurable(part[axis], limits));
  const strips = fixedLast.length === 0 ? null : stripsOf(restSize, limits);
  const rest = restSize === 0 ? [] : restsOf(axis, strips ?? [restSize], width, height);
  const movable = useful
    .filter((part) => !fixedLast.includes(part))
    .map((part) => ({ part, key: signature(part) }));
  movable.sort((a, b) => b.part[axis] - a.part[axis] || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  const inner = movable.map(({ part }) => part);
  const parts = fixedLast.length > 0 ? [...inner, ...rest, ...fixedLast] : [...inner, ...rest];
  return parts.length === 1 ? parts[0]! : { kind: 'cut', width, height, axis, parts };
}

/** Text that is the same for trees that are cut alike. */
export function signature(tree: CutTree): string {
  if (tree.kind === 'rest') return `r${tree.width}x${tree.height}`;
  if (tree.kind === 'piece') return `p${tree.item}${tree.turned ? 't' : ''}`;
  return `${tree.axis[0]}${tree.width}x${tree.height}(${tree.parts.map(signature).join()})`;
}

/** How many of each item come out of a tree. */
export function piecesOf(tree: CutTree, items: number): number[] {
  const made = new Array<number>(items).fill(0);
  const count = (part: CutTree): void => {
    if (part.kind === 'piece') made[part.item]!++;
    if (part.kind === 'cut') part.parts.forEach(count);
  };
  count(tree);
  return made;
}

/** Rests of these lengths along an axis. */
function restsOf(axis: Axis, lengths: readonly number[], width: number, height: number): readonly CutTree[] {
  return lengths.map((length) =>
    sized(axis, length, width, height, (w, h) => ({ kind: 'rest', width: w, height: h })),
  );
}

function sized(
  axis: Axis,
  size: number,
  width: number,
  height: number,
  make: (width: number, height: number) => CutTree,
): CutTree {
  return axis === 'width' ? make(size, height) : make(width, size);
}
