import type { Pattern } from './answer.ts';
import { type Block, blockOf, piecesIn } from './block.ts';
import { type CanonicalTask, patternsForTask } from './canonicalTask.ts';
import type { CutTree } from './cutTree.ts';
import { compareWork, type StackWork, stackWork } from './handwork.ts';
import { kindest, waysToCut } from './kindTree.ts';
import type { Choice } from './planSearch.ts';
import type { SheetGrid } from './sheetGrid.ts';
import { withoutSurplus } from './surplus.ts';
import type { CuttingTask } from './task.ts';
import { signature, treeOf } from './treeBuilding.ts';

/**
 * The patterns of whichever choice is lightest to cut (`compareWork`), named as in the task, equal ones together.
 * The choices cost the same.
 *
 * Pieces beyond the need are dropped and leave their room to the rests, and a sheet that has none but such is not
 * cut at all; only where a row ends in room for just one more piece a spare one is made, since it costs no pass.
 */
export function kindestPatterns(
  task: CuttingTask,
  canonical: CanonicalTask,
  grids: readonly SheetGrid[],
  choices: readonly Choice[],
): Pattern[] {
  const stacks = choices.map((choice) => stackOf(canonical, grids, choice));
  stacks.sort((a, b) => compareWork(a.work, b.work));
  return together(patternsForTask(task, canonical, together(stacks[0]!.patterns)));
}

function stackOf(
  { items, limits }: CanonicalTask,
  grids: readonly SheetGrid[],
  choice: Choice,
): { readonly patterns: readonly Pattern[]; readonly work: StackWork } {
  const full = choice.flatMap(({ column: { sheet, made, recipe }, times }): SheetsAlike[] => {
    const tree = treeOf(grids[sheet]!, recipe);
    const whole = blockOf(tree);
    if (whole === null) return [];
    // The recipe may make more than the choice counts on.
    const excess = made.map((count) => -count);
    for (const { item } of piecesIn(whole)) excess[item]!++;
    const block = withoutSurplus(whole, excess);
    return block === null ? [] : [{ sheet, times, tree, block }];
  });
  const needs = items.map((item) => item.need);
  const groups = sameProduct(spared(full, needs), items.length).map((group) => ({
    sheet: group[0]!.sheet,
    times: group.reduce((sum, { times }) => sum + times, 0),
    ways: group.flatMap(({ tree, block }) => waysToCut(tree, block, items, limits)),
  }));
  const chosen = kindest(groups);
  const patterns = groups.map(({ sheet, times }, index) => ({ sheet, times, tree: chosen[index]!.tree }));
  const work = stackWork(groups.map(({ times }, index) => ({ times, handwork: chosen[index]!.handwork })));
  return { patterns, work };
}

/** Sheets of a kind that are cut by `tree`, or some other way into the pieces of `block`, which it gives at least. */
interface SheetsAlike {
  readonly sheet: number;
  readonly times: number;
  readonly tree: CutTree;
  readonly block: Block;
}

/** Takes the surplus from few sheets, always from the one that can spare the largest area. */
function spared(sheets: readonly SheetsAlike[], needs: readonly number[]): SheetsAlike[] {
  const surplus = needs.map((need) => -need);
  for (const { block, times } of sheets) {
    for (const { item } of piecesIn(block)) surplus[item]! += times;
  }
  const open = [...sheets];
  const done: SheetsAlike[] = [];
  for (;;) {
    let most: { from: number; block: Block | null; gone: number[]; area: number } | null = null;
    for (const [from, { block }] of open.entries()) {
      const left = surplus.map((count) => Math.max(0, count));
      const before = [...left];
      const kept = withoutSurplus(block, left);
      const gone = before.map((count, item) => count - left[item]!);
      const area = areaOf(block) - (kept === null ? 0 : areaOf(kept));
      if (area > (most?.area ?? 0)) most = { from, block: kept, gone, area };
    }
    if (most === null) return [...open, ...done];
    const { from, block, gone } = most;
    const source = open[from]!;
    // As many sheets at once as can spare the same.
    const times = gone.reduce(
      (least, count, item) => (count > 0 ? Math.min(least, Math.floor(surplus[item]! / count)) : least),
      source.times,
    );
    gone.forEach((count, item) => {
      surplus[item]! -= count * times;
    });
    if (block !== null) done.push({ ...source, times, block });
    if (times === source.times) open.splice(from, 1);
    else open[from] = { ...source, times: source.times - times };
  }
}

function areaOf(block: Block): number {
  return piecesIn(block).reduce((sum, { width, height }) => sum + width * height, 0);
}

/** Sheets of one kind with the same pieces, together. */
function sameProduct(sheets: readonly SheetsAlike[], items: number): SheetsAlike[][] {
  const groups = new Map<string, SheetsAlike[]>();
  for (const alike of sheets) {
    const made = new Array<number>(items).fill(0);
    for (const { item } of piecesIn(alike.block)) made[item]!++;
    const key = `${alike.sheet} ${made.join()}`;
    groups.set(key, [...(groups.get(key) ?? []), alike]);
  }
  return [...groups.values()];
}

/** Equal patterns as one, in order of their first. */
export function together(patterns: readonly Pattern[]): Pattern[] {
  const byKey = new Map<string, Pattern>();
  for (const pattern of patterns) {
    const key = `${pattern.sheet} ${signature(pattern.tree)}`;
    const known = byKey.get(key);
    byKey.set(key, known === undefined ? pattern : { ...known, times: known.times + pattern.times });
  }
  return [...byKey.values()];
}
