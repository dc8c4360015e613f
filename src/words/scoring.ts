import type { Layout } from '../layout/index.ts';
import { openedSize, scoresOf } from '../making/index.ts';
import { minus, showLengthWithUnit, showSize } from '../measure/index.ts';
import { counted } from './count.ts';
import type { Showing } from './showing.ts';

/** How the bases of a set are scored. */
export interface ScoringWords {
  /** `Lay each of the 12 bases open, 8 1/2 x 5 1/2 in, and score from edge to edge …` */
  readonly says: string;
  /** Each score line alone: `score from edge to edge 4 1/4 in from the left edge, the middle` */
  readonly lines: readonly string[];
}

/** How so many bases are scored and folded; `null` where they are flat. */
export function scoringWords(
  { base }: Layout,
  bases: number,
  { units, glyphs }: Showing,
): ScoringWords | null {
  const scores = scoresOf(base.size, base.fold);
  if (scores.length === 0) return null;
  const opened = openedSize(base.size, base.fold);
  const lines = scores.map(({ axis, at }) => {
    const side = axis === 'width' ? 'left' : 'top';
    const rest = minus(opened[axis], at);
    const same =
      rest === at ? ', the middle' : `, ${showLengthWithUnit(rest, units, glyphs)} from the other edge`;
    return `score from edge to edge ${showLengthWithUnit(at, units, glyphs)} from the ${side} edge${same}`;
  });
  const says = `Lay each of the ${counted(bases, 'base')} open, ${showSize(opened, units, glyphs)}, and ${lines.join('; ')}. Fold along the score and press the fold down with a bone folder.`;
  return { says, lines };
}
