import type { Layout } from '../layout/index.ts';
import type { Size } from '../measure/index.ts';
import type { SheetStock } from '../stash/index.ts';
import type { Squaring } from '../trimming/index.ts';
import type { Plan } from './plan.ts';

/** What is no longer as the layout says when a plan begins, because some of its paper has been cut already. */
export interface OnTable {
  /** By paper, how many sheets of each of its stocks are whole no more: cut into, spoiled or lost. */
  readonly begun: ReadonlyMap<string, readonly number[]>;
  /** All that lies on the table beside whole sheets. */
  readonly lying: readonly Lying[];
  /** The highest number that a step has had so far; what is planned anew is numbered on from it. */
  readonly steps: number;
  /** By paper, the highest number in the id of a sheet so far. */
  readonly sheets: ReadonlyMap<string, number>;
}

/** Something on the table that is no whole sheet: a finished piece, a strip to be cut on, a leftover, a found scrap. */
export interface Lying {
  readonly id: string;
  readonly paper: string;
  readonly size: Size;
  /** Margins of its sheet that it still carries. */
  readonly margin: Squaring;
  /** Index into the paper's `sheets` of the sheet it was cut from; `null`: it was found. */
  readonly stock: number | null;
  readonly from: LyingFrom;
}

/** How a workpiece came to lie there; steps by their number. */
export type LyingFrom =
  | { readonly kind: 'piece' | 'rest'; readonly step: number }
  | { readonly kind: 'found' };

/** A plan that is being cut, and the table it begins with. */
export interface PlanInHand {
  readonly plan: Plan;
  readonly onTable: OnTable;
}

/** A table on which nothing has been cut. */
export const untouchedTable: OnTable = { begun: new Map(), lying: [], steps: 0, sheets: new Map() };

/** What lies on the table of one paper, in the order of the stocks that stand for it. */
export function lyingOf({ lying }: OnTable, paper: string): readonly Lying[] {
  return lying.filter((workpiece) => workpiece.paper === paper);
}

/**
 * The layout with its papers as they are now: of each stock the sheets that are still whole, and after them a scrap
 * for each workpiece on the table (`lyingOf`). A plan that begins with this table counts its stocks so. The layout
 * itself where nothing has been cut.
 */
export function layoutOnTable(layout: Layout, onTable: OnTable): Layout {
  if (onTable.begun.size === 0 && onTable.lying.length === 0) return layout;
  const papers = [...layout.papers].map(([id, paper]) => {
    const begun = onTable.begun.get(id);
    const whole = paper.sheets.map((stock, index): SheetStock => {
      const count = stock.count === null ? null : stock.count - (begun?.[index] ?? 0);
      return { ...stock, count };
    });
    const scraps = lyingOf(onTable, id).map(({ size, margin, stock }): SheetStock => {
      const grain = stock === null ? null : paper.sheets[stock]!.grain;
      return { size, margin, count: 1, price: null, grain, scrap: true };
    });
    return [id, { ...paper, sheets: [...whole, ...scraps] }] as const;
  });
  return { ...layout, papers: new Map(papers) };
}
