import type { Axis } from '../measure/index.ts';
import { type Block, type PieceBlock, turnedAxis } from './block.ts';
import type { CutTree } from './cutTree.ts';
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
 * A part that is no multiple of the limits' step stands last, behind the rest. The tree may break the limits all
 * the same: see `keepsLimits`.
 */
export function cutBlock(block: Block, width: number, height: number, cutting: BlockCutting): CutTree {
  if (block.kind === 'piece') return cutPiece(block, width, height, cutting);
  const { axis } = block;
  const { step } = cutting.limits;
  const across = turnedAxis(axis);
  const room = { width, height };
  if (block[across] < room[across] && cutting.trimsTo(block[across])) {
    return cutTo(across, block[across], room, step, (inner) =>
      cutBlock(block, inner.width, inner.height, cutting),
    );
  }
  const sized = (length: number): Room => ({ ...room, [axis]: length });
  const offMark = (part: Block) => step !== null && part[axis] % step !== 0;
  const ordered = [...block.parts.filter((part) => !offMark(part)), ...block.parts.filter(offMark)];
  const parts = ordered.map((part) => {
    const { width: w, height: h } = sized(part[axis]);
    return cutBlock(part, w, h, cutting);
  });
  const over = room[axis] - block[axis];
  if (over > 0) {
    const spare = parts.find((part) => part.kind === 'piece' && part[axis] === over);
    const rest: CutTree = spare ?? { kind: 'rest', ...sized(over) };
    parts.splice(offMark(ordered.at(-1)!) ? -1 : parts.length, 0, rest);
  }
  return { kind: 'cut', width, height, axis, parts };
}

/** Whether the trimmer can make every cut of a tree. */
export function keepsLimits(tree: CutTree, limits: CutLimits): boolean {
  if (tree.kind !== 'cut') return true;
  const { step, longest } = limits;
  const { axis, parts } = tree;
  return (
    (longest === null || tree[turnedAxis(axis)] <= longest) &&
    (step === null || parts.slice(0, -1).every((part) => part[axis] % step === 0)) &&
    parts.every((part) => keepsLimits(part, limits))
  );
}

type Room = Readonly<Record<Axis, number>>;

function cutPiece(piece: PieceBlock, width: number, height: number, cutting: BlockCutting): CutTree {
  const { step, longest } = cutting.limits;
  const cut = (room: Room, axes: readonly Axis[]): CutTree => {
    const axis = axes.find((one) => room[one] > piece[one]);
    if (axis === undefined) return piece;
    const others = axes.filter((one) => one !== axis);
    return cutTo(axis, piece[axis], room, step, (inner) => cut(inner, others));
  };
  // The first cut takes the waste off at full length: let that be the larger waste.
  const larger: Axis = (width - piece.width) * height >= (height - piece.height) * width ? 'width' : 'height';
  const room = { width, height };
  const preferred = cutting.first ?? larger;
  const tooLong = longest !== null && room[turnedAxis(preferred)] > longest;
  const first = tooLong ? turnedAxis(preferred) : preferred;
  return cut(room, [first, turnedAxis(first)]);
}

/** Cuts a workpiece to a length; what is kept is measured off where the trimmer can be set to it. */
function cutTo(
  axis: Axis,
  length: number,
  room: Room,
  step: number | null,
  kept: (room: Room) => CutTree,
): CutTree {
  const tree = kept({ ...room, [axis]: length });
  const rest: CutTree = { kind: 'rest', ...room, [axis]: room[axis] - length };
  const measured = step === null || length % step === 0;
  return { kind: 'cut', ...room, axis, parts: measured ? [tree, rest] : [rest, tree] };
}
