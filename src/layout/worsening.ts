import type { Axis } from '../measure/index.ts';
import type { Arrangement } from './arrange.ts';
import { checkLayout } from './check.ts';
import type { Layout, Part } from './layout.ts';
import type { LayoutProblem } from './layoutProblem.ts';
import { type LayoutSum, sumsOf } from './sums.ts';
import { unseen } from './unseen.ts';

/** A layout and where everything in it lies. */
export interface Drawn {
  readonly layout: Layout;
  readonly arrangement: Arrangement;
}

/** What is worse about a layout than about another: ids of the parts (or faces) concerned. */
export interface Worse {
  /** Rows that were even, or lay in line, and no longer do; borders and gaps that are gone; overlaps that grew less. */
  readonly uneven: ReadonlySet<string>;
  /** The axes of such rows. */
  readonly along: ReadonlySet<Axis>;
  /** Parts whose borders across were as wide as those down and no longer are. */
  readonly unlike: ReadonlySet<string>;
  /** Other new problems of `checkLayout`; neither is looked for where rows are uneven. */
  readonly wrong: ReadonlySet<string>;
}

/**
 * What is worse in a layout with other lengths than in the one it was drawn as. All empty: every border and gap that
 * was even still is, and nothing is wrong that was not wrong before.
 *
 * A row is even when its two outer borders are alike, and when its gaps are. Rows on one thing that begin, or end, at
 * the same distance from its edge lie in line. A torn edge wanders, so what is torn still lies on its neighbour as far.
 */
export function worseningFrom(before: Drawn): (after: Drawn) => Worse {
  const known = new Set(checkLayout(before.layout, before.arrangement).map(problemKey));
  const rows = sumsOf(before.arrangement);
  const keys = rows.map(rowKey);
  const evenness = rows.map(evennessOf);
  const lines = linesIn(rows);
  const alike = alikeIn(rows);
  const overlaps = overlapsIn(before.arrangement);
  return (after) => {
    const now = new Map(sumsOf(after.arrangement).map((row) => [rowKey(row), row]));
    const rowsNow = keys.map((key) => now.get(key));
    const uneven = new Set<string>();
    const along = new Set<Axis>();
    const concern = (row: LayoutSum) => {
      along.add(row.axis);
      uneven.add(row.on);
      for (const part of partsIn(row)) uneven.add(part);
    };
    for (const [index, row] of rowsNow.entries()) {
      if (row === undefined) continue;
      const { borders, gaps } = evennessOf(row);
      const even = (borders || !evenness[index]!.borders) && (gaps || !evenness[index]!.gaps);
      if (!even || losesSpace(rows[index]!, row)) concern(row);
    }
    for (const [one, other, end] of lines) {
      const [first, second] = [rowsNow[one], rowsNow[other]];
      if (first === undefined || second === undefined || isNear(borderAt(first, end), borderAt(second, end)))
        continue;
      concern(first);
      concern(second);
    }
    const overlapsNow = overlapsIn(after.arrangement);
    for (const [key, { parts, depth }] of overlaps) {
      if ((overlapsNow.get(key)?.depth ?? 0) >= depth - unseen) continue;
      for (const part of parts) uneven.add(part);
    }
    const unlike = new Set<string>();
    for (const [one, other] of alike) {
      const [first, second] = [one, other].map(
        ([index, end]) => rowsNow[index] && borderAt(rowsNow[index], end),
      );
      if (first === undefined || second === undefined || isNear(first, second)) continue;
      for (const [index] of [one, other]) for (const part of partsIn(rows[index]!)) unlike.add(part);
    }
    const wrong = new Set<string>();
    // Looking for problems is the longer work, and one thing that is worse is enough.
    if (uneven.size > 0) return { uneven, along, unlike, wrong };
    for (const problem of checkLayout(after.layout, after.arrangement)) {
      if (known.has(problemKey(problem))) continue;
      const worse = problem.code === 'unevenBorder' && 'across' in problem.numbers ? unlike : wrong;
      for (const id of partsOf(problem, after.layout)) worse.add(id);
    }
    return { uneven, along, unlike, wrong };
  };
}

function problemKey({ code, where, names, numbers }: LayoutProblem): string {
  return JSON.stringify([code, where, names, Object.keys(numbers)]);
}

function* partsOf({ part, names }: LayoutProblem, layout: Layout): Generator<string> {
  if (part !== undefined) yield part;
  const said = new Set(Object.values(names));
  for (const { id, name } of layout.parts) if (said.has(name)) yield id;
}

/** The same for a row of the same parts on the same thing. */
export function rowKey({ on, onPiece, axis, terms }: LayoutSum): string {
  const parts = terms.flatMap((term) => (term.kind === 'size' ? [term.part] : []));
  return JSON.stringify([on, onPiece, axis, parts]);
}

