import type { Axis, Length } from '../measure/index.ts';
import type { Arrangement } from './arrange.ts';
import type { Layout } from './layout.ts';
import { type LayoutProblem, lyingOn, partProblem } from './layoutProblem.ts';
import { type LayoutSum, sumsOf } from './sums.ts';
import { unseen } from './unseen.ts';

/**
 * Borders that seem meant to be even and are not.
 *
 * Parts in a row that leave at most a quarter of what they lie on to the two borders together seem meant to
 * frame it: their two outer borders should be even, and where rows do so both ways, all four (flush rows,
 * whose borders are zero, aside). What is raised lies over a card as it pleases and frames nothing. Someone may
 * well want a deep lower border: this is a caution, no more.
 */
export function unevenBorders(layout: Layout, arrangement: Arrangement): readonly LayoutProblem[] {
  const raised = new Set(layout.parts.flatMap(({ id, adhere }) => (adhere === 'flat' ? [] : [id])));
  const rows = sumsOf(arrangement)
    .filter(({ terms }) => !terms.some((term) => term.kind === 'size' && raised.has(term.part)))
    .flatMap((sum) => framingRow(sum));
  const problems = new Map<string, LayoutProblem>();
  const report = (row: FramingRow, numbers: Readonly<Record<string, number>>, last: string) => {
    const index = layout.parts.findIndex(({ id }) => id === row.first);
    const names = { ...lyingOn(layout, row.on), last: layout.parts.find(({ id }) => id === last)!.name };
    const problem = partProblem(layout, index, 'unevenBorder', 'place', numbers, names);
    // The same for every piece of what they lie on.
    problems.set(JSON.stringify([problem.where, problem.names, numbers]), problem);
  };

  for (const row of rows) {
    if (isEven(row)) continue;
    const { before, after } = row;
    report(
      row,
      row.axis === 'width' ? { left: before, right: after } : { top: before, bottom: after },
      row.last,
    );
  }

  for (const bed of new Set(rows.map((row) => row.bed))) {
    const here = rows.filter((row) => row.bed === bed);
    if (!here.every(isEven)) continue;
    const [across, down] = (['width', 'height'] as const).map((axis) => narrowest(here, axis));
    if (across === undefined || down === undefined) continue;
    if (Math.abs(across.before - down.before) <= unseen) continue;
    report(across, { across: across.before, down: down.before }, across.first);
  }
  return [...problems.values()];
}

/** Parts in a row that nearly fill what they lie on. */
interface FramingRow {
  readonly on: string;
  /** Names one piece of what they lie on. */
  readonly bed: string;
  readonly axis: Axis;
  readonly before: Length;
  readonly after: Length;
  readonly first: string;
  readonly last: string;
}

function framingRow({ on, onPiece, axis, terms, total }: LayoutSum): readonly FramingRow[] {
  const [before, after] = [terms[0]!.length, terms.at(-1)!.length];
  // What hangs over is named as an overhang.
  if (before < -unseen || after < -unseen || (before + after) * 4 > total) return [];
  const parts = terms.flatMap((term) => (term.kind === 'size' ? [term.part] : []));
  return [{ on, bed: `${on} ${onPiece}`, axis, before, after, first: parts[0]!, last: parts.at(-1)! }];
}

function isEven({ before, after }: FramingRow): boolean {
  return Math.abs(before - after) <= unseen;
}

/** The row along an axis with the narrowest border that is one. */
function narrowest(rows: readonly FramingRow[], axis: Axis): FramingRow | undefined {
  return rows
    .filter((row) => row.axis === axis && row.before > unseen)
    .reduce<FramingRow | undefined>(
      (best, row) => (best === undefined || row.before < best.before ? row : best),
      undefined,
    );
}
