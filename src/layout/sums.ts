import { type Axis, type Box, type Length, lengthOfTicks } from '../measure/index.ts';
import type { Arrangement } from './arrange.ts';

/**
 * One way across something that parts lie on: border + size + gap + size + border.
 *
 * The terms add up to `total`, the seen size of what they lie on, to the tick. A border is negative where a
 * part hangs over; a gap never is.
 */
export interface LayoutSum {
  /** The face, or the id of the part, that the parts lie on, and which piece of it. */
  readonly on: string;
  readonly onPiece: number;
  readonly axis: Axis;
  readonly terms: readonly SumTerm[];
  readonly total: Length;
}

export type SumTerm =
  | { readonly kind: 'border' | 'gap'; readonly length: Length }
  /** The seen size of a part. */
  | { readonly kind: 'size'; readonly length: Length; readonly part: string };

/**
 * Every sum of borders, sizes and gaps in a set, both ways, in the order of the pile and left before top.
 *
 * A straight line across what parts lie on meets some of them one after another: that is a sum. Where parts
 * lie on one another they cannot stand in one sum; the lower ones come first, the rest make sums of their own.
 * A sum whose parts all stand in a longer one is left out.
 */
export function sumsOf(arrangement: Arrangement): readonly LayoutSum[] {
  return [...bedsOf(arrangement).values()].flatMap((bed) =>
    axes.flatMap((axis) => {
      const rows = longestRows(rowsAlong(bed.pieces, axis));
      return rows.map((row) => sumOf(bed, row, axis));
    }),
  );
}

const axes: readonly Axis[] = ['width', 'height'];

/** One thing that parts lie on, and the pieces lying on it in pile order. */
interface Bed {
  readonly on: string;
  readonly onPiece: number;
  readonly box: Box;
  readonly pieces: Laid[];
}

interface Laid {
  readonly part: string;
  /** Its place among the pieces of its bed, in pile order. */
  readonly order: number;
  readonly box: Box;
}

function bedsOf(arrangement: Arrangement): ReadonlyMap<string, Bed> {
  const beds = new Map<string, Bed>();
  for (const { part, pieces } of arrangement.parts) {
    for (const { onPiece, under, box } of pieces) {
      if (under === null || box === null) continue;
      const key = `${part.on} ${onPiece ?? 0}`;
      const bed = beds.get(key) ?? { on: part.on, onPiece: onPiece ?? 0, box: under, pieces: [] };
      beds.set(key, bed);
      bed.pieces.push({ part: part.id, order: bed.pieces.length, box });
    }
  }
  return beds;
}

/** The pieces that lines along `axis` meet, one after another; each row once. */
function rowsAlong(pieces: readonly Laid[], axis: Axis): readonly (readonly Laid[])[] {
  const across = axis === 'width' ? 'height' : 'width';
  const edges = [
    ...new Set(pieces.flatMap(({ box }) => [startAlong(box, across), endAlong(box, across)])),
  ].sort((a, b) => a - b);

  const rows = new Map<string, readonly Laid[]>();
  // Between two neighbouring edges every line meets the same pieces.
  for (const [index, edge] of edges.slice(0, -1).entries()) {
    const next = edges[index + 1]!;
    const met = pieces.filter(({ box }) => startAlong(box, across) <= edge && next <= endAlong(box, across));
    for (const row of apart(met, axis)) {
      rows.set(row.map(({ order }) => order).join(' '), row);
    }
  }
  return [...rows.values()];
}

/** The pieces dealt into rows whose pieces do not lie on one another, each sorted along the axis. */
function apart(pieces: readonly Laid[], axis: Axis): readonly (readonly Laid[])[] {
  const rows: Laid[][] = [];
  for (const piece of pieces) {
    const row = rows.find((others) => others.every((other) => isApart(piece.box, other.box, axis)));
    if (row === undefined) rows.push([piece]);
    else row.push(piece);
  }
  return rows.map((row) => row.sort((a, b) => startAlong(a.box, axis) - startAlong(b.box, axis)));
}

function isApart(one: Box, other: Box, axis: Axis): boolean {
  return endAlong(one, axis) <= startAlong(other, axis) || endAlong(other, axis) <= startAlong(one, axis);
}

function longestRows(rows: readonly (readonly Laid[])[]): readonly (readonly Laid[])[] {
  const sets = rows.map((row) => new Set(row));
  return rows.filter(
    (row, index) =>
      !sets.some(
        (set, other) => other !== index && set.size > row.length && row.every((piece) => set.has(piece)),
      ),
  );
}

function sumOf({ on, onPiece, box }: Bed, row: readonly Laid[], axis: Axis): LayoutSum {
  const terms: SumTerm[] = [];
  let reached = startAlong(box, axis);
  for (const [index, piece] of row.entries()) {
    const start = startAlong(piece.box, axis);
    terms.push({ kind: index === 0 ? 'border' : 'gap', length: lengthOfTicks(start - reached) });
    terms.push({ kind: 'size', length: piece.box[axis], part: piece.part });
    reached = endAlong(piece.box, axis);
  }
  terms.push({ kind: 'border', length: lengthOfTicks(endAlong(box, axis) - reached) });
  return { on, onPiece, axis, terms, total: box[axis] };
}

function startAlong(box: Box, axis: Axis): number {
  return axis === 'width' ? box.left : box.top;
}

function endAlong(box: Box, axis: Axis): number {
  return startAlong(box, axis) + box[axis];
}
