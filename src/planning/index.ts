export type { Piece } from './piece.ts';
export type { PaperOutcome, Plan, PlannedSheet } from './plan.ts';
export type { PaperShortage, Shortage } from './shortage.ts';
