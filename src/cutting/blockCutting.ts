import type { Axis } from '../measure/index.ts';
import { type Block, type PieceBlock, turnedAxis } from './block.ts';
import type { CutTree } from './cutTree.ts';
import { measurable, stripsOf } from './measuring.ts';
import type { CutLimits } from './task.ts';

export interface BlockCutting {
  readonly limits: CutLimits;
  /**
   * Whether a row is cut to this depth at one go before it is divided, where its workpiece is deeper; else each of
   * its parts is cut to its own depth.
   */
  readonly trimsTo: (depth: number) => boolean;
  /** Along which axis the waste beside a single piece is cut off first; `null`: where there is more of it. */
  readonly first: Axis | null;
}

/**
 * The tree that cuts a block from a workpiece: every part of a row gets the length it needs and no more, what is
 * over comes together in one rest at the end.
 *
 * Where that rest is as long as a piece of the row, it is one more of these pieces: leaving it would save no pass.
 * A part that cannot be measured off stands last, behind the rest, which is then measured off in strips. The tree
 * may break the limits all the same: see `keepsLimits`.
 */
export function cutBlock(block: Block, width: number, height: number, cutting: BlockCutting): CutTree {
  if (block.kind === 'piece') return cutPiece(block, width, height, cutting);
  const { axis } = block;
  const { limits } = cutting;
  const across = turnedAxis(axis);
  const room = { width, height };
  if (block[across] < room[across] && cutting.trimsTo(block[across])) {
    return cutTo(across, block[across], room, limits, (inner) =>
      cutBlock(block, inner.width, inner.height, cutting),
    );
  }
  const sized = (length: number): Room => ({ ...room, [axis]: length });
  const offMark = (part: Block) => !measurable(part[axis], limits);
  const ordered = [...block.parts.filter((part) => !offMark(part)), ...block.parts.filter(offMark)];
  const parts = ordered.map((part) => {
    const { width: w, height: h } = sized(part[axis]);
    return cutBlock(part, w, h, cutting);
  });
  const over = room[axis] - block[axis];
  if (over > 0) {
    const measured = offMark(ordered.at(-1)!);
    const spare =
      measured && !measurable(over, limits)
        ? undefined
        : parts.find((part) => part.kind === 'piece' && part[axis] === over);
    const rests = spare === undefined ? restsOf(axis, over, room, measured ? limits : null) : [spare];
    parts.splice(measured ? -1 : parts.length, 0, ...rests);
  }
  return { kind: 'cut', width, height, axis, parts };
}

/** Whether the trimmer can make every cut of a tree. */
export function keepsLimits(tree: CutTree, limits: CutLimits): boolean {
  if (tree.kind !== 'cut') return true;
  const { longest } = limits;
  const { axis, parts } = tree;
  return (
    (longest === null || tree[turnedAxis(axis)] <= longest) &&
    parts.slice(0, -1).every((part) => measurable(part[axis], limits)) &&
    parts.every((part) => keepsLimits(part, limits))
  );
}

type Room = Readonly<Record<Axis, number>>;

function cutPiece(piece: PieceBlock, width: number, height: number, cutting: BlockCutting): CutTree {
  const { limits } = cutting;
  const { longest } = limits;
  const cut = (room: Room, axes: readonly Axis[]): CutTree => {
    const axis = axes.find((one) => room[one] > piece[one]);
    if (axis === undefined) return piece;
    const others = axes.filter((one) => one !== axis);
    return cutTo(axis, piece[axis], room, limits, (inner) => cut(inner, others));
  };
  // The first cut takes the waste off at full length: let that be the larger waste.
  const larger: Axis = (width - piece.width) * height >= (height - piece.height) * width ? 'width' : 'height';
  const room = { width, height };
  const preferred = cutting.first ?? larger;
  const tooLong = longest !== null && room[turnedAxis(preferred)] > longest;
  const first = tooLong ? turnedAxis(preferred) : preferred;
  return cut(room, [first, turnedAxis(first)]);
}

/** Cuts a workpiece to a length; what is kept is measured off where the trimmer can be set to it, else what is over. */
function cutTo(
  axis: Axis,
  length: number,
  room: Room,
  limits: CutLimits,
  kept: (room: Room) => CutTree,
): CutTree {
  const tree = kept({ ...room, [axis]: length });
  const measured = measurable(length, limits);
  const rests = restsOf(axis, room[axis] - length, room, measured ? null : limits);
  return { kind: 'cut', ...room, axis, parts: measured ? [tree, ...rests] : [...rests, tree] };
}

/** What is over along an axis: one rest that remains, or, within limits, strips that can be measured off. */
function restsOf(axis: Axis, over: number, room: Room, limits: CutLimits | null): readonly CutTree[] {
  const lengths = (limits === null ? null : stripsOf(over, limits)) ?? [over];
  return lengths.map((length) => ({ kind: 'rest', ...room, [axis]: length }));
}
