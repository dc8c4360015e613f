export { type CardSet, wantedOf } from './cardSet.ts';
export { checkSet, usualMarks } from './checkSet.ts';
export { type Cliff, cliffsOf, type Gain, type PieceChange } from './cliffs.ts';
export { type PlanningCode, type PlanningProblem, planningCodes } from './codes.ts';
export { type PaperTask, paperTask } from './cuttingTask.ts';
export { type Enough, type EnoughOf, enoughFor, mostCards } from './enough.ts';
export { givesAll, type Verdict } from './givesAll.ts';
export { type KindnessGoal, kindnessGoals, kindnessOrder } from './kindness.ts';
export { largestKept } from './largestKept.ts';
export { type LeftOnTable, leftOnTable } from './leftOnTable.ts';
export {
  type Bed,
  type ExtraFound,
  type ExtraPlace,
  type KeptLeftover,
  type LeftoverUses,
  leftoverUses,
  type OtherKind,
  type OtherUse,
  type UsedLeftover,
} from './leftoverUses.ts';
export { type LeftoverUsesRecord, leftoverUsesRecord } from './leftoverUsesRecord.ts';
export { changesOf, type LengthChange } from './lengthChange.ts';
export {
  type Lying,
  type LyingFrom,
  layoutOnTable,
  lyingOf,
  type OnTable,
  type PlanInHand,
  untouchedTable,
} from './onTable.ts';
export type { Piece } from './piece.ts';
export { dealt, piecesOf } from './pieces.ts';
export { piecesPerSheet } from './piecesPerSheet.ts';
export type { Dealing, PaperOutcome, Plan, PlannedSheet } from './plan.ts';
export { planRecord, replayConditions } from './planRecord.ts';
export { planSet, type SetToPlan } from './planSet.ts';
export type { PlanningProgress } from './progress.ts';
export { type ProveReason, proveFirstOf, proveReasons } from './proveFirst.ts';
export { quickSet } from './quickSet.ts';
export {
  type Change,
  type Recast,
  type RecastConversion,
  type RecastLength,
  type RecastPaper,
  type RecastPiece,
  type RecastRefused,
  recast,
  type Suiting,
} from './recast.ts';
export type { RecastReason } from './recastLengths.ts';
export type { OtherSheets, RecastRefusal, RecastWishes } from './recastWishes.ts';
export type { PaperRecut, Recut } from './recut.ts';
export { type RecutShort, type Rescue, recutSet, type SheetsMore } from './rescue.ts';
export {
  dealingIn,
  type LyingRecord,
  type PaperTableRecord,
  type ReadPlan,
  readSavedPlan,
  recutRecord,
  type SavedPlan,
  type TableRecord,
} from './savedPlan.ts';
export { settledBy, settledSet } from './settling.ts';
export type {
  MoreSheets,
  Nearest,
  NeverReason,
  PaperShortage,
  Shortage,
  ShortageLimit,
} from './shortage.ts';
export { type SmallMove, smallestMoves } from './smallestMoves.ts';
export {
  type NextSpare,
  offeredOf,
  type PieceSpares,
  type Risk,
  risks,
  sparesOf,
} from './spares.ts';
export { type OfferRecord, type SparesRecord, sparesRecord } from './sparesRecord.ts';
export { type StakesRescue, type StepStakes, stakesOf } from './stakes.ts';
export { type StakesRecord, stakesRecord } from './stakesRecord.ts';
export { type StandIn, standInsFor } from './standIn.ts';
export { type Suited, type SuitedSizes, suitedSet } from './suit.ts';
export { type TableCode, type TableProblem, tableCodes } from './tableCodes.ts';
export {
  type CutSoFar,
  type Found,
  nothingCut,
  type Spoiled,
  type SpoiledThing,
  type TableNow,
  tableNow,
} from './tableNow.ts';
export { type Tallied, type Tally, type TallyMark, tallied } from './tally.ts';
export { type TightFit, tightFitsOf } from './tightFit.ts';
