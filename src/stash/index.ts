export { type CostUnit, costUnitOf, exactCostOf, exactOfShown, shownCost } from './cost.ts';
export type { Colour, Paper, PaperKind, Price, SheetStock, Up } from './paper.ts';
