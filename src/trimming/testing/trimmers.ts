import { lengthOfTicks } from '../../measure/index.ts';
import type { Trimmer } from '../trimmer.ts';

/** A trimmer without limits but those given, in ticks. */
export function trimmerWith(limits: {
  readonly marks?: number;
  readonly longest?: number;
  readonly narrowest?: number;
  readonly reach?: number;
  readonly otherReach?: number;
  readonly correction?: number;
}): Trimmer {
  const length = (ticks: number | undefined) => (ticks === undefined ? null : lengthOfTicks(ticks));
  return {
    name: 'a trimmer',
    marks: length(limits.marks),
    longest: length(limits.longest),
    narrowest: length(limits.narrowest),
    reach: { measuringSide: length(limits.reach), otherSide: length(limits.otherReach) },
    correction: lengthOfTicks(limits.correction ?? 0),
    measuringEdge: 'right',
    hand: 'left',
    sheetsAtOnce: 1,
    cutsPerSitting: null,
  };
}
