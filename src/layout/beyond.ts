import { type Axis, type Edge, type Length, sum } from '../measure/index.ts';
import type { Part } from './layout.ts';

/**
 * How much of what is cut lies beyond what is seen, by edge: what is torn off there, what goes round and behind, and
 * the margin that is left when a shape is cut out.
 */
export function beyondSeen({ torn, tuck, margin }: Part): Readonly<Record<Edge, Length>> {
  const at = (edge: Edge): Length => sum(torn[edge], tuck[edge], margin);
  return { left: at('left'), right: at('right'), top: at('top'), bottom: at('bottom') };
}

/** The same along an axis, at both ends together: the cut size less the seen one. */
export function beyondAlong(part: Part, axis: Axis): Length {
  const { left, right, top, bottom } = beyondSeen(part);
  return axis === 'width' ? sum(left, right) : sum(top, bottom);
}
