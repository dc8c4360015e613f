import { readSavedLayout } from '../files/index.ts';
import { arrange, checkLayout, type LayoutProblem } from '../layout/index.ts';
import type { Length } from '../measure/index.ts';
import { changed } from './change.ts';
import type { Edit } from './edit.ts';
import type { InHand } from './inHand.ts';
import { baseMends, layoutMends } from './layoutMends.ts';

/** So many ways out are offered; more would be a puzzle of their own. */
const mostOffered = 3;

/**
 * The edits that mend a problem of the layout, best first and at most three; empty: nothing can be offered.
 *
 * Each has been tried: the file stays sound, this problem is gone and no new error has come. First stand those after
 * which the least is still wrong. Lengths are round, to `marks`, where that is for us to choose.
 */
export function mendsOf(inHand: InHand, problem: LayoutProblem, marks: Length): readonly Edit[] {
  const before = problemsOf(checkLayout(inHand.layout, inHand.arrangement));
  const own = problemKey(problem);
  const held = candidatesFor(inHand, problem, marks).flatMap((edit) => {
    const tried = readSavedLayout(changed(inHand.file, edit.changes).file);
    if ('problems' in tried) return [];
    const { layout } = tried;
    const now = problemsOf(checkLayout(layout, arrange(layout)));
    const fresh = [...now].filter(([key]) => !before.has(key)).map(([, { severity }]) => severity);
    if (now.has(own) || fresh.includes('error')) return [];
    return [{ edit, left: now.size, does: JSON.stringify(edit.changes) }];
  });
  return held
    .filter(({ does }, index) => held.findIndex((other) => other.does === does) === index)
    .sort((a, b) => a.left - b.left)
    .slice(0, mostOffered)
    .map(({ edit }) => edit);
}

function candidatesFor(inHand: InHand, problem: LayoutProblem, marks: Length): readonly Edit[] {
  const index = inHand.layout.parts.findIndex(({ id }) => id === problem.part);
  const arranged = inHand.arrangement.parts[index];
  if (arranged === undefined) return baseMends(inHand, problem);
  const piece = Number(/\.place\[(\d+)\]$/.exec(problem.where)?.[1] ?? ailingPiece(inHand, index, problem));
  return layoutMends({ inHand, index, arranged, piece }, problem, marks);
}

/** Where one place says how all pieces lie, the first that hangs over the edge it is about, else the first. */
function ailingPiece({ arrangement }: InHand, index: number, { names }: LayoutProblem): number {
  const { pieces } = arrangement.parts[index]!;
  const { edge } = names;
  if (edge !== 'left' && edge !== 'right' && edge !== 'top' && edge !== 'bottom') return 0;
  return Math.max(
    0,
    pieces.findIndex(({ borders }) => borders !== null && borders[edge] < 0),
  );
}

function problemsOf(problems: readonly LayoutProblem[]): ReadonlyMap<string, LayoutProblem> {
  return new Map(problems.map((problem) => [problemKey(problem), problem]));
}

/**
 * What makes a problem the same one before and after an edit: its code, its part and field, wherever the part then
 * stands in the pile, and which way it is wrong.
 */
function problemKey({ code, part, where, names, numbers }: LayoutProblem): string {
  const field = part === undefined || part === 'base' ? where : where.replace(/^parts\[\d+\]/, part);
  const sides = code === 'unevenBorder' ? Object.keys(numbers) : [];
  return JSON.stringify([code, field, names.axis, names.edge, sides]);
}
