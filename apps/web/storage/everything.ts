import type { Track } from '../../../src/editing/index.ts';
import type { Json, SavedKit } from '../../../src/files/index.ts';
import type { BenchEntry } from './benchLog.ts';

/** All that stands on a shelf, apart from where it is kept: to be written to a file, and put back from one. */
export interface Everything {
  /** By title; what lies in the bin is not among them. */
  readonly layouts: readonly KeptLayout[];
  /** Kits by title; absent: there are none. */
  readonly kits?: readonly SavedKit[];
  readonly preferences: Readonly<Record<string, Json>>;
}

export interface KeptLayout {
  /** `null`: it never stood on a shelf. */
  readonly id: string | null;
  readonly revision: number;
  /** The layout that it is a second version of; `null`: of none. */
  readonly besides: string | null;
  readonly track: Track;
  /** All that was told at its bench, in its order. */
  readonly bench: readonly BenchEntry[];
}

/** What became of the layouts that were put back, how many of each. */
export interface PutBack {
  readonly added: number;
  /** Became second versions. */
  readonly beside: number;
  /** Were there already, but less was told at their benches; what was told since stands there now. */
  readonly further: number;
  /** Were there already. */
  readonly there: number;
}
