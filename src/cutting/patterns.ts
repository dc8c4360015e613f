import type { Pattern } from './answer.ts';
import { type CanonicalTask, patternsForTask } from './canonicalTask.ts';
import type { CutTree } from './cutTree.ts';
import type { Choice } from './planSearch.ts';
import type { SheetGrid } from './sheetGrid.ts';
import { withoutSurplus } from './surplus.ts';
import type { CuttingTask } from './task.ts';
import { piecesOf, signature, treeOf } from './treeBuilding.ts';

/** The patterns of a choice, without needless pieces, equal ones together, named as in the task. */
export function patternsOf(
  task: CuttingTask,
  canonical: CanonicalTask,
  grids: readonly SheetGrid[],
  choice: Choice,
): Pattern[] {
  const items = canonical.items.length;
  const patterns = choice.map(({ column: { sheet, recipe }, times }) => {
    return { sheet, times, tree: treeOf(grids[sheet]!, recipe) };
  });
  const surplus = canonical.items.map((item) => -item.need);
  for (const { tree, times } of patterns) {
    piecesOf(tree, items).forEach((count, item) => {
      surplus[item]! += count * times;
    });
  }
  const spared = surplus.some((count) => count > 0) ? sparing(patterns, surplus, task.limits.step) : patterns;
  return together(patternsForTask(task, canonical, together(spared)));
}

/** Takes the surplus from one sheet after another, first from the one that gets the largest rest by it. */
function sparing(patterns: readonly Pattern[], surplus: number[], step: number | null): Pattern[] {
  let open = [...patterns];
  const done: Pattern[] = [];
  for (;;) {
    let best: { from: number; tree: CutTree; rest: number; left: number[] } | null = null;
    open.forEach(({ tree }, from) => {
      const left = surplus.map((count) => Math.max(0, count));
      const spared = withoutSurplus(tree, left, step);
      if (signature(spared) === signature(tree)) return;
      const rest = largestRest(spared);
      if (best === null || rest > best.rest) best = { from, tree: spared, rest, left };
    });
    if (best === null) return [...open, ...done];
    const { from, tree, left } = best as { from: number; tree: CutTree; left: number[] };
    left.forEach((count, item) => {
      surplus[item] = count;
    });
    const source = open[from]!;
    done.push({ sheet: source.sheet, times: 1, tree });
    open = open.flatMap((pattern, index) => {
      if (index !== from) return [pattern];
      return pattern.times > 1 ? [{ ...pattern, times: pattern.times - 1 }] : [];
    });
  }
}

function largestRest(tree: CutTree): number {
  if (tree.kind === 'rest') return tree.width * tree.height;
  return tree.kind === 'cut' ? Math.max(...tree.parts.map(largestRest)) : 0;
}

/** Equal patterns as one, in order of their first. */
function together(patterns: readonly Pattern[]): Pattern[] {
  const byKey = new Map<string, Pattern>();
  for (const pattern of patterns) {
    const key = `${pattern.sheet} ${signature(pattern.tree)}`;
    const known = byKey.get(key);
    byKey.set(key, known === undefined ? pattern : { ...known, times: known.times + pattern.times });
  }
  return [...byKey.values()];
}
