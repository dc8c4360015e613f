import type { CutTree } from './cutTree.ts';
import { piecesOf, signature, tidied } from './treeBuilding.ts';

/**
 * The tree without pieces that nobody needs, as far as that leaves larger rests; `surplus` is how many of each item
 * may go, and is reduced by those that went.
 *
 * The rule: a part whose pieces are all surplus becomes rest, the largest such parts first. But in a row of equal
 * pieces only all of them go: where the row is cut anyway, the spare pieces are welcome.
 */
export function withoutSurplus(tree: CutTree, surplus: number[], step: number | null): CutTree {
  const spared = (part: CutTree): CutTree => {
    const made = piecesOf(part, surplus.length);
    if (part.kind !== 'rest' && made.every((count, item) => count <= surplus[item]!)) {
      made.forEach((count, item) => {
        surplus[item]! -= count;
      });
      return { kind: 'rest', width: part.width, height: part.height };
    }
    if (part.kind !== 'cut' || made.every((count, item) => count === 0 || surplus[item] === 0)) return part;
    const keys = part.parts.map(signature);
    const parts = [...part.parts];
    for (let index = parts.length - 1; index >= 0; index--) {
      const one = parts[index]!;
      if (one.kind === 'piece') {
        const row = keys.filter((key) => key === keys[index]).length;
        if (row > surplus[one.item]! && row > 1 && parts[index] === part.parts[index]) {
          const gone = part.parts.filter((other, i) => keys[i] === keys[index] && parts[i] !== other).length;
          if (gone === 0) continue;
        }
      }
      parts[index] = spared(one);
    }
    return { ...part, parts };
  };
  return tidied(spared(tree), step);
}
