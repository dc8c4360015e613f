export { type Bag, type BagLayout, type BagPiece, type BagThing, bagsList } from './bags.ts';
export type { CutList, CutSize } from './cutList.ts';
export {
  type KitProblem,
  type KitReport,
  kitAtOnce,
  kitReport,
  layoutProblems,
  type PlannedKit,
} from './kitReport.ts';
export { type KitSet, kitSet, layoutName, type PartSource } from './kitSet.ts';
export { type KitOffer, type KitSizes, offersFor, withBags, withOffer } from './offers.ts';