function evennessOf(row: LayoutSum): { readonly borders: boolean; readonly gaps: boolean } {
  const gaps = row.terms.flatMap(({ kind, length }) => (kind === 'gap' ? [length] : []));
  return {
    borders: isNear(borderAt(row, 'start'), borderAt(row, 'end')),
    gaps: gaps.length === 0 || isNear(Math.max(...gaps), Math.min(...gaps)),
  };
}

function borderAt({ terms }: LayoutSum, end: 'start' | 'end'): number {
  return terms.at(end === 'start' ? 0 : -1)!.length;
}

function isNear(one: number, other: number): boolean {
  return Math.abs(one - other) <= unseen;
}

/** Whether a border or gap that was one is none any more. */
function losesSpace(before: LayoutSum, after: LayoutSum): boolean {
  return before.terms.some(
    ({ kind, length }, index) => kind !== 'size' && length > unseen && after.terms[index]!.length <= unseen,
  );
}

/** Pairs of rows, by their indexes, that begin or end in line on the same thing. */
function linesIn(rows: readonly LayoutSum[]): readonly (readonly [number, number, 'start' | 'end'])[] {
  return rows.flatMap((one, index) =>
    rows.slice(index + 1).flatMap((other, later) => {
      if (one.on !== other.on || one.onPiece !== other.onPiece || one.axis !== other.axis) return [];
      return (['start', 'end'] as const).flatMap((end) =>
        isNear(borderAt(one, end), borderAt(other, end)) ? [[index, index + 1 + later, end] as const] : [],
      );
    }),
  );
}

/** Pairs of borders of one part that are alike, one across and one down, each by its row's index and its end. */
function alikeIn(rows: readonly LayoutSum[]): readonly (readonly [Border, Border])[] {
  const bordersOf = (axis: Axis) =>
    rows.flatMap((row, index): Border[] =>
      row.axis === axis
        ? [
            [index, 'start'],
            [index, 'end'],
          ]
        : [],
    );
  const down = bordersOf('height');
  return bordersOf('width').flatMap((one) =>
    down.flatMap((other) => {
      const [across, below] = [rows[one[0]]!, rows[other[0]]!];
      const same =
        across.on === below.on &&
        across.onPiece === below.onPiece &&
        partAt(across, one[1]) === partAt(below, other[1]);
      const border = borderAt(across, one[1]);
      return same && border > unseen && isNear(border, borderAt(below, other[1]))
        ? [[one, other] as const]
        : [];
    }),
  );
}

function partAt(row: LayoutSum, end: 'start' | 'end'): string | undefined {
  return partsIn(row).at(end === 'start' ? 0 : -1);
}

type Border = readonly [row: number, end: 'start' | 'end'];

function partsIn({ terms }: LayoutSum): readonly string[] {
  return terms.flatMap((term) => (term.kind === 'size' ? [term.part] : []));
}

interface Overlap {
  readonly parts: readonly [string, string];
  /** How far one reaches over the other, across or down, whichever is less. */
  readonly depth: number;
}

/** Where a torn piece and another on the same thing lie partly on one another. */
function overlapsIn({ parts }: Arrangement): ReadonlyMap<string, Overlap> {
  const pieces = parts.flatMap(({ part, pieces: laid }) =>
    laid.flatMap(({ box, onPiece }, piece) => (box === null ? [] : [{ part, piece, onPiece, box }])),
  );
  const found = new Map<string, Overlap>();
  for (const [index, one] of pieces.entries()) {
    for (const other of pieces.slice(index + 1)) {
      if (one.part.on !== other.part.on || one.onPiece !== other.onPiece) continue;
      // What is raised covers no tear.
      if (one.part.adhere !== 'flat' || other.part.adhere !== 'flat') continue;
      if (!isTorn(one.part) && !isTorn(other.part)) continue;
      const extents = [
        [one.box.left, one.box.width, other.box.left, other.box.width],
        [one.box.top, one.box.height, other.box.top, other.box.height],
      ] as const;
      const common = extents.map(
        ([start, length, otherStart, otherLength]) =>
          Math.min(start + length, otherStart + otherLength) - Math.max(start, otherStart),
      );
      const within = (of: 1 | 3) => common.every((length, axis) => length >= extents[axis]![of] - unseen);
      if (Math.min(...common) <= unseen || within(1) || within(3)) continue;
      const key = `${one.part.id} ${one.piece} ${other.part.id} ${other.piece}`;
      found.set(key, { parts: [one.part.id, other.part.id], depth: Math.min(...common) });
    }
  }
  return found;
}

function isTorn({ torn }: Part): boolean {
  return Object.values(torn).some((depth) => depth > 0);
}
