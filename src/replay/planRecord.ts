import type { Axis } from '../measure/index.ts';

/**
 * A plan as it is written out and read by others (`cardwright plan --json`): the replay checks this very form,
 * so that nothing stands between what was checked and what is shown. Sizes are width then height in whole
 * ticks, with the pattern upright.
 */
export interface PlanRecord {
  readonly cardwright_plan: 1;
  readonly ticks_per_inch: 40640;
  readonly cards: number;
  readonly pieces: readonly PieceRecord[];
  readonly sheets: readonly SheetRecord[];
  readonly steps: readonly StepRecord[];
  /** Id of a piece on the table → `piece` of a `PieceRecord`. */
  readonly finished: Readonly<Record<string, string>>;
  readonly leftovers: readonly LeftoverRecord[];
  readonly papers: Readonly<Record<string, PaperRecord>>;
  /** By part that is cut from leftovers, its papers in the order of the cards; absent where there is none. */
  readonly dealt?: Readonly<Record<string, readonly DealtRecord[]>>;
}

export interface DealtRecord {
  readonly paper: string;
  readonly cards: number;
  /** Of these, the last so many that take a new sheet. */
  readonly beyond: number;
}

export interface PieceRecord {
  readonly piece: string;
  readonly part: string;
  readonly paper: string;
  readonly size: SizeRecord;
  readonly need: number;
  readonly turn: 'locked' | 'free';
}

export interface SheetRecord {
  readonly id: string;
  readonly paper: string;
  readonly stock: number;
  readonly size: SizeRecord;
}

export interface StepRecord {
  readonly step: number;
  readonly take: readonly string[];
  readonly axis: Axis;
  readonly set: number;
  readonly repeat: number;
  readonly gives: readonly (readonly string[])[];
  readonly rest: readonly (string | null)[];
  /** What the trimmer's ruler reads for `set`; absent where it reads just that. */
  readonly dial?: number;
  /** Measured on the other side of the blade. */
  readonly otherSide?: true;
}

export interface LeftoverRecord {
  readonly id: string;
  readonly size: SizeRecord;
  readonly keep: boolean;
}

export interface PaperRecord {
  readonly sheets: number;
  readonly cost: number;
  readonly bound: number;
  readonly proved: boolean;
  readonly passes: number;
  readonly settings: number;
  readonly turns: number;
}

/** Width, then height. */
export type SizeRecord = readonly [number, number];
