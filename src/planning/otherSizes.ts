import { type SumChange, sumChanges } from '../layout/index.ts';
import { wantedOf } from './cardSet.ts';
import { givesAll } from './givesAll.ts';
import { changesOf, type LengthChange } from './lengthChange.ts';
import { layoutOnTable } from './onTable.ts';
import { onTableOf, restOf, toCutFrom } from './paperOnTable.ts';
import type { SetToPlan } from './planSet.ts';
import { type Recut, recutOnce } from './recut.ts';
import type { Redrawn } from './redrawing.ts';
import { smallestMoves } from './smallestMoves.ts';
import type { TableNow } from './tableNow.ts';

/** Sizes with which the set comes out of the table after all: finished pieces that are too large are trimmed down. */
export interface OtherSizes {
  /** The lengths that change, in the layout's order. */
  readonly changes: readonly LengthChange[];
  /** How many marks the leading length moves. */
  readonly marks: number;
  /** What becomes of every border, gap and seen size of the card. */
  readonly effect: readonly SumChange[];
  readonly recut: Recut;
}

/**
 * The smallest moves of a length, others following so that nothing gets less even, with which what lies there gives the
 * set: fewest marks first, one for each length that leads, no more than `mostOffered`. `short`: the papers that do not
 * give it as it was drawn.
 */
export function otherSizes(set: SetToPlan, table: TableNow, short: readonly string[]): readonly OtherSizes[] {
  const found = smallestMoves(set, (redrawn) => givesAllOnTable(set, table, redrawn, short));
  const offered: OtherSizes[] = [];
  for (const { redrawn, marks } of found) {
    const drawn = { ...set, layout: redrawn.layout, arrangement: redrawn.arrangement };
    const recut = recutOnce(drawn, redrawnTable(set, table, redrawn));
    if (recut.kind !== 'recut') continue;
    const changes = changesOf(set, redrawn.lengths);
    offered.push({ changes, marks, effect: sumChanges(set.arrangement, redrawn.arrangement), recut });
    if (offered.length === mostOffered) break;
  }
  return offered;
}

const mostOffered = 2;

/** Whether every paper that was short, or that other sizes are cut from, gives what is needed from the table. */
function givesAllOnTable(
  set: SetToPlan,
  table: TableNow,
  redrawn: Redrawn,
  short: readonly string[],
): boolean {
  const wanted = wantedOf({ ...set, layout: redrawn.layout, arrangement: redrawn.arrangement });
  const changed = changedPieces(set, redrawn);
  const papers = wanted.filter(({ id }) => changed.has(id)).map(({ paper }) => paper);
  // A move that leaves a short paper's pieces as they are does not help it.
  if (!short.every((paper) => papers.includes(paper))) return false;
  const other = redrawnTable(set, table, redrawn);
  const layout = layoutOnTable(redrawn.layout, other.onTable);
  return [...new Set(papers)].every((id) => {
    const on = onTableOf(layout, other, id);
    const own = wanted.filter(({ paper }) => paper === id);
    return givesAll(toCutFrom(on), restOf(on, own, set.trimmer).pieces, set) === 'yes';
  });
}

/** Ids of the pieces that have another size. */
function changedPieces(set: SetToPlan, { layout, arrangement }: Redrawn): ReadonlySet<string> {
  const before = wantedOf(set);
  const after = wantedOf({ ...set, layout, arrangement });
  return new Set(
    before
      .filter(({ size }, index) => {
        const { size: now } = after[index]!;
        return size.width !== now.width || size.height !== now.height;
      })
      .map(({ id }) => id),
  );
}

/**
 * The table for other sizes: finished pieces of another size lie there as any workpiece, and the papers of such pieces
 * are planned anew.
 */
function redrawnTable(set: SetToPlan, table: TableNow, redrawn: Redrawn): TableNow {
  const changed = changedPieces(set, redrawn);
  const papers = new Set(wantedOf(set).flatMap(({ id, paper }) => (changed.has(id) ? [paper] : [])));
  const kept = (finished: ReadonlyMap<string, string>) =>
    new Map([...finished].filter(([, piece]) => !changed.has(piece)));
  const { plan } = table.inHand;
  return {
    ...table,
    inHand: { ...table.inHand, plan: { ...plan, finished: kept(plan.finished) } },
    finished: kept(table.finished),
    toDo: table.toDo.filter(({ step }) => !papers.has(table.paperOfStep.get(step) ?? '')),
  };
}
