import type { Axis } from '../measure/index.ts';
import type { CutTree } from './cutTree.ts';

/** What a tree asks of the hand. */
export interface Handwork {
  /** Lengths that must be set. */
  readonly settings: ReadonlySet<number>;
  /** Pairs of lengths, as `a b`, of which a must be set before b somewhere: what b divides is measured off at a. */
  readonly orders: ReadonlySet<string>;
  readonly passes: number;
  /** Workpieces that are cut along another axis than the one they were made by. */
  readonly turns: number;
  /** Area of the largest rest, in areas of the workpiece. */
  readonly largestRest: number;
}

/** The handwork of one sheet. */
export function handworkOf(tree: CutTree): Handwork {
  const settings = new Set<number>();
  const orders = new Set<string>();
  let passes = 0;
  let turns = 0;
  let largestRest = 0;
  const visit = (part: CutTree, madeBy: Axis | null, before: readonly number[]): void => {
    if (part.kind === 'rest') largestRest = Math.max(largestRest, part.width * part.height);
    if (part.kind !== 'cut') return;
    const { axis, parts } = part;
    if (madeBy !== null && madeBy !== axis) turns++;
    passes += parts.length - 1;
    const here = new Set<number>();
    for (const measured of parts.slice(0, -1)) if (measured.kind !== 'rest') here.add(measured[axis]);
    for (const set of here) {
      settings.add(set);
      for (const earlier of before) if (earlier !== set) orders.add(`${earlier} ${set}`);
    }
    for (const inner of parts) visit(inner, axis, [...before, ...here]);
  };
  visit(tree, null, []);
  return { settings, orders, passes, turns, largestRest: largestRest / (tree.width * tree.height) };
}

/** The handwork of a stack of sheets, added up. */
export interface StackWork {
  /**
   * Settings, about: every length once, and once more for two lengths each of which must be set before the other
   * somewhere.
   */
  readonly settings: number;
  /** Passes; a rest that is larger by a fiftieth of its sheet makes up for one. */
  readonly toil: number;
  readonly turns: number;
}

/** The handwork of sheets, each so many times. */
export function stackWork(
  sheets: readonly { readonly times: number; readonly handwork: Handwork }[],
): StackWork {
  const settings = new Set<number>();
  const orders = new Set<string>();
  let toil = 0;
  let turns = 0;
  for (const { times, handwork } of sheets) {
    for (const set of handwork.settings) settings.add(set);
    for (const order of handwork.orders) orders.add(order);
    toil += times * (handwork.passes - 50 * handwork.largestRest);
    turns += times * handwork.turns;
  }
  let opposed = 0;
  for (const order of orders) {
    const [first, second] = order.split(' ');
    if (Number(first) < Number(second) && orders.has(`${second} ${first}`)) opposed++;
  }
  return { settings: settings.size + opposed, toil, turns };
}

/** Negative where the first work is the lighter one: fewer settings, then less toil, then fewer turns. */
export function compareWork(a: StackWork, b: StackWork): number {
  return a.settings - b.settings || a.toil - b.toil || a.turns - b.turns;
}
