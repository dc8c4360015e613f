import type { BoundCertificate, Pattern, RefutedCounts, WorthCondition } from './answer.ts';
import type { CutTree } from './cutTree.ts';
import { fitsSheet } from './sheetGrid.ts';
import type { CuttingTask, Item, SheetType } from './task.ts';
import { piecesOf } from './treeBuilding.ts';

/**
 * The task with equal items and equal sheets taken together, without sheets that give none of the items, in an
 * order that is the same however they were listed: so that the search, and with it the answer, does not depend on the listing.
 */
export interface CanonicalTask extends CuttingTask {
  /** By item of this task: the items of the original one that it stands for, and whether they lie turned in it. */
  readonly itemsOf: readonly (readonly { readonly item: number; readonly turned: boolean }[])[];
  /** By sheet of this task: the sheets of the original one that it stands for. */
  readonly sheetsOf: readonly (readonly number[])[];
}

/** The canonical form of a task. */
export function canonicalTask(task: CuttingTask): CanonicalTask {
  const items = new Map<string, { item: Item; of: { item: number; turned: boolean }[] }>();
  task.items.forEach(({ width, height, need, turns }, index) => {
    const turned = turns && width < height;
    const standing = {
      width: turned ? height : width,
      height: turned ? width : height,
      turns: turns && width !== height,
    };
    const key = `${standing.width} ${standing.height} ${standing.turns}`;
    const known = items.get(key);
    items.set(key, {
      item: { ...standing, need: need + (known?.item.need ?? 0) },
      of: [...(known?.of ?? []), { item: index, turned }],
    });
  });
  const sheets = new Map<string, { sheet: SheetType; of: number[] }>();
  task.sheets.forEach((sheet, index) => {
    if (sheet.count === 0 || !task.items.some((item) => fitsSheet(item, sheet, task.limits))) return;
    const key = `${sheet.width} ${sheet.height} ${sheet.cost}`;
    const known = sheets.get(key);
    const count =
      sheet.count === null || known?.sheet.count === null ? null : sheet.count + (known?.sheet.count ?? 0);
    sheets.set(key, { sheet: { ...sheet, count }, of: [...(known?.of ?? []), index] });
  });
  const itemList = [...items.values()].sort(
    ({ item: a }, { item: b }) =>
      b.width * b.height - a.width * a.height || b.width - a.width || Number(a.turns) - Number(b.turns),
  );
  const sheetList = [...sheets.values()].sort(
    ({ sheet: a }, { sheet: b }) =>
      a.cost - b.cost || b.width * b.height - a.width * a.height || b.width - a.width,
  );
  return {
    items: itemList.map(({ item }) => item),
    sheets: sheetList.map(({ sheet }) => sheet),
    limits: task.limits,
    itemsOf: itemList.map(({ of }) => of),
    sheetsOf: sheetList.map(({ of }) => of),
  };
}

/**
 * Gives the patterns back to the task they were made for: each piece to the first of the items it may stand for
 * that still wants one (to the last of them when all are served), each sheet to one that is still there.
 */
export function patternsForTask(
  task: CuttingTask,
  canonical: CanonicalTask,
  patterns: readonly Pattern[],
): Pattern[] {
  const wanted = task.items.map((item) => item.need);
  const there = task.sheets.map((sheet) => sheet.count ?? Number.POSITIVE_INFINITY);
  const itemFor = (item: number) => {
    const choices = canonical.itemsOf[item]!;
    return choices.find((choice) => wanted[choice.item]! > 0) ?? choices.at(-1)!;
  };
  const renamed = (tree: CutTree): CutTree => {
    if (tree.kind === 'rest') return tree;
    if (tree.kind === 'cut') return { ...tree, parts: tree.parts.map(renamed) };
    const { item, turned } = itemFor(tree.item);
    wanted[item]!--;
    return { ...tree, item, turned: turned !== tree.turned };
  };
  const given: Pattern[] = [];
  for (const { sheet, times, tree } of patterns) {
    const made = piecesOf(tree, canonical.items.length);
    for (let left = times; left > 0; ) {
      const own = canonical.sheetsOf[sheet]!.find((choice) => there[choice]! > 0)!;
      // As many alike as have all their pieces for the same items; a sheet between two items goes alone.
      let alike = Math.min(left, there[own]!);
      made.forEach((count, item) => {
        if (count === 0 || canonical.itemsOf[item]!.length === 1) return;
        const still = wanted[itemFor(item).item]!;
        if (still > 0) alike = Math.min(alike, Math.floor(still / count));
      });
      alike = Math.max(1, alike);
      const before = [...wanted];
      const copy = renamed(tree);
      wanted.forEach((count, item) => {
        wanted[item] = before[item]! - (before[item]! - count) * alike;
      });
      there[own]! -= alike;
      left -= alike;
      given.push({ sheet: own, times: alike, tree: copy });
    }
  }
  return given;
}

/** The certificate of the canonical task, for the task it stands for. */
export function certificateForTask(
  task: CuttingTask,
  { itemsOf, sheetsOf }: CanonicalTask,
  {
    conditions,
    refuted,
  }: {
    readonly conditions: readonly { readonly worth: WorthCondition }[];
    readonly refuted: readonly RefutedCounts[];
  },
): BoundCertificate {
  const names = task.items.map((_, item) => itemsOf.findIndex((of) => of.some((one) => one.item === item)));
  return {
    groups: sheetsOf,
    conditions: conditions.map(({ worth: { prices, sheets } }) => ({
      prices: names.map((name) => prices[name]!),
      sheets,
    })),
    refuted,
  };
}
