import type { Axis } from '../measure/index.ts';
import { type Block, type PieceBlock, piecesIn, rowOf, turnedAxis } from './block.ts';
import type { Item } from './task.ts';

/**
 * Ways to lay pieces in plain strips within a room: strips across the room one after another along either axis,
 * pieces side by side in each. Empty where they do not fit so.
 *
 * With few kinds of pieces every choice of which kinds are turned is tried; with many, all lying or all standing.
 * Strips are filled first fit, longest pieces first: once with pieces of one depth only, once with shallower ones
 * in the room that deeper ones leave.
 */
export function stripBlocks(
  made: readonly number[],
  items: readonly Item[],
  room: { readonly width: number; readonly height: number },
): Block[] {
  const kinds = made.flatMap((count, item) => (count > 0 ? [item] : []));
  const blocks: Block[] = [];
  for (const turnings of waysToTurn(kinds, items)) {
    const pieces = kinds.flatMap((item, index) => {
      const { width, height } = items[item]!;
      const turned = turnings[index]!;
      const piece: PieceBlock = {
        kind: 'piece',
        width: turned ? height : width,
        height: turned ? width : height,
        item,
        turned,
      };
      return new Array<PieceBlock>(made[item]!).fill(piece);
    });
    for (const axis of ['height', 'width'] as const) {
      for (const mixed of [false, true]) {
        const block = inStrips(pieces, axis, room, mixed);
        if (block !== null) blocks.push(block);
      }
    }
  }
  return blocks;
}

/** The block with each part of it that holds equal pieces only laid in strips along `axis`, where its room allows. */
export function regridded(block: Block, axis: Axis): Block {
  if (block.kind === 'piece') return block;
  const pieces = piecesIn(block);
  const { item, turned } = pieces[0]!;
  if (pieces.every((piece) => piece.item === item && piece.turned === turned)) {
    return inStrips(pieces, axis, block, false) ?? block;
  }
  return rowOf(
    block.axis,
    block.parts.map((part) => regridded(part, axis)),
  );
}

function waysToTurn(kinds: readonly number[], items: readonly Item[]): boolean[][] {
  const turns = kinds.map((item) => items[item]!.turns);
  if (kinds.length > 3) {
    const lying = kinds.map((item, index) => turns[index]! && items[item]!.width < items[item]!.height);
    return [lying, lying.map((turned, index) => turns[index]! && !turned)];
  }
  return turns.reduce<boolean[][]>(
    (ways, turn) => ways.flatMap((way) => (turn ? [false, true] : [false]).map((turned) => [...way, turned])),
    [[]],
  );
}

function inStrips(
  pieces: readonly PieceBlock[],
  axis: Axis,
  room: { readonly width: number; readonly height: number },
  mixed: boolean,
): Block | null {
  const across = turnedAxis(axis);
  const strips: { depth: number; left: number; pieces: PieceBlock[] }[] = [];
  let left = room[axis];
  for (const piece of [...pieces].sort((a, b) => b[axis] - a[axis] || b[across] - a[across])) {
    const known = strips.find(
      (strip) => strip.left >= piece[across] && (mixed || strip.depth === piece[axis]),
    );
    if (known !== undefined) {
      known.pieces.push(piece);
      known.left -= piece[across];
      continue;
    }
    left -= piece[axis];
    if (left < 0 || piece[across] > room[across]) return null;
    strips.push({ depth: piece[axis], left: room[across] - piece[across], pieces: [piece] });
  }
  return rowOf(
    axis,
    strips.map((strip) => rowOf(across, strip.pieces)),
  );
}
