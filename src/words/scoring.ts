import { papersFolded } from '../finished/index.ts';
import { foldedBase, type Layout } from '../layout/index.ts';
import { openedSize, type Score, scoresOf } from '../making/index.ts';
import { type Length, minus, showLengthWithUnit, showSize } from '../measure/index.ts';
import { aboutThick } from './aboutThick.ts';
import { counted, listed } from './count.ts';
import { foldingWord } from './foldWords.ts';
import type { Showing } from './showing.ts';

/** How the bases of a set are scored. */
export interface ScoringWords {
  /** `Lay each of the 12 bases open, 8 1/2 x 5 1/2 in, and score from edge to edge …` */
  readonly says: string;
  /** Each score line alone: `4 1/4 in from the left edge, the middle` */
  readonly lines: readonly string[];
}

/** How so many bases are scored and folded; `null` where they are flat. */
export function scoringWords(layout: Layout, bases: number, showing: Showing): ScoringWords | null {
  const base = foldedBase(layout);
  const scores = scoresOf(base);
  const [first] = scores;
  if (first === undefined) return null;
  const shown = (length: Length) => showLengthWithUnit(length, showing.units, showing.glyphs);
  const opened = openedSize(base);
  const from = first.axis === 'width' ? 'left' : 'top';
  const alone = scores.length === 1;
  const mixed = scores.some(({ folds }) => folds === 'mountain');
  const lines = scores.map(({ at, folds }) => {
    if (!alone) return `${shown(at)}${mixed ? ` (a ${folds})` : ''}`;
    const rest = minus(opened[first.axis], at);
    const other = rest === at ? ', the middle' : `, ${shown(rest)} from the other edge`;
    return `${shown(at)} from the ${from} edge${other}`;
  });
  const size = showSize(opened, showing.units, showing.glyphs);
  const lay = `Lay ${bases === 1 ? 'the base' : `each of the ${counted(bases, 'base')}`} open, ${size}`;
  const says = [
    alone
      ? `${lay}, and score from edge to edge ${lines[0]}.`
      : `${lay}, the inside up, and score from edge to edge, measured from the ${from} edge, at ${listed(lines)}.`,
    ...(alone ? [] : [mixed ? both : valleys]),
    ...ridgeWords(scores, opened),
    ...paperWords(layout, showing),
    `${foldingWord(base)}, and press ${alone ? 'the fold' : 'each fold'} down with a bone folder.`,
  ].join(' ');
  return { says, lines };
}

const both = 'At a valley the inside is folded together, at a mountain it is folded apart.';
const valleys = 'All of them are valleys: the inside is folded together there.';

/**
 * On which side a score is best made. "Fold toward the bead, ridge inside": the tool presses a groove and raises a bead on
 * the other side of the paper.
 */
function ridgeWords(scores: readonly Score[], opened: ReturnType<typeof openedSize>): readonly string[] {
  const ridge = 'The tool raises a ridge on the other side of the paper: fold toward it, the ridge inside';
  const [first] = scores;
  if (first === undefined) return [];
  if (scores.length === 1) return [`${ridge}.`];
  const across = first.axis === 'width';
  // Turned over like a page, left and right change places, and top and bottom do not.
  const same = (folds: Score['folds']) => {
    const own = scores.filter((score) => score.folds === folds).map(({ at }) => Number(at));
    return own.every((at) => own.includes(opened[first.axis] - at));
  };
  const measured = !across || same('valley') ? '' : ' and measured from the right edge then';
  const mountains = scores.some(({ folds }) => folds === 'mountain');
  return [
    `${ridge}. So score valleys with the base turned over like a page${measured}${mountains ? ', mountains as it lies' : ''}.`,
  ];
}

/** Whether its papers want a score at all, and whether two. */
function paperWords(layout: Layout, showing: Showing): readonly string[] {
  const papers = papersFolded(layout);
  const nameOf = (id: string) => layout.papers.get(id)?.name ?? id;
  const thin = papers.filter((paper) => paper.do === 'fold');
  const unsure = papers.filter(({ asked, rules }) => asked > 0 && asked < rules);
  const thick = papers.filter(({ twice }) => twice);
  return [
    ...(thin.length === 0
      ? []
      : [
          `${listed(thin.map(({ paper }) => nameOf(paper)))} may also be folded with no score: no printed rule asks for one in so thin a paper.`,
        ]),
    ...(unsure.length === 0
      ? []
      : [
          `Printed rules disagree whether ${listed(unsure.map(({ paper }) => nameOf(paper)))} needs a score; scored, it folds cleanly.`,
        ]),
    ...thick.map(
      ({ paper, thickness }) =>
        `${nameOf(paper)} is thick: score twice for each fold, ${aboutThick(thickness.length, showing)} apart, half of that on either side of the measure (common practice).`,
    ),
  ];
}
