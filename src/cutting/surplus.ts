import { type Block, piecesIn, rowOf } from './block.ts';

/**
 * The block without pieces that nobody needs; `null`: nobody needs any. `surplus` is how many of each item may go,
 * and is reduced by those that went: whole parts before single pieces.
 */
export function withoutSurplus(block: Block, surplus: number[]): Block | null {
  if (goes(block, surplus)) return null;
  if (block.kind === 'piece') return block;
  const parts = block.parts.filter((part) => !goes(part, surplus));
  const kept = parts.flatMap((part) => withoutSurplus(part, surplus) ?? []);
  return rowOf(block.axis, kept);
}

/** Whether all pieces of the block are surplus; takes them off it if so. */
function goes(block: Block, surplus: number[]): boolean {
  const left = [...surplus];
  for (const { item } of piecesIn(block)) if (--left[item]! < 0) return false;
  left.forEach((count, item) => {
    surplus[item] = count;
  });
  return true;
}
