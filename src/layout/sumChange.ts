import type { Axis, Length } from '../measure/index.ts';
import type { Arrangement } from './arrange.ts';
import { type LayoutSum, type SumTerm, sumsOf } from './sums.ts';
import { unseen } from './unseen.ts';
import { rowKey } from './worsening.ts';

/** A border, gap or size that is another in one arrangement of a card than in the other. */
export interface SumChange {
  readonly kind: SumTerm['kind'];
  /** The face, or the id of the part, that it is measured on. */
  readonly on: string;
  readonly axis: Axis;
  /** The parts on its left (or above) and right (or below), `null` for the edge; of a size the part, twice. */
  readonly between: readonly [before: string | null, after: string | null];
  readonly from: Length;
  readonly to: Length;
}

/**
 * What became of every border, gap and seen size of the card, as far as it is not what it was: row by row in the order
 * of the pile, each once however many pieces or rows it stands in.
 */
export function sumChanges(before: Arrangement, after: Arrangement): readonly SumChange[] {
  const now = new Map(sumsOf(after).map((row) => [rowKey(row), row]));
  const changes = new Map<string, SumChange>();
  for (const row of sumsOf(before)) {
    const other = now.get(rowKey(row));
    if (other === undefined) continue;
    for (const [index, { kind, length }] of row.terms.entries()) {
      const to = other.terms[index]!.length;
      if (Math.abs(to - length) <= unseen) continue;
      const { on, axis } = row;
      const change = { kind, on, axis, between: between(row, index), from: length, to };
      changes.set(JSON.stringify(change), change);
    }
  }
  return [...changes.values()];
}

function between({ terms }: LayoutSum, index: number): readonly [string | null, string | null] {
  const partAt = (at: number) => {
    const term = terms[at];
    return term?.kind === 'size' ? term.part : null;
  };
  return terms[index]!.kind === 'size'
    ? [partAt(index), partAt(index)]
    : [partAt(index - 1), partAt(index + 1)];
}
