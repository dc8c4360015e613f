import type { Layout } from '../layout/index.ts';
import { smallestUseful, type Trimmer, worthKeeping } from '../trimming/index.ts';
import type { KeptLeftover } from './leftoverUses.ts';
import type { TableNow } from './tableNow.ts';

/** What a set came to once it is cut. */
export interface LeftOnTable {
  /** By paper and stock of the layout, how many sheets were begun. */
  readonly used: ReadonlyMap<string, ReadonlyMap<number, number>>;
  /** What lies on the table, is no finished piece and is worth keeping, in the order of the table. */
  readonly kept: readonly KeptLeftover[];
}

/** What of the papers is used and what is left when all that is to be cut is cut, however the cutting went. */
export function leftOnTable(
  { layout, trimmer }: { readonly layout: Layout; readonly trimmer: Trimmer | null },
  { onTable, finished }: Pick<TableNow, 'onTable' | 'finished'>,
): LeftOnTable {
  const smallest = layout.smallestScrap ?? smallestUseful;
  return {
    used: new Map(
      [...onTable.begun].map(([paper, begun]) => [
        paper,
        new Map([...begun.entries()].filter(([, count]) => count > 0)),
      ]),
    ),
    kept: onTable.lying.flatMap(({ id, paper, size, stock }) =>
      finished.has(id) || !worthKeeping(size, trimmer, smallest) ? [] : [{ id, paper, stock, size }],
    ),
  };
}
