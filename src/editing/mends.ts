import { readSavedLayout } from '../files/index.ts';
import { arrange, checkLayout, type LayoutProblem } from '../layout/index.ts';
import type { Length } from '../measure/index.ts';
import type { Problem } from '../problem/index.ts';
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
  const before = checkLayout(inHand.layout, inHand.arrangement);
  const held = candidatesFor(inHand, problem, marks).flatMap((edit) => {
    const tried = inHandAfter(inHand, edit);
    if (tried === null) return [];
    const now = checkLayout(tried.layout, tried.arrangement);
    if (!mendHolds(problem, before, now)) return [];
    return [{ edit, left: now.length, does: JSON.stringify(edit.changes) }];
  });
  return held
    .filter(({ does }, index) => held.findIndex((other) => other.does === does) === index)
    .sort((a, b) => a.left - b.left)
    .slice(0, mostOffered)
    .map(({ edit }) => edit);
}

/** The layout after an edit; `null`: the file would not be sound. */
export function inHandAfter({ file }: InHand, edit: Edit): InHand | null {
  const read = readSavedLayout(changed(file, edit.changes).file);
  return 'problems' in read ? null : { ...read, arrangement: arrange(read.layout) };
}

/** Whether a problem that was there before an edit is gone after it, and no new error has come. */
export function mendHolds(problem: Problem, before: readonly Problem[], now: readonly Problem[]): boolean {
  const known = new Set(before.map(problemKey));
  const own = problemKey(problem);
  return now.every((one) => {
    const key = problemKey(one);
    return key !== own && (one.severity !== 'error' || known.has(key));
  });
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

/**
 * What makes a problem the same one before and after an edit: its code, its part and field, wherever the part then
 * stands in the pile, and which way it is wrong.
 */
function problemKey({ code, part, where, names, numbers }: Problem): string {
  const field = part === undefined || part === 'base' ? where : where.replace(/^parts\[\d+\]/, part);
  const sides = code === 'unevenBorder' ? Object.keys(numbers) : [];
  return JSON.stringify([code, field, names.axis, names.edge, names.piece, sides]);
}
