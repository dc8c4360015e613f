import type { Axis } from '../measure/index.ts';
import type { CutTree } from './cutTree.ts';

/** Pieces that stand together, with the room they need at least: a cut tree without its waste. */
export type Block = PieceBlock | RowBlock;

export interface PieceBlock {
  readonly kind: 'piece';
  readonly width: number;
  readonly height: number;
  readonly item: number;
  readonly turned: boolean;
}

/** At least two blocks side by side along `axis`, none of them a row along it; longest first, equal ones together. */
export interface RowBlock {
  readonly kind: 'row';
  readonly axis: Axis;
  readonly parts: readonly Block[];
  readonly width: number;
  readonly height: number;
  /** The same for rows that are alike. */
  readonly key: string;
}

/** What comes out of a tree; `null`: nothing. */
export function blockOf(tree: CutTree): Block | null {
  if (tree.kind === 'rest') return null;
  if (tree.kind === 'piece') return tree;
  const parts = tree.parts.map(blockOf).filter((part) => part !== null);
  return parts.length === 0 ? null : rowOf(tree.axis, parts);
}

/** One or more blocks side by side. */
export function rowOf(axis: Axis, blocks: readonly Block[]): Block {
  const flat = blocks.flatMap((block) =>
    block.kind === 'row' && block.axis === axis ? block.parts : [block],
  );
  if (flat.length === 1) return flat[0]!;
  const across = turnedAxis(axis);
  const keyed = flat.map((part) => ({ part, key: keyOf(part) }));
  keyed.sort(
    (a, b) =>
      b.part[axis] - a.part[axis] ||
      b.part[across] - a.part[across] ||
      (a.key < b.key ? -1 : a.key > b.key ? 1 : 0),
  );
  const along = flat.reduce((sum, part) => sum + part[axis], 0);
  const deep = flat.reduce((most, part) => Math.max(most, part[across]), 0);
  return {
    kind: 'row',
    axis,
    parts: keyed.map(({ part }) => part),
    width: axis === 'width' ? along : deep,
    height: axis === 'width' ? deep : along,
    key: `${axis[0]}(${keyed.map(({ key }) => key).join()})`,
  };
}

/** The same for blocks that are alike. */
export function keyOf(block: Block): string {
  return block.kind === 'row' ? block.key : `p${block.item}${block.turned ? 't' : ''}`;
}

/** All pieces of a block. */
export function piecesIn(block: Block): readonly PieceBlock[] {
  return block.kind === 'piece' ? [block] : block.parts.flatMap(piecesIn);
}

/** The other axis. */
export function turnedAxis(axis: Axis): Axis {
  return axis === 'width' ? 'height' : 'width';
}
