import { type Length, lengthOfTicks, showLengthWithUnit } from '../measure/index.ts';
import type { Trimmer } from '../trimming/index.ts';
import type { Showing } from './showing.ts';

/**
 * For whose trimmer a plan is: its marks, its measuring edge and the hand that works it, then how far its rulers reach
 * and how far its ruler is off, where that was said.
 */
export function trimmerSentences(trimmer: Trimmer, showing: Showing): readonly string[] {
  const { marks, measuringEdge, hand, reach, correction } = trimmer;
  const length = (of: Length) => showLengthWithUnit(of, showing.units, showing.glyphs);
  const every = marks === null ? '' : ` with a mark every ${length(marks)}`;
  const other =
    reach.otherSide === null ? '' : `, and ${length(reach.otherSide)} on the other side of the blade`;
  const off = length(lengthOfTicks(Math.abs(correction)));
  return [
    `For a trimmer${every} that measures on the ${measuringEdge}, worked with the ${hand} hand.`,
    ...(reach.measuringSide === null ? [] : [`Its ruler goes to ${length(reach.measuringSide)}${other}.`]),
    ...(correction === 0
      ? []
      : [
          `It cuts ${off} ${correction > 0 ? 'more' : 'less'} than its ruler reads; each step says what to set.`,
        ]),
  ];
}
