import type { Axis } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { turnedAxis } from './block.ts';
import type { CutTree } from './cutTree.ts';
import type { Recipe } from './recipe.ts';
import type { Placement, SheetGrid } from './sheetGrid.ts';

/** The cut tree of a recipe, in true sizes, tidied by `tidied`. */
export function treeOf(grid: SheetGrid, recipe: Recipe): CutTree {
  const { step, longest } = grid.limits;
  const isMultiple = (size: number) => step === null || size % step === 0;

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
    if (!isMultiple(part.set)) {
      assert(part.second.kind === 'nothing', 'a far end was to be measured off', { set: part.set });
      return cutTo(along, part.set, width, height, (w, h) => workpiece(part.first, w, h));
    }
    const first = sized(along, part.set, width, height, (w, h) => workpiece(part.first, w, h));
    if (part.set === length) return first;
    const second = sized(along, length - part.set, width, height, (w, h) => workpiece(part.second, w, h));
    return { kind: 'cut', width, height, axis: along, parts: [first, second] };
  };

  /** Cuts off what is more than `size`; what is kept is measured off where it can be. */
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
    const rest = sized(axis, length - size, width, height, (w, h) => ({ kind: 'rest', width: w, height: h }));
    return { kind: 'cut', width, height, axis, parts: isMultiple(size) ? [tree, rest] : [rest, tree] };
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

  return tidied(workpiece(recipe, grid.sheetWidth, grid.sheetHeight), step);
}

/**
 * The same pieces from the same cuts with less to do: successive cuts along one axis become one node, waste comes
 * together in one rest at the end, equal parts lie next to each other, larger before smaller.
 *
 * A last part that is no multiple of `step` stays last, since it cannot be measured off.
 */
export function tidied(tree: CutTree, step: number | null): CutTree {
  if (tree.kind !== 'cut') return tree;
  const { axis, width, height } = tree;
  const isMultiple = (part: CutTree) => step === null || part[axis] % step === 0;
  const flat = tree.parts
    .map((part) => tidied(part, step))
    .flatMap((part) => (part.kind === 'cut' && part.axis === axis ? part.parts : [part]));
  const last = flat.at(-1)!;
  const rests = flat.filter((part) => part.kind === 'rest');
  const useful = flat.filter((part) => part.kind !== 'rest');
  if (useful.length === 0) return { kind: 'rest', width, height };
  const restSize = rests.reduce((sum, part) => sum + part[axis], 0);
  const rest: CutTree[] =
    restSize === 0
      ? []
      : [
          axis === 'width'
            ? { kind: 'rest', width: restSize, height }
            : { kind: 'rest', width, height: restSize },
        ];
  const fixedLast = last.kind !== 'rest' && !isMultiple(last) ? [last] : [];
  const movable = useful
    .filter((part) => part !== fixedLast[0])
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

function sized(
  axis: Axis,
  size: number,
  width: number,
  height: number,
  make: (width: number, height: number) => CutTree,
): CutTree {
  return axis === 'width' ? make(size, height) : make(width, size);
}
