import type { CuttingTask, Item, SheetType } from '../cutting/index.ts';
import { costUnitOf, exactCostOf, type Paper } from '../stash/index.ts';
import { canSquare, cutLimitsOf, squaredSize, type Trimmer } from '../trimming/index.ts';
import type { Piece } from './piece.ts';

/** One paper's cutting as the planner of rectangles wants it, and which of our things its indexes stand for. */
export interface PaperTask {
  readonly task: CuttingTask;
  /** The pieces of the task's items, in their order. */
  readonly pieces: readonly Piece[];
  /** Index into the paper's `sheets` for each of the task's sheets; sheets that cannot be used are left out. */
  readonly stocks: readonly number[];
}

/**
 * The task of cutting these pieces, all of one paper, from the sheets on hand. A sheet with margins counts as
 * what is left of it when they are squared off.
 */
export function paperTask(paper: Paper, pieces: readonly Piece[], trimmer: Trimmer | null): PaperTask {
  const unit = costUnitOf(paper);
  const stocks: number[] = [];
  const sheets: SheetType[] = [];
  for (const [index, stock] of paper.sheets.entries()) {
    if (stock.count === 0 || !canSquare(stock.size, stock.margin, trimmer)) continue;
    stocks.push(index);
    sheets.push({
      ...squaredSize(stock.size, stock.margin),
      count: stock.count,
      cost: exactCostOf(stock, unit),
    });
  }
  const items: Item[] = pieces.map((piece) => ({
    width: piece.size.width,
    height: piece.size.height,
    need: piece.need,
    turns: piece.turn === 'free',
  }));
  return { task: { items, sheets, limits: cutLimitsOf(trimmer) }, pieces, stocks };
}
