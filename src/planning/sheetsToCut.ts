import type { Pattern } from '../cutting/index.ts';
import type { Layout } from '../layout/index.ts';
import type { Paper } from '../stash/index.ts';
import type { SheetToCut, TrimmingOptions } from '../trimming/index.ts';
import type { CutPaper } from './plannedPaper.ts';

/** A sheet with its stock: index into the paper's `sheets`. */
export interface StockToCut extends SheetToCut {
  readonly stock: number;
}

/** What a layout says of how its sheets are trimmed. */
export function trimmingOf({ smallestScrap }: Layout): TrimmingOptions {
  return smallestScrap === undefined ? {} : { smallest: smallestScrap };
}

/** Gives the id of the next sheet of a stock that is taken; called once for each. */
export type SheetNames = (stock: number) => string;

/** The sheets of a paper that are cut by these patterns, one after another; named after the paper unless `names` does. */
export function sheetsToCut(
  { paper: id, paperTask }: Pick<CutPaper, 'paper' | 'paperTask'>,
  patterns: readonly Pattern[],
  paper: Paper,
  names?: SheetNames,
): readonly StockToCut[] {
  return patterns
    .flatMap(({ sheet, times, tree }) => {
      const stock = paperTask.stocks[sheet]!;
      const { size, margin } = paper.sheets[stock]!;
      return Array.from({ length: times }, () => ({ stock, size, squaring: margin, tree }));
    })
    .map((sheet, index) => ({ ...sheet, id: names?.(sheet.stock) ?? `${id}-${index + 1}` }));
}
