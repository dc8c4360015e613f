import fc from 'fast-check';
import type { CutTree } from '../../cutting/index.ts';

type Axis = 'width' | 'height';

/** What random trees are like. */
export interface TreeShape {
  /** Cuts within cuts, at most. */
  readonly depth: number;
  /** Measured-off parts of a cut, at most. */
  readonly parts: number;
  /** Lengths that are measured off are whole multiples of this. */
  readonly marks: number;
  /** Lengths measured off are at most so many marks, so that settings come again. */
  readonly variety: number;
  /** Cuts alternate in direction, and a cut has at most one rest. */
  readonly tidy: boolean;
}

/** A random tree for a squared sheet of `width` by `height`; its items are numbered by their sizes, see `itemSizes`. */
export function treeArbitrary(
  { width, height }: { width: number; height: number },
  shape: TreeShape,
): fc.Arbitrary<CutTree> {
  return fc.array(fc.nat(1_000_000), { minLength: 8, maxLength: 80 }).map((choices) => {
    let at = 0;
    const choose = (below: number): number => choices[at++ % choices.length]! % below;
    return withPiece(treeOf(width, height, null, shape.depth, shape, choose));
  });
}

/** A leaf's item number tells its size, so that a check can do without the tree. */
export function itemOf(width: number, height: number): number {
  return width * 100_000 + height;
}

/** The size that an item number tells. */
export function sizeOfItem(item: number): readonly [number, number] {
  return [Math.floor(item / 100_000), item % 100_000];
}

/** Every leaf of a tree. */
export function leavesOf(tree: CutTree): readonly CutTree[] {
  return tree.kind === 'cut' ? tree.parts.flatMap(leavesOf) : [tree];
}

/** The tree with width and height exchanged. */
export function transposed(tree: CutTree): CutTree {
  const size = { width: tree.height, height: tree.width };
  if (tree.kind !== 'cut') return { ...tree, ...size };
  return { ...tree, ...size, axis: other(tree.axis), parts: tree.parts.map(transposed) };
}

/** The tree a whole number of times as large. */
export function enlarged(tree: CutTree, times: number): CutTree {
  const size = { width: tree.width * times, height: tree.height * times };
  return tree.kind === 'cut'
    ? { ...tree, ...size, parts: tree.parts.map((part) => enlarged(part, times)) }
    : { ...tree, ...size };
}

/** The tree with the parts of every cut in reverse. */
export function reversed(tree: CutTree): CutTree {
  return tree.kind === 'cut' ? { ...tree, parts: tree.parts.map(reversed).reverse() } : tree;
}

function other(axis: Axis): Axis {
  return axis === 'width' ? 'height' : 'width';
}

function treeOf(
  width: number,
  height: number,
  above: Axis | null,
  depth: number,
  shape: TreeShape,
  choose: (below: number) => number,
): CutTree {
  const axis: Axis = shape.tidy && above !== null ? other(above) : choose(2) === 0 ? 'width' : 'height';
  const whole = axis === 'width' ? width : height;
  const part = (length: number): CutTree =>
    axis === 'width'
      ? treeOf(length, height, axis, depth - 1, shape, choose)
      : treeOf(width, length, axis, depth - 1, shape, choose);
  const lengths: number[] = [];
  let left = whole;
  if (depth > 0 && choose(5) > 0) {
    let length = (1 + choose(shape.variety)) * shape.marks;
    for (let count = 1 + choose(shape.parts); count > 0 && left > length; count -= 1) {
      lengths.push(length);
      left -= length;
      if (choose(2) === 0) length = (1 + choose(shape.variety)) * shape.marks;
    }
  }
  if (lengths.length === 0) {
    return choose(4) === 0
      ? { kind: 'rest', width, height }
      : { kind: 'piece', width, height, item: itemOf(width, height), turned: choose(2) === 0 };
  }
  const parts = [...lengths, left].map(part);
  if (shape.tidy) {
    // All rests but the last become pieces.
    const rests = parts.filter(({ kind }) => kind === 'rest');
    for (const rest of rests.slice(0, -1)) parts[parts.indexOf(rest)] = withPiece(rest);
  }
  return { kind: 'cut', width, height, axis, parts };
}

/** The tree itself, or with its first leaf made a piece when it has none. */
function withPiece(tree: CutTree): CutTree {
  if (leavesOf(tree).some(({ kind }) => kind === 'piece')) return tree;
  const { width, height } = tree;
  if (tree.kind !== 'cut')
    return { kind: 'piece', width, height, item: itemOf(width, height), turned: false };
  return { ...tree, parts: [withPiece(tree.parts[0]!), ...tree.parts.slice(1)] };
}
