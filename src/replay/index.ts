export type {
  LeftoverRecord,
  PaperRecord,
  PieceRecord,
  PlanRecord,
  SheetRecord,
  SizeRecord,
  StepRecord,
} from './planRecord.ts';
export {
  type Fault,
  type FaultCode,
  type ReplayConditions,
  type ReplayStock,
  type ReplayTrimmer,
  replay,
} from './replay.ts';
