export { type AssemblyWords, assemblyWords, dealtWords } from './assembly.ts';
export { type Caution, type CautionedSet, cautionsFor } from './caution.ts';
export { chanceWords, riskWords, type ToldChance } from './chanceWords.ts';
export { capital, counted, countedInWords, countWord, listed, numbersListed, plural } from './count.ts';
export { type DocketMatter, docketSentences } from './docketSentences.ts';
export { type EditOwner, type EditTold, editSentence, fieldWords } from './editSentence.ts';
export { cliffSentence, enoughSentences } from './enoughSentence.ts';
export { envelopeSentences } from './envelopeSentence.ts';
export { exactnessSentences } from './exactness.ts';
export { type FileProblemCode, fileProblemCodes, fileProblemSentence, type Wanted } from './fileProblem.ts';
export { finishedProblemSentence } from './finishedProblem.ts';
export { foldWord, panelWord } from './foldWords.ts';
export { fromLeftoversSentences } from './fromLeftovers.ts';
export { dryingSentence, heldSentence, needSentence } from './holdingSentence.ts';
export { kindnessSentence } from './kindnessSentence.ts';
export {
  bagLines,
  bagSentence,
  bagsName,
  cutListSentences,
  type KitEditTold,
  kitEditSentence,
  kitEnoughSentence,
  kitOfferSentence,
  kitProblemSentence,
  kitSentence,
  kitShortSentences,
  kitTotalsSentences,
} from './kitSentence.ts';
export { layoutProblemSentence } from './layoutProblem.ts';
export {
  extraSentences,
  keptSentences,
  otherUsesSentence,
  takenOutSentences,
} from './leftoverUseSentence.ts';
export { whereOnRuler, whyNotALength } from './length.ts';
export { measuredFrom, sideOf } from './measuredFrom.ts';
export { type MendTold, mendWords } from './mendWords.ts';
export { lastsWords, minutesWords } from './minutesWords.ts';
export { liftSentences } from './orderSentence.ts';
export { docketOf, standing, type ToBuy, takenOf, toBuy, toolsFor } from './papers.ts';
export { layingWords, type PartLaying } from './partLaying.ts';
export { partName } from './partName.ts';
export { pathRefusalSentence } from './pathRefusal.ts';
export { planningProblemSentence } from './planningProblem.ts';
export {
  effortSentence,
  leftoverSentences,
  planSentence,
  slackSentences,
} from './planSentence.ts';
export { postSentences } from './postSentence.ts';
export { progressSentence } from './progressSentence.ts';
export { type RecastWords, recastRefusalSentence, recastWords } from './recastSentence.ts';
export { type RecutTold, recutSentences } from './recutSentence.ts';
export { rescueSentence, rescueSentences, wantingSentences } from './rescueSentence.ts';
export {
  foldingSentences,
  noRibbonSentence,
  ribbonMeasuresSentences,
  ribbonSentences,
} from './ribbonSentence.ts';
export { type ScoringWords, scoringWords } from './scoring.ts';
export { sectionSentences } from './sectionSentence.ts';
export { moreSheetsSentences, shortageSentences, standInSentences } from './shortageSentence.ts';
export type { Showing } from './showing.ts';
export {
  bordersSentence,
  gapSentence,
  paperShownSentence,
  shownProblemSentence,
} from './shownSentence.ts';
export { type SittingBreak, sittingBreaks, sittingsSentence } from './sittingBreaks.ts';
export { changeWords, effectSentences } from './sizeChange.ts';
export { type SparesTold, sparesMadeSentence, sparesSentences } from './sparesSentence.ts';
export { standsSentence } from './standsSentence.ts';
export { type StepWords, stepSentence, stepWords } from './stepSentence.ts';
export { roomRefusal, suitSentences } from './suitSentence.ts';
export { sumSentence } from './sum.ts';
export { type SvgProblemCode, svgProblemCodes, svgProblemSentence } from './svgProblem.ts';
export { tableProblemSentence } from './tableProblem.ts';
export { shortTask } from './taskWords.ts';
export { coreSentence, tearingAdvice } from './tearAdvice.ts';
export { type JoinWords, joinWords, tearSentence, tearsSentences } from './tearSentence.ts';
export { type TimeRow, type TimeRows, timeRows, timeTicks, typedTimeChart } from './timeRows.ts';
export { timeMatter } from './timeSentence.ts';
export { trimmerSentences } from './trimmerSentences.ts';
export { weightSentences } from './weightSentence.ts';
export { tableOf, type Workpiece } from './workpiece.ts';
