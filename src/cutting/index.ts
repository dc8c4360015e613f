export type {
  BoundCertificate,
  CuttingAnswer,
  CuttingPlan,
  Pattern,
  RefutedCounts,
  WorthCondition,
} from './answer.ts';
export { type BestPattern, bestPattern } from './bestPattern.ts';
export type { CutTree } from './cutTree.ts';
export { type SearchEffort, thoroughEffort, usualEffort } from './effort.ts';
export { firstPlan } from './firstPlan.ts';
export { highsSolver } from './highsSolver.ts';
export { type KinderOptions, type KinderWays, type Kindness, kinderWays } from './kinderWays.ts';
export { measurable, stripsOf } from './measuring.ts';
export { planCuts } from './planCuts.ts';
export type { SearchProgress } from './planSearch.ts';
export type { LinearAnswer, LinearColumn, LinearProgramme, LinearSolver } from './solver.ts';
export { type CutLimits, type CuttingTask, type Item, type SheetType, unlimited } from './task.ts';
