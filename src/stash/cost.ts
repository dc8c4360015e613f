import { ticksPerInch } from '../measure/index.ts';
import { assert } from '../problem/index.ts';
import type { Paper, SheetStock } from './paper.ts';

/** What the cost of a plan counts: money, sheets of one size, or the area of sheets of several sizes. */
export type CostUnit = 'price' | 'sheets' | 'square inches';

/**
 * What the cost of cutting this paper counts: prices where its sheets have them, else the sheets where all are of
 * one size, else their area.
 */
export function costUnitOf(paper: Paper): CostUnit {
  const { sheets } = paper;
  if (sheets.some((sheet) => !sheet.scrap && sheet.price !== null)) return 'price';
  const first = sheets[0]?.size;
  const alike = sheets.every(
    (sheet) => sheet.size.width === first?.width && sheet.size.height === first.height,
  );
  return alike ? 'sheets' : 'square inches';
}

/**
 * The cost of one sheet as a whole number, so that costs can be added and compared exactly: ten-thousandths of
 * the currency, sheets, or square ticks. A scrap costs nothing.
 */
export function exactCostOf(sheet: SheetStock, unit: CostUnit): number {
  if (sheet.scrap) return 0;
  switch (unit) {
    case 'price':
      assert(sheet.price !== null, 'All sheets of a priced paper have a price');
      return sheet.price;
    case 'sheets':
      return 1;
    case 'square inches': {
      const area = sheet.size.width * sheet.size.height;
      assert(Number.isSafeInteger(area), 'The area of one sheet is exact in a number', { area });
      return area;
    }
  }
}

/** An exact cost in the unit itself, for people: 3500 ten-thousandths are 0.35, an area is in square inches. */
export function shownCost(exact: number, unit: CostUnit): number {
  switch (unit) {
    case 'price':
      return exact / 10_000;
    case 'sheets':
      return exact;
    case 'square inches':
      return exact / (ticksPerInch * ticksPerInch);
  }
}

/** The exact cost that was shown so; the inverse of `shownCost`, which keeps enough digits for it. */
export function exactOfShown(shown: number, unit: CostUnit): number {
  return Math.round(shown / shownCost(1, unit));
}
