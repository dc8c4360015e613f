import { assert } from '../problem/index.ts';
import { cuttableFrom } from './measuring.ts';
import { type Positions, positionsAlong } from './positions.ts';
import type { CutLimits, Item } from './task.ts';

/**
 * One sheet size seen as a grid: a cell for every width and height that a workpiece of it may need to have.
 *
 * Cell (i, j) has number `i * rows + j`; cell of the whole sheet: `(width.whole, height.whole)`. Row and column 0
 * are empty workpieces.
 */
export interface SheetGrid {
  /** True size of the sheet. */
  readonly sheetWidth: number;
  readonly sheetHeight: number;
  readonly limits: CutLimits;
  readonly width: Positions;
  readonly height: Positions;
  readonly columns: number;
  readonly rows: number;
  /** Number of the whole sheet's cell. */
  readonly whole: number;
  /** By row: whether a workpiece so high may be cut along its width. */
  readonly cutsWidth: readonly boolean[];
  /** By column: whether a workpiece so wide may be cut along its height. */
  readonly cutsHeight: readonly boolean[];
  readonly placements: readonly Placement[];
  /** Splits tried in one pass over the grid: what a pass costs. */
  readonly splits: number;
  /** Whether positions had to be left out, so that nothing found in the grid is sure to be best. */
  readonly thinned: boolean;
}

/** An item as it may lie in the sheet. */
export interface Placement {
  readonly item: number;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
  /** Columns, and rows, of the workpieces that it can be shaved out of. */
  readonly columns: readonly number[];
  readonly rows: readonly number[];
}

export interface GridRequest {
  readonly sheetWidth: number;
  readonly sheetHeight: number;
  readonly items: readonly Item[];
  readonly limits: CutLimits;
  /** Sizes along one axis, and splits in a pass, at most: beyond them positions are thinned out. */
  readonly mostPositions: number;
  readonly mostSplits: number;
}

/** The grid of one sheet size, thinned as far as it must be. */
export function sheetGrid(request: GridRequest): SheetGrid {
  const exact = gridWithin(request, request.mostPositions, false);
  if (exact !== null) return exact;
  for (let most = request.mostPositions; most >= 8; most = Math.floor(most / 2)) {
    const thinned = gridWithin(request, most, true);
    if (thinned !== null) return thinned;
  }
  assert(false, 'the smallest grid is still too large', { ...request });
}

function gridWithin(request: GridRequest, most: number, thin: boolean): SheetGrid | null {
  const { sheetWidth, sheetHeight, limits, mostSplits } = request;
  const placements = placementsIn(request);
  const along = (length: number, size: (p: PlacedItem) => number) => {
    const wanted = new Map<number, number>();
    for (const placed of placements) wanted.set(size(placed), (wanted.get(size(placed)) ?? 0) + placed.need);
    const { step, reach, longest } = limits;
    return positionsAlong({ length, wanted, step, reach, shaveAbove: longest, most, thin });
  };
  const width = along(sheetWidth, (placed) => placed.width);
  const height = along(sheetHeight, (placed) => placed.height);
  if (width === null || height === null) return null;
  const columns = width.sizes.length;
  const rows = height.sizes.length;
  const splits = width.first.length * rows + height.first.length * columns;
  if (splits > mostSplits && most > 8) return null;

  const { longest } = limits;
  const which = (positions: Positions, size: number) =>
    positions.sizes.flatMap((length, index) =>
      index > 0 && cuttableFrom(size, length, limits) ? [index] : [],
    );
  return {
    sheetWidth,
    sheetHeight,
    limits,
    width,
    height,
    columns,
    rows,
    whole: width.whole * rows + height.whole,
    cutsWidth: height.sizes.map((size) => longest === null || size <= longest),
    cutsHeight: width.sizes.map((size) => longest === null || size <= longest),
    placements: placements.map(({ item, turned, width: w, height: h }) => ({
      item,
      turned,
      width: w,
      height: h,
      columns: which(width, w),
      rows: which(height, h),
    })),
    splits,
    thinned: thin,
  };
}

/** Whether the item can be cut from the sheet at all, turned or not. */
export function fitsSheet(
  item: Item,
  sheet: { readonly width: number; readonly height: number },
  limits: CutLimits,
): boolean {
  const request = { sheetWidth: sheet.width, sheetHeight: sheet.height, items: [item], limits };
  return placementsIn(request).length > 0;
}

interface PlacedItem {
  readonly item: number;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
  readonly need: number;
}

function placementsIn({
  sheetWidth,
  sheetHeight,
  items,
  limits,
}: Pick<GridRequest, 'sheetWidth' | 'sheetHeight' | 'items' | 'limits'>): PlacedItem[] {
  const { longest } = limits;
  // An item longer than the longest cut needs the sheet's own edges on its two long sides.
  const reachable = (width: number, height: number) =>
    longest === null ||
    ((width <= longest || height === sheetHeight) && (height <= longest || width === sheetWidth));
  // A sheet that is too long both ways cannot be cut; it may still be a piece as it is.
  const uncuttable = longest !== null && sheetWidth > longest && sheetHeight > longest;
  return items.flatMap(({ width, height, need, turns }, item) =>
    (turns && width !== height ? [false, true] : [false])
      .map((turned) => ({
        item,
        turned,
        width: turned ? height : width,
        height: turned ? width : height,
        need,
      }))
      .filter(
        (placed) =>
          cuttableFrom(placed.width, sheetWidth, limits) &&
          cuttableFrom(placed.height, sheetHeight, limits) &&
          reachable(placed.width, placed.height) &&
          (!uncuttable || (placed.width === sheetWidth && placed.height === sheetHeight)),
      ),
  );
}
