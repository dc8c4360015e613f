import { assert } from '../problem/index.ts';
import type { CutTree } from './cutTree.ts';

/** By length that is measured off, how much speaks for setting another length before it. */
export type Precedence = ReadonlyMap<number, ReadonlyMap<number, number>>;

/**
 * Which lengths the trees measure off before which: a length that makes a workpiece comes before all that are
 * measured off from it. `weight` of a tree is how often it is cut.
 */
export function precedenceOf(
  trees: readonly { readonly tree: CutTree; readonly weight: number }[],
): Precedence {
  const before = new Map<number, Map<number, number>>();
  const visit = (tree: CutTree, weight: number, earlier: readonly number[]): void => {
    if (tree.kind !== 'cut') return;
    const row = [...new Set(tree.parts.slice(0, -1).map((part) => part[tree.axis]))];
    for (const set of row) {
      const known = before.get(set) ?? new Map<number, number>();
      before.set(set, known);
      for (const one of earlier) if (one !== set) known.set(one, (known.get(one) ?? 0) + weight);
    }
    tree.parts.forEach((part, index) => {
      const made = index === tree.parts.length - 1 ? row : [part[tree.axis]];
      visit(part, weight, [...new Set([...earlier, ...made])]);
    });
  };
  for (const { tree, weight } of trees) visit(tree, weight, []);
  return before;
}

/**
 * The order of all lengths that goes against the least weight, and that weight; by trying every subset as a beginning.
 *
 * Takes 2^n steps for n lengths; `null` for more than `mostLengths`.
 */
export function bestOrder(
  lengths: readonly number[],
  precedence: Precedence,
): { readonly order: readonly number[]; readonly against: number } | null {
  const count = lengths.length;
  if (count > mostLengths) return null;
  const weight = lengths.map((set) => lengths.map((other) => precedence.get(set)?.get(other) ?? 0));
  const against = new Float64Array(2 ** count).fill(Number.POSITIVE_INFINITY);
  const last = new Int8Array(2 ** count);
  against[0] = 0;
  for (let begun = 0; begun < 2 ** count; begun++) {
    for (let next = 0; next < count; next++) {
      if (begun & (1 << next)) continue;
      // Setting `next` now goes against all that should have been set before it and is not.
      let more = 0;
      for (let other = 0; other < count; other++) {
        if (other !== next && !(begun & (1 << other))) more += weight[next]![other]!;
      }
      const grown = begun | (1 << next);
      if (against[begun]! + more < against[grown]!) {
        against[grown] = against[begun]! + more;
        last[grown] = next;
      }
    }
  }
  const order: number[] = [];
  for (let begun = 2 ** count - 1; begun > 0; begun &= ~(1 << last[begun]!))
    order.push(lengths[last[begun]!]!);
  return { order: order.reverse(), against: against[2 ** count - 1]! };
}

const mostLengths = 12;

/**
 * Settings that do for the trees when the lengths are set again and again in this order, those left out that nothing
 * is measured off at.
 */
export function settingsInOrder(trees: readonly CutTree[], order: readonly number[]): readonly number[] {
  const settings: number[] = [];
  let table = trees.filter((tree) => tree.kind === 'cut');
  while (table.length > 0) {
    const before = settings.length;
    for (const set of order) {
      const left = table.map((tree) => cutAt(tree, set));
      if (left.every((parts, index) => parts.length === 1 && parts[0] === table[index])) continue;
      settings.push(set);
      table = left.flat();
    }
    assert(settings.length > before, 'every length of the trees is in the order', { order });
  }
  return settings;
}

/** What is still to be cut when everything has been measured off a workpiece that can be at one setting. */
function cutAt(tree: CutTree, set: number): (CutTree & { kind: 'cut' })[] {
  if (tree.kind !== 'cut') return [];
  const { axis, parts } = tree;
  const measured = parts.slice(0, -1);
  const off = measured.filter((part) => part[axis] === set);
  if (off.length === 0) return [tree];
  const still = measured.filter((part) => part[axis] !== set);
  const last = parts.at(-1)!;
  const length = still.reduce((sum, part) => sum + part[axis], last[axis]);
  const remains: CutTree = still.length === 0 ? last : { ...tree, [axis]: length, parts: [...still, last] };
  return [...off, remains].flatMap((part) => cutAt(part, set));
}
