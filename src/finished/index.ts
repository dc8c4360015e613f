export { type Adhesive, adhesiveFor } from './adhesive.ts';
export { type AssemblyOrder, assemblyOrder, type Refusal } from './assemblyOrder.ts';
export { assemblyRules, type OrderRule } from './assemblyRules.ts';
export { type Assembly, type AssemblyStep, assemblyOf } from './assemblySteps.ts';
export { checkFinished, type FinishedProblem } from './check.ts';
export { type Closed, closedCards } from './closed.ts';
export { envelopeProblems, postProblems } from './closedProblems.ts';
export { type FinishedCode, finishedCodes } from './codes.ts';
export { type Docket, type DocketAsks, docketOf } from './docket.ts';
export {
  type BorderShown,
  type BordersShown,
  bordersShown,
  type GapShown,
  gapsShown,
  type PieceName,
} from './edgesShown.ts';
export {
  type Clearance,
  type EnvelopeFit,
  envelopeFit,
  envelopeNeeded,
  largestCard,
  type Sides,
  sidesOf,
  smallestEnvelope,
} from './envelope.ts';
export { type Folding, foldingOf, type PaperFolded, papersFolded, type SheetFolded } from './folding.ts';
export {
  type AdhesiveNeed,
  type Amount,
  type HeldPart,
  type HeldPiece,
  type Holding,
  holdingOf,
  isHeldUnder,
} from './holding.ts';
export type { Laid } from './holdingLaid.ts';
export { isWrapped } from './isWrapped.ts';
export { type LikeCards, likeCards } from './likeCards.ts';
export {
  isWithPause,
  type LineTook,
  type MinutesLearnt,
  minutesLearnt,
  workOfLine,
} from './minutesLearnt.ts';
export { type PaperShown, paperShown, sideOfBase } from './paperShown.ts';
export { type PostChange, type PostedEnvelope, type Posting, postingOf } from './posting.ts';
export { type FoldedMade, foldedMade, type RibbonMade, ribbonsMade } from './ribbons.ts';
export {
  type Evenness,
  type Layer,
  type Round,
  type Section,
  type Stack,
  sectionOf,
} from './section.ts';
export {
  type HandsTime,
  type LineTime,
  type PairTime,
  type RunTime,
  type SetTime,
  type StationTime,
  setTimeOf,
} from './setTime.ts';
export { type Shown, shownOn } from './shown.ts';
export { joinBreadth, shownProblems, sliver } from './shownProblems.ts';
export { type Task, tasksOf } from './tasks.ts';
export { type Chance, chanceInCards, chanceOnCard, failureChance } from './tearChance.ts';
export type { EdgeOf, JoinKind, JoinTear, LaidJoin } from './tearJoin.ts';
export { tearJoins } from './tearJoins.ts';
export { tearProblems } from './tearProblems.ts';
export type { Resized, TearRemedy } from './tearRemedy.ts';
export { isMeeting, type Risk, type TearJoin, type Tears, tearsOf, usualRisk } from './tears.ts';
export { type Thickness, thicknessOf, thicknessOfDealt } from './thickness.ts';
export { tuckedEnds } from './tucks.ts';
export { envelopeWeight, type Weight, type WeightItem, weightOf, withItem } from './weight.ts';
