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
      /** When, as below. */
      readonly at?: number;
    }
  /** Something is noted of the cutting. */
  | {
      readonly kind: 'noted';
      readonly mark: Exclude<TallyMark, { kind: 'planned again' }>;
      /** When, of what is cut, as below. */
      readonly at?: number;
    }
  /** The rest is cut by another plan from here on; `file`: of a layout that was changed for it, `null`: of the same. */
  | { readonly kind: 'planned again'; readonly plan: SavedPlan; readonly file: SavedLayout | null }
  /** A line of the putting together is done for all cards. */
  | {
      readonly kind: 'made';
      readonly line: string;
      /** When, in milliseconds since 1970, for what has to dry and how long it took; logs that were begun before have none. */
      readonly at?: number;
    }
  /** What was told last, and was not taken back, did not happen. The beginning stays. */
  | { readonly kind: 'taken back' };

/** One event as it was told. */
export interface BenchEntry {
  readonly event: BenchEvent;
  /** A name of its own, so that it is never kept twice. */
  readonly entry: string;
}

/** One event of a layout's bench as it is kept. */
export interface BenchRecord extends BenchEntry {
  readonly document: string;
  /** From 1 on. */
  readonly number: number;
}

/**
 * What one log of a bench has beyond another: nothing where it has no more; `null`: each has something that the other
 * has not, so they are of two tables. Whoever told an event, it is the same event.
 */
export function beyond(
  there: readonly BenchEntry[],
  other: readonly BenchEntry[],
): readonly BenchEntry[] | null {
  const both = Math.min(there.length, other.length);
  const isSame = (index: number) =>
    JSON.stringify(there[index]!.event) === JSON.stringify(other[index]!.event);
  for (let index = 0; index < both; index += 1) if (!isSame(index)) return null;
  return other.slice(both);
}
