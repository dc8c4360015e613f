import type { Edge } from '../measure/index.ts';
import type { Step } from '../trimming/index.ts';
import type { Workpiece } from './workpiece.ts';

/**
 * The edge of the upright work that lies at the measuring edge of the trimmer, where the pieces come off.
 *
 * Work whose height is measured lies on its side with its top there; other work stands upright. A squaring cut
 * chooses by what it measures: the margin itself, or the sheet from the edge across it. `given` is what the step
 * measures off.
 */
export function measuredFrom(
  { axis, squares }: Pick<Step, 'axis' | 'squares'>,
  given: readonly Workpiece[],
  measuringEdge: 'left' | 'right',
): Edge {
  if (squares === undefined) return axis === 'height' ? 'top' : measuringEdge;
  const isMargin = given.every(({ goes }) => goes.kind === 'leftover');
  return isMargin ? squares : opposite[squares];
}

const opposite = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' } as const satisfies Record<
  Edge,
  Edge
>;
