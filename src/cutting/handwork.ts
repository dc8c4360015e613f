import type { Axis } from '../measure/index.ts';
import type { CutTree } from './cutTree.ts';

/** What a tree asks of the hand. */
export interface Handwork {
  /** Lengths that must be set. */
  readonly settings: ReadonlySet<number>;
  readonly passes: number;
  /** Workpieces that are cut along another axis than the one they were made by. */
  readonly turns: number;
  /** Area of the largest rest. */
  readonly largestRest: number;
}

/** The handwork of one sheet. */
export function handworkOf(tree: CutTree): Handwork {
  const settings = new Set<number>();
  let passes = 0;
  let turns = 0;
  let largestRest = 0;
  const visit = (part: CutTree, madeBy: Axis | null): void => {
    if (part.kind === 'rest') largestRest = Math.max(largestRest, part.width * part.height);
    if (part.kind !== 'cut') return;
    const { axis, parts } = part;
    if (madeBy !== null && madeBy !== axis) turns++;
    passes += parts.length - 1;
    for (const measured of parts.slice(0, -1)) if (measured.kind !== 'rest') settings.add(measured[axis]);
    for (const inner of parts) visit(inner, axis);
  };
  visit(tree, null);
  return { settings, passes, turns, largestRest };
}
