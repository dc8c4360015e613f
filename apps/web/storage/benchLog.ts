import type { SavedLayout } from '../../../src/files/index.ts';
import type { SavedPlan, TallyMark } from '../../../src/planning/index.ts';
import type { Trimmer } from '../../../src/trimming/index.ts';

/** What happens at the bench, told one after another. Plain data, kept as it was once told. */
export type BenchEvent =
  /** A set is begun, or begun anew: its layout as it was then, what it is cut with and by which plan. */
  | {
      readonly kind: 'begun';
      readonly file: SavedLayout;
      readonly trimmer: Trimmer | null;
      readonly plan: SavedPlan;
    }
  /** Something is noted of the cutting. */
  | { readonly kind: 'noted'; readonly mark: Exclude<TallyMark, { kind: 'planned again' }> }
  /** The rest is cut by another plan from here on; `file`: of a layout that was changed for it, `null`: of the same. */
  | { readonly kind: 'planned again'; readonly plan: SavedPlan; readonly file: SavedLayout | null }
  /** A line of the putting together is done for all cards. */
  | { readonly kind: 'made'; readonly line: string }
  /** What was told last, and was not taken back, did not happen. The beginning stays. */
  | { readonly kind: 'taken back' };

/** One event of a layout's bench as it is kept. */
export interface BenchRecord {
  readonly document: string;
  /** From 1 on. */
  readonly number: number;
  readonly event: BenchEvent;
  /** A name of its own, so that it is never kept twice. */
  readonly entry: string;
}
