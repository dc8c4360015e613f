export { type CostUnit, costUnitOf, exactCostOf, exactOfShown, shownCost } from './cost.ts';
export type { Paper, PaperKind, Price, SheetStock, Up } from './paper.ts';
