import type { Axis } from '../measure/index.ts';
import type { CutLimits, Item } from './task.ts';

/**
 * Every workpiece that can come of one sheet when the trimmer is only ever set to some lengths, in stages: at each
 * stage some lengths may be set, in any order, and no earlier stage comes back.
 *
 * Sizes are true sizes, waste and all; what nothing can be cut from is no node.
 */
export interface StagedSheet {
  /** A node stands behind all nodes that it can become. */
  readonly nodes: readonly StagedNode[];
  /** Index of the whole sheet; -1 where nothing can come of it. */
  readonly whole: number;
}

/** A workpiece at a stage. */
export interface StagedNode {
  readonly width: number;
  readonly height: number;
  /** Items that it is as it stands. */
  readonly pieces: readonly { readonly item: number; readonly turned: boolean }[];
  readonly cuts: readonly StagedCut[];
  /** The same workpiece at the next stage; -1 at the last. */
  readonly later: number;
}

/** One pass: `set` is measured off along `axis` and used, the rest remains. */
export interface StagedCut {
  readonly axis: Axis;
  readonly set: number;
  /** Node of what is measured off. */
  readonly first: number;
  /** Node of what remains; -1: nothing can be cut from it. */
  readonly second: number;
}

export interface StagedRequest {
  readonly sheet: { readonly width: number; readonly height: number };
  readonly items: readonly Item[];
  readonly limits: CutLimits;
  readonly stages: readonly (readonly number[])[];
  readonly mostNodes: number;
}

/** `null` when there are more than `mostNodes`. */
export function stagedSheet(request: StagedRequest): StagedSheet | null {
  const { sheet, items, limits, stages, mostNodes } = request;
  const placed = items.flatMap(({ width, height, turns }, item) => [
    { item, turned: false, width, height },
    ...(turns && width !== height ? [{ item, turned: true, width: height, height: width }] : []),
  ]);
  const holds = (width: number, height: number) =>
    placed.some((piece) => piece.width <= width && piece.height <= height);
  const nodes: StagedNode[] = [];
  // By stage, width and height: sizes are too large for one number to stand for all three.
  const known = stages.map(() => new Map<number, Map<number, number>>());
  let open = mostNodes;

  // Depth first, so that a node comes behind what it can become.
  const visit = (width: number, height: number, stage: number): number => {
    if (open < 0 || !holds(width, height)) return -1;
    const ofWidth = known[stage]!.get(width) ?? new Map<number, number>();
    known[stage]!.set(width, ofWidth);
    const before = ofWidth.get(height);
    if (before !== undefined) return before;
    if (--open < 0) return -1;
    const cuts: StagedCut[] = [];
    const cutAlong = (axis: Axis, length: number, across: number) => {
      if (limits.longest !== null && across > limits.longest) return;
      for (const set of stages[stage]!) {
        if (set >= length) continue;
        const [first, second] =
          axis === 'width'
            ? [visit(set, height, stage), visit(length - set, height, stage)]
            : [visit(width, set, stage), visit(width, length - set, stage)];
        if (first >= 0) cuts.push({ axis, set, first, second });
      }
    };
    cutAlong('width', width, height);
    cutAlong('height', height, width);
    const later = stage + 1 < stages.length ? visit(width, height, stage + 1) : -1;
    const pieces = placed.filter((piece) => piece.width === width && piece.height === height);
    nodes.push({ width, height, pieces, cuts, later });
    ofWidth.set(height, nodes.length - 1);
    return nodes.length - 1;
  };
  const whole = visit(sheet.width, sheet.height, 0);
  return open < 0 ? null : { nodes, whole };
}
