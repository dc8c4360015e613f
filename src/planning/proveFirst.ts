import type { Layout } from '../layout/index.ts';
import { describeSteps, type Step } from '../trimming/index.ts';
import type { Plan } from './plan.ts';

/**
 * Why a first piece is proved before the others are cut, the weightiest first: the pieces use up a whole side of their
 * sheet, so that a hair too much on one is wanting on the last; a print with a direction is cut for the first time, and
 * laid the wrong way every piece is spoiled; a setting is used for the first time.
 */
export const proveReasons = ['nothing to spare', 'direction', 'new setting'] as const;

export type ProveReason = (typeof proveReasons)[number];

/**
 * The steps of a plan at which one piece is to be cut, measured and found good before the others, by number, with the
 * reasons in the order of `proveReasons`. What begins at a step is proved there once; only where several passes follow
 * that it would spoil.
 */
export function proveFirstOf(
  { sheets, steps }: Pick<Plan, 'sheets' | 'steps'>,
  layout: Layout,
): ReadonlyMap<number, readonly ProveReason[]> {
  const described = describeSteps(steps, new Map(sheets.map(({ id, size }) => [id, size])));
  const paperOf = new Map(sheets.map(({ id, paper }) => [id, paper]));
  // Whether a workpiece still has the whole side of its sheet, along each axis.
  const uncut = new Map(sheets.map(({ id }) => [id, { width: true, height: true }]));
  const begun = new Set<string>();
  const passesBy = new Map<string, number>();
  const reasons = steps.map((step, at): readonly (readonly [ProveReason, string])[] => {
    const { passes, rest, size } = described[at]!;
    const paper = paperOf.get(step.take[0]!)!;
    // Lengths are rounded down to a tick each when they are read: so small a rest is none.
    const tight = rest <= step.repeat && step.take.some((id) => uncut.get(id)![step.axis]);
    pass(step, paper, { paperOf, uncut });
    const starts: (readonly [ProveReason, string])[] = [
      ...(tight
        ? [['nothing to spare', `${paper} ${step.axis} ${size[step.axis]} ${step.set}`] as const]
        : []),
      ...(layout.papers.get(paper)!.up === 'any' ? [] : [['direction', paper] as const]),
      ['new setting', String(step.set)],
    ];
    for (const [reason, what] of starts) {
      const key = `${reason} ${what}`;
      passesBy.set(key, (passesBy.get(key) ?? 0) + passes);
    }
    return starts;
  });
  return new Map(
    steps.flatMap(({ step }, at) => {
      const first = reasons[at]!.filter(([reason, what]) => {
        const key = `${reason} ${what}`;
        const isFirst = !begun.has(key);
        begun.add(key);
        return isFirst && passesBy.get(key)! > 1;
      });
      return first.length === 0 ? [] : [[step, first.map(([reason]) => reason)] as const];
    }),
  );
}

/** Follows a step: what it makes is of the same paper, and no longer as long as its sheet along the axis of the cut. */
function pass(
  { axis, take, gives, rest }: Step,
  paper: string,
  {
    paperOf,
    uncut,
  }: {
    readonly paperOf: Map<string, string>;
    readonly uncut: Map<string, { width: boolean; height: boolean }>;
  },
): void {
  for (const [index, id] of take.entries()) {
    const after = { ...uncut.get(id)!, [axis]: false };
    for (const made of [...gives[index]!, rest[index] ?? null]) {
      if (made === null) continue;
      paperOf.set(made, paper);
      uncut.set(made, after);
    }
  }
}
