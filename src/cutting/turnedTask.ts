import type { Axis } from '../measure/index.ts';
import type { CuttingAnswer, CuttingPlan, Pattern } from './answer.ts';
import { canonicalTask } from './canonicalTask.ts';
import type { CutTree } from './cutTree.ts';
import type { CuttingTask } from './task.ts';

/** The task with width and height of everything exchanged. */
export function turnedTask(task: CuttingTask): CuttingTask {
  const turned = <T extends Size>(size: T): T => ({ ...size, width: size.height, height: size.width });
  return { ...task, items: task.items.map(turned), sheets: task.sheets.map(turned) };
}

/** The answer to a task, from the answer to the turned one. */
export function turnedAnswer<T extends CuttingAnswer | CuttingPlan>(answer: T): T {
  return answer.kind === 'plan'
    ? { ...answer, patterns: answer.patterns.map(turnedPattern) }
    : { ...answer, best: answer.best.map(turnedPattern) };
}

/**
 * Whether a task is the one of itself and its turned one that is planned turned; never true of both. So that both
 * have the same plan, turned: the search decides between plans that are equally good by what it meets first.
 */
export function liesTurned(task: CuttingTask): boolean {
  const upright = sizesOf(task);
  const turned = sizesOf(turnedTask(task));
  const first = upright.findIndex((size, index) => size !== turned[index]);
  return first >= 0 && turned[first]! < upright[first]!;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** All that tells a task from its turned one, in an order that does not depend on the listing. */
function sizesOf(task: CuttingTask): readonly number[] {
  const { items, sheets } = canonicalTask(task);
  return [
    ...sheets.flatMap(({ width, height, count }) => [width, height, count ?? -1]),
    ...items.flatMap(({ width, height, need, turns }) => [width, height, need, Number(turns)]),
  ];
}

function turnedPattern(pattern: Pattern): Pattern {
  return { ...pattern, tree: turnedTree(pattern.tree) };
}

function turnedTree(tree: CutTree): CutTree {
  const size = { width: tree.height, height: tree.width };
  if (tree.kind !== 'cut') return { ...tree, ...size };
  const axis: Axis = tree.axis === 'width' ? 'height' : 'width';
  return { ...tree, ...size, axis, parts: tree.parts.map(turnedTree) };
}
