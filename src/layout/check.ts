import { largestAllowance, takesAllowance } from '../making/index.ts';
import type { Arrangement } from './arrange.ts';
import { foldsAcrossGrain, freedDirections } from './direction.ts';
import { unevenBorders } from './evenness.ts';
import { allowanceSaid } from './foldedBase.ts';
import { foldProblems } from './foldProblems.ts';
import type { Layout } from './layout.ts';
import { baseProblem, type LayoutProblem, partProblem } from './layoutProblem.ts';
import { noLeftovers } from './noLeftovers.ts';
import { overhangs } from './overhang.ts';
import { negativeGaps, overlaps } from './overlap.ts';
import { acrossSlit } from './slit.ts';

/**
 * Everything that would spoil the set as far as the layout tells, errors before cautions and each in pile order.
 *
 * The arrangement's own problems are among them. Whether the papers suffice, what has no slack and what falls
 * between the marks needs a plan and a trimmer, and is not told here. `layoutCodes` lists what is.
 */
export function checkLayout(layout: Layout, arrangement: Arrangement): readonly LayoutProblem[] {
  const pile = new Map(layout.parts.map((part, index) => [part.id, index]));
  // The base lies below the pile.
  const place = (problem: LayoutProblem) => pile.get(problem.part ?? '') ?? -1;
  const badness = ({ severity }: LayoutProblem) => (severity === 'error' ? 0 : 1);
  return [
    ...arrangement.problems,
    ...tooLargeAllowance(layout),
    ...missingFaces(layout),
    ...foldProblems(layout),
    ...overhangs(layout, arrangement),
    ...unevenBorders(layout, arrangement),
    ...negativeGaps(layout),
    ...overlaps(layout, arrangement),
    ...acrossSlit(layout, arrangement),
    ...noLeftovers(layout),
    ...foldsAcrossGrain(layout),
    ...freedDirections(layout),
  ].sort((a, b) => badness(a) - badness(b) || place(a) - place(b));
}

function tooLargeAllowance(layout: Layout): readonly LayoutProblem[] {
  const { base } = layout;
  if (base.allowance === null || !takesAllowance(base.fold)) return [];
  const numbers = { allowance: allowanceSaid(layout), most: largestAllowance(base) };
  return numbers.allowance > numbers.most
    ? [baseProblem('allowanceTooLarge', 'base.allowance', numbers, {})]
    : [];
}

function missingFaces(layout: Layout): readonly LayoutProblem[] {
  if (layout.base.fold !== 'none') return [];
  return layout.parts.flatMap((part, index) =>
    part.on === 'inside' ? [partProblem(layout, index, 'noInside', 'on', {})] : [],
  );
}
