export { type Change, changed } from './change.ts';
export { partDuplicated } from './duplicate.ts';
export {
  type Edit,
  paperAdded,
  paperTaken,
  partAdded,
  partMoved,
  partTaken,
  settingOf,
  together,
} from './edit.ts';
export { finishedMendsOf } from './finishedMends.ts';
export { foldSet } from './foldSet.ts';
export {
  type Done,
  type History,
  joined,
  opened,
  replayed,
  type Step,
  stepped,
  type Track,
} from './history.ts';
export type { InHand } from './inHand.ts';
export {
  type KitEdit,
  type KitLength,
  type KitLengthRefusal,
  kitCounted,
  kitEachSet,
  kitEnvelopesSet,
  kitLengthSet,
  kitOfferTaken,
  kitSheetsSet,
  kitTitled,
} from './kitEdit.ts';
export {
  type KitDone,
  type KitHistory,
  type KitTrack,
  kitEdited,
  kitOpened,
  kitStepped,
} from './kitHistory.ts';
export { distanceAt, layingOf, layingsFor, pieceLaid } from './laying.ts';
export { type LayingRefusal, partLaidOn } from './layingOn.ts';
export {
  type Laid,
  type LaidTo,
  type LayLine,
  type LayLines,
  laidTo,
  layLines,
  type Reach,
} from './layLines.ts';
export { lengthsChanged } from './lengthsChanged.ts';
export { inHandAfter, mendHolds, mendsOf } from './mends.ts';
export { minutesSet } from './minutesSet.ts';
export { newKit } from './newKit.ts';
export { newPart, type PartKind, type PartWanted } from './newPart.ts';
export { weightSet } from './paperWeight.ts';
export { type Moved, type PieceAt, pieceMoved, pieceNudged, type Shift, type Stay } from './placing.ts';
export { type PlanningMend, planningMendsOf } from './planningMends.ts';
export { recastFile } from './recastFile.ts';
export { type NewScrap, newScraps, restocked, type UsedSheets, usedSheets } from './restock.ts';
export { gapOf, gapSet } from './ribbonSet.ts';
export { roomSet } from './roomSet.ts';
export { type Drawn, outlineSet, type PlainShape, shapeSet } from './shapeSet.ts';
export {
  marginSet,
  newPaper,
  type PaperWanted,
  paperReplaced,
  sheetCutInto,
  sheetsAdded,
  sheetsPriced,
  sheetsTaken,
} from './stash.ts';
