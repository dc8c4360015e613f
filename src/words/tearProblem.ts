import type { FinishedProblem } from '../finished/index.ts';
import type { Layout } from '../layout/index.ts';
import { lengthOfTicks, showLengthWithUnit } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import { chanceWords, riskWords } from './chanceWords.ts';
import { counted } from './count.ts';
import { partName } from './partName.ts';
import type { Showing } from './showing.ts';
import { placeName } from './tearSentence.ts';

/** What is wrong with a torn edge, how often it shows, and how much would mend it. */
export function tearProblemSentence(
  problem: FinishedProblem,
  layout: Layout,
  { units, glyphs }: Showing,
): string {
  const number = (key: string): number => {
    const value = problem.numbers[key];
    assert(value !== undefined, 'A problem brings the numbers of its sentence', { problem, key });
    return value;
  };
  const length = (of: number): string => showLengthWithUnit(lengthOfTicks(Math.abs(of)), units, glyphs);
  const part = partName(layout, problem.part ?? '');
  const { kind = '', edge = '', against = '', shows = '' } = problem.names;
  const other = placeName(layout, against);
  const seen = placeName(layout, shows);
  const often = `on ${chanceWords({ chance: number('onCard') }, 'card')}; with ${counted(number('cards'), 'card')}, that is ${chanceWords({ chance: number('inSet') }, 'set')}`;
  const mend =
    problem.numbers.more === undefined
      ? ''
      : ` With ${length(number('more'))} more room it is no more than ${riskWords(number('wanted'), 'set')}.`;
  const tear = `the tear at the ${edge} of ${part}`;
  const worst = length(number('least'));
  if (problem.code === 'tearShows') {
    return number('usual') === 0
      ? `As deep as it usually goes, ${tear} just reaches what it has to hide by ${other}: any deeper, and ${seen} shows.${mend}`
      : `Even as deep as it usually goes, ${tear} leaves ${length(number('usual'))} of ${seen} showing beside ${other}.${mend}`;
  }
  if (problem.code === 'tearMayShow') {
    return kind === 'beyond'
      ? `A shallow tear at the ${edge} of ${part} may come out past ${other}, by ${worst} at the worst: ${often}.${mend}`
      : `A deep tear at the ${edge} of ${part} may let ${seen} show beside ${other}, ${worst} of it at the worst: ${often}.${mend}`;
  }
  return kind === 'facing'
    ? `A shallow tear at the ${edge} of ${part} may leave nothing of ${seen} between it and ${other}: ${often}.${mend}`
    : `The border of ${seen} at the torn ${edge} of ${part} may vanish: ${often}.${mend}`;
}
