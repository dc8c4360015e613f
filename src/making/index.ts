export {
  type AdhesiveKind,
  type AdhesiveUse,
  adhesiveKinds,
  adhesivesFor,
  adhesiveUses,
  type UsualAdhesive,
  usualAdhesives,
} from './adhesives.ts';
export { type AdhesiveWeight, adhesiveWeights } from './adhesiveWeights.ts';
export { bandLength, bandOverlap, type Wrapped } from './bellyBand.ts';
export { type EnvelopeSize, envelopeSizes } from './envelopeTable.ts';
export {
  type FoldedBase,
  type FoldKind,
  foldKinds,
  frontFor,
  grainFor,
  hingesOf,
  largestAllowance,
  type Opens,
  openedSize,
  openingAxis,
  opensEitherWay,
  type Panel,
  panelsOf,
  type Score,
  scoresOf,
  showsSideOfFront,
  slitOf,
  takesAllowance,
  usualAllowance,
} from './fold.ts';
export {
  type NoRibbon,
  type Ribbon,
  type RibbonMeasures,
  ribbonFacets,
  ribbonMeasures,
  ribbonOfSize,
  slantForGap,
  templateForGap,
  writtenSlant,
} from './foldedRibbon.ts';
export type { Facet, Spot, Strip } from './foldedStrip.ts';
export { type FlatFold, type FlatPanels, flatPanels, isFlatFold } from './foldPanels.ts';
export { grammageOf, type PoundKind, poundKinds, poundsOf } from './grammage.ts';
export {
  fastestLots,
  type Lot,
  type LotOrder,
  type LotRules,
  type LotTimes,
  lotsInOrder,
} from './lots.ts';
export { type KnotMeasures, knotFacets, knotMeasures, sizeOfKnot } from './pentagonKnot.ts';
export {
  type Mailpiece,
  type PostClass,
  type Posted,
  type PostFault,
  type PostId,
  type PostSizes,
  type PostTable,
  postedAs,
  postFaults,
  postIds,
} from './post.ts';
export { postTableOf, postTables } from './postTables.ts';
export {
  fastestRuns,
  type Run,
  type RunRules,
  type Runs,
  type RunTask,
  type RunWork,
  runsInOrder,
} from './runs.ts';
export { type FoldedPaper, isThickStock, type ScoringRule, scoringOf, scoringRules } from './scoring.ts';
export {
  bestLine,
  type Line,
  type LineAsks,
  type LineTask,
  type LineTimes,
  lineTimes,
  type Station,
} from './stationLine.ts';
export {
  isSure,
  type TearDepth,
  type TearSaid,
  tearDensity,
  tearOf,
  tearQuantile,
  tearWithin,
} from './tear.ts';
export { type PairCondition, pairHolds } from './tearPair.ts';
export { chanceForCard, chanceInSet } from './tearRisk.ts';
export { type Sampled, sampledChance } from './tearSample.ts';
export { type TearSum, type TearTerm, tearSum } from './tearSum.ts';
export { usualMinutes } from './usualMinutes.ts';
export {
  creasesOfLoops,
  facetsOfLoops,
  type Loops,
  lengthOfLoops,
  overlapOfLoops,
  sizeOfLoops,
} from './woundLoops.ts';
