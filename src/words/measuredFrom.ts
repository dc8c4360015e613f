import type { Edge } from '../measure/index.ts';
import type { Step } from '../trimming/index.ts';
import type { Workpiece } from './workpiece.ts';

/**
 * The edge of the upright work that lies at the measuring edge of the trimmer, where the pieces come off.
 *
 * Work whose height is measured lies on its side with its top there; other work stands upright. A squaring cut
 * chooses by what it measures: the margin itself, or the sheet from the edge across it. `given` is what the step
 * measures off. What is measured on the other side of the blade lies with that edge there.
 */
export function measuredFrom(
  step: Pick<Step, 'axis' | 'squares' | 'otherSide'>,
  given: readonly Workpiece[],
  measuringEdge: 'left' | 'right',
): Edge {
  const { axis, squares } = step;
  if (squares === undefined) return axis === 'height' ? 'top' : sideOf(step, measuringEdge);
  const isMargin = given.every(({ goes }) => goes.kind === 'leftover');
  return isMargin ? squares : opposite[squares];
}

/** The side of the blade on which a step is measured. */
export function sideOf(
  { otherSide }: Pick<Step, 'otherSide'>,
  measuringEdge: 'left' | 'right',
): 'left' | 'right' {
  return otherSide ? opposite[measuringEdge] : measuringEdge;
}

const opposite = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' } as const satisfies Record<
  Edge,
  Edge
>;
